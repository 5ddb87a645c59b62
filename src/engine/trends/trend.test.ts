import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { normalQuantile } from "../numeric/normal.ts";
import { RandomStream } from "../numeric/random.ts";
import type { ReadingSeen } from "../types/record.ts";
import { candidatesOf, changesOf } from "./changes.ts";
import { lineOf, lineOn } from "./line.ts";
import { dateOn, seriesOf } from "./series.ts";
import { type EventOn, trendOf } from "./trend.ts";

const AS_OF = "2026-06-15";
const reading = (day: number, value: number, change: Partial<ReadingSeen> = {}): ReadingSeen => ({
  ...{ kind: "reading", quantity: "no3_mg_n_per_l", entry: `e${day}`, on: dateOn(AS_OF, day) },
  ...{ value: { low: value, central: value, high: value }, censored: null, step: 1, flag: null },
  ...change,
});
const below = (day: number, bound: number) =>
  reading(day, bound, { value: { low: 0, central: bound / 2, high: bound }, censored: "below" });
const LIMIT = { id: "most", side: "above" as const, value: 20 };
const trend = (readings: readonly ReadingSeen[], events: readonly EventOn[] = []) =>
  trendOf({ series: seriesOf(readings, AS_OF), events, limits: [LIMIT], seed: 1 });

describe("not enough data", () => {
  test("no reading: nothing at all", () => expect(trend([])).toBeNull());

  test("one reading: three more, the last a week after it", () => {
    expect(trend([reading(0, 5)])).toMatchObject({ way: "not_enough", enough: { readings: 3, inDays: 7 } });
  });

  test("four readings within three days: one more, once the week is full", () => {
    const few = [0, -1, -2, -3].toReversed().map((day) => reading(day, 5 + day));
    expect(trend(few)).toMatchObject({ way: "not_enough", enough: { readings: 1, inDays: 4 } });
  });

  test("ten readings of one day are one", () => {
    const same = Array.from({ length: 10 }, () => reading(-1, 5));
    expect(trend(same)).toMatchObject({ way: "not_enough", enough: { readings: 3 } });
  });
});

const weekly = (of: (day: number) => number, count = 12) =>
  Array.from({ length: count }, (_, i) => reading(-7 * (count - 1 - i), of(-7 * (count - 1 - i))));

describe("which way it goes", () => {
  test("a steady rise of 1 a week is told with its limit", () => {
    const found = trend(weekly((day) => 15 + Math.round(day / 7)))!;
    expect(found.way).toBe("rising");
    expect(found.risingOf20).toBe(20);
    expect(found.line!.perDay.central * 7).toBeCloseTo(1, 1);
    const [crossing] = found.crossings;
    expect(crossing!.of20).toBeGreaterThanOrEqual(19);
    expect(crossing!.days!.central).toBeGreaterThan(25);
    expect(crossing!.days!.central).toBeLessThan(45);
  });

  test("the same reading over and over is level, as far as its step can tell", () => {
    const found = trend(weekly(() => 5))!;
    expect(found.way).toBe("level");
    expect(found.line!.perDay).toMatchObject({ central: 0 });
    // Twelve times "5" from a kit with a step of 1: anything from 4.5 to 5.5.
    const today = lineOn(found.line!, 0);
    expect(today.low).toBeLessThan(4.7);
    expect(today.high).toBeGreaterThan(5.3);
  });

  test("readings below what the kit can tell bound the slope, they are no noughts", () => {
    const found = trend(Array.from({ length: 12 }, (_, i) => below(-7 * (11 - i), 2)))!;
    expect(found.way).not.toBe("rising");
    expect(found.line!.perDay.low).toBeLessThan(0);
    expect(found.line!.perDay.high).toBeGreaterThan(0);
    expect(found.line!.perDay.high * 70).toBeLessThanOrEqual(2 + 1e-9);
    // Four of five readings bound the line, so its end may lie a little beyond.
    expect(lineOn(found.line!, 0).high).toBeLessThanOrEqual(2.5);
  });

  test("one slip of the pen is marked, kept and moves nothing", () => {
    const slip = weekly((day) => (day === -35 ? 80 : 10 + (day % 2)));
    const [with_, without] = [trend(slip)!, trend(weekly((day) => 10 + (day % 2)))!];
    expect(with_.line!.outliers.map(({ day }) => day)).toEqual([-35]);
    expect(with_.days).toHaveLength(12);
    expect(Math.abs(with_.line!.perDay.central - without.line!.perDay.central) * 7).toBeLessThan(0.2);
  });

  test("a trend that ended two months ago is not carried on to today", () => {
    const old = weekly((day) => 15 + Math.round(day / 7)).map((one, i) =>
      reading(-140 + 7 * i, one.value.central),
    );
    expect(trend(old)!.crossings).toEqual([]);
  });
});

test("the last readings are told where four or more go one way as far as the test can tell", () => {
  const lately = (values: readonly number[]) =>
    trend(values.map((value, i) => reading(3 * i - 30, value)))!.lately;
  expect(lately([0, 1, 5, 15, 10, 4, 2])).toEqual({ way: "falling", readings: 4 });
  expect(lately([9, 1, 5, 15, 20])).toEqual({ way: "rising", readings: 4 });
  expect(lately([0, 1, 5, 15, 10, 4])).toBeNull();
  expect(lately([15, 10, 4, 4, 4])).toBeNull();
  expect(lately([5])).toBeNull();
});

