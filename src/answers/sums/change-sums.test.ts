/** Sums of changes and setting up: what one works out, another undoes or splits; the volume is the tank file's own. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { findAnimal } from "../../catalogue/index.ts";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import { readTankFile } from "../../contract/tank-file/read.ts";
import { type AskedSum, askSum } from "./ask.ts";
import { nitrateRise } from "./nitrate-rise.ts";
import type { SumTank } from "./sum.ts";
import { sumOf } from "./table.ts";

const TODAY = "2026-11-27";

function asked(id: string, typed: Readonly<Record<string, string>>, tank: SumTank | null = null): AskedSum {
  const sum = sumOf(id);
  if (sum === null) throw new Error(`no sum ${id}`);
  return askSum(sum, typed, { preferences: NO_PREFERENCES, today: TODAY, tank });
}

/** Middle of one figure. */
function value(id: string, name: string, typed: Readonly<Record<string, string>>): number {
  const found = asked(id, typed);
  if (!found.ok) throw new Error(found.doubts.map(({ message }) => message.text).join("; "));
  const figure = found.answer.figures.find((one) => one.id === `sum.${id}.${name}`);
  if (figure === undefined) throw new Error(`${id} has no ${name}`);
  return figure.spread.central;
}

function factsOf(document: object) {
  const read = readTankFile(JSON.stringify({ grazewell_tank: 1, ...document }), { today: TODAY, findAnimal });
  if (!read.ok) throw new Error(read.findings.map(({ message }) => message.text).join("; "));
  return read.facts;
}

const level = fc.integer({ min: 1, max: 200 });
const percent = fc.integer({ min: 1, max: 90 });
const times = fc.integer({ min: 2, max: 20 });

describe("water changes", () => {
  test("done twice in halves is done once", () => {
    fc.assert(
      fc.property(level, level, percent, times, times, (now, fresh, share, first, second) => {
        const about = { water: "100 L", fresh: String(fresh), change: `${share} %` };
        const half = value("water-change", "after", { ...about, now: String(now), times: String(first) });
        const rest = value("water-change", "after", { ...about, now: String(half), times: String(second) });
        const whole = value("water-change", "after", {
          ...about,
          now: String(now),
          times: String(first + second),
        });
        expect(Math.abs(rest - whole)).toBeLessThan(1e-6 * (now + fresh));
      }),
      { numRuns: 30 },
    );
  });

  test("a share in litres is that share", () => {
    const about = { water: "80 L", now: "40", fresh: "2", times: "3" };
    expect(value("water-change", "after", { ...about, change: "20 L" })).toBeCloseTo(
      value("water-change", "after", { ...about, change: "25 %" }),
      9,
    );
  });

  test("what reach-value asks for, water-change does", () => {
    fc.assert(
      fc.property(level, fc.double({ min: 0.05, max: 0.95, noNaN: true }), times, (now, way, n) => {
        const target = now * way;
        const wanted = {
          water: "200 L",
          now: String(now),
          target: String(target),
          fresh: "0",
          times: String(n),
        };
        const each = value("reach-value", "each", wanted);
        const done = { water: "200 L", now: String(now), fresh: "0", change: `${each} L`, times: String(n) };
        expect(value("water-change", "after", done) / target).toBeCloseTo(1, 6);
        const through = value("reach-value", "continuous", wanted);
        if (through > 200) return;
        const steady = { ...done, change: `${through} L`, times: "1", way: "continuous" };
        expect(value("water-change", "after", steady) / target).toBeCloseTo(1, 6);
      }),
      { numRuns: 30 },
    );
  });

  test("a level that no change leads to is told, with the field that would change it", () => {
    const found = asked("reach-value", { water: "100 L", now: "40", target: "1", fresh: "2" });
    expect(found.ok && found.answer.kind === "none" ? found.answer.field : "").toBe("fresh");
    const there = asked("reach-value", { water: "100 L", now: "40", target: "40" });
    expect(there.ok && there.answer.kind).toBe("none");
  });
});

describe("nitrate against changes", () => {
  test("the share that holds a level does hold it", () => {
    const about = {
      water: "200 L",
      now: "30 mg/L as NO3",
      rise: "0.5 mg/L as NO3",
      every: "7 d",
      target: "12 mg/L as NO3",
    };
    const share = value("nitrate-changes", "needed", about);
    expect(value("nitrate-changes", "settles", { ...about, change: `${share} %` })).toBeCloseTo(12, 6);
  });

  test("a tank that was made to rise by so much gives it back from its tests", () => {
    const facts = factsOf({
      water_l: "100 L",
      care: { water_change_percent: "10 %", water_change_every_days: "10 d" },
      source_water: "purified",
    });
    // 1 mg/L as N on average, a tenth every ten days takes 0.01 a day; rising by 0.02 a day besides.
    const fresh = facts.newWaterNo3NMgPerL.central;
    const seen = [0, 7, 14, 21, 28, 35, 42].map((day) => {
      const on = new Date(Date.parse("2026-10-15") + day * 86_400_000).toISOString().slice(0, 10);
      const at = 1 + 0.02 * (day - 21);
      return {
        ...{ kind: "reading" as const, entry: String(day), on, quantity: "no3_mg_n_per_l" as const },
        ...{ value: { low: at - 0.1, central: at, high: at + 0.1 }, censored: null, step: null, flag: null },
      };
    });
    const record = { observations: seen, happenings: [], declined: [], asOf: TODAY };
    const rise = nitrateRise({ facts, record, today: TODAY });
    const taken = (facts.waterChangeFraction.central / facts.waterChangeEveryDays.central) * (1 - fresh);
    const [low, high] = (rise?.text ?? "").split(" ")[0]!.split("-").map(Number);
    expect(low).toBeCloseTo(4.4268 * (0.02 + taken), 2);
    expect(high).toBeCloseTo(4.4268 * (0.02 + taken), 2);
    expect(rise?.how).toMatch(/^from 7 tests in 42 days/);
    // Too few of them: the food is asked.
    const few = nitrateRise({ facts, record: { ...record, observations: seen.slice(0, 3) }, today: TODAY });
    expect(few?.how ?? "food").toMatch(/food/);
  });
});

