/** Quantities that have a trend: the name a keeper's reading has, the unit it is told in, and from the engine's to that. */
import { MEASURES } from "../../contract/daybook/read-reading.ts";
import { MEASURED, type Measured } from "../../contract/daybook/reading.ts";
import type { ShownIn } from "../../contract/tank-file/shown-in.ts";
import { AS_KEPT, type Scale } from "../../engine/trends/series.ts";
import type { Reading } from "../../engine/types/tank.ts";
import { fromCanonical } from "../../engine/units/convert.ts";
import { nToNitrate, nToNitrite, pToPhosphate } from "../../engine/units/nutrients.ts";

export interface TrendQuantity {
  readonly id: Measured;
  readonly reading: Reading["quantity"];
  readonly label: string;
  /** In a sentence after a number; empty where there is none. */
  readonly unit: string;
  /** From the record's unit to the one told. */
  readonly scale: Scale;
  /** From the unit that the quantity's name ends in, which limits are given in, to the one told. */
  readonly fromNamed: Scale;
}

const by = (factor: number): Scale => ({ factor, offset: 0 });
const AS_FAHRENHEIT: Scale = { factor: 1.8, offset: 32 };

const READING_OF: Readonly<Record<Measured, Reading["quantity"]>> = {
  salinity_psu: "salinity_psu",
  temperature_c: "temperature_c",
  ph: "ph",
  alkalinity_dkh: "alkalinity_meq_per_l",
  no3_mg_per_l: "no3_mg_n_per_l",
  po4_mg_per_l: "po4_mg_p_per_l",
  tan_mg_n_per_l: "tan_mg_n_per_l",
  no2_mg_per_l: "no2_mg_n_per_l",
  calcium_mg_per_l: "calcium_mg_per_l",
  magnesium_mg_per_l: "magnesium_mg_per_l",
};

type Told = Pick<TrendQuantity, "unit" | "scale" | "fromNamed">;

/** @param shown the keeper's units; salinity is told in psu whatever it is read in, as a specific gravity has no slope */
export function trendQuantities(shown: ShownIn | null): readonly TrendQuantity[] {
  const meq = fromCanonical("alkalinity", 1, "dKH");
  const alkalinity = shown?.alkalinity ?? "dKH";
  const perMeq = fromCanonical("alkalinity", 1, alkalinity);
  const plain = (unit: string): Told => ({ unit, scale: AS_KEPT, fromNamed: AS_KEPT });
  const told: Readonly<Record<Measured, Told>> = {
    salinity_psu: plain("psu"),
    temperature_c:
      shown?.temperature === "F"
        ? { unit: "°F", scale: AS_FAHRENHEIT, fromNamed: AS_FAHRENHEIT }
        : plain("°C"),
    ph: plain(""),
    alkalinity_dkh: {
      unit: alkalinity === "mg/L as CaCO3" ? "ppm as CaCO3" : alkalinity,
      scale: by(perMeq),
      fromNamed: by(perMeq / meq),
    },
    no3_mg_per_l:
      shown?.nitrate === "NO3-N"
        ? { unit: "mg N/L", scale: AS_KEPT, fromNamed: by(1 / nToNitrate(1)) }
        : { unit: "mg/L", scale: by(nToNitrate(1)), fromNamed: AS_KEPT },
    po4_mg_per_l:
      shown?.phosphate === "PO4-P"
        ? { unit: "mg P/L", scale: AS_KEPT, fromNamed: by(1 / pToPhosphate(1)) }
        : { unit: "mg/L", scale: by(pToPhosphate(1)), fromNamed: AS_KEPT },
    tan_mg_n_per_l: plain("mg N/L"),
    no2_mg_per_l: { unit: "mg/L", scale: by(nToNitrite(1)), fromNamed: AS_KEPT },
    calcium_mg_per_l: plain("mg/L"),
    magnesium_mg_per_l: plain("mg/L"),
  };
  return MEASURED.map((id) => ({ id, reading: READING_OF[id], label: MEASURES[id].label, ...told[id] }));
}
