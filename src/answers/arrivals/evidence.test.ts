/** Which order stands beside what came dead. */
import { expect, test } from "vitest";
import type { DaybookEntry } from "../../contract/daybook/kinds.ts";
import { arrivalBefore, arrivalsOf, deadOnArrival, type Of, orderBefore } from "./evidence.ts";

const common = { observed_text: "", observed_at: null, note: null };
const trochus = { animal: "trochus-snail", animal_text: "trochus snail" };
const own = (animal_text: string) => ({ animal: null, animal_text });
const order = (id: string, on: string, of: object = trochus, wave: number | null = null) =>
  ({
    ...{ id, on, kind: "order" },
    body: { ...common, ...of, count: 5, wave, expected: null, from_text: null, despite_gate: null },
  }) as Of<"order">;
const came = (id: string, on: string, of: object = trochus, wave: number | null = null, dead = 1) =>
  ({
    ...{ id, on, kind: "addition" },
    body: {
      ...{ ...common, ...of, count: 4, sold_as: null, dead_on_arrival: dead },
      ...{ condition: null, wave, despite_gate: null },
    },
  }) as Of<"addition">;
const lost = (id: string, on: string, of: object = trochus) =>
  ({
    ...{ id, on, kind: "loss" },
    body: { ...common, ...of, count: 1, certainty: "found", body_removed: null, cause: "unknown" },
  }) as Of<"loss">;
const latestFirst = (...all: DaybookEntry[]) => all.toSorted((a, b) => (a.on < b.on ? 1 : -1));

test("the last order of that animal before the day, one of its wave before others", () => {
  const arrival = came("a", "2026-06-10", trochus, 1);
  const entries = latestFirst(
    order("later", "2026-06-11"),
    order("other", "2026-06-09", { animal: "nerite", animal_text: "nerite" }),
    order("last", "2026-06-08"),
    order("of its wave", "2026-06-01", trochus, 1),
    arrival,
  );
  expect(orderBefore(arrival, entries)?.id).toBe("of its wave");
  expect(orderBefore(came("b", "2026-06-10"), entries)?.id).toBe("last");
  expect(orderBefore(lost("l", "2026-06-10"), entries)?.id).toBe("last");
  expect(orderBefore(came("c", "2026-05-01"), entries)).toBeNull();
});

test("an animal that the catalogue does not know goes by the keeper's words", () => {
  const entries = [order("o", "2026-06-01", own("Spiny thing"))];
  expect(orderBefore(came("a", "2026-06-02", own(" spiny Thing")), entries)?.id).toBe("o");
  expect(orderBefore(came("a", "2026-06-02", own("another thing")), entries)).toBeNull();
});

test("an order's arrivals, a loss's arrival, and who came dead lately", () => {
  const [first, second] = [order("o1", "2026-06-01"), order("o2", "2026-06-10")];
  const entries = latestFirst(
    first,
    came("a1", "2026-06-03"),
    second,
    came("a2", "2026-06-12", trochus, null, 0),
    came("a3", "2026-06-13"),
  );
  expect(arrivalsOf(first, entries).map(({ id }) => id)).toEqual(["a1"]);
  expect(arrivalsOf(second, entries).map(({ id }) => id)).toEqual(["a3", "a2"]);
  expect(arrivalBefore(lost("l", "2026-06-12"), entries)?.id).toBe("a2");
  expect(arrivalBefore(lost("l", "2026-06-02"), entries)).toBeNull();
  expect(deadOnArrival(entries, "2026-06-03").map(({ id }) => id)).toEqual(["a3", "a1"]);
  expect(deadOnArrival(entries, "2026-06-04").map(({ id }) => id)).toEqual(["a3"]);
});
