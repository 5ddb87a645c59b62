/** Medicines: what a daybook names is resolved or counts as the worst; gates stay shut until its day; shares multiply. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { findMedicine, medicines } from "../../catalogue/medicines.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import { referenceTank } from "../../engine/larder/test-kit/reference-tank.ts";
import { GATE_WORDS } from "../../engine/stocking/gates.ts";
import type { ChoreDone, Happening, TankRecord, Treated } from "../../engine/types/record.ts";
import { stopCondition } from "../bench/gate-stop.ts";
import { afterMedicineAdvice, medicineDates, medicineFigures } from "./after.ts";
import { coursesOf, leftAfter, UNKNOWN_RETURN_DAYS } from "./courses.ts";

const TODAY = "2026-06-15";
const treated = (substance: string, step: Treated["step"], daysAgo: number): Treated => ({
  ...{
    kind: "treated",
    substance,
    step,
    entry: `${substance} ${step} ${daysAgo}`,
    on: addDays(TODAY, -daysAgo),
  },
});
const changed = (daysAgo: number, share: number): ChoreDone => ({
  ...{
    kind: "chore",
    chore: "water_change",
    share,
    entry: `change ${daysAgo}`,
    on: addDays(TODAY, -daysAgo),
  },
});
const record = (...happenings: Happening[]): TankRecord => ({
  ...{ observations: [], happenings, declined: [], asOf: TODAY },
});
const scene = (...happenings: Happening[]) => ({
  ...{ facts: referenceTank({ asOf: TODAY }), record: record(...happenings), today: TODAY },
});

describe("names", () => {
  test("every name of every medicine leads to it, in any case and beside an amount", () => {
    for (const medicine of medicines) {
      for (const name of [medicine.name, medicine.id, ...medicine.also]) {
        expect([name, findMedicine(name)?.id]).toEqual([name, medicine.id]);
        expect(findMedicine(`  ${name.toUpperCase()}, second day `)?.id).toBe(medicine.id);
      }
    }
  });

  test.each(["Some Blue Bottle", "", "coppery", "copper and formalin", "curcumin"])('"%s" is none', (text) =>
    expect(findMedicine(text)).toBeNull(),
  );

  test("no fact names a dose", () => {
    expect(JSON.stringify(medicines)).not.toMatch(/\d\s?(?:mg\/L|ppm|g\/L|mL|drops|g per)/i);
  });
});

describe("courses", () => {
  test("running until it is said to have ended, whatever of its names was typed", () => {
    expect(coursesOf([], record(treated("Copper sulfate", "started", 9)), TODAY)[0]).toMatchObject({
      backOn: null,
    });
    const [over] = coursesOf(
      [],
      record(treated("copper sulfate", "started", 9), treated("Cu", "ended", 2)),
      TODAY,
    );
    expect(over).toMatchObject({ endedOn: addDays(TODAY, -2), backOn: addDays(TODAY, 58) });
  });

  test("of one day the start counts last", () => {
    const [one] = coursesOf(
      [],
      record(treated("copper", "started", 3), treated("copper", "ended", 3)),
      TODAY,
    );
    expect(one?.endedOn).toBeNull();
  });

  test("what nobody can name counts as the worst", () => {
    const longest = Math.max(...medicines.map(({ returnDays }) => returnDays.value));
    expect(UNKNOWN_RETURN_DAYS).toBe(longest);
    const [one] = coursesOf(
      [],
      record(treated("Blue Bottle", "started", 9), treated("blue bottle", "ended", 2)),
      TODAY,
    );
    expect(one).toMatchObject({ medicine: null, backOn: addDays(TODAY, longest - 2) });
  });

  test("after its day nothing is said of it any more", () => {
    expect(
      coursesOf([], record(treated("copper", "started", 99), treated("copper", "ended", 60)), TODAY),
    ).toEqual([]);
    expect(
      coursesOf([], record(treated("copper", "started", 99), treated("copper", "ended", 59)), TODAY),
    ).toHaveLength(1);
  });

  test("told in the questions and in the daybook is one", () => {
    expect(coursesOf(["Copper"], record(treated("copper sulfate", "started", 3)), TODAY)).toHaveLength(1);
    expect(coursesOf(["formalin"], record(), TODAY)).toMatchObject([{ startedOn: null, backOn: null }]);
  });
});

describe("what is left", () => {
  test("changes multiply: their order does not matter, and two in a row leave what one of both leaves", () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(share, { maxLength: 12 }), fc.nat(12), (shares, cut) => {
        const whole = leftAfter(shares);
        expect(leftAfter(shares.toReversed())).toBeCloseTo(whole, 12);
        expect(leftAfter(shares.slice(0, cut)) * leftAfter(shares.slice(cut))).toBeCloseTo(whole, 12);
        expect(whole).toBeGreaterThanOrEqual(0);
        expect(whole).toBeLessThanOrEqual(1);
      }),
    );
  });

  test("two changes of a quarter since its end leave nine sixteenths; one before its end counts for nothing", () => {
    const [one] = coursesOf(
      [],
      record(
        treated("copper", "started", 30),
        changed(20, 0.5),
        treated("copper", "ended", 10),
        changed(6, 0.25),
        changed(2, 0.25),
      ),
      TODAY,
    );
    expect(one?.left).toBeCloseTo(0.5625, 12);
    expect(medicineFigures(one!)[0]?.spread.central).toBeCloseTo(56.25, 10);
  });
});

describe("gates and advice", () => {
  const over = [treated("copper", "started", 30), treated("copper", "ended", 10)] as const;

  test("a wave is stopped until the crew may come back", () => {
    const { facts, ...rest } = scene(...over);
    const known = { facts, ...rest, latest: [], answeredOn: null };
    expect(stopCondition(GATE_WORDS.stopOthers, known)).toMatchObject({ state: "met" });
    expect(stopCondition(GATE_WORDS.stopOthers, { ...known, today: addDays(TODAY, 51) })).toMatchObject({
      state: "not_met",
    });
  });

  test("advice of the kind that closes a tank, and a dated duty, both for the same day", () => {
    const [advice] = afterMedicineAdvice(scene(...over));
    const [date] = medicineDates(scene(...over));
    expect(advice).toMatchObject({ about: "medicine", by: addDays(TODAY, 50), id: "medicine.copper.after" });
    expect(date).toMatchObject({ on: addDays(TODAY, 50), id: "medicine.copper.back" });
    expect(afterMedicineAdvice(scene(over[0]))).toEqual([]);
    expect(medicineDates(scene(over[0]))[0]).toMatchObject({
      on: TODAY,
      every: 1,
      id: "medicine.copper.check",
    });
  });
});