describe("salt", () => {
  test("a batch that came out as wanted asks for the same mix again, per litre", () => {
    const batch = { batch_salt: "780 g", batch_water: "20 L", batch_salinity: "35 psu" };
    const mix = value("salt-mix", "mix", { volume: "20 L", salinity: "35 psu", ...batch });
    const water = value("salt-mix", "water", { volume: "20 L", salinity: "35 psu", ...batch });
    expect(mix / water).toBeCloseTo(780 / 20, 6);
  });

  test("never exact: its band is as wide as the instrument's doubt, or the mixes' own", () => {
    for (const more of [
      {},
      { batch_salt: "780 g", batch_water: "20 L", batch_salinity: "35 psu" },
    ] as const) {
      const found = asked("salt-mix", { volume: "20 L", salinity: "35 psu", ...more });
      const mix = found.ok ? found.answer.figures.find(({ id }) => id === "sum.salt-mix.mix") : undefined;
      expect((mix!.spread.high - mix!.spread.low) / mix!.spread.central).toBeGreaterThan(0.04);
    }
  });

  test("steps add up to the whole way, and the tank's animals set their size", () => {
    const facts = factsOf({ water_l: "200 L", animals_present: [{ animal: "sand-sifting star", count: 1 }] });
    const record = { observations: [], happenings: [], declined: [], asOf: TODAY };
    const found = asked(
      "salinity-steps",
      { salinity: "32 psu", target: "35 psu" },
      { facts, record, today: TODAY },
    );
    expect(found.ok && found.taken.find(({ field }) => field === "per_day")?.text).toBe("0.5 psu");
    expect(
      value("salinity-steps", "days", {
        water: "200 L",
        salinity: "32 psu",
        target: "35 psu",
        per_day: "0.5 psu",
      }),
    ).toBe(6);
    expect(
      value("salinity-steps", "to_6", {
        water: "200 L",
        salinity: "32 psu",
        target: "35 psu",
        per_day: "0.5 psu",
      }),
    ).toBeCloseTo(35, 9);
  });
});

describe("volume and setting up", () => {
  test("the water of a tank is what its tank file would say", () => {
    const facts = factsOf({
      compartments: { display: { sides_cm: "100x50x50" }, sump: { water_l: "40 L" } },
      rock: { start: "dry", rock_kg: "15 kg" },
      floor: { kind: "sand", depth_mm: "30 mm" },
    });
    const typed = {
      length: "100 cm",
      width: "50 cm",
      height: "50 cm",
      rock: "15 kg",
      sand: "30 mm",
      sump: "40 L",
    };
    const found = asked("tank-volume", typed);
    const water = found.ok
      ? found.answer.figures.find(({ id }) => id === "sum.tank-volume.water")!.spread
      : null;
    expect(water).toMatchObject({
      low: facts.waterL.low,
      central: facts.waterL.central,
      high: facts.waterL.high,
    });
  });

  test("the sheet's masses add up, and its load is the mass over the floor", () => {
    const typed = {
      length: "100 cm",
      width: "50 cm",
      height: "50 cm",
      glass: "10 mm",
      rock: "15 kg",
      sand: "30 mm",
    };
    const kg = (name: string) => value("new-tank", name, typed);
    expect(kg("total")).toBeCloseTo(kg("water_kg") + kg("glass_kg") + kg("sand_kg") + 15 + 40, 9);
    expect(kg("load")).toBeCloseTo(kg("total") / 0.5, 9);
    expect(kg("point")).toBeCloseTo(kg("total") / 4, 9);
  });

  test("a warm room needs no heater, a lid asks for less than none", () => {
    const warm = asked("heater", { water: "200 L", temperature: "25 C", room: "26 C" });
    expect(warm.ok && warm.answer.kind).toBe("none");
    const need = (lid: string) => value("heater", "need", { water: "200 L", lid });
    expect(need("lid")).toBeLessThan(need("open"));
  });

  test("what could hurt comes with its caution", () => {
    const said = (id: string, typed: Readonly<Record<string, string>>) => {
      const found = asked(id, typed);
      return found.ok ? found.answer.cautions.join(" ") : "";
    };
    expect(said("new-tank", { length: "45 cm", width: "45 cm", height: "45 cm" })).toMatch(
      /structural engineer.*local code/,
    );
    expect(said("heater", { water: "200 L" })).toMatch(/RCD, GFCI.*licensed electrician/);
    expect(said("salt-mix", { volume: "20 L", salinity: "35 psu" })).toMatch(/licensed electrician/);
    expect(
      said("top-off", { water: "200 L", salinity: "35 psu", area: "0.5 m2", reservoir: "20 L" }),
    ).toMatch(/stuck top-off/);
  });
});
