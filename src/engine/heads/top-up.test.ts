import { expect, test } from "vitest";
import { animalById } from "../../catalogue/index.ts";
import { SHELVES, type ShelfId } from "../types/shelf.ts";
import { type Missing, ordersOf, type TopUp, topUps } from "./top-up.ts";

const TODAY = "2026-06-15";
const trochus = animalById.get("trochus-snail")!;
const nassarius = animalById.get("nassarius-snail")!;
const plenty = Object.fromEntries(SHELVES.map((shelf) => [shelf, 1000])) as Record<ShelfId, number>;
const none = Object.fromEntries(SHELVES.map((shelf) => [shelf, 0])) as Record<ShelfId, number>;

const missing = (over: Partial<Missing>): Missing => ({
  ...{ animal: trochus, now: 4, wanted: 10, groupMin: 1, most: 100 },
  later: [
    { weeks: 4, heads: 3.8 },
    { weeks: 12, heads: 3.4 },
    { weeks: 26, heads: 2.8 },
  ],
  ...over,
});

test("a shelf that lost over two fifths of its mouths asks today, for what is missing", () => {
  const { items } = topUps([missing({})], plenty, 1, TODAY);
  expect(items).toMatchObject([{ count: 6, why: "shelf", latest: TODAY }]);
});

test("heads that dwindle later are asked for before the shelf is short", () => {
  const dwindling = missing({
    ...{ now: 9, wanted: 10 },
    later: [
      { weeks: 4, heads: 8 },
      { weeks: 12, heads: 5 },
      { weeks: 26, heads: 2 },
    ],
  });
  const [item] = topUps([dwindling], plenty, 1, TODAY).items;
  // Six of ten mouths are left between the fourth and the twelfth week.
  expect(item!.latest > "2026-07-20" && item!.latest < "2026-09-07").toBe(true);
});

test("nobody is ordered that the larder would not feed, that room does not hold, or that is not missing", () => {
  expect(topUps([missing({})], none, 1, TODAY)).toEqual({ items: [], unfed: [trochus] });
  expect(topUps([missing({ most: 5 })], plenty, 1, TODAY).items).toMatchObject([{ count: 1 }]);
  expect(topUps([missing({ now: 10, later: [] })], plenty, 1, TODAY).items).toEqual([]);
});

test("spare food is given once: what the first eat, the next find gone", () => {
  const spare = { ...none, film_glass: 20, film_rock: 20, film_sand: 20, hair_algae: 20 };
  const both = topUps([missing({}), missing({ animal: trochus })], spare, 1, TODAY).items;
  const eaten = both.reduce((sum, { count }) => sum + count * trochus.breakEvenIntakeMgCPerDay, 0);
  expect(eaten).toBeLessThanOrEqual(80);
});

test("fewer than its company wants: asked for within six weeks", () => {
  const lonely = missing({ animal: nassarius, now: 2, wanted: 6, groupMin: 3 });
  expect(topUps([lonely], plenty, 1, TODAY).items).toMatchObject([
    { why: "group", count: 4, latest: "2026-07-27" },
  ]);
});

test("a growth that is back asks for those who eat it and became fewer, not for others", () => {
  const few = missing({ now: 8, later: [] });
  const back = new Set<ShelfId>(["film_rock"]);
  expect(topUps([few], plenty, 1, TODAY, back).items).toMatchObject([
    { why: "growth", shelf: "film_rock", count: 2 },
  ]);
  expect(topUps([few], plenty, 1, TODAY, new Set(["carrion"] as const)).items).toEqual([]);
});

const item = (count: number, latest: string): TopUp => ({
  animal: trochus,
  count,
  why: "shelf",
  shelf: null,
  latest,
});

test("one snail far off waits; days near each other go together; five heads are worth a parcel", () => {
  expect(ordersOf([item(1, "2026-09-01")], TODAY)).toMatchObject([{ worth: false, heads: 1 }]);
  expect(ordersOf([item(1, "2026-09-01"), item(4, "2026-10-01")], TODAY)).toMatchObject([
    { worth: true, heads: 5, latest: "2026-09-01" },
  ]);
  expect(ordersOf([item(2, "2026-06-24"), item(2, "2026-12-01")], TODAY)).toMatchObject([
    { worth: true, latest: "2026-06-24" },
    { worth: false, latest: "2026-12-01" },
  ]);
});
