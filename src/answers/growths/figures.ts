/** Workings of the numbers of diagnosis: docs/model/diagnosis.md. */
import { clueFacts } from "../../catalogue/diagnosis.ts";
import type { RankedCause } from "../../engine/care/diagnosis/causes.ts";
import type { Subject } from "../../engine/care/diagnosis/scene.ts";
import { ofTwenty } from "../../engine/care/diagnosis/twentieths.ts";
import type { UnfoundDeath } from "../../engine/care/diagnosis/unfound-death.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { dateWords } from "../words.ts";

const exact = (value: number) => ({ low: value, central: value, high: value });
const two = (value: number): string => String(Number(value.toPrecision(2)));

export function causeFigure({ cause, chance, prior, clues, open }: RankedCause, { effect }: Subject): Figure {
  const known = clues.filter(({ holds }) => holds !== null);
  return {
    id: figureId.growthCause(effect, cause.id),
    label: `Chance that ${cause.name}`,
    spread: exact(ofTwenty(chance)),
    unit: "of 20",
    working: {
      formulaKey: "diagnosis.md#causes",
      formula: "odds before, times what each known clue makes of them; of 20",
      inputs: [
        {
          label: "How often it is at work where this is seen, before anything is known",
          value: `${two(prior * 20)} of 20`,
          origin: "derived",
        },
        ...known.map(({ id, holds, on, factor }) => ({
          label: (holds === true ? clueFacts.get(id)?.yes : clueFacts.get(id)?.no)?.replace(/\.$/, "") ?? id,
          value: `odds times ${two(factor)}${on === null ? "" : `, ${dateWords(on)}`}`,
          origin: "stated" as const,
        })),
      ],
      parameters: [],
      animals: [],
      confidence: "judgement",
      wouldChange: open.slice(0, 2).map((id) => clueFacts.get(id)?.test.replace(/\.$/, "") ?? id),
    },
  };
}

export function riseFigure({ rise, usual, value, days, margin, on }: UnfoundDeath): Figure {
  return {
    id: figureId.unfoundRise(),
    label: "Rise above this tank's usual",
    spread: exact(Number(rise.toPrecision(2))),
    unit: "mg N/L",
    working: {
      formulaKey: "diagnosis.md#unfound",
      formula: "the reading less the median of the tank's earlier days",
      inputs: [
        { label: "The reading", value: `${two(value)} mg N/L, ${dateWords(on)}`, origin: "stated" },
        usual === null
          ? { label: "Usual in a settled tank", value: "next to none", origin: "assumed" }
          : { label: "Usual here", value: `${two(usual)} mg N/L, of ${days} days`, origin: "derived" },
        {
          label: "Least rise that counts, by the test's step",
          value: `${two(margin)} mg N/L`,
          origin: "derived",
        },
      ],
      parameters: [],
      animals: [],
      confidence: "judgement",
      wouldChange: ["a second test tomorrow", "a head count by torch"],
    },
  };
}
