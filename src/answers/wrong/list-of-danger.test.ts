/** Every reading that can be flagged as dangerous has a list that fits; what can't be has the entry of all. */
import { expect, test } from "vitest";
import { dangerByCold, listOfDanger, saidCold } from "./list-of-danger.ts";

test.each([
  ["tan_mg_n_per_l", false, "ammonia"],
  ["no2_mg_per_l", false, "ammonia"],
  ["temperature_c", false, "warm"],
  ["temperature_c", true, "cold"],
  ["salinity_psu", false, "salinity"],
  ["calcium_mg_per_l", false, null],
])("%s, by cold %s: %s", (quantity, cold, list) => {
  expect(listOfDanger(quantity, cold)).toBe(list);
});

test("cold by its value or by what was said of it", () => {
  expect([dangerByCold(14), dangerByCold(31)]).toEqual([true, false]);
  expect(saidCold('Temperature "14": 14 C is too cold for reef animals')).toBe(true);
  expect([saidCold("31 C is too warm"), saidCold(null)]).toEqual([false, false]);
});
