/** The round against an invented fleet, and the law that nothing which gets worse moves a tank down. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { BenchScene } from "../../src/answers/bench/next.ts";
import {
  ago,
  chore,
  facts,
  fine,
  growth,
  heads,
  moved,
  outage,
  reading,
  record,
  scene,
  seen,
  sign,
  TODAY,
  treated,
} from "../../src/answers/bench/test-kit/scene.ts";
import { compareNeed, type Need } from "../../src/answers/round/need.ts";
import { rowOf, summaryOf } from "../../src/answers/round/round.ts";
import { addDays } from "../../src/contract/quantity/calendar.ts";
import type { Happening, Observation } from "../../src/engine/types/record.ts";
import { EMERGENCIES, fleet } from "./fleet.ts";
import { rankOf } from "./rank.ts";

describe.each([1, 2, 3])("a fleet of 400 with ten planted emergencies, seed %i", (seed) => {
  const all = fleet(seed, TODAY);
  const rows = rankOf(all, TODAY);
  const first = rows.slice(0, 10).map(({ id }) => all.find((tank) => tank.id === id));

  test("nine or more of the ten stand in the first ten rows", () => {
    expect(all.filter(({ emergency }) => emergency !== null)).toHaveLength(EMERGENCIES.length);
    expect(first.filter((tank) => tank?.emergency != null).length).toBeGreaterThanOrEqual(9);
  });

  test("at least seven of the first ten rows are worth acting on", () => {
    expect(first.filter((tank) => tank?.worthActing).length).toBeGreaterThanOrEqual(7);
  });

  test("every row says why now, what to do and by when", () => {
    for (const { first: advice } of rows) {
      if (advice === null) continue;
      for (const part of [advice.do, advice.why[0] ?? [], advice.byWhen])
        expect(part.length).toBeGreaterThan(0);
    }
  });
});

const needOfScene = (one: BenchScene): Need =>
  rowOf(
    {
      ...summaryOf(one),
      ...{ id: "t", name: "t", keeper: "k", demonstration: false, engine: [] },
    },
    one.today,
  ).need;

/** Any tank: months of tests, and whatever befell it. */
const days = fc.integer({ min: 0, max: 120 });
const anyObservation: fc.Arbitrary<Observation> = fc.oneof(
  fc
    .tuple(
      fc.constantFrom(
        ["salinity_psu", 30, 38] as const,
        ["temperature_c", 20, 32] as const,
        ["no3_mg_n_per_l", 0, 20] as const,
        ["tan_mg_n_per_l", 0, 1] as const,
        ["no2_mg_n_per_l", 0, 1] as const,
        ["ph", 7.2, 8.8] as const,
      ),
      fc.double({ min: 0, max: 1, noNaN: true }),
      days,
      fc.constantFrom(null, null, null, "unusual" as const),
    )
    .map(([[quantity, low, high], share, on, flag]) =>
      seen(quantity, low + share * (high - low), on, { flag }),
    ),
  fc
    .tuple(
      fc.constantFrom("waterline_snails", "ill_animals", "hiding", "empty_shells", "fallen_snails" as const),
      days,
      fc.integer({ min: 1, max: 5 }),
      fc.integer({ min: 1, max: 3 }),
    )
    .map(([which, on, count, kindsSeen]) => sign(which, on, { count, kindsSeen })),
  fc
    .tuple(
      fc.constantFrom("dinoflagellates", "cyanobacteria", "hair_algae", "film_glass" as const),
      fc.integer({ min: 0, max: 4 }),
      days,
    )
    .map(([which, score, on]) => growth(which, score, on)),
  fc.tuple(fc.integer({ min: 0, max: 8 }), days).map(([count, on]) => heads("trochus-snail", count, on)),
);
const anyHappening: fc.Arbitrary<Happening> = fc.oneof(
  fc
    .tuple(
      fc.constantFrom("lost_found", "lost_feared", "added" as const),
      fc.integer({ min: 1, max: 5 }),
      days,
    )
    .map(([kind, count, on]) => moved(kind, count, on)),
  days.map((on) => chore("water_change", on)),
  fc
    .tuple(fc.constantFrom("power", "heater", "lamp" as const), fc.integer({ min: 1, max: 20 }), days)
    .map(([of, hours, on]) => outage(of, hours, on)),
  fc
    .tuple(fc.constantFrom("copper", "formalin"), fc.constantFrom("started", "ended" as const), days)
    .map(([substance, step, on]) => treated(substance, step, on)),
);

const oldestFirst = <T extends { readonly on: string }>(list: readonly T[]): T[] =>
  list.toSorted((a, b) => a.on.localeCompare(b.on));
const anyTank = fc
  .record({
    observations: fc.array(anyObservation, { maxLength: 25 }),
    happenings: fc.array(anyHappening, { maxLength: 8 }),
    trouble: fc.constantFrom(null, null, null, "gasping"),
    answered: fc.integer({ min: 0, max: 400 }),
    danger: fc.boolean(),
  })
  .map(({ observations, happenings, trouble, answered, danger }) =>
    scene({
      record: record(oldestFirst(observations), oldestFirst(happenings)),
      facts: facts({ trouble }),
      latest: danger ? [...fine, dangerous] : fine,
      answeredOn: ago(answered),
    }),
  );
const dangerous = reading({ quantity: "calcium_mg_per_l", label: "Calcium", text: "10", flag: "danger" });

