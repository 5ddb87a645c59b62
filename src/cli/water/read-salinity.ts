/**
 * How salty the water is, from whichever instrument was read. The contract's readers know instruments that correct
 * for temperature; a floating hydrometer and a raw conductivity are turned into those here.
 */
import type { Amount, Outcome } from "../../contract/quantity/outcome.ts";
import { readSalinity } from "../../contract/quantity/salinity.ts";
import { shown } from "../../contract/quantity/show.ts";
import { conductivityOf, salinityFromConductivity } from "../../engine/seawater/conductivity.ts";
import {
  GRAVITY_SCALES,
  gravityOf,
  salinityFromFloatingGravity,
} from "../../engine/seawater/specific-gravity.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { celsius, practicalSalinity } from "../../engine/units/quantity.ts";
import { CliError, EXIT } from "../io.ts";
import { amountOf, as, missing, type Reading, type Take, usage, type WaterFlags } from "./reading.ts";

/** Exactly one of three flags says how salty the water is. */
export function salinityOf(flags: WaterFlags, temperature: Spread, take: Take): Reading {
  const { salinity, specificGravity, conductivity, sgReference } = flags;
  const all = [salinity, specificGravity, conductivity].filter((text) => text !== undefined);
  if (all.length > 1) {
    throw usage(
      "--salinity, --specific-gravity and --conductivity say the same thing: give the one that was read.",
    );
  }
  for (const [flag, given, wants, met] of [
    ["--hydrometer", flags.hydrometer, "--specific-gravity", specificGravity],
    ["--conductivity-at", flags.conductivityAt, "--conductivity", conductivity],
    ["--sg-reference", sgReference, "--specific-gravity", specificGravity ?? salinity],
  ] as const) {
    if (given !== undefined && met === undefined)
      throw usage(`${flag} says how ${wants} was read: give that too.`);
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
    return correct(
      {
        field,
        text: specificGravity,
        outcome: onScale,
        isOwn: (unit) => unit === scale || /^(s\.?\s?g\.?|specific gravity)$/i.test(unit),
      },
      take,
      (psu) =>
        salinityFromFloatingGravity(gravityOf(practicalSalinity(psu), on), celsius(temperature.central), on),
    );
  }
  if (conductivity !== undefined) {
    const field = "--conductivity";
    const at25 = readSalinity(conductivity, as(field, "mS/cm"));
    if (flags.conductivityAt !== "sample") return take(field, conductivity, at25);
    return correct(
      { field, text: conductivity, outcome: at25, isOwn: (unit) => /^[mu\u00b5\u03bc]?s/i.test(unit) },
      take,
      (psu) =>
        salinityFromConductivity(
          conductivityOf(celsius(25), practicalSalinity(psu)),
          celsius(temperature.central),
        ),
    );
  }
  throw missing("how salty the water is", "--salinity 35, --specific-gravity 1.025 or --conductivity 53");
}

interface Uncorrected {
  readonly field: string;
  readonly text: string;
  readonly outcome: Outcome<Amount>;
  /** Whether a unit is the instrument's own: a salinity typed there was not read off it. */
  readonly isOwn: (unit: string) => boolean;
}

/**
 * A reading of an instrument that does not correct for temperature: the readers know corrected ones only, so
 * what they took it for is turned into what it is, and judged again as that.
 */
function correct(reading: Uncorrected, take: Take, mend: (psu: number) => number): Reading {
  const { field, text, outcome } = reading;
  const { low, central, high } = amountOf(field, outcome);
  if (!reading.isOwn(outcome.original.unit ?? "")) {
    throw new CliError(EXIT.badData, [
      `${field} "${shown(text)}": give the figure the instrument shows, or the salinity with --salinity.`,
    ]);
  }
  const salinity = `${mend(central).toFixed(2)} psu`;
  const { unit } = take("--salinity", salinity, readSalinity(salinity, as("--salinity", "psu")));
  return { field, text, low: mend(low), central: mend(central), high: mend(high), unit };
}
