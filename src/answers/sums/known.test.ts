/** A device that is given what is known fills every field as the whole daybook does. */
import { expect, test } from "vitest";
import { findAnimal } from "../../catalogue/index.ts";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import { readTankFile } from "../../contract/tank-file/read.ts";
import type { TankRecord } from "../../engine/types/record.ts";
import { knownOf } from "./ask.ts";
import { knownForSums } from "./known.ts";
import { SUMS } from "./table.ts";

const TODAY = "2026-06-15";
const DAY_MS = 86_400_000;
const dayBefore = (days: number): string =>
  new Date(Date.parse(TODAY) - days * DAY_MS).toISOString().slice(0, 10);

const FILE = { grazewell_tank: 1, water_l: "200 L", first_seawater_on: "2024-01-10" };

function facts() {
  const read = readTankFile(JSON.stringify(FILE), { today: TODAY, findAnimal });
  if (!read.ok) throw new Error(read.findings[0]?.message.text);
  return read.facts;
}

const QUANTITIES = {
  alkalinity_meq_per_l: 3,
  calcium_mg_per_l: 420,
  no3_mg_n_per_l: 2,
  ph: 8.1,
  salinity_psu: 35,
  temperature_c: 25,
} as const;

/** A test of each every nine days, and a water change a week, for two years; signs and heads between. */
const record: TankRecord = {
  observations: Array.from({ length: 80 }, (_, i) => 9 * (79 - i)).flatMap((days) => [
    ...Object.entries(QUANTITIES).map(([quantity, usual]) => {
      const central = usual * (1 + 0.0002 * days);
      return {
        ...{ kind: "reading", entry: `${quantity} ${days}`, on: dayBefore(days), step: null, flag: null },
        ...{ quantity, value: { low: central, central, high: central }, censored: null },
      } as TankRecord["observations"][number];
    }),
    { kind: "film_back", entry: `film ${days}`, on: dayBefore(days), days: 4 },
  ]),
  happenings: Array.from({ length: 100 }, (_, i) => ({
    ...{ kind: "chore", entry: `change ${i}`, on: dayBefore(7 * (99 - i)), chore: "water_change" },
    share: 0.1,
  })) as unknown as TankRecord["happenings"],
  ...{ declined: [], asOf: TODAY },
};

test("every field of every sum is filled the same, today and for as long as a device may be away", () => {
  const whole = { facts: facts(), record, today: TODAY };
  const given = knownForSums({ ...whole, head: null, zone: null, preferences: NO_PREFERENCES });
  const sent = JSON.parse(JSON.stringify(given)) as typeof given;
  expect(sent.record.observations.length).toBeLessThan(record.observations.length / 4);
  let filled = 0;
  for (const today of [TODAY, "2026-06-22"]) {
    for (const sum of SUMS) {
      for (const field of sum.fields) {
        const here = knownOf(field, { facts: sent.facts, record: sent.record, today });
        expect(here, `${sum.id}, ${field.name}`).toEqual(knownOf(field, { ...whole, today }));
        filled += here === null ? 0 : 1;
      }
    }
  }
  expect(filled).toBeGreaterThan(2 * SUMS.length);
});
