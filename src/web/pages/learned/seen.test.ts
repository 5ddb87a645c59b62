/** What moved between two learnings: told by the wider band, the furthest first. */
import { expect, test } from "vitest";
import { movedBetween, type SeenQuantity } from "./seen.ts";

const band = (low: number, central: number, high: number) => ({ low, central, high });
const quantity = (id: string, after: SeenQuantity["after"]): SeenQuantity => ({
  ...{ id, label: id, unit: "mg N/d", before: band(0, 50, 100), after, seen: "well" },
  figure: `learned.${id}`,
});
const was = {
  ...{ from: "2026-05-01", to: "2026-06-14" },
  quantities: [quantity("still", band(10, 20, 30)), quantity("far", band(10, 20, 30))],
};

test("what stays within a twentieth of its band is not told", () => {
  const now = [quantity("still", band(10.5, 20, 30)), quantity("far", band(10, 26, 30))];
  expect(movedBetween(was, now).map(({ now: { id } }) => id)).toEqual(["far"]);
});

test("the furthest first, against what was shown", () => {
  const now = [quantity("still", band(10, 22, 30)), quantity("far", band(60, 70, 80))];
  const moved = movedBetween(was, now);
  expect(moved.map(({ now: { id } }) => id)).toEqual(["far", "still"]);
  expect(moved[0]!.was).toEqual(band(10, 20, 30));
});

test("where nothing had been learned, against the band before any daybook", () => {
  const [moved] = movedBetween(null, [quantity("new", band(10, 20, 30))]);
  expect(moved!.was).toEqual(band(0, 50, 100));
});

test("bands without width: another value has moved, the same one has not", () => {
  const point = { ...was, quantities: [quantity("point", band(5, 5, 5))] };
  expect(movedBetween(point, [quantity("point", band(5, 5, 5))])).toEqual([]);
  expect(movedBetween(point, [quantity("point", band(6, 6, 6))])).toHaveLength(1);
});
