/** Advice that can't wait leads to the list that fits, not to the list of lists. */
import { expect, test } from "vitest";
import { dangerAdvice } from "../../answers/bench/danger.ts";
import type { LatestReading } from "../../answers/bench/latest.ts";
import { outageAdvice } from "../../answers/bench/mishaps.ts";
import { CRISIS_IDS } from "../../answers/wrong/list-ids.ts";
import { to } from "../page.ts";
import { adviceAddress } from "./advice-address.ts";

const reading = (quantity: string, said: string | null) =>
  ({
    quantity,
    label: quantity,
    text: "1",
    said,
    flag: "danger",
    ageDays: 0,
    entry: "e",
    on: "2026-06-15",
  }) as unknown as LatestReading;

test.each([
  ["tan_mg_n_per_l", null, "ammonia"],
  ["no2_mg_per_l", null, "ammonia"],
  ["salinity_psu", null, "salinity"],
  ["temperature_c", "12 C is too cold for reef animals", "cold"],
  ["temperature_c", "34 C is too warm", "warm"],
])("a dangerous %s (%s) leads to %s", (quantity, said, list) => {
  const [advice] = dangerAdvice({ latest: [reading(quantity, said)], today: "2026-06-15" });
  expect(adviceAddress("t", advice!.act.leads)).toBe(to.wrongList(list, "t"));
});

test.each([
  ["power", "power-cut"],
  ["pumps", "pumps"],
  ["heater", "cold"],
] as const)("a long time without %s leads to %s", (of, list) => {
  const outages = [{ kind: "outage", entry: "o", on: "2026-06-15", of, hours: 20 }];
  const [advice] = outageAdvice({ today: "2026-06-15" } as never, { outages } as never);
  expect(adviceAddress("t", advice!.act.leads)).toBe(to.wrongList(list, "t"));
});

test("every list has an address, and what fits none leads to the entry", () => {
  for (const id of CRISIS_IDS) expect(adviceAddress("t", `wrong:${id}`)).toBe(to.wrongList(id, "t"));
  expect(adviceAddress("t", "wrong")).toBe(to.wrong("t"));
});
