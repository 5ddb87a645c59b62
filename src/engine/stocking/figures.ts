/** The plan's numbers as figures: heads of a kind, what it needs, in how many runs it lives. docs/model/stocking.md. */

import { RATION_MG_C } from "../larder/larder.ts";
import type { Figure } from "../types/figure.ts";
import { round3 } from "../types/link.ts";
import { SHELF_NAME, SHELVES } from "../types/shelf.ts";
import type { TankFacts } from "../types/tank.ts";
import { CHECK_DAYS } from "./check.ts";
import type { Plan } from "./plan-shape.ts";
import { breakEven } from "./programme.ts";
import { warmthOf } from "./waves.ts";

/** Every figure of a plan, besides the larder's. */
export function planFigures(plan: Plan, facts: TankFacts): Figure[] {
  return [...countFigures(plan, facts), ...needFigures(plan, facts), ...aliveFigures(plan)];
}

function countFigures(plan: Plan, facts: TankFacts): Figure[] {
  const planned = new Map<string, { count: number; wave: Plan["waves"][number] }>();
  for (const wave of plan.waves) {
    for (const { animal, count } of wave.animals) {
      planned.set(animal.id, { count: (planned.get(animal.id)?.count ?? 0) + count, wave });
    }
  }
  return [...planned].map(([id, { count, wave }]): Figure => {
    const { animal, binding } = wave.animals.find((one) => one.animal.id === id)!;
    const { supply } = wave.draft;
    return {
      id: `plan.${id}.count`,
      label: `${animal.commonName}: heads to add in all`,
      spread: { low: count, central: count, high: count },
      unit: "heads",
      working: {
        formulaKey: "stocking.md#programme",
        formula:
          "the whole numbers that cost least in purchases, food left uneaten and services missing, such that every animal gets its break-even food at the pessimistic supply times the safe-start share",
        inputs: [
          { label: "what binds it", value: binding.text, origin: "derived" },
          { label: "safe-start share of its last wave", value: String(wave.safeStart), origin: "derived" },
          {
            label: "water of the display",
            value: `${round3(facts.displayL.central)} L (${facts.displayL.how})`,
            origin: facts.displayL.origin,
          },
          ...SHELVES.filter((shelf) => animal.diet[shelf] > 0).map((shelf) => ({
            label: `${SHELF_NAME[shelf]}, pessimistic on its day`,
            value: `${round3(supply.pessimistic[shelf])} mg C/d`,
            origin: "figure" as const,
            figure: `larder.${shelf}.pessimistic`,
          })),
        ],
        parameters: [],
        animals: [id],
        confidence: "judgement",
        wouldChange: plan.wouldChange.slice(0, 2).map(({ unknown }) => unknown.label),
      },
    };
  });
}

function needFigures(plan: Plan, facts: TankFacts): Figure[] {
  const warmth = warmthOf(facts);
  return plan.kinds.map(({ animal }): Figure => {
    const need = breakEven(animal, warmth);
    return {
      id: `animal.${animal.id}.need`,
      label: `${animal.commonName}: food one needs to keep its weight`,
      spread: { low: need, central: need, high: need },
      unit: "mg C/d",
      working: {
        formulaKey: "stocking.md#need",
        formula: "break-even intake at 25 C x 2 per 10 C warmer; a ration is 10 mg C",
        inputs: [
          {
            label: "break-even intake at 25 C",
            value: `${round3(animal.breakEvenIntakeMgCPerDay)} mg C/d`,
            origin: "derived",
          },
          {
            label: "temperature",
            value: `${round3(facts.temperatureC.central)} C (${facts.temperatureC.how})`,
            origin: facts.temperatureC.origin,
          },
          { label: "in rations", value: `${round3(need / RATION_MG_C)} rations a day`, origin: "derived" },
        ],
        parameters: [],
        animals: [animal.id],
        confidence: "computed",
        wouldChange: ["the animal's size: snails of one name differ several times in weight"],
      },
    };
  });
}

function aliveFigures(plan: Plan): Figure[] {
  return (plan.check?.kinds ?? []).map(
    (kind): Figure => ({
      id: `check.${kind.id}.alive`,
      label: `${plan.kinds.find(({ animal }) => animal.id === kind.id)?.animal.commonName ?? kind.id}: runs of 20 with at least half alive ${CHECK_DAYS} days after the last arrival`,
      spread: { low: kind.aliveOf20, central: kind.aliveOf20, high: kind.aliveOf20 },
      unit: "of 20",
      working: {
        formulaKey: "ahead.md#alive",
        formula:
          "runs of the ensemble in which half of the heads live on that day, out of all, in twentieths",
        inputs: [
          { label: "heads", value: String(kind.heads), origin: "derived" },
          { label: "day asked for", value: `day ${kind.day} from the plan's day`, origin: "derived" },
          { label: "runs", value: String(plan.check?.forecast.members ?? 0), origin: "derived" },
          { label: "if age alone took any", value: `${kind.agedOf20} of 20`, origin: "derived" },
        ],
        parameters: [],
        animals: [kind.id],
        confidence: "judgement",
        wouldChange: plan.wouldChange.slice(0, 2).map(({ unknown }) => unknown.label),
      },
    }),
  );
}
