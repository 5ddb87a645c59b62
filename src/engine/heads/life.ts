/**
 * What befell the heads of one kind, day by day, out of a tank's record: who was there, who came, who was found dead,
 * missed or moved out, and each count with how it was made. Days are counted from the first that the record speaks of.
 */
import { daysBetween } from "../stocking/suitability.ts";
import type { Animal } from "../types/animal.ts";
import type { HeadsChanged, TankRecord } from "../types/record.ts";
import type { TankFacts } from "../types/tank.ts";
import type { HeadRates } from "./rates.ts";
import { type Seen, seenOf } from "./seen.ts";

export type LifeEvent = { readonly day: number; readonly on: string; readonly entry: string } & (
  | { readonly kind: "added"; readonly count: number; readonly condition: HeadsChanged["condition"] }
  | { readonly kind: "found" | "moved_out"; readonly count: number }
  /** `hides`: a cast shell or hiding was seen about then, and its kind hides after a moult. */
  | { readonly kind: "feared"; readonly count: number; readonly hides: boolean }
  /** The keeper's own list has no more than these, whatever the daybook says. */
  | { readonly kind: "listed"; readonly count: number }
  | {
      readonly kind: "counted";
      readonly seen: number;
      readonly about: boolean;
      readonly how: Seen;
    }
);

export interface Life {
  readonly animal: Animal;
  /** First day, ISO date, and how many days it is to today. */
  readonly from: string;
  readonly days: number;
  /** Heads that were there on the first day, settled. */
  readonly before: number;
  readonly events: readonly LifeEvent[];
}

/** More are not followed one by one. */
export const MOST_FOLLOWED = 200;

/** Kinds that are counted by the head: not pods and worms, which come as a culture or by themselves. */
export const isFollowed = ({ group }: Animal): boolean => group !== "pod" && group !== "worm";

export const cameTo = ({ before, events }: Life): number =>
  before + events.reduce((sum, event) => sum + (event.kind === "added" ? event.count : 0), 0);

/** `facts` as of the record's day, with its changes of heads in them. */
export function lifeOf(animal: Animal, facts: TankFacts, record: TankRecord, rates: HeadRates): Life {
  const { asOf } = record;
  const changes = record.happenings.filter(
    (one): one is HeadsChanged => "animal" in one && one.animal === animal.id && one.on <= asOf,
  );
  const counts = record.observations.flatMap((one) =>
    one.kind === "heads" && one.animal === animal.id && one.on <= asOf ? [one] : [],
  );
  const rows = facts.present.filter(({ id }) => id === animal.id);
  const added = changes.filter(({ kind }) => kind === "added");
  const listed = rows.reduce((sum, { count }) => sum + count, 0);
  const net = netOf(changes);
  const before = Math.max(0, listed - net);
  const ownDays = rows.flatMap(({ on }) =>
    on === null || on > asOf || added.some((one) => one.on === on) ? [] : [on],
  );
  const dated = [...changes, ...counts].map(({ on }) => on);
  // Heads of the keeper's own list were there, for all we know, when the daybook began.
  const began = [...record.observations, ...record.happenings].map(({ on }) => on);
  const known = before > 0 ? [...dated, ...(ownDays.length > 0 ? ownDays : began)] : dated;
  const from = [...known, asOf].toSorted()[0] ?? asOf;
  const at = ({ on, entry }: { readonly on: string; readonly entry: string }) => ({
    ...{ day: daysBetween(from, on), on, entry },
  });
  const lightHours = facts.lightHours.central;
  const events: LifeEvent[] = [
    ...changes.map((one): LifeEvent => {
      if (one.kind === "added")
        return { ...at(one), kind: "added", count: one.count, condition: one.condition };
      if (one.kind === "lost_feared")
        return { ...at(one), kind: "feared", count: one.count, hides: hidesAbout(one.on, animal, record) };
      return { ...at(one), kind: one.kind === "lost_found" ? "found" : "moved_out", count: one.count };
    }),
    ...counts.map(
      (one): LifeEvent => ({
        ...at(one),
        ...{ kind: "counted", seen: one.seen, about: one.about },
        how: seenOf(animal, { ...one, lightHours }, rates),
      }),
    ),
  ];
  const fewer: LifeEvent = { ...at({ on: asOf, entry: "" }), kind: "listed", count: listed };
  return {
    ...{ animal, from, days: daysBetween(from, asOf), before },
    events: [...events, ...(listed < net ? [fewer] : [])].toSorted(
      (a, b) => a.day - b.day || ORDER[a.kind] - ORDER[b.kind],
    ),
  };
}

/** Days about a moult in which those that moult are not seen. */
const MOULT_DAYS = 21;

export const moults = ({ group }: Animal): boolean =>
  group === "hermit" || group === "crab" || group === "shrimp";

const hidesAbout = (day: string, animal: Animal, { observations }: TankRecord): boolean =>
  moults(animal) &&
  observations.some(
    (one) =>
      one.kind === "sign" &&
      (one.sign === "cast_shell" || one.sign === "hiding") &&
      (one.animal === animal.id || one.animal === null) &&
      Math.abs(daysBetween(one.on, day)) <= MOULT_DAYS,
  );

/** Of one day: who came is there when it is counted; a count takes place before anyone is missed. */
const ORDER: Readonly<Record<LifeEvent["kind"], number>> = {
  added: 0,
  found: 1,
  moved_out: 2,
  counted: 3,
  feared: 4,
  listed: 5,
};

/** What the changes did to the heads that the facts tell. A feared loss takes nobody off them. */
const netOf = (changes: readonly HeadsChanged[]): number =>
  changes.reduce((sum, { kind, count }) => {
    if (kind === "lost_feared") return sum;
    return kind === "added" ? sum + count : sum - count;
  }, 0);
