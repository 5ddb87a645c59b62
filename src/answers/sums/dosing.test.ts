/** The sums of dosing on invented tanks: units do not matter, a dose reversed gives the start, steps add up to the whole. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import { REAGENTS } from "../../engine/seawater/reagents.ts";
import { fromCanonical } from "../../engine/units/convert.ts";
import { askSum } from "./ask.ts";
import { DAILY_DOSE } from "./daily-dose.ts";
import { DEMAND_SUMS } from "./demand.ts";
import { DOSE_EFFECT } from "./dose-effect.ts";
import type { SumText } from "./given.ts";
import { RAISE_SUMS } from "./raise.ts";
import { STOCK } from "./stock.ts";
import type { Sum } from "./sum.ts";

const CONTEXT = { preferences: NO_PREFERENCES, today: "2026-11-27", tank: null };
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const asked = (sum: Sum, typed: SumText) => {
  const outcome = askSum(sum, typed, CONTEXT);
  if (!outcome.ok) throw new Error(outcome.doubts.map(({ message }) => message.text).join("\n"));
  return outcome.answer;
};
const answered = (sum: Sum, typed: SumText) => {
  const answer = asked(sum, typed);
  if (answer.kind === "none") throw new Error(String(answer.because[0]));
  return answer;
};
const figures = (sum: Sum, typed: SumText) =>
  new Map(answered(sum, typed).figures.map(({ id, spread }) => [id.split(".").at(-1) ?? "", spread.central]));
const sumOf = (sums: readonly Sum[], id: string) => sums.find((sum) => sum.id === id) as Sum;

const RAISE = [
  { what: "alkalinity", unit: "dKH", now: 7, most: "1 dKH" },
  { what: "calcium", unit: "mg/L", now: 370, most: "20 mg/L" },
  { what: "magnesium", unit: "mg/L", now: 1150, most: "50 mg/L" },
] as const;
const reagentsOf = (sum: Sum) => {
  const [field] = sum.fields;
  return field?.input === "choice" ? field.choices.map(({ text }) => text) : [];
};

describe.each(RAISE)("raise $what", ({ what, unit, now, most }) => {
  const sum = sumOf(RAISE_SUMS, `raise-${what}`);
  const asks = fc
    .record({
      reagent: fc.constantFrom(...reagentsOf(sum)),
      ...{ litres: number(20, 900), percent: number(60, 100), share: number(0.02, 0.25) },
    })
    .map(({ reagent, litres, percent, share }) => ({
      typed: {
        ...{ reagent, water: `${litres} L`, purity: `${percent} %`, most_a_day: most },
        ...{ now: `${now} ${unit}`, target: `${now * (1 + share)} ${unit}` },
      },
      ...{ litres, percent, rise: now * share },
    }));

  test("what it says to add, added, is the rise that was wanted", () => {
    fc.assert(
      fc.property(asks, ({ typed, rise }) => {
        const { reagent, water, purity } = typed;
        const grams = `${figures(sum, typed).get("whole")} g`;
        const done = figures(DOSE_EFFECT, { reagent, water, purity, grams });
        expect((done.get(what) ?? 0) / rise).toBeCloseTo(1, 8);
      }),
      { numRuns: 25 },
    );
  });

  test("its steps add up to the whole, none is above the most, and the last day ends at the target", () => {
    fc.assert(
      fc.property(asks, ({ typed, rise }) => {
        const of = figures(sum, typed);
        const days = of.get("days") ?? 0;
        expect((days * (of.get("step") ?? 0)) / (of.get("whole") ?? 1)).toBeCloseTo(1, 12);
        expect(rise / days).toBeLessThanOrEqual(Number.parseFloat(most) * (1 + 1e-9));
        if (days <= 14) expect(of.get(`after_${days}`)).toBeCloseTo(now + rise, 6);
      }),
      { numRuns: 25 },
    );
  });

  test("gallons and an impure salt: only the mass changes, as it must", () => {
    fc.assert(
      fc.property(asks, ({ typed, litres, percent }) => {
        const whole = figures(sum, typed).get("whole") ?? 0;
        const gallons = `${fromCanonical("volume", litres, "US gal")} US gal`;
        expect((figures(sum, { ...typed, water: gallons }).get("whole") ?? 0) / whole).toBeCloseTo(1, 9);
        const pure = figures(sum, { ...typed, purity: "100 %" }).get("whole") ?? 0;
        expect(pure / whole).toBeCloseTo(percent / 100, 9);
      }),
      { numRuns: 15 },
    );
  });

  test("what is there already needs nothing", () => {
    const typed = {
      reagent: reagentsOf(sum)[0] ?? "",
      water: "100 L",
      now: `${now} ${unit}`,
      target: `${now} ${unit}`,
    };
    expect(asked(sum, typed)).toMatchObject({ kind: "none", field: "target" });
  });
});

describe("alkalinity", () => {
  const sum = sumOf(RAISE_SUMS, "raise-alkalinity");
  const typed = {
    water: "200 L",
    now: "7 dKH",
    target: "8 dKH",
    most_a_day: "1 dKH",
    ph: "8.1",
    ph_scale: "nbs",
  };
  const of = (reagent: string) => figures(sum, { ...typed, reagent });

  test("dKH, meq/L and mg/L as CaCO3 are one dose", () => {
    const wanted = of("sodium_carbonate").get("whole") ?? 0;
    for (const unit of ["meq/L", "mg/L as CaCO3"] as const) {
      const as = (dkh: number) =>
        `${fromCanonical("alkalinity", dkh / fromCanonical("alkalinity", 1, "dKH"), unit)} ${unit}`;
      const again = figures(sum, {
        ...typed,
        reagent: "sodium_carbonate",
        now: as(7),
        target: as(8),
        most_a_day: as(1),
      });
      expect((again.get("whole") ?? 0) / wanted).toBeCloseTo(1, 9);
      expect(again.get("ph_at_once")).toBeCloseTo(of("sodium_carbonate").get("ph_at_once") ?? 0, 9);
    }
  });

  test("pH at once falls with bicarbonate and rises with carbonate and lye; in the end all are alike", () => {
    expect(of("sodium_bicarbonate").get("ph_at_once")).toBeLessThan(8.1);
    expect(of("sodium_carbonate").get("ph_at_once")).toBeGreaterThan(8.2);
    expect(of("sodium_hydroxide").get("ph_at_once")).toBeGreaterThan(
      of("sodium_carbonate").get("ph_at_once") ?? 9,
    );
    expect(of("sodium_hydroxide").get("portions")).toBeGreaterThan(
      of("sodium_carbonate").get("portions") ?? 9,
    );
    expect(of("sodium_hydroxide").get("ph_settled")).toBeCloseTo(
      of("sodium_bicarbonate").get("ph_settled") ?? 0,
      6,
    );
  });

  test("more than keepers hold is cautioned against", () => {
    const high = answered(sum, { ...typed, reagent: "sodium_bicarbonate", target: "15 dKH (checked)" });
    expect(high.cautions.join(" ")).toMatch(/more than keepers hold/);
  });
});

test("salts that burn, irritate or heat are cautioned first, each with the maker's label", () => {
  for (const { id, hazard } of Object.values(REAGENTS)) {
    const { cautions } = answered(DOSE_EFFECT, { reagent: id, grams: "1 g", water: "100 L" });
    expect(cautions.join(" ")).toMatch(/maker's label/);
    if (hazard === "caustic") {
      expect(cautions[0]).toMatch(/burns skin and eyes.*gloves and goggles/i);
      expect(cautions.join(" ")).toMatch(/never mix.*doctor/i);
    }
    if (hazard === "heats") expect(cautions[0]).toMatch(/heats.*dust/);
  }
});

test("calcium is never raised by a salt that brings alkalinity along unseen", () => {
  for (const id of reagentsOf(sumOf(RAISE_SUMS, "raise-calcium")))
    expect(REAGENTS[id as keyof typeof REAGENTS].equivalents).toBe(0);
});

test("a solution: so many mL of it are the grams that they hold", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...Object.keys(REAGENTS)),
      number(5, 300),
      number(0.2, 5),
      (reagent, grams, litres) => {
        const stock = figures(STOCK, {
          reagent,
          grams: `${grams} g`,
          solution: `${litres} L`,
          water: "200 L",
        });
        const tenMl = figures(DOSE_EFFECT, {
          reagent,
          grams: `${10 * (stock.get("grams") ?? 0)} g`,
          water: "200 L",
        });
        for (const what of ["alkalinity", "calcium", "magnesium"])
          expect(stock.get(`tank_${what}`) ?? 0).toBeCloseTo(tenMl.get(what) ?? 0, 9);
      },
    ),
    { numRuns: 25 },
  );
  const { cautions } = answered(STOCK, { reagent: "calcium_hydroxide", grams: "5 g", solution: "1 L" });
  expect(cautions[0]).toMatch(/More than dissolves.*about 1\.[67]/);
});

describe("daily dose", () => {
  const typed = { water: "200 L", alkalinity_a_day: "1 dKH", calcium_a_day: "7.147 mg/L" };

  test("a day of it brings what a day takes; a solution holds as much", () => {
    const of = figures(DAILY_DOSE, { ...typed, alkalinity_strength: "80 g" });
    const grams = of.get("alkalinity") ?? 0;
    const done = figures(DOSE_EFFECT, { reagent: "sodium_bicarbonate", grams: `${grams} g`, water: "200 L" });
    expect(done.get("alkalinity")).toBeCloseTo(1, 9);
    expect(of.get("alkalinity_ml")).toBeCloseTo((1000 * grams) / 80, 9);
    expect(of.get("calcium_expected")).toBeCloseTo(7.147, 3);
  });

  test("a year of 1 dKH leaves about 7.4 psu of salt, lime none", () => {
    expect(figures(DAILY_DOSE, typed).get("salinity_a_year")).toBeCloseTo(7.4, 1);
    const lime = { water: "200 L", alkalinity_a_day: "1 dKH", alkalinity_salt: "calcium_hydroxide" };
    expect(figures(DAILY_DOSE, lime).get("salinity_a_year")).toBe(0);
  });

  test("alkalinity that goes without calcium is told of; nothing asked is a refusal", () => {
    expect(answered(DAILY_DOSE, { ...typed, calcium_a_day: "2 mg/L" }).notes.join(" ")).toMatch(
      /falling out/,
    );
    expect(asked(DAILY_DOSE, { water: "200 L" })).toMatchObject({ kind: "none", field: "alkalinity_a_day" });
  });
});

describe("demand", () => {
  const sum = sumOf(DEMAND_SUMS, "alkalinity-demand");
  const lines = (value: (day: number) => string) =>
    [0, 3, 6, 9, 12, 15, 18]
      .map((day) => `2026-11-${String(day + 1).padStart(2, "0")} ${value(day)}`)
      .join("\n");

  test("what is dosed every day counts, in whatever unit the readings are", () => {
    const grams = figures(DAILY_DOSE, { water: "200 L", alkalinity_a_day: "0.3 dKH" }).get("alkalinity") ?? 0;
    const every = { water: "200 L", every_day: `${grams} g` };
    const dkh = figures(sum, { ...every, readings: lines((day) => `${8 - 0.1 * day} dKH`) });
    expect(dkh.get("demand")).toBeCloseTo(0.4, 6);
    expect(dkh.get("dosed")).toBeCloseTo(0.3, 9);
    const meq = lines((day) => `${(8 - 0.1 * day) / fromCanonical("alkalinity", 1, "dKH")} meq/L`);
    expect(figures(sum, { ...every, readings: meq }).get("demand")).toBeCloseTo(0.4, 6);
  });

  test("a water change counts once the level of the new water is told", () => {
    // Falls by 0.1 a day, and a tenth of it is changed for water 2 dKH higher on the ninth day.
    const readings = lines((day) => `${8 - 0.1 * day + (day > 9 ? 0.2 : 0)} dKH`);
    const typed = { water: "200 L", readings, changed: "2026-11-10 10 %" };
    const without = figures(sum, typed).get("demand") ?? 0;
    const counted = figures(sum, { ...typed, new_water: "9.1 dKH" });
    expect(without).toBeLessThan(0.095);
    expect(counted.get("demand")).toBeCloseTo(0.1, 6);
    expect(counted.get("dosed")).toBeCloseTo(0.2 / 18, 9);
    expect(answered(sum, typed).notes.join(" ")).toMatch(/1 water change fell/);
  });

  test("one wild reading hardly moves it", () => {
    const wild = lines((day) => (day === 9 ? "11.5 dKH" : `${8 - 0.1 * day} dKH`));
    expect(figures(sum, { water: "200 L", readings: wild }).get("demand")).toBeCloseTo(0.1, 1);
  });

  test("readings that stay put are told as none, few as not enough", () => {
    const still = answered(sum, { water: "200 L", readings: lines(() => "8 dKH") });
    expect(still.lead[0]).toMatch(/can't be told from none/);
    const few = asked(sum, { water: "200 L", readings: "2026-11-01 8 dKH\n2026-11-09 7 dKH" });
    expect(few).toMatchObject({ kind: "none", field: "readings" });
    expect(few.kind === "none" ? few.because.join("") : "").toMatch(/Not enough data: 2 days/);
  });
});
