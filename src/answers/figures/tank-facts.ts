/**
 * Facts of a tank as figures: value, band, where it comes from and how it was read; the latest readings; heads that
 * the keeper counted. The last step of every chain that does not end at a parameter. docs/model/tank.md.
 */
import { animalById, supplyParameters } from "../../catalogue/index.ts";
import { ASSUMPTIONS } from "../../contract/tank-file/assumptions.ts";
import { FACT_LABELS, type FactLabel } from "../../contract/tank-file/labels.ts";
import { askFor } from "../../engine/stocking/unknowns.ts";
import type { Estimate, Origin } from "../../engine/types/estimate.ts";
import type { Confidence, Figure, WorkingInput } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { exact, parametersOf } from "../../engine/types/link.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { lowered } from "../words.ts";
import { headFigures, readingFigures } from "./tank-rows.ts";

export function tankFigures(facts: TankFacts): Figure[] {
  return [...factFigures(facts), ...readingFigures(facts), ...headFigures(facts, animalById)];
}

function factFigures(facts: TankFacts): Figure[] {
  const labels = Object.entries(FACT_LABELS) as [keyof TankFacts & keyof typeof FACT_LABELS, FactLabel][];
  return labels.flatMap(([field, label]): Figure[] => {
    const value = facts[field];
    if (typeof value === "number") return [numberFigure(field, value, label, facts)];
    return isEstimate(value) ? [factFigure(field, value, label, facts)] : [];
  });
}

/** A fact that the engine takes as it is, without a band. */
function numberFigure(field: keyof TankFacts, value: number, label: FactLabel, facts: TankFacts): Figure {
  const origin: Origin = facts.assumed.includes(field) ? "assumed" : "stated";
  return factFigure(field, { ...exact(value), origin, how: "taken without a band" }, label, facts);
}

function factFigure(
  field: keyof TankFacts,
  { low, central, high, origin, how }: Estimate,
  { label, unit, entry }: FactLabel,
  facts: TankFacts,
): Figure {
  const assumed = facts.assumed.includes(field) && field in ASSUMPTIONS;
  const { why } = ASSUMPTIONS[(assumed ? field : "ph") as keyof typeof ASSUMPTIONS];
  const inputs: WorkingInput[] = [
    { label: HOW[origin], value: how, origin },
    ...(assumed ? [{ label: "why this band", value: why, origin: "assumed" as const }] : []),
    { label: "entry of the tank file that tells it", value: entry, origin: "stated" },
  ];
  return {
    id: figureId.tank(field),
    label: lowered(label),
    spread: { low, central, high },
    unit: unit === "" ? "1" : unit,
    working: {
      formulaKey: "tank.md#facts",
      formula: FORMULA[origin],
      inputs,
      parameters: parametersOf(idsIn(assumed ? `${how} ${why}` : how), supplyParameters),
      animals: [],
      confidence: CONFIDENCE[origin],
      wouldChange: [askFor(field) ?? `tell it: ${entry}`, ...ONCE_MORE[origin]],
    },
  };
}

const HOW: Readonly<Record<Origin, string>> = {
  stated: "how it was read",
  derived: "how it was worked out",
  assumed: "why it was assumed",
};
const FORMULA: Readonly<Record<Origin, string>> = {
  stated: "as you said it, in one unit, with the doubt of what it was read with",
  derived: "worked out from other facts that you told",
  assumed: "nobody said: what such tanks usually have, with a band that is wide enough to be honest",
};
const CONFIDENCE: Readonly<Record<Origin, Confidence>> = {
  stated: "measured",
  derived: "computed",
  assumed: "judgement",
};
const ONCE_MORE: Readonly<Record<Origin, readonly string[]>> = {
  stated: [],
  derived: ["telling it instead of what it was worked out from"],
  assumed: [],
};

/** Ids of the supply table that a text names, as the reader's words do. */
const idsIn = (text: string): string[] =>
  (text.match(/\b[a-z]{3,4}(?:\.\w+)+/g) ?? []).filter((id) => supplyParameters.has(id));

function isEstimate(value: unknown): value is Estimate {
  return typeof value === "object" && value !== null && "central" in value && "how" in value;
}
