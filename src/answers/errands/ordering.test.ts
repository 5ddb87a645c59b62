import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { type Example, exampleTank } from "../../../checks/kit/example-answers.ts";
import type { Ordered, TankRecord } from "../../engine/types/record.ts";
import type { ShopTerms } from "../../engine/types/tank.ts";
import { plain } from "../sentence.ts";
import { comingDates } from "./coming-dates.ts";
import { onOrder } from "./on-order.ts";
import { orderingOf, straysOf } from "./ordering.ts";

const PLENTY_MS = 600_000;
let young: Example;
beforeAll(async () => {
  young = await exampleTank("first-reef.yaml");
}, PLENTY_MS);

const order = (change: Partial<Ordered>): Ordered => ({
  ...{ entry: "e", on: "2026-06-01", step: "placed", animal: "dwarf-cerith", heads: 3, wave: 1 },
  expectedOn: null,
  ...change,
});
const record = (...orders: readonly Ordered[]): TankRecord => ({
  ...{ observations: [], happenings: [], declined: [], asOf: "2026-06-15" },
  orders,
});
const shop = (change: Partial<ShopTerms>): ShopTerms => ({
  ...{ leadDays: null, leastHeads: null, packs: [], holdsBelowC: null, holdsAboveC: null },
  ...change,
});
const lineOf = (animal: string, ordering: ReturnType<typeof orderingOf>) =>
  ordering?.lines.find((line) => line.animal === animal);

describe("onOrder", () => {
  test("what came, dead or alive, is taken off the oldest order of its kind", () => {
    const placed = [
      order({ entry: "a" }),
      order({ entry: "b", heads: 2, on: "2026-06-03", expectedOn: "2026-06-09" }),
    ];
    expect(onOrder(record(...placed))).toMatchObject([
      { heads: 5, since: "2026-06-01", entries: ["a", "b"] },
    ]);
    const came = order({ step: "arrived", heads: 4, on: "2026-06-08" });
    expect(onOrder(record(...placed, came))).toEqual([
      { animal: "dwarf-cerith", heads: 1, since: "2026-06-03", expectedOn: "2026-06-09", entries: ["b"] },
    ]);
  });

  test("what comes without an order leaves none open, and none below zero", () => {
    const step = fc.record({ placed: fc.boolean(), heads: fc.integer({ min: 1, max: 9 }) });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        const orders = steps.map(({ placed, heads }, i) =>
          order({ entry: `e${i}`, heads, step: placed ? "placed" : "arrived" }),
        );
        let open = 0;
        for (const { placed, heads } of steps) open = placed ? open + heads : Math.max(0, open - heads);
        expect(onOrder(record(...orders)).reduce((sum, { heads }) => sum + heads, 0)).toBe(open);
      }),
    );
  });
});

describe("comingDates", () => {
  const datesOn = (today: string, ...orders: readonly Ordered[]) =>
    comingDates({ facts: young.facts, record: record(...orders), today });

  test("one for each kind that should come, with its gate; none once it has come, or where no day was said", () => {
    const placed = order({ expectedOn: "2026-06-20" });
    expect(datesOn("2026-06-15", placed)).toMatchObject([{ id: "order.dwarf-cerith", on: "2026-06-20" }]);
    expect(datesOn("2026-06-15", placed)[0]?.gate).not.toBeNull();
    expect(datesOn("2026-06-15", placed, order({ step: "arrived", heads: 3 }))).toEqual([]);
    expect(datesOn("2026-06-15", order({}))).toEqual([]);
  });

  test("what is late is asked after today", () => {
    const [late] = datesOn("2026-06-25", order({ expectedOn: "2026-06-20" }));
    expect(late).toMatchObject({ on: "2026-06-25" });
    expect(plain(late?.do ?? [])).toContain("Ask the shop for 3 dwarf ceriths");
  });
});

describe("orderingOf", () => {
  test("asks for the plan where nobody said how a shop sells", () => {
    const ordering = orderingOf(young.answers, record(), undefined);
    const wave = young.answers.waves.waves[0];
    expect(ordering?.lines.map(({ ask }) => Number(ask.text))).toEqual(
      wave?.animals.map(({ count }) => count),
    );
    expect([ordering?.askBy, ordering?.least]).toEqual([null, null]);
  });

  test("whole packs, never more than planned, less what is on order; what is left is told", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 0, max: 6 }), (pack, asked) => {
        const orders = asked === 0 ? [] : [order({ heads: asked })];
        const terms = shop({ packs: [{ animal: "dwarf-cerith", heads: pack }] });
        const line = lineOf("dwarf-cerith", orderingOf(young.answers, record(...orders), terms))!;
        const ask = Number(line.ask.text);
        expect(ask % pack).toBe(0);
        expect(ask + line.left).toBe(Math.max(0, line.planned - asked));
        expect(line.left).toBeLessThan(pack);
      }),
    );
  });

  test("says the day to ask by, and how much a least order wants", () => {
    const ordering = orderingOf(young.answers, record(), shop({ leadDays: 3, leastHeads: 30 }));
    const heads = ordering!.lines.reduce((sum, { ask }) => sum + Number(ask.text), 0);
    expect(ordering?.askBy?.text).toBe("12 Jun 2026");
    expect(ordering?.least).toEqual({ heads: 30, short: 30 - heads });
  });

  test("stand-ins fit the tank and eat much the same; a kind is none for itself", () => {
    const ordering = orderingOf(young.answers, record(), undefined);
    for (const { animal, standIns } of ordering!.lines)
      for (const { id } of standIns) {
        expect(id).not.toBe(animal);
        const row = young.answers.animals.animals.find((one) => one.id === id);
        const self = young.answers.animals.animals.find((one) => one.id === animal);
        expect([row?.fit?.status, row?.group]).toEqual(["fits", self?.group]);
      }
  });

  test("what is on order beyond the next wave is told", () => {
    expect(straysOf(young.answers, record(order({})))).toEqual([]);
    expect(straysOf(young.answers, record(order({ heads: 5 })))).toMatchObject([{ heads: 2 }]);
    expect(straysOf(young.answers, record(order({ animal: "sea-hare", heads: 1 })))).toMatchObject([
      { animal: "sea-hare", heads: 1 },
    ]);
  });
});
