/** The trait key against naive Bayes of R's e1071: naive-bayes.R made an invented key and recorded its answers. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { ELSE_PRIOR, weigh } from "../../src/engine/care/diagnosis/key.ts";
import type { KeyQuestion, TraitKey } from "../../src/engine/types/diagnosis.ts";

interface Recorded {
  readonly things: { id: string; prior: number; chances: Record<string, number> }[];
  readonly cases: {
    answers: { colour: string | null; slimy: string | null; hard: string | null; round: string | null };
    chances: Record<string, number>;
  }[];
}
const recorded = JSON.parse(readFileSync(new URL("naive-bayes-r.json", import.meta.url), "utf8")) as Recorded;

const question = (id: string, options: readonly string[]): KeyQuestion => ({
  ...{ id, ask: id, how: null, effort: "eye", no: null, record: null },
  options: options.map((option) => ({ id: option, words: option })),
});
const key: TraitKey = {
  questions: [
    question("colour", ["red", "green", "brown"]),
    ...["slimy", "hard", "round"].map((id) => question(id, [id])),
  ],
  things: recorded.things,
};

test.each(recorded.cases)("$answers: as e1071 says, to ten digits", ({ answers, chances }) => {
  const { colour, ...yesOrNo } = answers;
  const traits = Object.fromEntries([
    ...(colour === null ? [] : [[colour, true] as const]),
    ...Object.entries(yesOrNo).flatMap(([id, said]) =>
      said === null ? [] : [[id, said === "yes"] as const],
    ),
  ]);
  // The package knows of nothing else: what stands beside the things is left out.
  const known = weigh(key, traits).filter(({ thing }) => thing !== null);
  const sum = known.reduce((all, { chance }) => all + chance, 0);
  for (const { thing, chance } of known) expect(chance / sum).toBeCloseTo(chances[thing?.id ?? ""] ?? -1, 10);
});

test("something else keeps its share while nothing was answered", () => {
  expect(weigh(key, {}).find(({ thing }) => thing === null)?.chance).toBeCloseTo(ELSE_PRIOR, 12);
});
