/** Alkalinity: German degrees of carbonate hardness, meq/L or mg/L as CaCO3. */
import { fromCanonical, isUnitOf, toCanonical, unitsOf } from "../../engine/units/convert.ts";
import { readMeasure } from "./measure.ts";
import type { Amount, Choice, Outcome } from "./outcome.ts";
import {
  type Candidate,
  type Judgement,
  type MeasureContext,
  type MeasureRule,
  spellingsOf,
} from "./rule.ts";
import { figure } from "./show.ts";

const MOST_DKH = 40;
const PPM = "mg/L as CaCO3";
/** Reef water; a rival reading must fall here to be offered. */
const LIKELY_DKH = { min: 6, max: 13 };

const dkh = (meq: number): number => fromCanonical("alkalinity", meq, "dKH");
const meq = (value: number, unit: string): number =>
  isUnitOf("alkalinity", unit) ? toCanonical("alkalinity", value, unit) : Number.NaN;

const rule: MeasureRule<MeasureContext> = {
  label: "Alkalinity",
  unit: "meq/L",
  example: "8",
  spellings: spellingsOf(unitsOf("alkalinity"), {
    dKH: ["dkh", "kh", "degrees kh", "dh"],
    "meq/L": ["meq", "meq/l", "mmol/l", "mval/l"],
    [PPM]: ["ppm", "mg/l", "ppm caco3", "mg/l caco3"],
  }),
  toCanonical: meq,
  plain: ["dKH", "meq/L"],
  offered: ["dKH", "meq/L"],
  hard: { min: 0, max: meq(MOST_DKH, "dKH") },
  refuseUnit: (unit) =>
    unit === "dgh" || unit === "gh" ? "dGH is general hardness; enter carbonate hardness (dKH)." : null,
  whichUnit: (list) =>
    `${list.map((c) => (c.unit === "dKH" ? `${figure(c.low)} dKH` : `${figure(c.low)} ${c.unit} (${figure(dkh(c.middle))} dKH)`)).join(" or ")}?`,
  rescue: ({ low, unit }) =>
    unit === "dKH" ? otherUnit(low, PPM, `${figure(low)} dKH is beyond any tank.`) : null,
  judge: judgeAlkalinity,
};

/** The same figure in another unit, when that makes seawater of it. */
function otherUnit(value: number, unit: string, why: string): Judgement | null {
  const degrees = dkh(meq(value, unit));
  if (degrees < LIKELY_DKH.min || degrees > LIKELY_DKH.max) return null;
  const named = unit === PPM ? "ppm as CaCO3" : unit;
  const label =
    unit === "dKH" ? `${figure(value)} dKH` : `${figure(value)} ${named} (${figure(degrees)} dKH)`;
  const choices: Choice[] = [{ label, text: `${value} ${unit}` }];
  return { verdict: "ask", kind: "UNIT", text: `${why} Read as ${label}?`, choices };
}

function judgeAlkalinity({ low, middle, unit, form }: Candidate): Judgement | null {
  const degrees = dkh(middle);
  if (degrees >= LIKELY_DKH.min && degrees <= LIKELY_DKH.max) return null;
  if (form === "exact" && (unit === "dKH" || unit === "meq/L")) {
    const high = degrees > 13;
    const size = high
      ? `${figure(low)} ${unit} is ${figure(degrees)} dKH.`
      : `${figure(low)} ${unit} is very low.`;
    const doubt = otherUnit(low, unit === "dKH" ? "meq/L" : "dKH", size);
    if (doubt !== null) {
      const asTyped = { label: `${figure(low)} ${unit}, as typed`, text: `${low} ${unit} (checked)` };
      return { ...doubt, choices: [...(doubt.choices ?? []), asTyped] };
    }
  }
  const text = `${figure(degrees)} dKH is kept but not counted until a second reading agrees`;
  return { verdict: "flag", kind: "UNUSUAL", text };
}

export function readAlkalinity(text: string, context: MeasureContext): Outcome<Amount> {
  return readMeasure(text, rule, context);
}
