import { describe, expect, test } from "vitest";
import { randomTank } from "../../../checks/kit/tanks.ts";
import { MEASURES } from "../../contract/daybook/read-reading.ts";
import type { Measured } from "../../contract/daybook/reading.ts";
import { flowsOutput, trendsOutput } from "../../contract/output/trends.ts";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import { dateOn } from "../../engine/trends/series.ts";
import type { Happening, Observation, ReadingSeen } from "../../engine/types/record.ts";
import { nitrateToN } from "../../engine/units/nutrients.ts";
import type { RecordScene } from "../record-scene.ts";
import { plain } from "../sentence.ts";
import { shownIn } from "../units-shown.ts";
import { flowsFor } from "./flows.ts";
import { COMMON } from "./limits.ts";
import { trendsOf } from "./trends.ts";

const today = "2026-06-15";
const read = (
  quantity: ReadingSeen["quantity"],
  day: number,
  value: number,
  change: Partial<ReadingSeen> = {},
): ReadingSeen => ({
  ...{ kind: "reading", entry: `${quantity} ${day}`, on: dateOn(today, day), quantity },
  ...{ value: { low: value, central: value, high: value }, censored: null, step: null, flag: null },
  ...change,
});
const scene = (observations: readonly Observation[], happenings: readonly Happening[] = []): RecordScene => ({
  facts: randomTank(105),
  record: { observations, happenings, declined: [], asOf: today },
  today,
});
const weeks = (count: number, of: (week: number) => ReadingSeen) =>
  Array.from({ length: count }, (_, i) => of(i - count + 1));
const nitrate = (week: number, mgPerL: number, change: Partial<ReadingSeen> = {}) =>
  read("no3_mg_n_per_l", 7 * week, nitrateToN(mgPerL), { step: nitrateToN(2), ...change });
const rising = weeks(12, (week) => nitrate(week, 60 + 2 * week));

test("a rise is told in the keeper's unit, with its number of 20 and every number a figure that has a working", () => {
  const { output, figures } = trendsOf(scene(rising));
  const [trend] = output.quantities;
  expect(trend!.title).toMatch(/^Nitrate rises by about 2 mg\/L a week \(.*\): nearly always, 20 of 20$/);
  const told = trend!.sentences.flat().flatMap((part) => (typeof part === "string" ? [] : [part.figure]));
  expect(told.length).toBeGreaterThan(2);
  const known = new Set(figures.map(({ id }) => id));
  for (const id of told) expect(known).toContain(id);
  const linked = figures.flatMap(({ working }) => working.inputs.flatMap(({ figure }) => figure ?? []));
  for (const id of linked) expect(known).toContain(id);
  expect(trendsOutput.parse(output)).toEqual(output);
  const sureness = (what: string) =>
    figures.find(({ id }) => id === `trend.no3_mg_per_l.${what}`)?.working.confidence;
  expect(sureness("slope")).toBe("computed");
  expect(sureness("limit.above")).toBe("read");
  expect(sureness("chance.above")).toBe("computed");
});

test("of what fell to nothing the line of today ends at nothing", () => {
  const fallen = weeks(8, (week) => nitrate(week, Math.max(0, -20 - 8 * week), { step: nitrateToN(2) }));
  const [trend] = trendsOf(scene(fallen)).output.quantities;
  expect(trend!.today).not.toBeNull();
  expect(trend!.today!.low).toBe(0);
  expect(trend!.today!.central).toBeGreaterThanOrEqual(0);
});

