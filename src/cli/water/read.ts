/**
 * From the flags of `grazewell water` to readings with their spread, through the contract's readers: the same
 * text means the same here as in a tank file. What a tank file would ask about is refused here, with the choices.
 */
import { readAmmonia } from "../../contract/quantity/ammonia.ts";
import { readMeasure } from "../../contract/quantity/measure.ts";
import type { Amount, Outcome } from "../../contract/quantity/outcome.ts";
import { readPh } from "../../contract/quantity/ph.ts";
import { convertible } from "../../contract/quantity/plain.ts";
import { readTemperature } from "../../contract/quantity/temperature.ts";
import type { PhScale } from "../../engine/seawater/ph-scale.ts";
import { salinityOf } from "./read-salinity.ts";
import { amountOf, as, missing, type Reading, type WaterFlags } from "./reading.ts";

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

const WHICH_SCALE =
  "The scale printed on the instrument decides what a specific gravity means: add --sg-reference, and --hydrometer " +
  "for a floating one, which can lie 3 psu from a refractometer.";

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
  if (flags.specificGravity !== undefined && flags.sgReference === undefined) notes.push(WHICH_SCALE);
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