describe("a dangerous reading", () => {
  const quiet = weekly(() => 5);
  test("stands, however well the rest is", () => {
    expect(trend([...quiet, reading(0, 90, { flag: "danger" })])!.danger).toMatchObject({ stands: true });
  });
  test("of a day with a second, milder one stands too", () => {
    const two = [...quiet.slice(0, -1), reading(0, 90, { flag: "danger" }), reading(0, 5)];
    expect(trend(two)!.danger).toMatchObject({ stands: true });
  });
  test("that a later day's reading replaced is told for two weeks", () => {
    const at = (day: number) =>
      trend([...quiet.slice(0, 5), reading(day, 90, { flag: "danger" }), reading(0, 5)])!.danger;
    expect(at(-10)).toMatchObject({ stands: false });
    expect(at(-20)).toBeNull();
  });
});

describe("changes", () => {
  const noise = (seed: number) => {
    const random = new RandomStream(seed);
    return () => normalQuantile(Math.max(1e-9, random.uniform()));
  };

  test("a step at an event is found and named, and the trend begins anew there", () => {
    const draw = noise(4);
    const readings = Array.from({ length: 40 }, (_, i) =>
      reading(-2 * (39 - i), (i < 20 ? 8 : 14) + 0.7 * draw(), { step: 0.5 }),
    );
    const found = trend(readings, [
      { day: -38, entry: "feed" },
      { day: -20, entry: "snail" },
    ])!;
    expect(found.changes).toHaveLength(1);
    expect(found.changes[0]).toMatchObject({ events: ["feed"], shape: "step", day: -38 });
    expect(found.changes[0]!.by).toBeGreaterThan(4.5);
    expect(found.window).toMatchObject({ fromDay: -38, why: "change" });
    expect(found.way).not.toBe("rising");
  });

  test("a step at no event is found too, and has none", () => {
    const draw = noise(5);
    const readings = Array.from({ length: 40 }, (_, i) =>
      reading(-2 * (39 - i), (i < 20 ? 8 : 14) + 0.7 * draw(), { step: 0.5 }),
    );
    expect(trend(readings)!.changes[0]).toMatchObject({ events: [], shape: "step" });
  });

  // 400 quiet series, five events each: at most 1 in 20 may be said to have changed; 2 standard errors are 2.2 %.
  test.each([
    ["independent readings", 0],
    ["readings that resemble the one before by a third", 0.33],
  ])("of quiet series of %s at most 1 in 20 is said to have changed", (_, likeness) => {
    let said = 0;
    for (let seed = 0; seed < 400; seed += 1) {
      const draw = noise(1000 + seed);
      let error = draw();
      const points = Array.from({ length: 24 }, (__, i) => {
        error = likeness * error + Math.sqrt(1 - likeness ** 2) * draw();
        return { day: 3 * i, value: 10 + 0.1 * i + error };
      });
      const events = candidatesOf([15, 26, 33, 44, 57].map((day) => ({ day, entry: String(day) })));
      if (changesOf(points, events, 0.1).length > 0) said += 1;
    }
    expect(said / 400).toBeLessThanOrEqual(0.05 + 0.022);
  });
});

// 300 series: 90 % bands, 2 standard errors are 3.5 %. Coarse kits make them wider, never narrower.
test.each([
  ["fine test", 0],
  ["test of coarse steps", 2],
])("the slope's 90 %% band holds the true one in at least 9 of 10 series of a %s", (_, step) => {
  let held = 0;
  for (let seed = 0; seed < 300; seed += 1) {
    const random = new RandomStream(seed, 9);
    const points = Array.from({ length: 14 }, (__, i) => {
      const day = -5 * (13 - i);
      const true_ = 20 + 0.05 * day + normalQuantile(Math.max(1e-9, random.uniform()));
      const value = step === 0 ? true_ : Math.round(true_ / step) * step;
      return {
        day,
        on: "",
        value,
        low: value - step / 2,
        high: value + step / 2,
        censored: null,
        danger: false,
        entries: [],
      };
    });
    const { low, high } = lineOf(points, Math.max(step, 0.01), seed)!.perDay;
    if (low <= 0.05 && 0.05 <= high) held += 1;
  }
  expect(held / 300).toBeGreaterThanOrEqual(0.9 - 0.035);
});

describe("laws", () => {
  const anyReadings = fc.array(
    fc.record({ day: fc.integer({ min: -120, max: 0 }), value: fc.integer({ min: 0, max: 60 }) }),
    { minLength: 4, maxLength: 40 },
  );
  const made = (list: readonly { readonly day: number; readonly value: number }[], factor = 1, shift = 0) =>
    [...list]
      .sort((a, b) => a.day - b.day)
      .map(({ day, value }) => reading(day, value * factor + shift, { step: factor }));

  test("another unit changes the numbers by the unit alone", () => {
    fc.assert(
      fc.property(anyReadings, (list) => {
        const [one, four] = [trend(made(list)), trend(made(list, 4))];
        expect(four?.way).toBe(one?.way);
        expect(four?.risingOf20 ?? null).toBe(one?.risingOf20 ?? null);
        if (one?.line != null) expect(four!.line!.perDay.central).toBeCloseTo(4 * one.line.perDay.central, 7);
      }),
      { numRuns: 60 },
    );
  });

  test("same readings, same answer", () => {
    fc.assert(
      fc.property(anyReadings, (list) => void expect(trend(made(list))).toEqual(trend(made(list)))),
      { numRuns: 20 },
    );
  });

  test("a danger today stands whatever came before", () => {
    fc.assert(
      fc.property(anyReadings, (list) => {
        expect(trend([...made(list), reading(0, 99, { flag: "danger" })])!.danger?.stands).toBe(true);
      }),
      { numRuns: 30 },
    );
  });
});
