import { beforeAll, describe, expect, test } from "vitest";
import { type Example, exampleTank } from "../../../checks/kit/example-answers.ts";
import { daysBetween } from "../../contract/quantity/calendar.ts";
import type { CareDate } from "../almanac/care-date.ts";
import { plain } from "../sentence.ts";
import { workingOf } from "../working.ts";
import { fitted } from "./fit.ts";
import type { WeekItem } from "./item.ts";
import { type Weeks, weeksOf } from "./weeks.ts";

/** Tanks planned and forecast on a busy machine. */
const PLENTY_MS = 600_000;
let young: Example;
let brandNew: Example;
let old: Example;
beforeAll(async () => {
  young = await exampleTank("first-reef.yaml");
  brandNew = await exampleTank("brand-new.yaml");
  old = await exampleTank("mature-400.yaml");
}, PLENTY_MS);

const duty = (on: string, change: Partial<CareDate> = {}): CareDate => ({
  ...{ id: "glass", kind: "glass", on, at: null, every: null, until: null, gate: null },
  ...{ do: ["Wipe the pane."], why: [], byWhen: [], wouldChange: [], figures: [], restsOn: "" },
  ...{ done: null, leads: null },
  ...change,
});

const told = ({ rows }: Weeks): string[] =>
  rows.flatMap(({ lists }) => Object.values(lists).flatMap((list) => list.map(plain)));

describe("weeksOf", () => {
  test("rows follow one another without a gap, from this week to the 26th", () => {
    for (const { answers } of [young, brandNew, old]) {
      const { rows } = weeksOf(answers, []);
      expect(rows.at(-1)?.to).toBe(26);
      for (const [i, row] of rows.entries()) {
        expect(row.from).toBe(i === 0 ? rows[0]?.from : (rows[i - 1]?.to ?? 0) + 1);
        expect(daysBetween(row.starts, row.ends)).toBe((row.to - row.from + 1) * 7 - 1);
      }
    }
  });

  test("a young tank's weeks are its own, an old one's are those ahead", () => {
    const weeks = weeksOf(young.answers, []);
    const age = young.answers.waves.tank.age_days.central;
    expect([weeks.counted, weeks.rows[0]?.from]).toEqual(["age", Math.floor(age / 7) + 1]);
    const ahead = weeksOf(old.answers, []);
    expect([ahead.counted, ahead.rows[0]?.from]).toEqual(["ahead", 1]);
  });

  test("each wave is bought in the week it is due, or told to come later", () => {
    const { waves } = young.answers.waves;
    const { rows, later } = weeksOf(young.answers, []);
    for (const { number, from } of waves) {
      const row = rows.find(({ starts, ends }) => starts <= from && from <= ends);
      if (row === undefined) expect(plain(later ?? [])).toContain(`wave ${number} from`);
      else expect(row.lists.buy.map(plain).join(" ")).toContain(`Wave ${number}, only if its gate holds`);
    }
    expect(waves.length).toBeGreaterThan(0);
  });

  test("a tank for which nothing may come yet is told to add none, and until when", () => {
    const { waves } = brandNew.answers;
    expect(waves.kind).toBe("nothing_yet");
    expect(weeksOf(brandNew.answers, []).rows[0]?.lists.dont.map(plain).join(" ")).toMatch(/^Add no animal/);
    expect(told(weeksOf(brandNew.answers, [])).join(" ")).not.toContain("Wave");
  });

  test("a duty stands in the week it is first due, with how often", () => {
    const { as_of } = young.answers.waves.tank;
    const { rows } = weeksOf(young.answers, [
      duty(as_of, { every: 6 }),
      duty(as_of, { id: "test.no3", kind: "test", do: ["Test nitrate."] }),
    ]);
    expect(rows[0]?.lists.do.map(plain)).toContain("Wipe the pane (every 6 days).");
    expect(rows[0]?.lists.test.map(plain)).toContain("Test nitrate.");
  });

  test("every number that it links to has a working", () => {
    const { rows, finding } = weeksOf(young.answers, []);
    const links = [finding, ...rows.flatMap(({ lists }) => Object.values(lists).flat())]
      .flat()
      .flatMap((part) => (typeof part === "string" ? [] : [part.figure]));
    expect(links.length).toBeGreaterThan(3);
    expect(links.filter((id) => workingOf(young.answers, id) === null)).toEqual([]);
  });
});

describe("fitted", () => {
  const item = (weight: number): WeekItem => ({
    ...{ inDays: 0, list: "do", weight },
    text: [`A line of about eighty letters, which takes two lines of a column: ${weight}.`],
  });

  test("what fits is left alone", () => {
    expect(fitted([{ items: [item(1), item(2)] }])).toEqual([{ items: [item(1), item(2)], more: 0 }]);
  });

  test("the lightest go first, and each is counted", () => {
    const rows = Array.from({ length: 12 }, (_, row) => ({
      items: Array.from({ length: 6 }, (__, i) => item(row * 6 + i)),
    }));
    const kept = fitted(rows);
    const left = kept.flatMap(({ items }) => items.map(({ weight }) => weight));
    expect(left.length + kept.reduce((sum, { more }) => sum + more, 0)).toBe(72);
    expect(left.length).toBeLessThan(40);
    expect(Math.min(...left)).toBe(72 - left.length);
  });
});
