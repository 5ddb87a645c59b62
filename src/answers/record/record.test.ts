import { describe, expect, test } from "vitest";
import type { DaybookEntry } from "../../contract/daybook/kinds.ts";
import { type ReadingText, readReading } from "../../contract/daybook/read-reading.ts";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import { recordOf } from "./record.ts";

const today = "2026-06-15";
const when = { observed_text: "today", observed_at: null, note: null };
const context = {
  preferences: { ...NO_PREFERENCES, locale: "en-GB" },
  today,
  now: null,
  zone: null,
  stocked: true,
  notBefore: null,
};

function seen(typed: ReadingText) {
  const read = readReading(typed, context);
  if (!read.ok) throw new Error(read.doubts[0]?.message.text);
  const record = recordOf([{ id: "one", kind: "reading", on: read.on, body: read.body }], today);
  const [only] = record.observations;
  if (only?.kind !== "reading") throw new Error("no reading");
  return only;
}

describe("a reading in the engine's unit", () => {
  test("nitrate as nitrogen, phosphate as phosphorus, alkalinity in meq/L", () => {
    expect(seen({ quantity: "no3_mg_per_l", text: "10", unit: "mg/L as NO3" })).toMatchObject({
      quantity: "no3_mg_n_per_l",
      value: { central: expect.closeTo(10 / 4.4266, 3) },
    });
    expect(seen({ quantity: "po4_mg_per_l", text: "0.1", unit: "mg/L as PO4" }).value.central).toBeCloseTo(
      0.1 / 3.0661,
      4,
    );
    expect(seen({ quantity: "alkalinity_dkh", text: "8", unit: "dKH" }).value.central).toBeCloseTo(2.853, 3);
  });

  test.each([
    [{ quantity: "no3_mg_per_l", text: "10", unit: "mg/L as NO3", kit_step: "2" }, 2 / 4.4266],
    [{ quantity: "no3_mg_per_l", text: "2", unit: "mg/L as N", kit_step: "0.5" }, 0.5],
    [{ quantity: "temperature_c", text: "77", unit: "F", kit_step: "1" }, 5 / 9],
    [{ quantity: "alkalinity_dkh", text: "8", unit: "dKH", kit_step: "0.5" }, 0.5 * 0.35665],
    [{ quantity: "ph", text: "8.1", kit_step: "0.1" }, 0.1],
  ] as const)("the step of the kit goes along: %o", (typed, step) => {
    expect(seen(typed).step).toBeCloseTo(step, 3);
  });

  test("a step of specific gravity is a step of salinity", () => {
    const { step } = seen({ quantity: "salinity_psu", text: "1.025", unit: "sg 25/25", kit_step: "0.001" });
    // 1.025 is 33.19 psu and 1.0264 is 35 (inputs catalogue): about 1.3 psu a step.
    expect(step).toBeCloseTo(1.3, 1);
  });

  test("what the kit can't tell stays so", () => {
    expect(seen({ quantity: "no3_mg_per_l", text: "<2", unit: "mg/L as NO3" }).censored).toBe("below");
  });
});

const chore = (id: string, on: string, film_days: number | null): DaybookEntry => ({
  id,
  kind: "chore",
  on,
  body: { ...when, chore: "glass_wiped", amount_text: null, share: null, film_days },
});

test("oldest first, those of a day as they were kept, nothing later than today", () => {
  const record = recordOf(
    [chore("c", "2026-06-16", 1), chore("b", "2026-06-10", 2), chore("a", "2026-06-10", null)],
    today,
  );
  expect(record.asOf).toBe(today);
  expect(record.happenings.map(({ entry }) => entry)).toEqual(["a", "b"]);
  // That the glass was wiped is a happening; how long it had stayed clean is an observation.
  expect(record.observations).toEqual([{ kind: "film_back", entry: "b", on: "2026-06-10", days: 2 }]);
});

test("an animal that nobody knows is in no count; a sign stands without one", () => {
  const record = recordOf(
    [
      {
        id: "a",
        kind: "head_count",
        on: today,
        body: {
          ...when,
          animal_text: "Zzyzx",
          animal: null,
          seen_text: "3",
          seen: 3,
          sureness: "counted",
          hours_from_lights_out: null,
          torch: null,
          food_offered: null,
        },
      },
      {
        id: "b",
        kind: "sign",
        on: today,
        body: {
          ...when,
          sign: "waterline_snails",
          animal_text: null,
          animal: null,
          count: 4,
          kinds_seen: 2,
          hours_from_lights_out: -5,
          traits: {},
        },
      },
    ],
    today,
  );
  expect(record.observations).toMatchObject([{ kind: "sign", kindsSeen: 2, hoursFromLightsOut: -5 }]);
});
