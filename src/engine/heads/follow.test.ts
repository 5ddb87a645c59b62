/** The filter on whole numbers against every fate of every head, one by one, day by day. */
import * as fc from "fast-check";
import { expect, test } from "vitest";
import { animalById, supplyParameters } from "../../catalogue/index.ts";
import { doomedOf, fateOver, follow, type Hypothesis, LifeScene, livingOf } from "./follow.ts";
import { countWeight } from "./grid.ts";
import type { Life, LifeEvent } from "./life.ts";
import { headRates } from "./rates.ts";
import { chanceAt } from "./seen.ts";

const rates = headRates(supplyParameters);
const trochus = animalById.get("trochus-snail")!;
const BAND = { low: 0.6, central: 0.82, high: 0.94 };

const HYPOTHESIS: Hypothesis = {
  lossPerDay: 0.05,
  troublePerDay: null,
  seenScore: -0.5,
  found: 0.4,
  prior: 1,
};

type Fate = "alive" | "doomed" | "hidden" | "gone";
/** Every head by itself; states of all heads as text, with their chance. */
type Worlds = Map<string, { readonly heads: readonly Fate[]; readonly chance: number }>;

const put = (worlds: Worlds, heads: readonly Fate[], chance: number): void => {
  const key = heads.join();
  const had = worlds.get(key)?.chance ?? 0;
  worlds.set(key, { heads, chance: had + chance });
};

const sumOf = (worlds: Worlds): number => [...worlds.values()].reduce((sum, { chance }) => sum + chance, 0);

/** All that can come of each head in one day, as [state, chance, was it found today]. */
function dayOf(
  head: Fate,
  dies: number,
  found: number,
  late: number,
  newDies: number,
): [Fate, number, number][] {
  if (head === "gone") return [["gone", 1, 0]];
  if (head === "hidden")
    return [
      ["hidden", 1 - late, 0],
      ["gone", late, 1],
    ];
  const chance = head === "alive" ? dies : newDies;
  return [
    [head, 1 - chance, 0],
    ["hidden", chance * (1 - found), 0],
    ["gone", chance * found, 1],
  ];
}

/** Posterior by brute force: [chance of each number of living heads, log chance of what was seen outside windows]. */
function bruteForce(life: Life, { lossPerDay, seenScore, found }: Hypothesis): [number[], number] {
  const dies = 1 - Math.exp(-lossPerDay);
  const late = found * rates.foundLate.central;
  let worlds: Worlds = new Map();
  put(worlds, Array<Fate>(life.before).fill("alive"), 1);
  let logChance = 0;
  let arrived: number | null = null;
  const learn = (next: Worlds): void => {
    const all = sumOf(next);
    if (arrived === null) logChance += Math.log(all);
    worlds = new Map([...next].map(([key, one]) => [key, { ...one, chance: one.chance / all }]));
  };
  for (let day = 0; day <= life.days; day += 1) {
    const today = life.events.filter((event) => event.day === day);
    if (day > 0) {
      const bodies = today.reduce((sum, one) => sum + (one.kind === "found" ? one.count : 0), 0);
      const newDies = arrived === null ? 0 : 1 / (4 - (day - arrived));
      const next: Worlds = new Map();
      for (const { heads, chance } of worlds.values()) {
        let fates: { heads: Fate[]; chance: number; found: number }[] = [{ heads: [], chance, found: 0 }];
        for (const head of heads) {
          fates = fates.flatMap((fate) =>
            dayOf(head, dies, found, late, newDies).map(([state, p, bodiesHere]) => ({
              heads: [...fate.heads, state],
              ...{ chance: fate.chance * p, found: fate.found + bodiesHere },
            })),
          );
        }
        for (const fate of fates) if (fate.found === bodies) put(next, fate.heads, fate.chance);
      }
      learn(next);
      if (arrived !== null && day - arrived === 3) arrived = null;
    }
    for (const event of today) {
      const next: Worlds = new Map();
      for (const { heads, chance } of worlds.values()) {
        const living = heads.filter((head) => head === "alive" || head === "doomed").length;
        const onRecord = heads.filter((head) => head !== "gone").length;
        if (event.kind === "added") {
          doomedOf(event.count, event.condition, rates).forEach((p, doomed) => {
            const come = Array.from(
              { length: event.count },
              (_, i): Fate => (i < doomed ? "doomed" : "alive"),
            );
            put(next, [...heads, ...come], chance * p);
          });
        } else if (event.kind === "counted" && event.how.kind === "chance") {
          const mean = chanceAt(event.how.chance, seenScore);
          const weights = countWeight(event.seen, false, onRecord, mean, rates.seenAlike.central);
          put(next, heads, chance * weights[living]!);
        } else put(next, heads, chance);
      }
      if (event.kind === "added") {
        arrived = day;
        worlds = next;
      } else if (event.kind === "counted") learn(next);
    }
  }
  const chances: number[] = [];
  for (const { heads, chance } of worlds.values()) {
    const living = heads.filter((head) => head === "alive" || head === "doomed").length;
    chances[living] = (chances[living] ?? 0) + chance;
  }
  return [chances, logChance];
}

