/** The sums of chemistry on invented waters: units of entry do not matter, and what depends on what goes the right way. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import { fromCanonical } from "../../engine/units/convert.ts";
import { AMMONIA } from "./ammonia.ts";
import { ARAGONITE } from "./aragonite.ts";
import { type AskedSum, askSum } from "./ask.ts";
import { CARBONATE } from "./carbonate.ts";
import { CO2 } from "./co2.ts";
import type { SumText } from "./given.ts";
import { MINERALS_SUM } from "./minerals.ts";
import type { Sum, SumAnswer } from "./sum.ts";

const CONTEXT = { preferences: NO_PREFERENCES, today: "2026-11-27", tank: null };
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const answer = (sum: Sum, typed: SumText): SumAnswer => {
  const asked: AskedSum = askSum(sum, typed, CONTEXT);
  if (!asked.ok) throw new Error(asked.doubts.map(({ message }) => message.text).join("\n"));
  if (asked.answer.kind === "none") throw new Error(String(asked.answer.because[0]));
  return asked.answer;
};
const spreads = (sum: Sum, typed: SumText) =>
  new Map(answer(sum, typed).figures.map(({ id, spread }) => [id.split(".").at(-1) ?? "", spread]));
const REEF = { ph_scale: "nbs", salinity: "35 psu", temperature: "25 C" };

/** One water written three ways. */
const written = fc
  .record({ meq: number(2.2, 4), t: number(22, 29), calcium: number(380, 480) })
  .map(({ meq, t, calcium }) => {
    const kept = { alkalinity: `${meq} meq/L`, temperature: `${t} C`, calcium: `${calcium} mg/L` };
    const dkh = `${fromCanonical("alkalinity", meq, "dKH")} dKH`;
    const ppm = `${fromCanonical("alkalinity", meq, "mg/L as CaCO3")} mg/L as CaCO3`;
    return [
      kept,
      { ...kept, alkalinity: dkh, temperature: `${32 + 1.8 * t} F` },
      { ...kept, alkalinity: ppm, calcium: `${fromCanonical("calcium", calcium, "mmol/L")} mmol/L` },
    ] as const;
  });

test.each([
  ["aragonite", ARAGONITE, { ph: "8.2" }],
  ["carbonate", CARBONATE, { ph: "8.2" }],
  ["co2", CO2, { ph: "8.2" }],
  ["minerals", MINERALS_SUM, {}],
] as const)("%s: units of entry do not matter", (_, sum, more) => {
  const names = new Set(sum.fields.map(({ name }) => name));
  const fitting = (typed: Readonly<Record<string, string>>) =>
    Object.fromEntries(Object.entries({ ...REEF, ...typed, ...more }).filter(([name]) => names.has(name)));
  fc.assert(
    fc.property(written, ([first, ...others]) => {
      const wanted = spreads(sum, fitting(first));
      for (const other of others)
        for (const [name, spread] of spreads(sum, fitting(other)))
          for (const end of ["low", "central", "high"] as const)
            expect(spread[end] / (wanted.get(name)?.[end] ?? 0), name).toBeCloseTo(1, 6);
    }),
    { numRuns: 20 },
  );
});

test("ammonia: as N, as NH3 and as NH4 are one water", () => {
  fc.assert(
    fc.property(number(0.05, 5), (n) => {
      const at = (text: string) => spreads(AMMONIA, { ...REEF, ammonia: text, ph: "8.1" }).get("unionised");
      const wanted = at(`${n} mg/L as N`)?.central ?? 0;
      for (const unit of ["mg/L as NH3", "mg/L as NH4", "umol/L"] as const)
        expect((at(`${fromCanonical("tan", n, unit)} ${unit}`)?.central ?? 0) / wanted).toBeCloseTo(1, 9);
    }),
    { numRuns: 20 },
  );
});

