/**
 * Calibration of an invented tank: what it may not do (lose matter, depend on the order of entries, learn from nothing,
 * throw a reading away or swallow an absurd one) and what it must (turn the way the readings point).
 */
import { describe, expect, test } from "vitest";
import { TABLE } from "../../src/answers/figures/table.ts";
import { animalById, animals, modelParameters } from "../../src/catalogue/index.ts";
import { finish, forecast } from "../../src/engine/ahead/forecast.ts";
import { crewKind, standingOf } from "../../src/engine/ahead/start.ts";
import { runWindow } from "../../src/engine/ahead/window.ts";
import { inventory, netFromOutside } from "../../src/engine/balance/ledger.ts";
import { D, FF, headsAt } from "../../src/engine/balance/pools.ts";
import { ENSEMBLE_STEPS } from "../../src/engine/balance/run.ts";
import { type Calibration, calibrate } from "../../src/engine/calibration/calibrate.ts";
import { lessonsOf } from "../../src/engine/calibration/lessons.ts";
import { headsOfKind } from "../../src/engine/heads/kind.ts";
import { lifeOf } from "../../src/engine/heads/life.ts";
import { headRates } from "../../src/engine/heads/rates.ts";
import { drawMembers } from "../../src/engine/larder/members.ts";
import { referenceTank } from "../../src/engine/larder/test-kit/reference-tank.ts";
import { quantile } from "../../src/engine/numeric/quantile.ts";
import { addDays } from "../../src/engine/stocking/suitability.ts";
import type { Happening, Observation, TankRecord } from "../../src/engine/types/record.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";
import { Chance } from "../kit/chance.ts";

const TODAY = "2026-06-15";
const known = (value: number) =>
  ({ low: value, central: value, high: value, origin: "stated", how: "typed" }) as const;
const facts: TankFacts = {
  ...referenceTank({ ageDays: known(300), present: [{ id: "trochus-snail", count: 3, on: "2026-01-01" }] }),
  readings: [],
  sightings: {},
};
const on = (daysAgo: number) => addDays(TODAY, -daysAgo);
const nitrate = (daysAgo: number, mgNPerL: number): Observation => ({
  ...{ kind: "reading", entry: `no3-${daysAgo}`, on: on(daysAgo), quantity: "no3_mg_n_per_l" },
  value: { low: mgNPerL * 0.8, central: mgNPerL, high: mgNPerL * 1.2 },
  ...{ censored: null, step: null, flag: null },
});
const phosphate = (daysAgo: number, mgPPerL: number): Observation => ({
  ...{ kind: "reading", entry: `po4-${daysAgo}`, on: on(daysAgo), quantity: "po4_mg_p_per_l" },
  value: { low: mgPPerL * 0.8, central: mgPPerL, high: mgPPerL * 1.2 },
  ...{ censored: null, step: null, flag: null },
});
const film = (daysAgo: number, score: number): Observation => ({
  ...{ kind: "growth", entry: `film-${daysAgo}`, on: on(daysAgo), growth: "film_rock", score, traits: {} },
});
const recordOf = (
  observations: readonly Observation[],
  happenings: readonly Happening[] = [],
): TankRecord => ({ observations, happenings, declined: [], asOf: TODAY });

const WEEKS = [28, 21, 14, 7, 0];
const rising = WEEKS.map((day, i) => nitrate(day, 4 * 1.1 ** i));
const falling = WEEKS.map((day, i) => nitrate(day, 8 * 0.9 ** i));
const films = WEEKS.map((day) => film(day, 2));
const happenings: Happening[] = [
  ...WEEKS.slice(0, 4).map(
    (day): Happening => ({
      kind: "chore",
      entry: `wc-${day}`,
      on: on(day),
      chore: "water_change",
      share: 0.1,
    }),
  ),
  {
    kind: "added",
    entry: "a1",
    on: on(30),
    animal: "trochus-snail",
    count: 1,
    condition: "usual",
    bodyRemoved: null,
    wave: null,
  },
  {
    kind: "lost_feared",
    entry: "l1",
    on: on(12),
    animal: "trochus-snail",
    count: 1,
    condition: null,
    bodyRemoved: null,
    wave: null,
  },
  { kind: "changed", entry: "c1", on: on(20), what: "feed", to: 0.2 },
  { kind: "changed", entry: "c0", on: on(24), what: "feed", to: 0.15 },
  { kind: "outage", entry: "o1", on: on(9), of: "lamp", hours: 48 },
];

