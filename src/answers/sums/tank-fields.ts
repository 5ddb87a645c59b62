/** Fields that many sums ask for, each filled from what the tank knows: its latest test first, then its facts. */
import { readPh } from "../../contract/quantity/ph.ts";
import { readSalinity } from "../../contract/quantity/salinity.ts";
import { readTemperature } from "../../contract/quantity/temperature.ts";
import { readVolume } from "../../contract/quantity/volume.ts";
import type { Estimate } from "../../engine/types/estimate.ts";
import { round3 } from "../../engine/types/link.ts";
import type { Reading } from "../../engine/types/tank.ts";
import { dateWords } from "../words.ts";
import type { AmountField, FromTank, SumTank } from "./sum.ts";

/** A test older than this says little of the water today; common practice, no source. */
const FRESH_DAYS = 30;
const DAY_MS = 86_400_000;

/** The latest test of a quantity that is not too old and not censored, in its canonical unit. */
export function latestOf(quantity: Reading["quantity"], unit: string) {
  return ({ record, today }: SumTank): FromTank | null => {
    const seen = record.observations.filter(
      (one) =>
        one.kind === "reading" &&
        one.quantity === quantity &&
        one.censored === null &&
        Date.parse(today) - Date.parse(one.on) <= FRESH_DAYS * DAY_MS,
    );
    const last = seen.at(-1);
    if (last?.kind !== "reading") return null;
    const text = `${round3(last.value.central)}${unit === "" ? "" : ` ${unit}`}`;
    return { text, how: `tested on ${dateWords(last.on)}` };
  };
}

/** A fact of the tank that somebody stated or that follows from what was stated; an assumed one is not put in a field. */
export const factOf = (
  fact: (tank: SumTank) => Estimate,
  unit: string,
): ((tank: SumTank) => FromTank | null) => {
  return (tank) => {
    const { central, origin, how } = fact(tank);
    return origin === "assumed" ? null : { text: `${round3(central)} ${unit}`, how };
  };
};

const or =
  (...ways: readonly ((tank: SumTank) => FromTank | null)[]) =>
  (tank: SumTank): FromTank | null => {
    for (const way of ways) {
      const found = way(tank);
      if (found !== null) return found;
    }
    return null;
  };

export const WATER: AmountField = {
  ...{ name: "water", label: "Water in the tank", hint: "Water only: display and sump less rock and sand." },
  ...{ input: "amount", empty: "needed", read: readVolume, example: "100 L" },
  units: ["L", "US gal", "imp gal"],
  fromTank: factOf(({ facts }) => facts.waterL, "L"),
};

export const SALINITY: AmountField = {
  ...{ name: "salinity", label: "Salinity", input: "amount", empty: "needed" },
  hint: "psu, specific gravity or conductivity; say the scale if the instrument prints one.",
  ...{ read: readSalinity, example: "35 psu", units: ["psu", "sg 25/25", "sg 20/20", "mS/cm"] },
  fromTank: or(
    latestOf("salinity_psu", "psu"),
    factOf(({ facts }) => facts.salinityPsu, "psu"),
  ),
};

export const TEMPERATURE: AmountField = {
  ...{ name: "temperature", label: "Temperature of the water", hint: "", input: "amount", empty: "needed" },
  ...{ read: readTemperature, example: "25 C", units: ["C", "F"] },
  fromTank: or(
    latestOf("temperature_c", "C"),
    factOf(({ facts }) => facts.temperatureC, "C"),
  ),
};

export const PH: AmountField = {
  ...{ name: "ph", label: "pH", hint: "As read.", input: "amount", empty: "needed" },
  ...{ read: readPh, example: "8.2", units: [] },
  fromTank: latestOf("ph", ""),
};
