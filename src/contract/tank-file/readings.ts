/** Readings of a tank file, each in the engine's unit with the doubt of its kit. */
import type { Reading } from "../../engine/types/tank.ts";
import { nitrateToN, nitriteToN, phosphateToP } from "../../engine/units/nutrients.ts";
import { readAlkalinity } from "../quantity/alkalinity.ts";
import { readAmmonia } from "../quantity/ammonia.ts";
import { readInstant } from "../quantity/instant.ts";
import { readCalcium, readMagnesium } from "../quantity/minerals.ts";
import { readNitrate, readNitrite, readPhosphate } from "../quantity/nutrients.ts";
import { type Amount, isKept, type Outcome } from "../quantity/outcome.ts";
import { readPh } from "../quantity/ph.ts";
import type { MeasureContext } from "../quantity/rule.ts";
import { readSalinity } from "../quantity/salinity.ts";
import { readTemperature } from "../quantity/temperature.ts";
import { NITRATE_SHARE_DOUBT, READING_DOUBT } from "./assumptions.ts";
import { scaled, withDoubt } from "./bands.ts";
import type { Entries } from "./entries.ts";
import type { MeasuredKey, TankFile } from "./schema.ts";

interface Rule {
  readonly quantity: Reading["quantity"];
  readonly read: (text: string, context: MeasureContext) => Outcome<Amount>;
  /** Unit the name stands for. */
  readonly unit: string | null;
  /** From the reader's canonical unit to the engine's. */
  readonly factor: number;
}

function rules(stocked: boolean): Readonly<Record<MeasuredKey, Rule>> {
  return {
    tan_mg_n_per_l: {
      quantity: "tan_mg_n_per_l",
      read: (t, c) => readAmmonia(t, { ...c, form: "total", stocked }),
      unit: "mg/L as N",
      factor: 1,
    },
    no2_mg_per_l: {
      quantity: "no2_mg_n_per_l",
      read: readNitrite,
      unit: "mg/L as NO2",
      factor: nitriteToN(1),
    },
    no3_mg_per_l: {
      quantity: "no3_mg_n_per_l",
      read: readNitrate,
      unit: "mg/L as NO3",
      factor: nitrateToN(1),
    },
    po4_mg_per_l: {
      quantity: "po4_mg_p_per_l",
      read: readPhosphate,
      unit: "mg/L as PO4",
      factor: phosphateToP(1),
    },
    salinity_psu: { quantity: "salinity_psu", read: readSalinity, unit: "psu", factor: 1 },
    temperature_c: { quantity: "temperature_c", read: readTemperature, unit: "C", factor: 1 },
    ph: { quantity: "ph", read: readPh, unit: null, factor: 1 },
    alkalinity_dkh: { quantity: "alkalinity_meq_per_l", read: readAlkalinity, unit: "dKH", factor: 1 },
    calcium_mg_per_l: { quantity: "calcium_mg_per_l", read: readCalcium, unit: "mg/L", factor: 1 },
    magnesium_mg_per_l: { quantity: "magnesium_mg_per_l", read: readMagnesium, unit: "mg/L", factor: 1 },
  };
}

export function readReadings(
  file: TankFile,
  entries: Entries,
  stocked: boolean,
  firstSeawaterOn: string | undefined,
): Reading[] {
  const table = rules(stocked);
  return (file.readings ?? []).flatMap((entry, i) => {
    const on = entries.read(["readings", i, "on"], entry.on, (text, context) =>
      readInstant(text, {
        ...context,
        today: entries.context.today,
        future: "refuse",
        now: null,
        zone: null,
        notBefore: firstSeawaterOn ?? null,
      }),
    );
    return (Object.keys(table) as MeasuredKey[]).flatMap((key): Reading[] => {
      const rule = table[key];
      const step = entries.read(
        ["readings", i, "kit_steps", key],
        entry.kit_steps?.[key],
        (text, context) => {
          const checked = `${text}${/\(checked\)/.test(text) ? "" : " (checked)"}`;
          const outcome = rule.read(checked, { ...context, unit: rule.unit });
          // A step is no reading: that it would be an unusual one says nothing.
          return isKept(outcome) ? { ...outcome, message: null } : outcome;
        },
      );
      const kitStep = step === undefined ? null : Number(entry.kit_steps?.[key]);
      const amount = entries.read(["readings", i, key], entry[key], (text, context) =>
        rule.read(text, {
          ...context,
          unit: rule.unit,
          kitStep: kitStep !== null && Number.isFinite(kitStep) ? kitStep : null,
        }),
      );
      return amount === undefined ? [] : [readingOf(rule, amount, kitStep, on?.day ?? null)];
    });
  });
}

function readingOf(
  { quantity, factor }: Rule,
  amount: Amount,
  kitStep: number | null,
  on: string | null,
): Reading {
  const value = scaled(amount, factor);
  if (amount.censored !== null) return { quantity, value, censored: amount.censored, on };
  const share = quantity === "no3_mg_n_per_l" ? NITRATE_SHARE_DOUBT * value.central : 0;
  const halfStep = kitStep === null || !Number.isFinite(kitStep) ? 0 : (kitStep * factor) / 2;
  const doubtful = withDoubt(value, Math.max(READING_DOUBT[quantity], share, halfStep));
  return { quantity, value: { ...doubtful, low: Math.max(0, doubtful.low) }, censored: null, on };
}
