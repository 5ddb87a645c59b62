/**
 * Salinity as psu (ppt means the same here), specific gravity on its own scale, conductivity at 25 °C, or per cent.
 * A specific gravity without its scale is kept with a band that holds both common scales, and says so.
 */
import { salinityFromConductivity } from "../../engine/seawater/conductivity.ts";
import {
  GRAVITY_SCALES,
  type GravityScaleName,
  gravityOf,
  salinityFromGravity,
} from "../../engine/seawater/specific-gravity.ts";
import { isUnitOf, toCanonical } from "../../engine/units/convert.ts";
import {
  celsius,
  millisiemensPerCentimetre,
  practicalSalinity,
  specificGravity,
} from "../../engine/units/quantity.ts";
import { OutOfRange } from "../../engine/units/range.ts";
import { readMeasure } from "./measure.ts";
import type { Amount, Choice, Outcome } from "./outcome.ts";
import { type Candidate, type Judgement, type MeasureContext, type MeasureRule, spelled } from "./rule.ts";
import { figure } from "./show.ts";

const SCALES = Object.keys(GRAVITY_SCALES) as GravityScaleName[];
const UNKNOWN_SCALE = "sg";
/** Half the way between the two commonest scales near S 35, psu: 1.025 is 33.19 on one and 32.90 on the other. */
const SCALE_DOUBT = 0.15;
/** Saltiest water that a specific gravity is turned into: beyond it the density equation is not held to. */
const MOST_GRAVITY_PSU = 50;
const GRAVITY_WORDS = ["sg", "s.g.", "specific gravity", "s g"];

function toPracticalSalinity(value: number, unit: string): number {
  if (unit === "psu") return value;
  if (unit === "%") return 10 * value;
  try {
    if (unit === UNKNOWN_SCALE) return (gravity(value, "25/25") + gravity(value, "20/20")) / 2;
    const scale = SCALES.find((name) => unit === `sg ${name}`);
    if (scale !== undefined) return gravity(value, scale);
    if (!isUnitOf("conductivity", unit)) return Number.NaN;
    const conductivity = toCanonical("conductivity", value, unit);
    return salinityFromConductivity(millisiemensPerCentimetre(conductivity), celsius(25));
  } catch (error) {
    if (error instanceof OutOfRange) return Number.NaN;
    throw error;
  }
}

function gravity(value: number, scale: GravityScaleName): number {
  const withPoint = value >= 990 && value <= 1050 ? value / 1000 : value;
  return salinityFromGravity(specificGravity(withPoint), GRAVITY_SCALES[scale]);
}

const spellings: Record<string, readonly string[]> = {};
for (const word of ["psu", "ppt", "ppk", "g/kg", "pss", "pss-78", "psu/ppt", "‰", "permille"]) {
  spellings[spelled(word)] = ["psu"];
}
for (const word of ["%", "percent", "per cent", "pct"]) spellings[spelled(word)] = ["%"];
for (const word of ["mS/cm", "ms", "millisiemens"]) spellings[spelled(word)] = ["mS/cm"];
for (const word of ["uS/cm", "us"]) spellings[spelled(word)] = ["uS/cm"];
spellings[spelled("S/m")] = ["S/m"];
for (const word of GRAVITY_WORDS) {
  spellings[spelled(word)] = [UNKNOWN_SCALE];
  for (const scale of SCALES) spellings[spelled(`${word} ${scale}`)] = [`sg ${scale}`];
}
for (const scale of SCALES) spellings[spelled(scale)] = [`sg ${scale}`];

const rule: MeasureRule<MeasureContext> = {
  label: "Salinity",
  unit: "psu",
  example: "35",
  spellings,
  toCanonical: toPracticalSalinity,
  openBy: (unit) => (unit === UNKNOWN_SCALE ? SCALE_DOUBT : 0),
  plain: ["psu"],
  offered: ["psu", "mS/cm", "sg 25/25", "sg 20/20"],
  hard: { min: 0, max: 80 },
  // "1.025 sg" in a field with a scale chosen beside it means that scale.
  narrow: (units, { unit }) => (units[0] === UNKNOWN_SCALE && unit?.startsWith("sg") ? [unit] : units),
  refuseUnit: (unit) =>
    unit.startsWith("ppm")
      ? "A ppm scale of a meter can't be turned into salinity: its factor is not known."
      : null,
  rescue: rescueSalinity,
  judge: judgeSalinity,
};

const reading = (typed: string, psu: number): Choice => ({
  label: `${typed} (${figure(psu)} psu)`,
  text: typed,
});

