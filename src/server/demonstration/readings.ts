/**
 * Two months of readings for an invented tank, every third or fourth day: nitrate that creeps up after heavier feeding,
 * phosphate with it, the rest about steady. Given as they would be typed, so that they go through the one reader.
 */
import type { ReadingText } from "../../contract/daybook/read-reading.ts";
import { before } from "./tanks.ts";

const DAYS = 61;
const EVERY_DAYS = [3, 4];

type Invented = readonly [quantity: string, unit: string, step: string, text: (day: number) => string];

/** A small wave, so that no two readings are the same without a draw. */
const wave = (day: number, length: number, height: number): number =>
  height * Math.sin((2 * Math.PI * day) / length);
const rounded = (value: number, step: number): string => {
  const digits = Math.max(0, -Math.floor(Math.log10(step)));
  return (Math.round(value / step) * step).toFixed(digits);
};

const INVENTED: readonly Invented[] = [
  ["no3_mg_per_l", "mg/L as NO3", "2", (day) => rounded(6 + day / 8 + wave(day, 17, 1.5), 2)],
  ["po4_mg_per_l", "mg/L as PO4", "0.02", (day) => rounded(0.05 + day / 900 + wave(day, 13, 0.015), 0.02)],
  ["alkalinity_dkh", "dKH", "0.3", (day) => rounded(8.3 - day / 120 + wave(day, 11, 0.3), 0.1)],
  ["salinity_psu", "psu", "", (day) => rounded(35 + wave(day, 23, 0.4), 0.1)],
  ["temperature_c", "C", "", (day) => rounded(25.4 + wave(day, 19, 0.5), 0.1)],
];

/** Oldest first. */
export function inventedReadings(today: string): readonly ReadingText[] {
  const readings: ReadingText[] = [];
  for (let day = 0, turn = 0; day < DAYS; day += EVERY_DAYS[turn % 2] ?? 3, turn += 1) {
    for (const [quantity, unit, kit_step, text] of INVENTED) {
      readings.push({ quantity, text: text(day), unit, kit_step, observed: before(today, DAYS - 1 - day) });
    }
  }
  return readings;
}
