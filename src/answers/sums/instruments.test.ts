/** Conversions and instruments: there and back is where one began, and one water is one water on all of them. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import { spelled } from "../../contract/quantity/rule.ts";
import { celsius, practicalSalinity } from "../../engine/units/quantity.ts";
import { askSum } from "./ask.ts";
import { CONVERT } from "./convert.ts";
import { CONVERT_UNITS, unitsSpelled } from "./convert-units.ts";
import type { SumText } from "./given.ts";
import { SALINITY_SUM } from "./salinity.ts";
import type { Sum } from "./sum.ts";

const CONTEXT = { preferences: NO_PREFERENCES, today: "2026-11-27", tank: null };
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const asked = (sum: Sum, typed: SumText) => {
  const outcome = askSum(sum, typed, CONTEXT);
  if (!outcome.ok) throw new Error(outcome.doubts.map(({ message }) => message.text).join("\n"));
  return outcome.answer;
};
const figures = (sum: Sum, typed: SumText) => {
  const answer = asked(sum, typed);
  if (answer.kind === "none") throw new Error(String(answer.because[0]));
  return new Map(answer.figures.map(({ id, spread }) => [id.split(".").at(-1) ?? "", spread.central]));
};
const because = (typed: SumText) => {
  const answer = asked(CONVERT, typed);
  return answer.kind === "none" ? { why: answer.because.join(""), field: answer.field } : null;
};

describe("units", () => {
  test("every unit there and back, in any water", () => {
    const water = fc
      .record({ t: number(18, 30), s: number(30, 38) })
      .map(({ t, s }) => ({ temperature: celsius(t), salinity: practicalSalinity(s) }));
    fc.assert(
      fc.property(fc.constantFrom(...CONVERT_UNITS), number(20, 36), water, (unit, value, water) => {
        expect(unit.to(unit.from(value, water), water) / value).toBeCloseTo(1, 8);
      }),
    );
  });

  test("every unit is found by its own name among its kind", () => {
    for (const { kind, unit } of CONVERT_UNITS)
      expect(unitsSpelled(spelled(unit), kind).map((one) => one.unit)).toEqual([unit]);
  });

  test.each([
    ["1 dKH", "meq/L", {}, 0.35665, 5],
    ["1 meq/L", "dKH", {}, 2.8039, 4],
    ["1 dKH", "mg/L as CaCO3", {}, 17.848, 3],
    ["1 mg/L as N", "mg/L as NO3", { of: "nitrate" }, 4.4266, 4],
    ["1 mg/L as N", "mg/L as NO2", {}, 3.2844, 4],
    ["1 ppb P", "mg/L as PO4", {}, 0.0030662, 6],
    ["1 US gal", "L", {}, 3.785412, 6],
    ["1 imp gal", "L", {}, 4.54609, 5],
    ["1 fl oz", "mL", {}, 29.5735, 4],
    ["77 F", "C", {}, 25, 10],
    ["412.085 mg/kg", "mg/L", { of: "calcium" }, 421.7, 1],
    ["35 ppt", "mS/cm", {}, 53.071, 3],
    ["1.0264 sg 25/25", "psu", {}, 35.04, 2],
    ["100 % of saturation", "mg/L", {}, 6.771, 3],
  ] as const)("%s is in %s", (value, to, more, wanted, digits) => {
    expect([...figures(CONVERT, { value, to, ...more }).values()][0]).toBeCloseTo(wanted, digits);
  });

  test("what can mean two things is asked about, never picked", () => {
    expect(because({ value: "10 mg/L as N" })?.field).toBe("of");
    expect(because({ value: "10 mg/L as N" })?.why).toMatch(/nitrate or nitrite or ammonia/);
    expect(because({ value: "5 gal", to: "L" })?.why).toMatch(/US gal into L or imp gal into L/);
    expect(because({ value: "8 dKH", to: "psu" })?.why).toMatch(/different things/);
    expect(because({ value: "3 parsec" })?.why).toMatch(/Known: meq\/L/);
    expect(because({ value: "3 dKH", to: "parsec" })?.field).toBe("to");
  });

  test("a number without a unit, and water that no scale knows, are told of", () => {
    const outcome = askSum(CONVERT, { value: "8" }, CONTEXT);
    expect(outcome.ok ? "" : outcome.doubts[0]?.message.text).toMatch(/unit too/);
    expect(because({ value: "1.2 sg 25/25", to: "psu" })?.why).toMatch(/1 to 1.045/);
  });
});

describe("salinity from an instrument", () => {
  const KINDS = ["gravity", "floating", "conductivity_25", "conductivity", "salinity"] as const;
  const shownIn = {
    gravity: "sg_20_20",
    floating: "floating_20_20",
    conductivity_25: "conductivity_25",
    conductivity: "conductivity",
    salinity: "salinity",
  };

  test("what one instrument would show, read on it, is the same water", () => {
    fc.assert(
      fc.property(number(31, 37), number(20, 29), fc.constantFrom(...KINDS), (s, t, instrument) => {
        const common = { temperature: `${t} C`, scale: "20/20" };
        const first = figures(SALINITY_SUM, { ...common, instrument: "salinity", reading: `${s} psu` });
        const reading = `${first.get(shownIn[instrument])}`;
        const again = figures(SALINITY_SUM, { ...common, instrument, reading });
        expect(again.get("salinity")).toBeCloseTo(s, 6);
      }),
      { numRuns: 30 },
    );
  });

  test("Fahrenheit and µS/cm are the same water", () => {
    const typed = { instrument: "conductivity", reading: "52.5 mS/cm", temperature: "26 C" };
    const wanted = figures(SALINITY_SUM, typed).get("salinity") ?? 0;
    const again = figures(SALINITY_SUM, { ...typed, reading: "52500 uS/cm", temperature: "78.8 F" });
    expect(again.get("salinity")).toBeCloseTo(wanted, 9);
  });

  test("an error found in fresh water is taken off, one found in a reference too, and it gets surer", () => {
    const typed = { instrument: "salinity", reading: "36 psu", temperature: "25 C" };
    const width = (typed: SumText) => {
      const answer = asked(SALINITY_SUM, typed);
      const [first] = answer.figures;
      return (first?.spread.high ?? 0) - (first?.spread.low ?? 0);
    };
    const tried = { ...typed, reference: "35 psu", in_reference: "36.5" };
    expect(figures(SALINITY_SUM, { ...typed, in_fresh: "1" }).get("salinity")).toBeCloseTo(35, 9);
    expect(figures(SALINITY_SUM, tried).get("salinity")).toBeCloseTo(34.5, 9);
    expect(width(tried)).toBeLessThan(width(typed));
    const both = { ...tried, in_fresh: "0.5" };
    expect(figures(SALINITY_SUM, both).get("salinity")).toBeCloseTo(((36 - 0.5) * 35) / 36, 9);
  });

  test("a scale that is not printed widens the answer over all the usual ones", () => {
    const typed = { instrument: "floating", reading: "1.0245", temperature: "26 C" };
    const [unknown] = asked(SALINITY_SUM, typed).figures;
    for (const scale of ["60F/60F", "20/20", "25/25"]) {
      const s = figures(SALINITY_SUM, { ...typed, scale }).get("salinity") ?? 0;
      expect(s).toBeGreaterThan(unknown?.spread.low ?? 99);
      expect(s).toBeLessThan(unknown?.spread.high ?? 0);
    }
  });
});