describe("aragonite", () => {
  const at = (typed: SumText) =>
    spreads(ARAGONITE, { ...REEF, alkalinity: "8 dKH", ph: "8.2", ...typed }).get("saturation");

  test("rises with calcium, and lies in its band", () => {
    fc.assert(
      fc.property(number(360, 440), number(5, 60), (calcium, more) => {
        const [low, high] = [at({ calcium: `${calcium} mg/L` }), at({ calcium: `${calcium + more} mg/L` })];
        expect(high?.central).toBeGreaterThan(low?.central ?? 99);
        expect(low?.low).toBeLessThan(low?.central ?? 0);
        expect(low?.high).toBeGreaterThan(low?.central ?? 99);
      }),
      { numRuns: 20 },
    );
  });

  test("a scale that is not known, and colours, widen the band without moving the middle", () => {
    const [known, unknown, kit] = [at({}), at({ ph_scale: "unknown" }), at({ ph_by: "kit" })];
    expect(unknown?.central).toBe(known?.central);
    expect(unknown?.low).toBeLessThan(known?.low ?? 0);
    expect(kit?.high).toBeGreaterThan(unknown?.high ?? 99);
  });

  test("pH 8.2 read as NBS is 3.97 where the same number on the total scale is 5.01", () => {
    // Worked out apart from this code: alkalinity 2600 µmol/kg, 25 °C, S 35.
    const alkalinity = `${2600e-6 * 1023.3412} meq/L`;
    expect(at({ alkalinity })?.central).toBeCloseTo(3.97, 2);
    expect(at({ alkalinity, ph_scale: "total" })?.central).toBeCloseTo(5.01, 2);
  });
});

describe("carbonate", () => {
  test("what it gives from one pair gives back the other", () => {
    const first = spreads(CARBONATE, { ...REEF, alkalinity: "8 dKH", ph: "8.2" });
    const carbon = `${first.get("dic")?.central} umol/kg`;
    const second = spreads(CARBONATE, { ...REEF, from: "alkalinity_carbon", alkalinity: "8 dKH", carbon });
    expect(second.get("ph_nbs")?.central).toBeCloseTo(8.2, 8);
    const co2 = `${first.get("pco2")?.central} µatm`;
    const third = spreads(CARBONATE, { ...REEF, from: "carbon_co2", carbon, co2 });
    expect(third.get("alkalinity")?.central).toBeCloseTo(first.get("alkalinity")?.central ?? 0, 5);
  });

  test("a pair that lacks one part is told which", () => {
    const asked = askSum(CARBONATE, { ...REEF, from: "ph_co2", ph: "8.1" }, CONTEXT);
    expect(asked.ok && asked.answer.kind === "none" ? asked.answer.field : null).toBe("co2");
  });

  test("two that can't go together are refused, not thrown", () => {
    const asked = askSum(CARBONATE, { ...REEF, alkalinity: "0.5 dKH (checked)", ph: "9.6" }, CONTEXT);
    expect(asked.ok && asked.answer.kind).toBe("none");
  });
});

test("water in balance with the air of the room gives its pH back", () => {
  const here = spreads(CO2, { ...REEF, alkalinity: "8 dKH", ph: "8.2", air: "700 ppm" }).get("ph_here");
  const again = spreads(CO2, { ...REEF, alkalinity: "8 dKH", ph: `${here?.central}`, air: "700 ppm" });
  expect(again.get("ratio")?.central).toBeCloseTo(1, 9);
});

test("the sea's own water is 100 % of itself, at any salinity", () => {
  fc.assert(
    fc.property(number(30, 37), (s) => {
      const salinity = `${s} psu`;
      const sea = spreads(MINERALS_SUM, { salinity, temperature: "25 C" });
      const calcium = `${sea.get("natural_calcium")?.central} mg/L`;
      const alkalinity = `${sea.get("natural_alkalinity")?.central} dKH`;
      const same = spreads(MINERALS_SUM, { salinity, temperature: "25 C", calcium, alkalinity });
      expect(same.get("share_calcium")?.central).toBeCloseTo(100, 9);
      expect(same.get("share_alkalinity")?.central).toBeCloseTo(100, 9);
    }),
    { numRuns: 20 },
  );
});