const counted = (day: number, seen: number): LifeEvent => ({
  ...{ day, on: "", entry: "", kind: "counted", seen, about: false },
  how: { kind: "chance", chance: BAND, parts: [] },
});
const found = (day: number, count: number): LifeEvent => ({ day, on: "", entry: "", kind: "found", count });
const added = (day: number, count: number): LifeEvent => ({
  ...{ day, on: "", entry: "", kind: "added", count, condition: null },
});
const life = (before: number, days: number, events: readonly LifeEvent[]): Life => ({
  ...{ animal: trochus, from: "", days, before, events },
});

function agree(one: Life, hypothesis: Hypothesis): void {
  const [chances, logChance] = bruteForce(one, hypothesis);
  const followed = follow(new LifeScene(one, rates), hypothesis);
  const living = livingOf(followed);
  for (let heads = 0; heads < living.length; heads += 1)
    expect(living[heads]).toBeCloseTo(chances[heads] ?? 0, 10);
  expect(followed.logChance).toBeCloseTo(logChance, 9);
}

test("three heads, two counts and a body: as every fate of every head has it", () => {
  agree(life(3, 7, [counted(2, 2), found(4, 1), counted(6, 1)]), HYPOTHESIS);
});

test("an arrival, with bodies and a count in its window, on top of settled heads", () => {
  agree(life(1, 6, [added(1, 2), found(2, 1), counted(3, 1), counted(6, 1)]), HYPOTHESIS);
});

test("any short life of few heads", () => {
  const anyEvent = (day: number) =>
    fc.oneof(
      fc.nat(4).map((seen) => counted(day, seen)),
      fc.constant(found(day, 1)),
      fc.constant(added(day, 1)),
    );
  const anyLife = fc
    .record({
      before: fc.integer({ min: 1, max: 2 }),
      days: fc.uniqueArray(fc.integer({ min: 1, max: 6 }), { maxLength: 3 }),
    })
    .chain(({ before, days }) =>
      fc.record({
        before: fc.constant(before),
        events: fc.tuple(...days.sort((a, b) => a - b).map(anyEvent)),
      }),
    )
    // More bodies than heads can't be: another test has it.
    .filter(({ before, events }) => {
      let heads = before;
      return events.every((event) => {
        if (event.kind === "added") heads += event.count;
        if (event.kind === "found") heads -= event.count;
        return heads >= 0;
      });
    });
  fc.assert(
    fc.property(
      anyLife,
      fc.double({ min: 0.001, max: 0.3, noNaN: true }),
      fc.double({ min: 0.05, max: 0.9, noNaN: true }),
      ({ before, events }, lossPerDay, foundShare) =>
        agree(life(before, 7, events), { ...HYPOTHESIS, lossPerDay, found: foundShare }),
    ),
    { numRuns: 60, seed: 4 },
  );
});

