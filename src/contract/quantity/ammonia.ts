/** Total ammonia, in mg of nitrogen per litre. Free ammonia is another quantity, many times smaller. */
import { isUnitOf, toCanonical, unitsOf } from "../../engine/units/convert.ts";
import { readMeasure } from "./measure.ts";
import { type Amount, asked, isKept, type Outcome } from "./outcome.ts";
import { type MeasureContext, type MeasureRule, spellingsOf } from "./rule.ts";
import { figure, shown } from "./show.ts";

export interface AmmoniaContext extends MeasureContext {
  /** What the kit measures; null where nobody said. */
  readonly form: "total" | "free" | null;
  /** True once animals live in the tank. */
  readonly stocked: boolean;
}

const DANGER_FROM = 0.25;

const rule: MeasureRule<AmmoniaContext> = {
  label: "Ammonia",
  unit: "mg/L as N",
  example: "0.1",
  spellings: spellingsOf(unitsOf("tan"), {
    "mg/L as N": [
      "n",
      "mg/l n",
      "ppm n",
      "mg n/l",
      "nh3-n",
      "nh4-n",
      "tan",
      "mg/l tan",
      "mg/l total",
      "ppm total",
      "total",
    ],
    "mg/L as NH3": ["nh3", "mg/l nh3", "ppm nh3"],
    "mg/L as NH4": ["nh4", "mg/l nh4", "ppm nh4", "nh4+"],
    "umol/L": ["umol/l", "um"],
    "mg/L as N|mg/L as NH3|mg/L as NH4": ["mg/l", "ppm"],
  }),
  toCanonical: (value, unit) => (isUnitOf("tan", unit) ? toCanonical("tan", value, unit) : Number.NaN),
  plain: ["mg/L as N"],
  offered: ["mg/L as N", "mg/L as NH3", "mg/L as NH4"],
  hard: { min: 0, max: 50 },
  narrow: (units, { unit }) => (unit != null && units.includes(unit) ? [unit] : units),
  refuseUnit: (unit) =>
    unit.includes("free")
      ? "Free ammonia can't be turned into the total without that hour's pH and temperature; enter the total."
      : null,
  judge: ({ middle, form }, { stocked }) =>
    stocked && form !== "below" && middle >= DANGER_FROM
      ? {
          verdict: "flag",
          kind: "DANGER",
          text: `${figure(middle)} mg/L: act today. Stop feeding, change a quarter of the water, then test again`,
        }
      : null,
};

export function readAmmonia(text: string, context: AmmoniaContext): Outcome<Amount> {
  const outcome = readMeasure(text, rule, context);
  const says = /\b(?:total|tan)\b/i.test(text) ? "total" : context.form;
  if (says === "total" || !isKept(outcome)) return outcome;
  const label = context.label ?? rule.label;
  const total = { label: "total ammonia", text: `${text.trim()} total` };
  const free = { label: "free ammonia: enter the total instead", text: null };
  if (says === "free") {
    return asked(
      outcome.original,
      { kind: "UNIT", text: `${label} "${shown(text)}": ${rule.refuseUnit?.("free") ?? ""}` },
      [free],
    );
  }
  const words = "total ammonia or free ammonia? They differ many times over";
  return asked(outcome.original, { kind: "AMBIG", text: `${label} "${shown(text)}": ${words}` }, [
    total,
    free,
  ]);
}
