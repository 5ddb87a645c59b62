/**
 * What a daybook tells of an animal that came dead, or died, for who sold it: the order beside it, and which arrivals an
 * order was followed by. Limits: nobody links an order to what came. The last order of that kind of animal before the
 * day is taken for it, one of the same wave before others; a page says so.
 */
import type { DaybookEntry } from "../../contract/daybook/kinds.ts";

export type Of<Kind extends DaybookEntry["kind"]> = Extract<DaybookEntry, { readonly kind: Kind }>;
type Animal = Pick<Of<"loss">["body"], "animal" | "animal_text">;

/** Of one kind: by the catalogue's id; by the keeper's own words where it knows none. */
const sameAnimal = (a: Animal, b: Animal): boolean =>
  a.animal === b.animal &&
  (a.animal !== null || a.animal_text.trim().toLowerCase() === b.animal_text.trim().toLowerCase());

/** @param entries the latest first */
export function orderBefore(
  { on, body, kind }: Of<"addition"> | Of<"loss">,
  entries: readonly DaybookEntry[],
): Of<"order"> | null {
  const orders = entries.filter(
    (one): one is Of<"order"> => one.kind === "order" && one.on <= on && sameAnimal(one.body, body),
  );
  const wave = kind === "addition" ? body.wave : null;
  return orders.find((one) => wave !== null && one.body.wave === wave) ?? orders[0] ?? null;
}

/** The last arrival of that kind of animal up to the day of a loss. */
export function arrivalBefore(
  { on, body }: Of<"loss">,
  entries: readonly DaybookEntry[],
): Of<"addition"> | null {
  const came = entries.find((one) => one.kind === "addition" && one.on <= on && sameAnimal(one.body, body));
  return (came as Of<"addition"> | undefined) ?? null;
}

/** Arrivals that an order was followed by, the latest first. */
export const arrivalsOf = (order: Of<"order">, entries: readonly DaybookEntry[]): readonly Of<"addition">[] =>
  entries.filter(
    (one): one is Of<"addition"> => one.kind === "addition" && orderBefore(one, entries)?.id === order.id,
  );

/** Arrivals of which some came dead, from a day on, the latest first. */
export const deadOnArrival = (entries: readonly DaybookEntry[], from: string): readonly Of<"addition">[] =>
  entries.filter(
    (one): one is Of<"addition"> => one.kind === "addition" && one.body.dead_on_arrival > 0 && one.on >= from,
  );
