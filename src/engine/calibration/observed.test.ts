/** A head count is read by what its kind lets be seen, as on the heads page; a reading by what its kit can tell. */
import { expect, test } from "vitest";
import { TABLE } from "../../answers/figures/table.ts";
import { animalById } from "../../catalogue/index.ts";
import { crewKind } from "../ahead/crew.ts";
import { FG, headsAt, TAN } from "../balance/pools.ts";
import { headRates } from "../heads/rates.ts";
import type { Spread } from "../types/estimate.ts";
import type { HeadsSeen, ReadingSeen } from "../types/record.ts";
import { observedIn } from "./observed.ts";

const KINDS = ["trochus-snail", "nassarius-snail"].map((id) => crewKind(animalById.get(id)!, 4));
const WINDOW = { from: "2026-05-01", days: 45 };

const read = (animal: string, seen: number, how: Partial<HeadsSeen> = {}) =>
  observedIn(
    {
      ...{ happenings: [], declined: [], asOf: "2026-06-15" },
      observations: [
        {
          ...{ kind: "heads", entry: "h", on: "2026-06-01", animal, seen, about: false },
          ...{ hoursFromLightsOut: 2, torch: true, foodOffered: false, ...how },
        },
      ],
    },
    WINDOW,
    { kinds: KINDS, rates: headRates(TABLE), lightHours: 9 },
  );

const shown = (animal: string, eyeHeads: number): number => {
  const [observed] = read(animal, 2);
  const state = new Float64Array(80);
  KINDS.forEach((_, s) => {
    state[headsAt(s)] = 4;
  });
  return observed!.shown(state, undefined as never, { eyeHeads } as never);
};

test("of kinds that stay in the sand fewer are expected than of those on the rock; a keeper may see well or ill", () => {
  expect(shown("trochus-snail", 0)).toBeCloseTo(4 * 0.82, 9);
  expect(shown("nassarius-snail", 0)).toBeCloseTo(4 * 0.3, 9);
  expect(shown("nassarius-snail", 1)).toBeGreaterThan(shown("nassarius-snail", 0));
  expect(shown("trochus-snail", -1)).toBeLessThan(shown("trochus-snail", 0));
});

test("two buried heads seen leave more open than two on the rock", () => {
  expect(read("nassarius-snail", 2)[0]!.error).toBeGreaterThan(read("trochus-snail", 2)[0]!.error);
});

test("a count by day of a kind that is out at night or buried teaches nothing; kinds that are not there neither", () => {
  expect(read("nassarius-snail", 2, { hoursFromLightsOut: -3, torch: false })).toEqual([]);
  expect(read("trochus-snail", 2, { hoursFromLightsOut: -3, torch: false })).toEqual([]);
  expect(read("blue-leg-hermit", 2)).toEqual([]);
});

test("scores end at 0 and 4: near them an eye errs inwards, between them either way", () => {
  const [seen] = observedIn(
    {
      ...{ happenings: [], declined: [], asOf: "2026-06-15" },
      observations: [
        { kind: "growth", entry: "g", on: "2026-06-01", growth: "film_glass", score: 1, traits: {} },
      ],
    },
    WINDOW,
    { kinds: KINDS, rates: headRates(TABLE), lightHours: 9 },
  );
  const given = (mgCPerM2: number, eyeFilm = 0) => {
    const state = new Float64Array(80);
    state[FG] = mgCPerM2;
    return seen!.shown(state, { inputs: { Ag: 1 } } as never, { eyeFilm } as never);
  };
  // Means of rounded, normally erring scores (sd 0.5): 0.16 at a bare pane, 2.00 in the middle.
  expect(Math.abs(given(0) - 0.16)).toBeLessThan(0.07);
  expect(given(300)).toBeCloseTo(2, 1);
  expect(given(0, -5)).toBeGreaterThan(0);
  expect(given(1e7, 5)).toBeLessThan(4);
  for (const crop of [0, 10, 100, 1000, 10_000]) expect(given(crop + 1)).toBeGreaterThan(given(crop));
});

const reading = (value: Spread, how: Partial<ReadingSeen> = {}) =>
  observedIn(
    {
      ...{ happenings: [], declined: [], asOf: "2026-06-15" },
      observations: [
        {
          ...{ kind: "reading", entry: "r", on: "2026-06-01", quantity: "tan_mg_n_per_l", value },
          ...{ censored: null, step: null, flag: null, ...how },
        },
      ],
    },
    WINDOW,
    { kinds: KINDS, rates: headRates(TABLE), lightHours: 9 },
  )[0]!;
const exactly = (mg: number): Spread => ({ low: mg, central: mg, high: mg });
const NOTHING: Spread = { low: 0, central: 0.1, high: 0.2 };

/** Standard deviations by which a tank with so much ammonia lies above what was read. */
const above = (read: ReturnType<typeof reading>, mgNPerL: number): number => {
  const state = new Float64Array(80);
  state[TAN] = mgNPerL * 100;
  const shown = read.shown(state, { inputs: { V: 100 } } as never, { kitTan: 0 } as never);
  return (shown - read.value) / read.error;
};

test("a kit of coarse steps says less than a fine one", () => {
  const fine = above(reading(exactly(1), { step: 0.01 }), 1.5);
  const coarse = above(reading(exactly(1), { step: 1 }), 1.5);
  expect(fine).toBeGreaterThan(coarse);
  // Even over one step, 0.29 of it, beside the kit's own 0.1.
  expect(Math.abs(coarse - 0.5 / Math.hypot(0.1, 1 / Math.sqrt(12)))).toBeLessThan(0.25);
});

test("where a kit errs by as much however little there is, as much above as below is as far off", () => {
  const read = reading(exactly(0.2), { step: 0.2 });
  expect(above(read, 0.2)).toBeCloseTo(0, 9);
  const [more, less] = [above(read, 0.35), -above(read, 0.05)];
  expect(less / more).toBeGreaterThan(0.75);
  expect(less / more).toBeLessThan(1.6);
});

test("a kit that shows nothing speaks for less than half a step; a limit that was typed stands where it was typed", () => {
  const shownNothing = reading(NOTHING, { step: 0.2, censored: "below" });
  const typed = reading({ low: 0, central: 0.25, high: 0.5 }, { censored: "below" });
  expect(above(shownNothing, 0)).toBeCloseTo(0, 9);
  expect(above(shownNothing, 0.3)).toBeGreaterThan(1.5);
  expect(above(typed, 0.3)).toBeLessThan(0);
  const lower = reading({ low: 0, central: 0.1, high: 0.2 }, { step: 0.5, censored: "below" });
  // Its limit stays at 0.2, and 1.2 of the kit's 0.1 below it is what it speaks for.
  expect(above(lower, 0.08)).toBeCloseTo(0, 9);
  expect(above(typed, 0.8)).toBeGreaterThan(1.5);
});

test("a band that was typed is taken where it is wider than the kit's own error", () => {
  const wide = reading({ low: 0.2, central: 1, high: 3 });
  expect(wide.error).toBeGreaterThan(2 * reading(exactly(1)).error);
});
