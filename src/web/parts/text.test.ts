import { expect, test } from "vitest";
import { unitText } from "./text.ts";

/** A space that no line ends at, so that it can be seen here. */
const shown = (text: string): string => unitText(text).replaceAll("\u00a0", "_");

test.each([
  ["90 umol m-2 s-1", "90_µmol m⁻² s⁻¹"],
  ["0.25 m2 (0.2 to 0.3)", "0.25_m² (0.2 to 0.3)"],
  ["3 mg C per m2 per d", "3_mg C per m² per d"],
  ["400 cm2, 2 m3", "400_cm², 2_m³"],
  ["25.7 C", "25.7_°C"],
  ["25.7C and 78 F", "25.7_°C and 78_°F"],
  ["at 25 °C", "at 25_°C"],
  ["0.03 ug/L as P", "0.03_µg/L as P"],
  ["10 mg C a day", "10_mg C a day"],
  ["about 3 rations a day (2 to 5)", "about 3_rations a day (2 to 5)"],
  ["usually, 14 of 20", "usually, 14_of 20"],
  ["15 Jun 2026 to 29 Jun 2026", "15_Jun 2026 to 29_Jun 2026"],
])("%s: %s", (text, expected) => {
  expect(shown(text)).toBe(expected);
});

test.each(["NO3 and PO4", "Redfield's C:N of 106 C:16 N", "2 Corals", "hair_algae2", "room2 is dry"])(
  "%s holds no unit to be written otherwise",
  (text) => {
    expect(unitText(text).replaceAll("\u00a0", " ")).toBe(text);
  },
);

test("what is written already stays as it is", () => {
  for (const text of ["90 umol m-2 s-1", "25.7 C", "3 rations a day"])
    expect(unitText(unitText(text))).toBe(unitText(text));
});