test("what befalls a newcomer in its window moves heads, not how well the rates foretold", () => {
  const dead = life(2, 30, [added(5, 4), found(6, 3), counted(30, 2)]);
  const quiet = follow(new LifeScene(life(2, 30, []), rates), HYPOTHESIS);
  const followed = follow(new LifeScene(dead, rates), HYPOTHESIS);
  // The course up to the day before the count: silence was foretold alike with and without the deaths of the journey.
  expect(followed.course[1]).toBeCloseTo(
    follow(new LifeScene(life(2, 5, []), rates), HYPOTHESIS).logChance,
    9,
  );
  expect(quiet.logChance).toBeLessThan(0);
});

test("a count by day of a kind that is out by night never makes fewer heads likelier", () => {
  const never: LifeEvent = {
    ...{ day: 8, on: "", entry: "", kind: "counted", seen: 0, about: false },
    how: { kind: "at_least", why: "by_day" },
  };
  const without = livingOf(follow(new LifeScene(life(4, 30, []), rates), HYPOTHESIS));
  const after = livingOf(
    follow(new LifeScene(life(4, 30, [never, { ...never, day: 9 }]), rates), HYPOTHESIS),
  );
  for (const [heads, chance] of after.entries()) expect(chance).toBeCloseTo(without[heads]!, 12);
});

test("more found dead than ever came, and more seen than there are, end in numbers, not in nothing", () => {
  const odd = life(2, 20, [found(3, 5), counted(9, 8)]);
  const living = livingOf(follow(new LifeScene(odd, rates), HYPOTHESIS));
  expect([...living].reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9);
});

test("trouble that takes nobody is no trouble: the same heads, the same chance of the record", () => {
  const one = life(4, 60, [counted(10, 3), found(25, 1), counted(60, 2)]);
  const quiet = follow(new LifeScene(one, rates), HYPOTHESIS);
  const idle = follow(new LifeScene(one, rates), { ...HYPOTHESIS, troublePerDay: 0 });
  expect(idle.logChance).toBeCloseTo(quiet.logChance, 9);
  for (const [heads, chance] of livingOf(quiet).entries())
    expect(livingOf(idle)[heads]).toBeCloseTo(chance, 10);
});

test("trouble that could set in foretells a sudden loss better, and a calm record worse", () => {
  const ratio = (one: Life): number => {
    const scene = new LifeScene(one, rates);
    const calm = { ...HYPOTHESIS, lossPerDay: 0.001 };
    return follow(scene, { ...calm, troublePerDay: 0.05 }).logChance - follow(scene, calm).logChance;
  };
  const nights = [20, 40, 60, 80, 100, 120];
  expect(
    ratio(
      life(
        6,
        120,
        nights.map((day) => counted(day, 6)),
      ),
    ),
  ).toBeLessThan(0);
  expect(
    ratio(
      life(
        6,
        120,
        nights.map((day) => counted(day, day < 70 ? 6 : 1)),
      ),
    ),
  ).toBeGreaterThan(2);
});

test("one head more seen never makes fewer likelier, at a loss of one in a hundred a day", () => {
  const steep = { ...HYPOTHESIS, lossPerDay: 0.01 };
  const meanAfter = (seen: number): number =>
    livingOf(follow(new LifeScene(life(6, 40, [counted(40, seen)]), rates), steep)).reduce(
      (sum, chance, heads) => sum + chance * heads,
      0,
    );
  const means = [0, 1, 2, 3, 4, 5, 6].map(meanAfter);
  expect(means).toEqual(means.toSorted((a, b) => a - b));
});

test("what a count may see of any number of heads adds up to all there is", () => {
  const all = Array.from({ length: 9 }, (_, seen) => countWeight(seen, false, 8, 0.7, 10));
  for (let heads = 0; heads < 8; heads += 1)
    expect(all.reduce((sum, weights) => sum + weights[heads]!, 0)).toBeCloseTo(1, 12);
});

test("fates of a span add up: alive, hidden, and those that would have been found", () => {
  const { lives, hidden } = fateOver(14, 0.03, 0, 0);
  expect(lives + hidden).toBeCloseTo(1, 12);
  expect(fateOver(3, 0.1, 0.5, 0).hidden).toBeCloseTo(0.5 * (1 - 0.9 ** 3), 12);
});
