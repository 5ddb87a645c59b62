/** Calcium and magnesium, in mg/L of the element by volume (what keepers call ppm). */
import { isUnitOf, toCanonical, unitsOf } from "../../engine/units/convert.ts";
import { readMeasure } from "./measure.ts";
import type { Amount, Outcome } from "./outcome.ts";
import {
  type Candidate,
  type Judgement,
  type MeasureContext,
  type MeasureRule,
  spellingsOf,
} from "./rule.ts";
import { figure } from "./show.ts";

interface Mineral {
  readonly key: "calcium" | "magnesium";
  readonly label: string;
  readonly element: string;
  readonly max: number;
  readonly soft: readonly [number, number];
}

function ruleFor({ key, label, element, max, soft }: Mineral): MeasureRule<MeasureContext> {
  return {
    label,
    unit: "mg/L",
    example: String(soft[0] + 20),
    spellings: spellingsOf(unitsOf(key), {
      "mg/L": ["mg/l", `mg/l ${element}`],
      ppm: ["ppm", `ppm ${element}`],
      "mg/L as CaCO3": ["mg/l caco3", "ppm caco3"],
    }),
    toCanonical: (value, unit) => {
      if (unit === "ppm") return value;
      return isUnitOf(key, unit) ? toCanonical(key, value, unit) : Number.NaN;
    },
    plain: ["mg/L"],
    offered: ["mg/L"],
    hard: { min: 0, max },
    judge: (candidate) => judge(candidate, soft),
  };
}

function judge({ middle }: Candidate, [least, most]: readonly [number, number]): Judgement | null {
  if (middle >= least && middle <= most) return null;
  const tenfold = [10 * middle, middle / 10].find((value) => value >= least && value <= most);
  const guess = tenfold === undefined ? "" : ` Did you mean ${figure(tenfold)}?`;
  const text = `${figure(middle)} mg/L is left out until confirmed; reef water has ${least} to ${most}.${guess}`;
  const choices =
    tenfold === undefined ? [] : [{ label: `${figure(tenfold)} mg/L`, text: `${figure(tenfold)} mg/L` }];
  return { verdict: "flag", kind: "UNUSUAL", text, choices };
}

const CALCIUM = ruleFor({ key: "calcium", label: "Calcium", element: "ca", max: 2000, soft: [350, 500] });
const MAGNESIUM = ruleFor({
  key: "magnesium",
  label: "Magnesium",
  element: "mg",
  max: 5000,
  soft: [1100, 1500],
});

export const readCalcium = (text: string, context: MeasureContext): Outcome<Amount> =>
  readMeasure(text, CALCIUM, context);
export const readMagnesium = (text: string, context: MeasureContext): Outcome<Amount> =>
  readMeasure(text, MAGNESIUM, context);