const MEMBERS = 80;
const rates = headRates(TABLE);
const learn = (record: TankRecord, members = MEMBERS): Calibration =>
  finish(calibrate({ facts, record, table: modelParameters, rates, animals, members, seed: 3 }));
const kinds = [crewKind(animalById.get("trochus-snail")!, 3)];
const membersOf = (tank: TankFacts, count = MEMBERS) =>
  drawMembers(tank, modelParameters, { count, seed: 3 });
const ahead = (tank: TankFacts) =>
  finish(forecast({ facts: tank, members: membersOf(tank), kinds, events: [], days: 28, seed: 3 }));
/** Median nitrate of today and of four weeks on. */
const nitrateOf = (tank: TankFacts): readonly [today: number, later: number] => {
  const { weeks, values } = ahead(tank).quantities.no3;
  const median = (week: number) =>
    quantile(
      Array.from({ length: MEMBERS }, (_, m) => values[m * weeks + week]!),
      0.5,
    );
  return [median(0), median(4)];
};

describe("learns nothing from nothing", () => {
  test("an empty record, one without what a run shows, one with three observations", () => {
    for (const record of [
      recordOf([]),
      recordOf([], happenings),
      recordOf(rising.slice(0, 3)),
      recordOf(
        WEEKS.map((day) => ({
          ...(nitrate(day, 5) as Observation & { kind: "reading" }),
          quantity: "calcium_mg_per_l" as const,
        })),
      ),
    ]) {
      const { learned, taught } = learn(record);
      expect(taught).toBeNull();
      expect(learned.scores).toEqual([]);
    }
  });

  test("and so changes nothing, bit for bit", () => {
    const { learned } = learn(recordOf([]));
    const without = membersOf(facts);
    expect(membersOf({ ...facts, learned })).toEqual(without);
    expect(ahead({ ...facts, learned })).toEqual(ahead(facts));
  });
});

