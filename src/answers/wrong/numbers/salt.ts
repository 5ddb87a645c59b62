/** Salinity: what a stuck top-off does to this tank, how far it is from where it should be, and the way back in steps. */
import { animalById } from "../../../catalogue/index.ts";
import { daysOfSteps, purifiedToSwap, salinityAfter } from "../../../engine/care/trouble/salt.ts";
import type { Figure } from "../../../engine/types/figure.ts";
import { figureId } from "../../../engine/types/figure-id.ts";
import { exact, factInput, linkTo, spreadText, workedOut } from "../../../engine/types/link.ts";
import type { TankFacts } from "../../../engine/types/tank.ts";
import { told } from "../../sentence.ts";
import type { SumRow } from "../../sums/sum.ts";
import { bare, type NumbersPart, roughly, troubleFigure } from "./shape.ts";

/** Least that is said to be borne in a day; tox.salinity_range's note: no jumps above 1 to 2. */
const STEP_PSU = 1;
const GOAL = { low: 33, high: 36 } as const;
const SHARES = [0.02, 0.05, 0.1] as const;

export function salinityPart({ facts }: { readonly facts: TankFacts }): NumbersPart {
  const now = facts.salinityPsu.central;
  const goal = Math.min(GOAL.high, Math.max(GOAL.low, now));
  const days = daysFigure("salinity_days", "days back to 33 to 36 psu", now, goal, [
    factInput(facts, "salinityPsu", "salinity now", "psu"),
  ]);
  const litres = (waterL: number) => purifiedToSwap(now, now - STEP_PSU, waterL);
  const swap = troubleFigure("purified_for_a_step", {
    ...{ label: "tank water to swap for purified water, for 1 psu less", unit: "L", at: "salinity" },
    spread: {
      low: litres(facts.waterL.low),
      central: litres(facts.waterL.central),
      high: litres(facts.waterL.high),
    },
    formula: "water x (1 - salinity after / salinity before)",
    inputs: [
      factInput(facts, "waterL", "water", "L"),
      factInput(facts, "salinityPsu", "salinity now", "psu"),
      workedOut("less by", `${STEP_PSU} psu`),
    ],
    ...{ confidence: "computed", wouldChange: ["the water in the tank", "the salinity"] },
  });
  return {
    title: "Salinity",
    rows: [
      daysRow("Days back to 33 to 36 psu, 1 psu a day", days, now !== goal),
      { label: "Lowering it by 1 psu: tank water to swap for purified", value: [roughly(swap)] },
      ...narrowest(facts),
    ],
    tables: [],
    notes: [
      "Raise it by changes with saltier water, mixed and warmed a day before, never by dry salt in the tank.",
    ],
    figures: [days, swap],
  };
}

const daysRow = (label: string, days: Figure, needed: boolean): SumRow => ({
  label,
  value: needed
    ? [told(`${days.spread.central} ${days.spread.central === 1 ? "day" : "days"}`, days.id)]
    : [told("none", days.id), ": it is there"],
});

function daysFigure(
  name: string,
  label: string,
  from: number,
  to: number,
  inputs: Parameters<typeof troubleFigure>[1]["inputs"],
): Figure {
  return troubleFigure(name, {
    ...{ label, unit: "d", at: "salinity", spread: exact(daysOfSteps(from, to, STEP_PSU)) },
    formula: "distance / 1 psu a day, rounded up",
    inputs: [
      ...inputs,
      workedOut("goal", `${to.toFixed(1)} psu`),
      workedOut("a day at most", `${STEP_PSU} psu`),
    ],
    parameters: ["tox.salinity_range"],
    ...{ confidence: "judgement", wouldChange: ["a second instrument", "the animals: some bear less"] },
  });
}

/** The one of those that live here that bears least, at either end. */
function narrowest({ present }: TankFacts): SumRow[] {
  const kinds = present.flatMap(({ id, count }) => {
    const animal = count > 0 ? animalById.get(id) : undefined;
    return animal === undefined ? [] : [animal];
  });
  const first = kinds.toSorted(
    (a, b) => a.salinityPsu.high - a.salinityPsu.low - (b.salinityPsu.high - b.salinityPsu.low),
  )[0];
  if (first === undefined) return [];
  const { low, high } = first.salinityPsu;
  const range = told(`${low} to ${high} psu`, figureId.animal(first.id, "salinity"));
  return [{ label: `Bears least of those that live here: ${first.commonName}`, value: [range] }];
}

export function topOffPart({ facts }: { readonly facts: TankFacts }): NumbersPart {
  const { waterL, salinityPsu } = facts;
  const goal = Math.max(GOAL.low, Math.min(salinityPsu.central, GOAL.high));
  const each = SHARES.map((share) => {
    const litres = rounded(share * waterL.central);
    const name = `top_off_${Math.round(100 * share)}`;
    const after = troubleFigure(`${name}.salinity`, {
      ...{ label: `salinity after ${litres} L of fresh water`, unit: "psu", at: "salinity" },
      spread: {
        low: salinityAfter(salinityPsu.low, waterL.low, litres),
        central: salinityAfter(salinityPsu.central, waterL.central, litres),
        high: salinityAfter(salinityPsu.high, waterL.high, litres),
      },
      formula: "salinity x water / (water + fresh water)",
      inputs: [
        factInput(facts, "salinityPsu", "salinity before", "psu"),
        factInput(facts, "waterL", "water", "L"),
        workedOut("fresh water that got in", `${litres} L`),
      ],
      ...{ confidence: "computed", wouldChange: ["the litres that got in", "the water in the tank"] },
    });
    const days = daysFigure(
      `${name}.days`,
      `days back after ${litres} L of fresh water`,
      after.spread.central,
      Math.max(goal, after.spread.central),
      [linkTo(after)],
    );
    return { litres, after, days };
  });
  return {
    title: "A top-off that ran on",
    rows: [],
    tables: [
      {
        title: "By the fresh water that got in",
        columns: ["Fresh water, L", "Salinity then, psu", "Days back, 1 psu a day"],
        rows: each.map(({ litres, after, days }) => [
          [String(litres)],
          [told(spreadText(after.spread, "1"), after.id)],
          [bare(days)],
        ]),
      },
    ],
    notes: [
      "Read the litres from the mark on the store of fresh water. What ran over the edge took salt with it.",
    ],
    figures: each.flatMap(({ after, days }) => [after, days]),
  };
}

/** Litres as one would read them from a canister. */
const rounded = (litres: number): number => (litres < 2 ? Number(litres.toFixed(1)) : Math.round(litres));
