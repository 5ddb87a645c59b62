import { describe, expect, test } from "vitest";
import { type Bent, diagnosisScene, growth, reading, sign } from "../../../../checks/kit/diagnosis-scene.ts";
import { mayBeTests } from "./artefacts.ts";
import { hungryKinds, type KindAhead } from "./hunger.ts";
import { unfoundDeath } from "./unfound-death.ts";
import { judgeWaterline } from "./waterline.ts";

const TAN = "tan_mg_n_per_l";
/** A card's readings: none, week after week. */
const usual = (...values: readonly number[]) =>
  values.map((value, i) => reading(TAN, value, `2026-05-${28 - i * 6}`, { step: 0.25 }));

describe("a death that nobody found", () => {
  const risen = reading(TAN, 0.75, "2026-06-14", { step: 0.25 });
  test("is named within two days of the reading, and not later", () => {
    const found = unfoundDeath(diagnosisScene({ observations: [...usual(0, 0.1, 0, 0.1), risen] }));
    expect(found).toMatchObject({ named: true, on: "2026-06-14", others: [], quantity: TAN });
    expect(found?.rise).toBeCloseTo(0.7, 9);
    const later = diagnosisScene({ observations: [...usual(0, 0.1, 0, 0.1), risen], asOf: "2026-06-18" });
    expect(unfoundDeath(later)).toBeNull();
  });

  test("a rise within a card's step is none", () => {
    const slight = reading(TAN, 0.25, "2026-06-14", { step: 0.25 });
    expect(unfoundDeath(diagnosisScene({ observations: [...usual(0, 0.1, 0, 0.1), slight] }))).toBeNull();
  });

  test("a finer test names a smaller rise", () => {
    const fine = [0.02, 0.03, 0.02, 0.03].map((value, i) =>
      reading(TAN, value, `2026-05-${10 + i * 5}`, { step: 0.01 }),
    );
    const scene = diagnosisScene({
      observations: [...fine, reading(TAN, 0.16, "2026-06-14", { step: 0.01 })],
    });
    expect(unfoundDeath(scene)?.named).toBe(true);
  });

  test.each([
    ["treatment", { kind: "treated", on: "2026-06-10", substance: "praziquantel", step: "started" }],
    ["outage", { kind: "outage", on: "2026-06-12", of: "pumps", hours: 9 }],
    ["fed_more", { kind: "changed", on: "2026-06-08", what: "feed", to: 1 }],
    [
      "known_death",
      {
        ...{ kind: "lost_found", on: "2026-06-12", animal: "trochus-snail", count: 1 },
        ...{ condition: null, bodyRemoved: false, wave: null },
      },
    ],
    ["filter_changed", { kind: "chore", on: "2026-06-13", chore: "filter_changed", share: null }],
  ] as const)("with %s known, that comes first", (cause, happening) => {
    const scene = diagnosisScene({
      observations: [...usual(0, 0.1, 0, 0.1), risen],
      happenings: [happening as NonNullable<Bent["happenings"]>[number]],
    });
    expect(unfoundDeath(scene)).toMatchObject({ named: false, others: [cause] });
  });

  test("a young tank's ammonia is its own", () => {
    const ageDays = { low: 20, central: 20, high: 20, origin: "stated", how: "typed" } as const;
    const scene = diagnosisScene({
      facts: { ageDays },
      observations: [...usual(0, 0.1, 0, 0.1), risen],
    });
    expect(unfoundDeath(scene)).toMatchObject({ named: false, others: ["young_tank"] });
  });

  test("a settled tank without readings before: only a clear rise; a new one: nothing", () => {
    expect(unfoundDeath(diagnosisScene({ observations: [risen] }))?.usual).toBeNull();
    const slight = reading(TAN, 0.3, "2026-06-14", { step: 0.25 });
    expect(unfoundDeath(diagnosisScene({ observations: [slight] }))).toBeNull();
  });

  test("nitrite alone will do, and cloudy water is said beside it", () => {
    const nitrite = [0, 0, 0, 0.3].map((value, i) =>
      reading("no2_mg_n_per_l", value, `2026-06-${["01", "05", "09", "14"][i]}`, { step: 0.05 }),
    );
    const scene = diagnosisScene({ observations: [...nitrite, sign("cloudy_water")] });
    expect(unfoundDeath(scene)).toMatchObject({ quantity: "no2_mg_n_per_l", cloudyToo: true });
  });
});