describe("learning", () => {
  const record = recordOf([...rising, ...films], happenings);
  const calibration = learn(record);
  const taughtTank = { ...facts, learned: calibration.learned };

  test("the same again, and whatever the order of entries", () => {
    const few = 24;
    const chance = new Chance(7, 1);
    const shuffled = <Item>(items: readonly Item[]): Item[] =>
      items
        .map((item) => ({ item, at: chance.between(0, 1) }))
        .sort((a, b) => a.at - b.at)
        .map(({ item }) => item);
    const other = recordOf(shuffled(record.observations), shuffled(happenings));
    const once = learn(record, few);
    expect(learn(record, few).learned).toEqual(once.learned);
    expect(learn(other, few).learned).toEqual(once.learned);
  });

  test("what was learned is plain data of a few tens of kB, and draws the same members after a journey as text", () => {
    const text = JSON.stringify(calibration.learned);
    expect(text.length).toBeLessThan(400 * MEMBERS + 10_000);
    const back = { ...facts, learned: JSON.parse(text) };
    expect(membersOf(back)).toEqual(membersOf(taughtTank));
  });

  test("more members than were learned go through them again; the seed of a draw does not tear them apart", () => {
    const more = membersOf(taughtTank, MEMBERS + 5);
    expect(more.slice(MEMBERS)).toEqual(more.slice(0, 5));
    expect(drawMembers(taughtTank, modelParameters, { count: 4, seed: 99 })).toEqual(more.slice(0, 4));
  });

  test("heads today are the keeper's list without a feared loss where it was one; water stands near the last readings", () => {
    const last = Math.log(4 * 1.1 ** 4);
    const heads: number[] = [];
    const off = membersOf(taughtTank).map((member) => {
      const { state, member: standing } = standingOf(member, kinds, taughtTank);
      heads.push(state[headsAt(0)]!);
      expect([...state].every((pool) => pool >= 0)).toBe(true);
      return Math.log(state[2]! / standing.inputs.V) - last;
    });
    expect(Math.abs(quantile(off, 0.5))).toBeLessThan(0.4);
    const mean = heads.reduce((sum, count) => sum + count, 0) / heads.length;
    const life = lifeOf(
      animalById.get("trochus-snail")!,
      facts,
      recordOf([...rising, ...films], happenings),
      rates,
    );
    const { living } = headsOfKind(life, rates);
    expect(mean).toBeCloseTo(
      living.reduce((sum, chance, heads) => sum + chance * heads, 0),
      1,
    );
  });

  test("nitrogen and phosphorus are kept count of through the learned days", () => {
    for (const member of membersOf(taughtTank).slice(0, 6)) {
      const { world, first, state, ledger } = runWindow(
        ...([
          member,
          kinds,
          taughtTank,
          calibration.learned.window,
          undefined,
          ENSEMBLE_STEPS,
          true,
        ] as const),
      );
      const rows = ledger!.rows();
      for (const element of ["N", "P"] as const) {
        const before = inventory(world, first, element);
        const after = inventory(world, state, element);
        const came = netFromOutside(rows, element);
        expect(Math.abs(after - before - came)).toBeLessThan(1e-7 * Math.max(before, after));
      }
    }
  });

  test("nitrate that rises is forecast higher than nitrate that falls, each from its own last reading on", () => {
    const [risen, up] = nitrateOf(taughtTank);
    const { learned } = learn(recordOf([...falling, ...films], happenings));
    const [fallen, down] = nitrateOf({ ...facts, learned });
    expect(up / risen).toBeGreaterThan(down / fallen);
    expect(up).toBeGreaterThan(risen * 0.8);
    expect(down).toBeLessThan(fallen * 1.1);
  });

  test("bands are narrower than before, and none has shrunk to nothing", () => {
    const { quantities, groups, readings } = lessonsOf(calibration)!;
    expect(Math.min(...quantities.map(({ spreadLeft }) => spreadLeft))).toBeLessThan(0.9);
    expect(Math.min(...quantities.map(({ spreadLeft }) => spreadLeft))).toBeGreaterThan(0.05);
    expect(groups.map(({ group }) => group)).toEqual(["no3", "film_rock"]);
    for (const { share } of groups) expect(share).toBeGreaterThan(0.05);
    expect(readings).toHaveLength(10);
  });
});

test("dirt on the sand is learned from its score: more lies there where heaps were seen than where nothing lifted", () => {
  const seen = (score: number) =>
    learn(
      recordOf(
        WEEKS.map((day) => ({
          ...{ kind: "growth", entry: `dirt-${day}`, on: on(day), growth: "detritus_sand" },
          ...{ score, traits: {} },
        })),
      ),
      40,
    );
  const lying = ({ learned }: Calibration): number =>
    quantile(
      membersOf({ ...facts, learned }, 40).map(
        (member) => standingOf(member, kinds, { ...facts, learned }).state[D]! / member.inputs.As,
      ),
      0.5,
    );
  expect(lying(seen(4))).toBeGreaterThan(2 * lying(seen(1)));
});

test("a forecast begins with the heads that the counts leave, not with the keeper's list", () => {
  const counted = (seen: number): Observation[] =>
    [40, 26, 12, 2].map((daysAgo) => ({
      ...{ kind: "heads", entry: `heads-${daysAgo}`, on: on(daysAgo), animal: "trochus-snail", seen },
      ...{ about: false, hoursFromLightsOut: 2, torch: true, foodOffered: false },
    }));
  const living = (seen: number): number => {
    const { learned } = learn(recordOf([...rising, ...counted(seen)]), 40);
    const own = { ...facts, learned };
    const heads = membersOf(own, 40).map((member) => standingOf(member, kinds, own).state[headsAt(0)]!);
    return heads.reduce((sum, count) => sum + count, 0) / heads.length;
  };
  expect(living(3)).toBeGreaterThan(2.9);
  expect(living(1)).toBeLessThan(1.5);
  // Who has bought three more since has those besides.
  const { learned } = learn(recordOf([...rising, ...counted(1)]), 40);
  const own = { ...facts, learned };
  const six = [crewKind(animalById.get("trochus-snail")!, 6)];
  const heads = membersOf(own, 40).map((member) => standingOf(member, six, own).state[headsAt(0)]!);
  expect(Math.min(...heads)).toBeGreaterThanOrEqual(3);
});

