/** Waves as a page: waiting in the same weight, conditions and cautions in sight, doubts that lead to their question. */
import { beforeAll, describe, expect, test } from "vitest";
import { type Example, exampleTank, TODAY } from "../../../checks/kit/example-answers.ts";
import type { JudgedGate } from "../../answers/bench/gate.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { renderPart } from "../part.tsx";
import { askedAt } from "./fact-questions.ts";
import { wavesPage } from "./waves.tsx";

/** Tanks planned and forecast on a busy machine. */
const PLENTY_MS = 600_000;
let young: Example;
let treated: Example;
beforeAll(async () => {
  young = await exampleTank("first-reef.yaml");
  treated = await exampleTank("copper-110.yaml");
}, PLENTY_MS);

const htmlOf = ({ head, answers }: Example): string => renderPart(wavesPage({ head, answers, today: TODAY }));
const text = (html: string) => html.replaceAll(/<[^>]*>/g, " ").replaceAll(/\s+/g, " ");

test("waiting stands beside the first wave with a heading and an action of the same kind", () => {
  const html = htmlOf(young);
  const either = /<section class="either">([\s\S]*?)<\/section>/.exec(html)![1]!;
  expect(either.match(/<h2>/g)).toHaveLength(2);
  expect(either.match(/class="action"/g)).toHaveLength(2);
  expect(text(either)).toContain("Or wait");
});

test("where the daybook says that the gate is not met, the first thing told is to wait, as the bench tells it", () => {
  const finding = { because: "", entries: [], settle: null, by: null, text: "" };
  const gate: JudgedGate = {
    ...{ wave: 1, state: "not_met", onlyIf: [], lookAgain: null, soonerIf: null },
    stopIf: { ...finding, state: "cannot_tell" },
  };
  const page = wavesPage({ head: young.head, answers: young.answers, today: TODAY, gate });
  expect(page.title).toMatch(/^Wait with the first wave of \d+: its gate is not met\./);
  expect(text(htmlOf(young))).toMatch(/Add \d+ animals? (?:now|from)/);
});

test("every condition of every wave is in sight, not folded away", () => {
  const open = htmlOf(young).replaceAll(/<details[\s\S]*?<\/details>/g, "");
  for (const { only_if } of young.answers.waves.waves)
    for (const condition of only_if) expect(open).toContain(condition.replaceAll("'", "&#39;").slice(0, 20));
});

test("what can hurt is told in plain words with the wave, not folded away", () => {
  const [first, ...rest] = young.answers.waves.waves;
  const urchin = { ...first!.animals[0]!, id: "long-spine-urchin", name: "long-spine urchin" };
  const answers: TankAnswers = {
    ...young.answers,
    waves: { ...young.answers.waves, waves: [{ ...first!, animals: [urchin] }, ...rest] },
  };
  const open = htmlOf({ ...young, answers }).replaceAll(/<details[\s\S]*?<\/details>/g, "");
  expect(text(open)).toMatch(/Caution, long-spine urchin\. .*(wear gloves|doctor)/);
});

describe("nothing yet", () => {
  test("says why, and proposes no wave", () => {
    const html = htmlOf(treated);
    expect(text(html)).toContain("Add nothing yet.");
    expect(text(html)).toContain("Why nothing yet");
    expect(html).not.toContain('class="wave"');
  });
});

test.each([
  ["waterL", "/tanks/t/questions/1"],
  ["no3_mg_n_per_l", "/tanks/t/questions/7"],
  ["litRockM2", "/tanks/t/form"],
])("a doubt about %s leads to where it is answered", (fact, address) => {
  expect(askedAt("t", fact)).toBe(address);
});
