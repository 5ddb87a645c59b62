/** Start-up: the stage by tests, the dose that proves it, what is due, and an end that keeps its own laws. */
import { describe, expect, test } from "vitest";
import { modelParameters } from "../../catalogue/index.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import { START_UP } from "../../engine/care/start-up/judgement.ts";
import { doneOn } from "../../engine/care/start-up/runs.ts";
import { drawMembers } from "../../engine/larder/members.ts";
import { referenceTank } from "../../engine/larder/test-kit/reference-tank.ts";
import type { Dosed, ReadingSeen, TankRecord } from "../../engine/types/record.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { TOXIC } from "../bench/water.ts";
import { startUpAdvice } from "./advice.ts";
import { ammoniumChlorideG } from "./dose.ts";
import { nextTestOf, startUpDates } from "./next-test.ts";
import { stageOf } from "./stage.ts";
import { startUpOf } from "./start-up.ts";
import { topsOf } from "./tops.ts";
import { endTitle, stageSentence } from "./words.ts";

const TODAY = "2026-06-15";
const stated = (value: number) =>
  ({ low: value, central: value, high: value, origin: "stated", how: "typed" }) as const;
const empty = (changes: Partial<TankFacts> = {}): TankFacts =>
  referenceTank({ ageDays: stated(21), fishWetG: stated(0), feedGPerDay: stated(0), ...changes });

const reading = (daysAgo: number, quantity: ReadingSeen["quantity"], value: number): ReadingSeen => ({
  ...{ kind: "reading", entry: `${quantity} ${daysAgo}`, on: addDays(TODAY, -daysAgo), quantity },
  ...{ value: { low: value, central: value, high: value }, censored: null, step: null, flag: null },
});
const tan = (daysAgo: number, value: number) => reading(daysAgo, "tan_mg_n_per_l", value);
const no2 = (daysAgo: number, value: number) => reading(daysAgo, "no2_mg_n_per_l", value);
const dosed = (daysAgo: number, mgNPerL: number | null): Dosed => ({
  ...{ kind: "dosed", entry: `dose ${daysAgo}`, on: addDays(TODAY, -daysAgo), mgNPerL },
});
const record = (observations: ReadingSeen[], happenings: Dosed[] = []): TankRecord => ({
  ...{ observations, happenings, declined: [], asOf: TODAY },
});
const scene = (observations: ReadingSeen[], happenings: Dosed[] = [], facts = empty()) => ({
  ...{ facts, record: record(observations, happenings), today: TODAY },
});

describe("the stage by tests", () => {
  test.each([
    ["no test", [], "no_data"],
    ["ammonia alone tested, and nothing of it", [tan(1, 0)], "no_data"],
    ["tests of last month", [tan(30, 1), no2(30, 0.5)], "no_data"],
    ["ammonia and no nitrite", [tan(1, 1.5), no2(1, 0)], "ammonia"],
    ["both", [tan(1, 1.5), no2(1, 0.4)], "both"],
    ["ammonia gone, nitrite there", [tan(9, 2), tan(1, 0), no2(1, 0.4)], "nitrite"],
    ["neither, after ammonia was read", [tan(9, 2), tan(1, 0), no2(1, 0)], "clear"],
    ["neither, and never was", [tan(1, 0), no2(1, 0)], "waiting"],
  ] as const)("%s", (_, seen, stage) => {
    expect(stageOf(scene([...seen])).stage).toBe(stage);
  });

  test("a dose of which nothing is left a day later proves it; nought on one day does not", () => {
    const before = [tan(9, 2), no2(4, 0.3)];
    expect(stageOf(scene([...before, tan(1, 0), no2(1, 0)])).stage).toBe("clear");
    expect(stageOf(scene([...before, tan(1, 0), no2(1, 0)], [dosed(2, 1)])).stage).toBe("proven");
    expect(stageOf(scene([...before, tan(1, 0), no2(1, 0.2)], [dosed(2, 1)])).stage).toBe("nitrite");
    // two days later says nothing of one day, a drop says nothing of a load
    expect(stageOf(scene([...before, tan(1, 0), no2(1, 0)], [dosed(3, 1)])).stage).toBe("clear");
    expect(stageOf(scene([...before, tan(1, 0), no2(1, 0)], [dosed(2, 0.1)])).stage).toBe("clear");
  });

  test("a later test that reads something takes the proof back", () => {
    const proven = [tan(5, 0), no2(5, 0)];
    expect(stageOf(scene(proven, [dosed(6, 1)])).stage).toBe("proven");
    expect(stageOf(scene([...proven, tan(1, 1), no2(1, 0)], [dosed(6, 1)])).stage).toBe("ammonia");
  });

  const saysOf = (readings: ReadingSeen[]) => {
    const of = scene(readings);
    return stageSentence(stageOf(of), topsOf(of));
  };

  test("a rise and a fall around a top are told, not the test before alone", () => {
    const values = [0, 0, 0.2, 1, 3, 5, 5, 3, 1, 0.4];
    const readings = values.flatMap((value, i) => {
      const daysAgo = 3 * (values.length - 1 - i);
      return [no2(daysAgo, value), tan(daysAgo, i > 6 ? 0 : 1)];
    });
    const says = saysOf(readings);
    expect(says).toContain("Nitrite rose until about 5 Jun 2026 and has fallen since.");
    expect(says).not.toContain("than the test before");
    expect(saysOf([tan(5, 0), no2(5, 1), tan(1, 0), no2(1, 0.4)])).toContain("less than the test before");
  });

  test("ages: not filled, and past it", () => {
    expect(stageOf(scene([], [], empty({ ageDays: stated(-4) }))).stage).toBe("not_filled");
    expect(stageOf(scene([tan(1, 2), no2(1, 1)], [], empty({ ageDays: stated(400) }))).stage).toBe("past");
  });

  test("what can be read is what the bench's gate calls readable", () => {
    expect(START_UP.readable).toEqual({
      tan: TOXIC.tan_mg_n_per_l.readable,
      no2: TOXIC.no2_mg_n_per_l.readable,
    });
  });
});