test("hair algae that were seen are there where the forecast begins, though tests read next to nothing", () => {
  const hair = (daysAgo: number, score: number): Observation => ({
    ...{ kind: "growth", entry: `hair-${daysAgo}`, on: on(daysAgo), growth: "hair_algae", score, traits: {} },
  });
  const clear = WEEKS.map((day) => ({ ...nitrate(day, 0.02), censored: "below" as const }));
  const seen = [hair(28, 1), hair(21, 1), hair(14, 2), hair(4, 3)];
  const pulled: Happening = { kind: "chore", entry: "pull", on: on(2), chore: "algae_removed", share: 0.9 };
  // A small tank without fish, of which next to nothing comes in.
  const tank: TankFacts = { ...facts, fishWetG: known(0), feedGPerDay: known(0.002) };
  const least = (happenings: readonly Happening[]): number => {
    const { learned } = finish(
      calibrate({
        ...{ facts: tank, record: recordOf([...clear, ...seen], happenings), table: modelParameters },
        ...{ rates, animals, members: 20, seed: 3 },
      }),
    );
    const own = { ...tank, learned };
    const crops = membersOf(own, 20).map(
      (member) => standingOf(member, kinds, own).state[FF]! / member.inputs.Ar,
    );
    return Math.min(...crops);
  };
  // Score 3 is 3.6 g C/m2; less than a tenth of it was never what was seen.
  expect(least([])).toBeGreaterThan(200);
  // Nine tenths pulled since: about a tenth of it is left.
  expect(least([pulled]) / least([])).toBeLessThan(0.2);
});

describe("readings that can't be taken as they stand", () => {
  const level = WEEKS.map((day) => nitrate(day, 4));
  test("an absurd one counts for less, and is told of", () => {
    const plain = learn(recordOf([...level, ...films]));
    const slipped = [...level.slice(0, 2), nitrate(14, 400), ...level.slice(3)];
    const odd = learn(recordOf([...slipped, ...films]));
    const told = lessonsOf(odd)!.readings;
    expect(told.filter(({ outlying }) => outlying > 1).map(({ entry }) => entry)).toEqual(["no3-14"]);
    const last = (calibration: Calibration): number => quantile(calibration.taught!.after.predicted[4]!, 0.5);
    expect(Math.abs(last(odd) - last(plain))).toBeLessThan(0.35);
  });

  test("below what the kit can tell: low runs are all as good, high ones are not", () => {
    const below = (day: number): Observation => ({
      ...(phosphate(day, 0.01) as Observation & { kind: "reading" }),
      ...{ value: { low: 0, central: 0.005, high: 0.01 }, censored: "below" },
    });
    const { taught } = learn(recordOf([...WEEKS.map(below), ...level]));
    const rows = taught!.after.predicted.slice(5);
    const before = taught!.before.predicted.slice(5);
    const mid = (all: readonly Float64Array[]) =>
      quantile(
        all.map((row) => quantile(row, 0.9)),
        0.5,
      );
    expect(mid(rows)).toBeLessThan(mid(before));
  });
});

test("ten years of daily readings: the last four months teach, a few dozen of each kind", () => {
  const days = Array.from({ length: 3650 }, (_, day) => day);
  const noise = new Chance(3, 2);
  const many = days.flatMap((day) => [
    nitrate(day, 4 * noise.between(0.8, 1.2)),
    phosphate(day, 0.03 * noise.between(0.8, 1.2)),
  ]);
  const { observed, learned } = learn(recordOf(many), 12);
  expect(learned.window.days).toBe(120);
  expect(observed.length).toBeLessThanOrEqual(82);
  expect(observed.reduce((sum, { of }) => sum + of, 0)).toBe(242);
});
