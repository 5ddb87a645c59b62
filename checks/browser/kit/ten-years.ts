/**
 * An invented tank with ten years of daily readings of all ten quantities, 36,500 entries: what a page must bear. Every
 * few hundred days one is dangerous or a slip of the pen.
 */

import { readReading } from "../../../src/contract/daybook/read-reading.ts";
import type { Measured } from "../../../src/contract/daybook/reading.ts";
import { addDays } from "../../../src/contract/quantity/calendar.ts";
import { NO_PREFERENCES } from "../../../src/contract/quantity/preferences.ts";
import { openStore } from "../../../src/store/open.ts";
import type { NewEntry } from "../../../src/store/store.ts";
import { TODAY } from "./cast.ts";

export const TEN_YEARS = { days: 3650, tank: "00000000-0000-4000-8000-0000000000aa" } as const;
/** A day whose temperature was dangerous, before today. */
export const HOT_DAYS_AGO = 1000;

type Usual = readonly [quantity: Measured, unit: string, step: number, level: number, swing: number];
const USUAL: readonly Usual[] = [
  ["salinity_psu", "psu", 0.1, 35, 0.5],
  ["temperature_c", "C", 0.1, 25.4, 0.6],
  ["ph", "", 0.1, 8.1, 0.1],
  ["alkalinity_dkh", "dKH", 0.1, 8.2, 0.5],
  ["no3_mg_per_l", "mg/L as NO3", 1, 12, 4],
  ["po4_mg_per_l", "mg/L as PO4", 0.01, 0.07, 0.03],
  ["tan_mg_n_per_l", "mg/L as N", 0.02, 0.02, 0.02],
  ["no2_mg_per_l", "mg/L as NO2", 0.02, 0.02, 0.02],
  ["calcium_mg_per_l", "mg/L", 5, 420, 15],
  ["magnesium_mg_per_l", "mg/L", 10, 1320, 40],
];

const STAMP = { at: `${TODAY}T09:00:00.000Z`, by: "checks" };
const ROWS_AT_ONCE = 2000;

export async function makeTenYears(place: string): Promise<typeof TEN_YEARS> {
  const store = await openStore(place);
  try {
    const { id: keeperId } = await store.keeperNamed("Nell", "keeper-ten-years", STAMP);
    const facts = { grazewell_tank: 1, name: "Ten years", water_l: "300 L", first_seawater_on: "2016-01-01" };
    await store.addTank({ id: TEN_YEARS.tank, keeperId, demonstration: false, facts }, STAMP);
    const entries = USUAL.flatMap((usual) => readingsOf(usual));
    for (let from = 0; from < entries.length; from += ROWS_AT_ONCE)
      await store.addEntries(TEN_YEARS.tank, entries.slice(from, from + ROWS_AT_ONCE), STAMP);
  } finally {
    await store.close();
  }
  return TEN_YEARS;
}

function readingsOf([quantity, unit, step, level, swing]: Usual): NewEntry[] {
  // Each distinct text is read once: reading is the slow part of making them.
  const read = new Map<string, ReturnType<typeof bodyOf>>();
  return Array.from({ length: TEN_YEARS.days }, (_, ago) => {
    const scatter = (((ago * 7919) % 101) / 100 - 0.5) * swing;
    const hot = quantity === "temperature_c" && ago === HOT_DAYS_AGO;
    const value = hot ? 31.5 : Math.max(0, level + swing * Math.sin(ago / 40) + scatter);
    const text = `${(Math.round(value / step) * step).toFixed(2)}`;
    const body = read.get(text) ?? bodyOf(quantity, text, unit, String(step));
    read.set(text, body);
    const on = addDays(TODAY, -ago);
    return { id: `${quantity}-${ago}`, kind: "reading", on, body: { ...body, observed_text: on } };
  });
}

function bodyOf(quantity: Measured, text: string, unit: string, kit_step: string) {
  const context = {
    ...{ preferences: NO_PREFERENCES, today: TODAY, now: null, zone: null, stocked: true, notBefore: null },
  };
  const reading = readReading({ quantity, text, unit, kit_step, observed: TODAY }, context);
  if (!reading.ok) throw new Error(`An invented reading can't be read: ${reading.doubts[0]?.message.text}`);
  return reading.body;
}