describe("what is due", () => {
  test("three days after the last test while something can be read, never before today", () => {
    const next = (daysAgo: number) => nextTestOf(stageOf(scene([tan(daysAgo, 1), no2(daysAgo, 0.4)])), TODAY);
    expect(next(1)).toEqual({ on: addDays(TODAY, 2), what: "test" });
    expect(next(8)).toEqual({ on: TODAY, what: "test" });
  });

  test("a dose, and a look at it the day after; no dose where something lives", () => {
    const clear = [tan(9, 2), tan(1, 0), no2(1, 0)];
    expect(nextTestOf(stageOf(scene(clear)), TODAY)?.what).toBe("dose");
    expect(nextTestOf(stageOf(scene(clear, [dosed(0, 1)])), TODAY)).toEqual({
      on: addDays(TODAY, 1),
      what: "look",
    });
    const stocked = empty({ present: [{ id: "trochus-snail", count: 2, on: null }] });
    expect(nextTestOf(stageOf(scene(clear, [], stocked)), TODAY)?.what).toBe("test");
  });

  test("an end, proven or past, asks for nothing", () => {
    const proven = scene([tan(9, 2), tan(1, 0), no2(1, 0)], [dosed(2, 1)]);
    expect(startUpDates(proven)).toEqual([]);
    expect(startUpAdvice(proven)).toEqual([]);
  });

  test("advice begins with a verb, has 20 words at most, and leaves a stocked tank to the bench", () => {
    for (const seen of [
      [],
      [tan(1, 1), no2(1, 0)],
      [tan(1, 0), no2(1, 0)],
      [tan(9, 2), tan(1, 0), no2(1, 0)],
    ]) {
      const [advice] = startUpAdvice(scene(seen));
      expect(String(advice?.do[0]).split(" ").length).toBeLessThanOrEqual(20);
    }
    const stocked = empty({ present: [{ id: "trochus-snail", count: 2, on: null }] });
    expect(startUpAdvice(scene([tan(1, 1), no2(1, 0)], [], stocked))).toEqual([]);
  });
});

describe("the end", () => {
  const members = drawMembers(empty({ ageDays: stated(0) }), modelParameters, { count: 40, seed: 3 });
  const endsWith = (rock: "live" | "dry") => {
    const facts = empty({ ageDays: stated(0), rockStart: { value: rock, origin: "stated" } });
    return members.map((member) => doneOn(member, { facts, kinds: [], stocked: false }, 100) ?? 999);
  };
  const [live, dry] = [endsWith("live"), endsWith("dry")];

  test("live rock never takes longer than dry rock, in any version by more than a feeding", () => {
    live.forEach((days, m) => {
      // A later dose may fall on another day: the pair is compared where both end.
      if (dry[m]! < 999) expect(days).toBeLessThanOrEqual(dry[m]! + 2);
    });
  });

  test("told: dates in order, counts that rise, every figure of a sentence there", () => {
    const { output, figures } = startUpOf(scene([tan(1, 1), no2(1, 0.4)]), () => {});
    const { end, runs, versions } = output;
    expect(end).not.toBeNull();
    expect([end!.early, end!.middle, end!.late]).toEqual([end!.early, end!.middle, end!.late].toSorted());
    expect(end!.by.map(({ of_20 }) => of_20)).toEqual(
      end!.by.map(({ of_20 }) => of_20).toSorted((a, b) => a - b),
    );
    const byMiddle = end!.by.find(({ on }) => on === end!.middle)!;
    expect(endTitle(output)).toContain(`${byMiddle.of_20} of 20; between`);
    const several = {
      ...end!,
      by: end!.by.map((one) => ({ ...one, of_20: one === byMiddle ? 12 : one.of_20 })),
    };
    expect(endTitle({ ...output, end: several })).toContain("about even, 12 of 20; between");
    expect(versions!.left).toBeGreaterThanOrEqual(START_UP.leastLeft);
    expect(runs!.ammonia).toHaveLength(20);
    expect(runs!.nitrite.every((run) => run.length === runs!.days.length)).toBe(true);
    const ids = new Set(figures.map(({ id }) => id));
    const named = [
      end!.figure,
      ...end!.by.map(({ figure }) => figure),
      ...Object.values(runs!.figures),
      ...output.by_rock.map(({ figure }) => figure),
      ...Object.values(output.dose!.figures),
    ];
    expect(named.filter((id) => !ids.has(id))).toEqual([]);
  });
});

test("ammonium chloride of a dose: 3.82 mg for a mg of nitrogen, by its molar masses", () => {
  expect(ammoniumChlorideG({ low: 100, central: 100, high: 100 }, 1).central).toBeCloseTo(0.38189, 4);
});
