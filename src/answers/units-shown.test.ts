import { expect, test } from "vitest";
import { shownIn, shownValue } from "./units-shown.ts";

test("a keeper who chose nothing reads metric, or the gallon and inch they write in", () => {
  expect(shownIn(undefined)).toMatchObject({ volume: "L", temperature: "C", nitrate: "NO3" });
  expect(shownIn({ gallon: "us", length: "in" })).toMatchObject({ volume: "US gal", length: "in" });
  expect(shownIn({ gallon: "us", shown_in: { volume: "L" } }).volume).toBe("L");
});

// Figures of the inputs catalogue: I-005, I-024, I-037, I-048, I-057, I-066.
test.each([
  ["volume", 208.198, { volume: "US gal" }, "55 US gal"],
  ["volume", 208.198, {}, "208 L"],
  ["salinity", 33.19, { salinity: "sg" }, "specific gravity 1.0250 (25/25 °C)"],
  ["salinity", 60, { salinity: "sg" }, "60 psu"],
  ["temperature", 25, { temperature: "F" }, "77 °F"],
  ["alkalinity", 8.96, { alkalinity: "mg/L as CaCO3" }, "160 ppm as CaCO3"],
  ["alkalinity", 8, { alkalinity: "meq/L" }, "2.85 meq/L"],
  ["nitrate", 22.13, { nitrate: "NO3-N" }, "5 mg/L NO3-N"],
  ["phosphate", 0.0767, { phosphate: "PO4-P" }, "0.025 mg/L PO4-P"],
  ["length", 10.16, { length: "in" }, "4 in"],
] as const)("%s %d in %o is %s", (quantity, value, chosen, words) => {
  expect(shownValue(quantity, value, shownIn({ shown_in: chosen }))).toBe(words);
});