describe("a start-up's nitrite: up and down again", () => {
  const course = (values: readonly number[]) =>
    values.map((value, i) =>
      read("no2_mg_n_per_l", 3 * (i + 1 - values.length), value, {
        step: 0.1,
        ...(value === 0 ? { value: { low: 0, central: 0.05, high: 0.1 }, censored: "below" } : {}),
      }),
    );
  const up = [0, 0, 0.2, 1, 3, 5, 5, 3, 1, 0.2];

  test("its title says until when it rose and that it falls since", () => {
    const { output, figures } = trendsOf(scene(course(up)));
    const [trend] = output.quantities;
    expect(trend!.title).toMatch(
      /^Nitrite rose until about 5 Jun 2026 and has fallen since, by about .* a week \(.*\): nearly always, 20 of 20$/,
    );
    expect(trend!.way).toBe("falling");
    expect(figures.map(({ id }) => id)).toContain(trend!.turn!.figure);
    expect(trendsOutput.parse(output)).toEqual(output);
  });

  test("and that it came to rest, once it has", () => {
    const { output } = trendsOf(scene(course([...up, 0, 0, 0, 0, 0, 0])));
    expect(output.quantities[0]!.title).toMatch(
      /^Nitrite rose until about 18 May 2026 and fell after; it is level since 31 May 2026, as far as its test can tell$/,
    );
  });

  test("no change of care is asked about for its shape alone", () => {
    expect(trendsOf(scene(course([...up, 0, 0]))).advice).toEqual([]);
  });
});

test("a limit that is near is told and advised, one that is far is not", () => {
  const near = trendsOf(scene(weeks(12, (week) => nitrate(week, 80 + 2 * week))));
  expect(near.advice.map(({ id }) => id)).toEqual(["trend.no3_mg_per_l.above"]);
  expect(near.advice[0]!.why.map(plain).join(" ")).toMatch(
    /above 8\d mg\/L within 77 days: nearly always, \d+ of 20/,
  );
  expect(
    trendsOf(scene(weeks(12, () => nitrate(0, 5)).map((one, i) => nitrate(i - 11, 5, { entry: one.entry }))))
      .advice,
  ).toEqual([]);
});

test("a danger is told first and its quantity stands on top, whatever rises elsewhere", () => {
  const ammonia = [read("tan_mg_n_per_l", -30, 0.02), read("tan_mg_n_per_l", -1, 1.5, { flag: "danger" })];
  const { output } = trendsOf(scene([...rising, ...ammonia]));
  expect(output.quantities.map(({ id }) => id)).toEqual(["tan_mg_n_per_l", "no3_mg_per_l"]);
  expect(output.quantities[0]!.title).toBe(
    "Ammonia of 1.5 mg N/L on 14 Jun 2026 is dangerous; no later day's reading says otherwise",
  );
});

test("a limit of this program's own is judgement, and what is counted against it is no surer", () => {
  const { figures } = trendsOf(scene(weeks(10, (week) => read("ph", 7 * week, 8 + 0.01 * (week % 3)))));
  const sureness = (what: string) => figures.find(({ id }) => id === `trend.ph.${what}`)?.working.confidence;
  expect(sureness("limit.below")).toBe("judgement");
  expect(sureness("chance.below")).toBe("judgement");
});

test("not enough is said with what would be enough", () => {
  const [trend] = trendsOf(scene([nitrate(-1, 5), nitrate(0, 6)])).output.quantities;
  expect(trend!.title).toBe("Not enough data to say which way nitrate goes");
  const [fresh] = trendsOf(scene([read("ph", -1, 8.1)])).output.quantities;
  expect(plain(fresh!.sentences[0]!)).toContain(
    "3 more readings on different days, the last on 21 Jun 2026 or later, would",
  );
  expect(plain(trend!.sentences[0]!)).toBe(
    "Not enough data to say which way nitrate goes: 2 days with a reading. 2 more readings on different days would be enough.",
  );
});

test("a change is named with what the daybook has about it, and is not said to be its cause", () => {
  const step = weeks(24, (week) =>
    read("alkalinity_meq_per_l", 3 * week, (week < -9 ? 3 : 2.2) + 0.03 * (Math.abs(week * 7) % 5)),
  );
  const fed: Happening = { kind: "changed", what: "feed", to: 1, entry: "f", on: dateOn(today, -27) };
  const { output, advice } = trendsOf(scene(step, [fed]));
  const words = output.quantities[0]!.sentences.map(plain).join(" ");
  expect(words).toMatch(
    /Since 19 May 2026 alkalinity stands 2\.\d+ dKH lower\. About that day: feed changed\. Whether that was the cause, the readings can't say\./,
  );
  expect(advice).toEqual([]);
});