function rescueSalinity({ low, unit }: Candidate): Judgement | null {
  if (!unit.startsWith("sg")) return null;
  if (low >= 5 && low <= 45) {
    const text = `a specific gravity is near 1.025. Read as ${figure(low)} psu?`;
    return {
      verdict: "ask",
      kind: "UNIT",
      text,
      choices: [{ label: `${figure(low)} psu`, text: `${low} psu` }],
    };
  }
  return {
    verdict: "refuse",
    kind: "RANGE",
    text: `a specific gravity must be 1.000 to 1.045, and give no more than ${MOST_GRAVITY_PSU} psu (about 1.037)`,
  };
}

function judgeSalinity({ low, middle, form, unit }: Candidate): Judgement | null {
  const asTyped: Choice = { label: `${figure(low)} ${unit}, as typed`, text: `${low} ${unit} (checked)` };
  if (unit === "psu" && form !== "range") {
    const doubt = doubtful(low);
    if (doubt !== null) return { ...doubt, verdict: "ask", choices: [...(doubt.choices ?? []), asTyped] };
  }
  if (middle < 30) {
    const text = `${figure(middle)} psu is low for reef animals. Measure again before acting; change slowly`;
    return { verdict: "flag", kind: "UNUSUAL", text };
  }
  if (middle > 37) {
    const text = `${figure(middle)} psu is high for reef animals. Measure again before acting; change slowly`;
    return { verdict: "flag", kind: "UNUSUAL", text };
  }
  return unit.startsWith("sg")
    ? { verdict: "convert", kind: "ECHO", text: echoGravity(low, middle, unit) }
    : null;
}

function doubtful(psu: number): Judgement | null {
  const ask = (kind: "UNIT" | "UNUSUAL", text: string, choices: readonly Choice[]): Judgement => ({
    verdict: "ask",
    kind,
    text,
    choices,
  });
  if (psu === 0) {
    return ask("UNUSUAL", "fresh water would kill this tank. Is this the top-up water?", [
      { label: "It is the top-up water", text: null },
    ]);
  }
  if (psu >= 1 && psu <= 1.045) {
    const onScales = (["25/25", "20/20"] as const).flatMap((scale) => {
      const salinity = toPracticalSalinity(psu, `sg ${scale}`);
      return Number.isNaN(salinity) ? [] : [reading(`${psu} sg ${scale}`, salinity)];
    });
    const gravityPsu = toPracticalSalinity(psu, "sg 25/25");
    const text = Number.isNaN(gravityPsu)
      ? `${psu} ppt is almost fresh water, and as a specific gravity at 25/25 C it is saltier than ${MOST_GRAVITY_PSU} psu. Measure again`
      : `${psu} ppt is almost fresh water. Read as specific gravity ${psu} (about ${figure(Math.round(gravityPsu * 10) / 10)} psu at 25/25 C)?`;
    return ask("UNIT", text, onScales);
  }
  if (psu >= 2.5 && psu <= 4.2) {
    const text = `${figure(psu)} psu is brackish. Is it per cent, ${figure(psu)} % (${figure(10 * psu)} psu)?`;
    return ask("UNIT", text, [reading(`${psu} %`, 10 * psu)]);
  }
  const conducted = toPracticalSalinity(psu, "mS/cm");
  if (psu > 42 && conducted >= 25 && conducted <= 42) {
    const text = `${figure(psu)} psu is beyond reef water. Is it a conductivity, ${figure(psu)} mS/cm (${figure(conducted)} psu)?`;
    return ask("UNIT", text, [reading(`${psu} mS/cm`, conducted)]);
  }
  return null;
}

function echoGravity(typed: number, psu: number, unit: string): string {
  const value = typed > 900 ? typed / 1000 : typed;
  if (unit === UNKNOWN_SCALE) {
    const both = `${figure(gravity(value, "25/25"))} at 25/25 C, ${figure(gravity(value, "20/20"))} at 20/20 C`;
    return `read as ${value}, ${figure(psu)} psu (${both}: the scale was not given)`;
  }
  const scale = SCALES.find((name) => unit.endsWith(name)) ?? "25/25";
  const at35 = gravityOf(practicalSalinity(35), GRAVITY_SCALES[scale]).toFixed(4);
  return `read as ${value} on the ${scale} scale, ${figure(psu)} psu (35 psu is ${at35})`;
}

export function readSalinity(text: string, context: MeasureContext): Outcome<Amount> {
  return readMeasure(text, rule, context);
}
