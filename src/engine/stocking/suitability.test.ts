import { describe, expect, test } from "vitest";
import { animalById, animals } from "../../catalogue/index.ts";
import { referenceTank } from "../larder/test-kit/reference-tank.ts";
import type { Estimate } from "../types/estimate.ts";
import type { TankFacts } from "../types/tank.ts";
import { gateFor } from "./gates.ts";
import { waveDates } from "./schedule.ts";
import { addDays, type Company, daysBetween, statusOf, suitabilityOf } from "./suitability.ts";

const exact = (value: number): Estimate => ({
  low: value,
  central: value,
  high: value,
  origin: "stated",
  how: "typed",
});
const codes = (
  id: string,
  changes: Partial<TankFacts> = {},
  company: readonly Company[] = [],
  daysAhead = 0,
) =>
  suitabilityOf(animalById.get(id)!, { facts: referenceTank(changes), company, daysAhead }).reasons.map(
    ({ code }) => code,
  );

describe("suitability", () => {
  test("a trochus fits the reference tank, and not a tank of a month", () => {
    expect(codes("trochus-snail")).toEqual([]);
    expect(codes("trochus-snail", { ageDays: exact(30) })).toEqual(["age"]);
    expect(codes("trochus-snail", { ageDays: exact(30) }, [], 10)).toEqual([]);
  });

  test.each<[string, Partial<TankFacts>, string]>([
    ["trochus-snail", { displayL: exact(30) }, "volume"],
    ["margarita-snail", { keeperLevel: { value: "specialist", origin: "stated" } }, "cool_water"],
    ["trochus-snail", { temperatureC: exact(18) }, "temperature"],
    ["trochus-snail", { salinityPsu: exact(28) }, "salinity"],
    ["nassarius-snail", { sandM2: exact(0), sandGrain: { value: "none", origin: "stated" } }, "sand"],
    ["nassarius-snail", { sandDepthMm: exact(20) }, "sand"],
    ["nassarius-snail", { sandGrain: { value: "coarse", origin: "stated" } }, "sand"],
    ["blue-leg-hermit", { rockKg: exact(0) }, "rock"],
    ["nerite-snail", { lid: { value: false, origin: "assumed" } }, "lid"],
    ["trochus-snail", { medicines: ["copper"] }, "medicine"],
    ["trochus-snail", { trouble: "a fish gasps" }, "trouble"],
    ["trochus-snail", { exclusions: ["trochus-snail"] }, "excluded"],
    ["trochus-snail", { stockList: ["astraea-snail"] }, "stock_list"],
    ["trochus-snail", { priceBandMax: 1 }, "price"],
    ["tuxedo-urchin", {}, "experience"],
    ["porcelain-crab", {}, "role"],
    ["stomatella-snail", {}, "role"],
  ])("%s with %o is held back by %s", (id, changes, code) => {
    expect(codes(id, changes)).toContain(code);
  });

  test("an animal that can poison a tank is only ever a wish", () => {
    const big = {
      displayL: exact(2000),
      ageDays: exact(2000),
      keeperLevel: { value: "specialist", origin: "stated" },
    } as const;
    expect(codes("tiger-tail-cucumber", big)).toContain("toxin");
    expect(codes("tiger-tail-cucumber", { ...big, wishes: ["tiger-tail-cucumber"] })).not.toContain("toxin");
  });

  test("an eater that is only planned counts as one that lives there", () => {
    const puffer = animalById.get("pufferfish")!;
    for (const planned of [false, true]) {
      expect(codes("trochus-snail", {}, [{ animal: puffer, count: 1, planned }])).toEqual(["eaten_by"]);
    }
  });

  test("status: never where nothing lifts it, not yet where something does", () => {
    const reasonsOf = (changes: Partial<TankFacts>) =>
      suitabilityOf(animalById.get("trochus-snail")!, {
        facts: referenceTank(changes),
        company: [],
        daysAhead: 0,
      }).reasons;
    expect(statusOf(reasonsOf({}))).toBe("fits");
    expect(statusOf(reasonsOf({ ageDays: exact(10) }))).toBe("not_yet");
    expect(statusOf(reasonsOf({ ageDays: exact(10), displayL: exact(10) }))).toBe("never");
  });

  test("every reason says what stands against it; every one that can be lifted says how", () => {
    for (const animal of animals) {
      const { reasons } = suitabilityOf(animal, {
        facts: referenceTank({ ageDays: exact(1) }),
        company: [],
        daysAhead: 0,
      });
      for (const { text, until } of reasons) {
        expect(text).toMatch(/^[A-Z].*\.$/s);
        if (until !== null) expect(until).toMatch(/^(once|from|if) /);
      }
    }
  });
});

describe("dates", () => {
  test("days are added and counted across months and leap days", () => {
    expect(addDays("2028-02-28", 2)).toBe("2028-03-01");
    expect(daysBetween("2028-02-28", "2028-03-01")).toBe(2);
    expect(daysBetween("2026-06-15", addDays("2026-06-15", 400))).toBe(400);
  });

  test("waves of a new tank come at six, nine, thirteen and twenty-six weeks, each on a larger share", () => {
    const dates = waveDates(10, false, false);
    expect(dates.map(({ day }) => 10 + day)).toEqual([42, 63, 91, 182]);
    expect(dates.map(({ plannedShare }) => plannedShare)).toEqual([0.6, 0.75, 0.85, 1]);
  });

  test("an old tank starts now; without a crew to watch it starts small all the same", () => {
    const usual = waveDates(1000, true, true);
    const quiet = waveDates(1000, true, true, [{ from: 3, to: 24 }]);
    expect(quiet[0]).toMatchObject({ day: 0, windowDays: 3 });
    // The second would have come on day 21; those after it keep their distance.
    expect(quiet.slice(1).map(({ day }) => day)).toEqual(usual.slice(1).map(({ day }) => day + 4));
    const soon = waveDates(1000, true, true, [{ from: -2, to: 5 }]);
    expect(soon.map(({ day }) => day)).toEqual(usual.map(({ day }) => day + 6));
    expect(waveDates(1000, true, false)[0]).toMatchObject({ day: 0, plannedShare: 0.6 });
    expect(waveDates(1000, true, true)[0]).toMatchObject({ day: 0, plannedShare: 0.75 });
  });
});

test("every gate has a sign to see, something that hastens it and something that stops it", () => {
  for (const animal of animals.filter(({ role }) => role === "crew")) {
    const gate = gateFor([animal], [], { first: true, open: false });
    expect(gate.onlyIf[0]).toMatch(/ammonia/);
    expect(gate.soonerIf.length).toBeGreaterThan(5);
    expect(gate.stopIf).toMatch(/bare for a week|two animals die/);
  }
});
