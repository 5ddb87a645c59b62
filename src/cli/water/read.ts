/**
 * From the flags of `grazewell water` to readings with their spread, through the contract's readers: the same
 * text means the same here as in a tank file. What a tank file would ask about is refused here, with the choices.
 */

import { readAmmonia } from "../../contract/quantity/ammonia.ts";
import { type MeasureContext, readMeasure } from "../../contract/quantity/measure.ts";
import { type Amount, isKept, type Outcome } from "../../contract/quantity/outcome.ts";
import { readPh } from "../../contract/quantity/ph.ts";
import { convertible } from "../../contract/quantity/plain.ts";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import { readSalinity } from "../../contract/quantity/salinity.ts";
import { readTemperature } from "../../contract/quantity/temperature.ts";
import { conductivityOf, salinityFromConductivity } from "../../engine/seawater/conductivity.ts";
import type { PhScale } from "../../engine/seawater/ph-scale.ts";
import {
  GRAVITY_SCALES,
  type GravityScaleName,
  gravityOf,
  salinityFromFloatingGravity,
} from "../../engine/seawater/specific-gravity.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { celsius, practicalSalinity } from "../../engine/units/quantity.ts";
import { CliError, EXIT } from "../io.ts";

export interface WaterFlags {
  readonly salinity?: string;
  readonly specificGravity?: string;
  readonly sgReference?: GravityScaleName;
  readonly hydrometer?: true;
  readonly conductivity?: string;
  readonly conductivityAt: "25" | "sample";
  readonly temperature?: string;
  readonly ph?: string;
  readonly phScale?: PhScale;
  readonly tan?: string;
  readonly altitude?: string;
}

interface Reading extends Spread {
  readonly field: string;
  readonly text: string;
  readonly unit: string;
}

export interface WaterReadings {
  readonly salinity: Reading;
  readonly temperature: Reading;
  readonly ph: Reading | null;
  readonly phScale: PhScale;
  /** False where the scale was taken for granted. */
  readonly phScaleStated: boolean;
  readonly tan: Reading | null;
  readonly altitude: Reading | null;
  /** What the readers said about how they read it. */
  readonly notes: readonly string[];
}

const ALTITUDE = convertible({
  ...{ label: "--altitude", quantity: "length", unit: "m", example: "250" },
  hard: { min: -430, max: 5500 },
});

export function readWater(flags: WaterFlags): WaterReadings {
  const notes: string[] = [];
  const take = (field: string, text: string, outcome: Outcome<Amount>): Reading => {
    const { low, central, high, unit, message } = amountOf(field, outcome);
    if (message !== null) notes.push(message);
    return { field, text, low, central, high, unit };
  };
  const given = <T>(text: string | undefined, read: (text: string) => T): T | null =>
    text === undefined ? null : read(text);

  if (flags.temperature === undefined) throw missing("how warm the water is", "--temperature 25, or 77F");
  const t = flags.temperature;
  const temperature = take("--temperature", t, readTemperature(t, as("--temperature", "C")));
  const salinity = salinityOf(flags, temperature, take);
  return {
    salinity,
    temperature,
    ph: given(flags.ph, (text) => take("--ph", text, readPh(text, as("--ph", "")))),
    phScale: flags.phScale ?? "nbs",
    phScaleStated: flags.phScale !== undefined,
    tan: given(flags.tan, (text) => {
      const context = { ...as("--tan", null), form: "total", stocked: false } as const;
      return take("--tan", text, readAmmonia(text, context));
    }),
    altitude: given(flags.altitude, (text) =>
      take("--altitude", text, readMeasure(text, ALTITUDE, as("--altitude", "m"))),
    ),
    notes,
  };
}

type Take = (field: string, text: string, outcome: Outcome<Amount>) => Reading;

/** Exactly one of three flags says how salty the water is. */
function salinityOf(flags: WaterFlags, temperature: Spread, take: Take): Reading {
  const { salinity, specificGravity, conductivity, sgReference } = flags;
  const all = [salinity, specificGravity, conductivity].filter((text) => text !== undefined);
  if (all.length > 1) {
    throw new CliError(EXIT.usage, [
      "--salinity, --specific-gravity and --conductivity say the same thing: give the one that was read.",
    ]);
  }
  const scale = sgReference === undefined ? "sg" : `sg ${sgReference}`;
  if (salinity !== undefined) {
    const unit = sgReference === undefined ? "psu" : scale;
    return take("--salinity", salinity, readSalinity(salinity, as("--salinity", unit)));
  }
  if (specificGravity !== undefined) {
    const field = "--specific-gravity";
    const onScale = readSalinity(specificGravity, as(field, scale));
    if (flags.hydrometer !== true) return take(field, specificGravity, onScale);
    if (sgReference === undefined) throw missing("what is printed on the stem", "--sg-reference 60F/60F");
    const on = GRAVITY_SCALES[sgReference];
    return correct(field, specificGravity, onScale, take, (psu) =>
      salinityFromFloatingGravity(gravityOf(practicalSalinity(psu), on), celsius(temperature.central), on),
    );
  }
  if (conductivity !== undefined) {
    const field = "--conductivity";
    const at25 = readSalinity(conductivity, as(field, "mS/cm"));
    if (flags.conductivityAt === "25") return take(field, conductivity, at25);
    return correct(field, conductivity, at25, take, (psu) =>
      salinityFromConductivity(
        conductivityOf(celsius(25), practicalSalinity(psu)),
        celsius(temperature.central),
      ),
    );
  }
  throw missing("how salty the water is", "--salinity 35, --specific-gravity 1.025 or --conductivity 53");
}

/**
 * A reading of an instrument that does not correct for temperature: the readers know corrected ones only, so
 * what they took it for is turned into what it is, and judged again as that.
 */
function correct(
  field: string,
  text: string,
  outcome: Outcome<Amount>,
  take: Take,
  mend: (psu: number) => number,
): Reading {
  const { low, central, high } = amountOf(field, outcome);
  const judged = take(field, text, readSalinity(`${mend(central).toFixed(2)} psu`, as(field, "psu")));
  return { ...judged, low: mend(low), central: mend(central), high: mend(high) };
}

function amountOf(field: string, outcome: Outcome<Amount>): Amount & { readonly message: string | null } {
  if (isKept(outcome)) return { ...outcome.value, message: outcome.message?.text ?? null };
  const typed = outcome.choices.filter(({ text }) => text !== null);
  const width = Math.max(...typed.map(({ text }) => text?.length ?? 0));
  throw new CliError(EXIT.badData, [
    outcome.message.text,
    ...(typed.length > 0 ? ["Write it as it is meant:"] : []),
    ...typed.map(({ text, label }) => `  ${field} ${`"${text}"`.padEnd(width + 2)}   ${label}`),
  ]);
}

const as = (label: string, unit: string | null): MeasureContext => ({
  preferences: NO_PREFERENCES,
  label,
  unit,
});

const missing = (what: string, example: string): CliError =>
  new CliError(EXIT.usage, [
    `Say ${what}, for example ${example}.`,
    "grazewell water --help shows examples.",
  ]);
