/** A head count is read by what its kind lets be seen, as on the heads page. */
import { expect, test } from "vitest";
import { TABLE } from "../../answers/figures/table.ts";
import { animalById } from "../../catalogue/index.ts";
import { crewKind } from "../ahead/crew.ts";
import { headsAt } from "../balance/pools.ts";
import { headRates } from "../heads/rates.ts";
import type { HeadsSeen } from "../types/record.ts";
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