type Worse = (tank: BenchScene, at: number) => BenchScene;
const withRecord = (tank: BenchScene, change: Partial<BenchScene["record"]>): BenchScene => ({
  ...tank,
  record: { ...tank.record, ...change },
});
const observed = (tank: BenchScene, one: Observation) =>
  withRecord(tank, { observations: oldestFirst([...tank.record.observations, one]) });
const befell = (tank: BenchScene, one: Happening) =>
  withRecord(tank, { happenings: oldestFirst([...tank.record.happenings, one]) });

/** The latest reading of each quantity, further from what came before it on the side that is worse. */
const furtherOut: Worse = (tank, at) => {
  const { observations } = tank.record;
  const last = observations.findLastIndex((one) => one.kind === "reading");
  const latest = observations[last];
  if (latest?.kind !== "reading") return tank;
  const earlier = observations
    .slice(0, last)
    .filter((one) => one.kind === "reading" && one.quantity === latest.quantity)
    .map((one) => (one.kind === "reading" ? one.value.central : 0))
    .sort((a, b) => a - b);
  // Outside all that was read before, and on the same side as it was: then it is worse by every measure.
  const [low = latest.value.central, high = latest.value.central] = [earlier[0], earlier.at(-1)];
  const value = latest.value.central;
  const upOnly = ["tan_mg_n_per_l", "no2_mg_n_per_l", "no3_mg_n_per_l"].includes(latest.quantity);
  const away = 0.1 + (at % 50) / 10;
  const further = value >= high ? value + away : value <= low && !upOnly ? value - away : value;
  const moved: Observation = { ...latest, value: { low: further, central: further, high: further } };
  return withRecord(tank, { observations: observations.with(last, moved) });
};

const WORSE: readonly (readonly [string, Worse])[] = [
  ["its latest reading lies further out", furtherOut],
  [
    "an unflagged latest reading is flagged as unusual",
    (tank) => {
      const { observations } = tank.record;
      const last = observations.findLastIndex((one) => one.kind === "reading");
      const latest = observations[last];
      if (latest?.kind !== "reading") return tank;
      return withRecord(tank, { observations: observations.with(last, { ...latest, flag: "unusual" }) });
    },
  ],
  [
    "a quantity is dangerous",
    (tank) => ({ ...tank, latest: [...tank.latest.filter(({ flag }) => flag === null), dangerous] }),
  ],
  ["something is told as wrong", (tank) => ({ ...tank, facts: { ...tank.facts, trouble: "gasping" } })],
  ["medicine is told", (tank) => ({ ...tank, facts: { ...tank.facts, medicines: ["copper"] } })],
  ["heads are found dead", (tank, at) => befell(tank, moved("lost_found", 1 + (at % 4), at % 90))],
  ["heads are feared lost", (tank, at) => befell(tank, moved("lost_feared", 1 + (at % 6), at % 90))],
  [
    "more were found dead than was told",
    (tank) =>
      withRecord(tank, {
        happenings: tank.record.happenings.map((one) =>
          one.kind === "lost_found" ? { ...one, count: one.count + 2 } : one,
        ),
      }),
  ],
  [
    "snails climb",
    (tank, at) => observed(tank, sign("waterline_snails", at % 60, { kindsSeen: 1 + (at % 3) })),
  ],
  [
    "an animal looks ill",
    (tank, at) => observed(tank, sign("ill_animals", at % 60, { count: 1 + (at % 3) })),
  ],
  ["an animal hides", (tank, at) => observed(tank, sign("hiding", at % 60))],
  ["an outage", (tank, at) => befell(tank, outage("power", 1 + (at % 20), at % 60))],
  [
    "a growth is thicker than it was scored",
    (tank) =>
      withRecord(tank, {
        observations: tank.record.observations.map((one) =>
          one.kind === "growth" ? { ...one, score: Math.min(4, one.score + 1) } : one,
        ),
      }),
  ],
  [
    "fewer heads were seen in a count",
    (tank) =>
      withRecord(tank, {
        observations: tank.record.observations.map((one) =>
          one.kind === "heads" ? { ...one, seen: Math.max(0, one.seen - 2) } : one,
        ),
      }),
  ],
  [
    "all that is known is older",
    (tank, at) => ({
      ...tank,
      today: addDays(tank.today, at % 200),
      record: { ...tank.record, asOf: addDays(tank.today, at % 200) },
    }),
  ],
];

describe("making one input worse never lowers a tank's rank", () => {
  test.each(WORSE)("%s", (_, worse) => {
    fc.assert(
      fc.property(anyTank, fc.nat(1000), (tank, at) => {
        expect(compareNeed(needOfScene(worse(tank, at)), needOfScene(tank))).toBeLessThanOrEqual(0);
      }),
      { numRuns: 400 },
    );
  });

  test("and it can: one danger lifts any tank that has none above every such tank", () => {
    fc.assert(
      fc.property(anyTank, anyTank, (one, other) => {
        const quiet = (tank: BenchScene) => !needOfScene(tank).some(({ urgency }) => urgency === "today");
        fc.pre(quiet(one) && quiet(other));
        const lifted = needOfScene({ ...one, latest: [...one.latest, dangerous] });
        expect(compareNeed(lifted, needOfScene(other))).toBeLessThan(0);
      }),
    );
  });
});