// Common practice, no source.
describe("snails at the waterline", () => {
  const verdict = (...signs: ReturnType<typeof sign>[]) =>
    judgeWaterline(diagnosisScene({ observations: signs }))?.verdict;
  const one = (animal: string | null, hours: number | null, kindsSeen: number | null = null) =>
    sign("waterline_snails", { animal, hoursFromLightsOut: hours, kindsSeen, count: 2 });

  test.each([
    ["a nerite out of the water by day", "habit", one("nerite-snail", -4)],
    ["a trochus at the edge in the dark", "habit", one("trochus-snail", 3)],
    ["a trochus at the edge by day", "test_soon", one("trochus-snail", -4)],
    ["a trochus at an hour not said", "cannot_tell", one("trochus-snail", null)],
    ["a nassarius, which never climbs", "test_soon", one("nassarius-snail", 2)],
    ["a kind not said", "cannot_tell", one(null, 2)],
    ["three kinds at once, even by night", "test_now", one(null, 3, 3)],
  ])("%s: %s", (_, expected, seen) => {
    expect(verdict(seen)).toBe(expected);
  });

  test("two kinds logged one by one on a day are several", () => {
    expect(verdict(one("nerite-snail", 1), one("trochus-snail", 1))).toBe("test_now");
  });

  test("a sighting of none, or of last week, is no news", () => {
    expect(verdict(sign("waterline_snails", { count: 0 }))).toBeUndefined();
    expect(verdict(sign("waterline_snails", { kindsSeen: 3, on: "2026-06-05" }))).toBeUndefined();
  });
});

describe("known faults of tests", () => {
  const ids = (bent: Parameters<typeof diagnosisScene>[0]) =>
    mayBeTests(diagnosisScene(bent)).map(({ artefact }) => artefact.id);

  test("ammonia after a conditioner, not without one", () => {
    const observations = [reading(TAN, 0.5, "2026-06-13")];
    expect(ids({ observations })).not.toContain("conditioner-and-ammonia");
    const conditioned = { value: "conditioned", origin: "stated" } as const;
    expect(ids({ observations, facts: { sourceWater: conditioned } })).toContain("conditioner-and-ammonia");
  });

  test("nitrate is not to be read while nitrite shows", () => {
    const high = reading("no3_mg_n_per_l", 12, "2026-06-13");
    expect(ids({ observations: [high] })).not.toContain("nitrite-in-nitrate");
    const nitrite = reading("no2_mg_n_per_l", 0.3, "2026-06-13");
    expect(ids({ observations: [high, nitrite] })).toContain("nitrite-in-nitrate");
  });

  test("phosphate at one step of its kit, salinity off", () => {
    const step = reading("po4_mg_p_per_l", 0.01, "2026-06-13", { step: 0.01 });
    expect(ids({ observations: [step] })).toEqual(["kit-floor-phosphate"]);
    expect(ids({ observations: [reading("salinity_psu", 38, "2026-06-13")] })).toEqual([
      "instrument-salinity",
    ]);
  });

  test("an ordinary reading, an old one, one below what the kit can tell: none", () => {
    expect(ids({ observations: [reading("salinity_psu", 35, "2026-06-13")] })).toEqual([]);
    expect(ids({ observations: [reading("salinity_psu", 38, "2026-06-01")] })).toEqual([]);
    expect(
      ids({ observations: [reading(TAN, 0.25, "2026-06-13", { censored: "below", step: 0.25 })] }),
    ).toEqual([]);
  });

  test("where animals look ill the reading is taken as true", () => {
    const observations = [reading("salinity_psu", 38, "2026-06-13"), sign("ill_animals", { count: 1 })];
    expect(mayBeTests(diagnosisScene({ observations }))[0]?.animalsIll).toBe(true);
  });
});

describe("a starving kind", () => {
  const ahead = (condition: number, starvesOf20: number): KindAhead[] => [
    {
      ...{ id: "trochus-snail", starvesOf20, lowConditionByWeek: [] },
      conditionByWeek: [0.6, 0.5, 0.4, condition, 0.1],
    },
  ];
  const named = (kinds: KindAhead[] | null, observations: Parameters<typeof sign>[1] | null = null) =>
    hungryKinds(
      diagnosisScene(
        observations === null
          ? {}
          : {
              observations: [growth("film_glass", 0), growth("film_rock", 0)],
            },
      ),
      kinds,
    ).map(({ animal, inWeeks }) => [animal.id, inWeeks]);

  test("is named weeks before by the runs", () => {
    expect(named(ahead(0.2, 15))).toEqual([["trochus-snail", 3]]);
  });
  test("not where the runs are few or the reserve holds", () => {
    expect(named(ahead(0.2, 4))).toEqual([]);
    expect(named(ahead(0.6, 15).map((kind) => ({ ...kind, conditionByWeek: [0.6, 0.6] })))).toEqual([]);
  });
  test("where runs are even about it, a sign decides", () => {
    expect(named(ahead(0.2, 8))).toEqual([]);
    expect(named(ahead(0.2, 8), {})).toEqual([["trochus-snail", 3]]);
  });
  test("without the weeks ahead two signs must agree", () => {
    expect(named(null)).toEqual([]);
    expect(named(null, {})).toEqual([["trochus-snail", null]]);
  });
});