test("temperature in Fahrenheit is told with its offset, its slope without", () => {
  const warm = weeks(10, (week) => read("temperature_c", 7 * week, 26 + 0.2 * week));
  const shown = { ...shownIn(undefined), temperature: "F" as const };
  const [trend] = trendsOf(scene(warm), { shown }).output.quantities;
  expect(trend!.unit).toBe("°F");
  expect(trend!.latest.value).toBeCloseTo(78.8, 6);
  expect(trend!.per_week!.central).toBeCloseTo(0.36, 2);
  expect(trend!.limits.map(({ value }) => value)).toEqual([84.2, 71.6]);
});

// Outside the bounds of `COMMON` the reader flags what is typed; inside it does not.
test.each(Object.entries(COMMON))("%s: the bounds are those of the reader", (name, [least, most]) => {
  const rule = MEASURES[name as Measured];
  const unit = rule.units[0] ?? null;
  const verdict = (value: number) =>
    rule.read(`${value} (checked)`, { preferences: NO_PREFERENCES, unit, label: rule.label, stocked: false })
      .verdict;
  const small = (most - least) / 1000;
  expect(verdict(least - small)).toBe("flag");
  expect(verdict(least + small)).not.toBe("flag");
  expect(verdict(most - small)).not.toBe("flag");
  expect(verdict(most + small)).toBe("flag");
});

describe("ten years of daily readings", () => {
  const days = 3650;
  const many = Array.from({ length: days }, (_, i) => {
    const day = i - days + 1;
    const value = day === -2000 ? 90 : day === -1000 ? 60 : 10 + (i % 7);
    return read("no3_mg_n_per_l", day, nitrateToN(value), {
      step: nitrateToN(1),
      ...(day === -1000 ? { flag: "danger" } : {}),
    });
  });

  test("are thinned to some 90 bins, said so, and no danger is thinned away", () => {
    const [trend] = trendsOf(scene(many), { span: "all" }).output.quantities;
    const { marks, thinned } = trend!.drawn;
    expect(thinned).toBe(days);
    expect(marks.length).toBeLessThanOrEqual(100);
    expect(marks.filter(({ what }) => what === "danger").map(({ on }) => on)).toEqual([dateOn(today, -1000)]);
    // The slip of 90 is older than the line, and still to be seen at the top of its bin.
    expect(Math.max(...marks.map(({ high }) => high ?? 0))).toBeCloseTo(90, 3);
    expect(marks.filter(({ what }) => what === "bin").reduce((sum, { readings }) => sum + readings, 0)).toBe(
      days,
    );
  });

  test("are drawn day by day for the last four months, unless all are asked for", () => {
    const { drawn } = trendsOf(scene(many)).output.quantities[0]!;
    expect(drawn.thinned).toBeNull();
    expect(drawn.marks).toHaveLength(120);
  });
});

test("flows are told in milligrams, with a row for each way and a working for each number", () => {
  const below = { low: 0, central: 0.02, high: 0.05 };
  const reading = { quantity: "no3_mg_n_per_l", value: below, censored: "below", on: today } as const;
  const { output, figures } = flowsFor({ ...randomTank(105), readings: [reading] });
  expect(flowsOutput.parse(output)).toEqual(output);
  const known = new Set(figures.map(({ id }) => id));
  for (const element of output.elements) {
    for (const part of element.sentences.flat())
      if (typeof part !== "string") expect(known).toContain(part.figure);
    for (const { figure } of [...element.in, ...element.out, ...element.stays])
      expect(known).toContain(figure);
  }
  const nitrogen = output.elements[0]!;
  expect(nitrogen.step_mg).toBeGreaterThan(0);
  expect(nitrogen.sentences.map(plain).join(" ")).toContain("so it reads nought while that much passes by");
});
