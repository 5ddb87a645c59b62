/**
 * What a tank is quickly judged by: its facts as told, its record, the latest readings as typed. Bench, round and
 * command line judge by the same; nothing here waits for the engine.
 */
import { animalById } from "../../catalogue/index.ts";
import type { TankRecord } from "../../engine/types/record.ts";
import type { Reading, TankFacts } from "../../engine/types/tank.ts";
import type { LatestReading } from "./latest.ts";

export type ToldFacts = Pick<
  TankFacts,
  "trouble" | "medicines" | "asOf" | "present" | "readings" | "fishWetG"
>;

export interface KnownOfTank {
  readonly facts: ToldFacts;
  readonly record: TankRecord;
  readonly latest: readonly LatestReading[];
  /** ISO date. */
  readonly today: string;
  /** Day the tank's answers were last changed, ISO date: somebody looked then. */
  readonly answeredOn: string | null;
}

/** A measured value; `on` is today where nobody said when. */
export interface Valued {
  readonly on: string;
  readonly low: number;
  readonly central: number;
  readonly high: number;
  readonly censored: Reading["censored"];
  /** Smallest step of the kit; null where not said. */
  readonly step: number | null;
  readonly flag: "unusual" | "danger" | null;
  readonly entry: string | null;
}

/** All values of one quantity, oldest first: those told in the questions, then those of the daybook. */
export function valuesOf({ facts, record, today }: KnownOfTank, quantity: Reading["quantity"]): Valued[] {
  const kept = record.observations.flatMap((one): Valued[] => {
    if (one.kind !== "reading" || one.quantity !== quantity) return [];
    const { on, value, censored, step, flag, entry } = one;
    return [{ on, ...value, censored, step, flag, entry }];
  });
  const days = new Set(kept.map(({ on, central }) => `${on} ${central}`));
  // Facts hold the latest of the daybook too: told once is enough.
  const told = facts.readings.flatMap(({ quantity: which, value, censored, on }): Valued[] => {
    const day = on ?? today;
    if (which !== quantity || days.has(`${day} ${value.central}`)) return [];
    return [{ on: day, ...value, censored, step: null, flag: null, entry: null }];
  });
  // ISO dates are in order as text; a comparison by language would take most of the time of this.
  return [...told, ...kept].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
}

/** Heads of a kind that live there; null where the tank's answers say nothing of it. */
export const headsOf = ({ facts }: Pick<KnownOfTank, "facts">, animal: string): number | null => {
  const some = facts.present.filter(({ id }) => id === animal);
  return some.length === 0 ? null : some.reduce((sum, { count }) => sum + count, 0);
};

/** Something that breathes lives in it: ammonia and nitrite then matter today. */
export const isStocked = ({ facts }: Pick<KnownOfTank, "facts">): boolean =>
  facts.fishWetG.central > 0 || facts.present.some(({ count }) => count > 0);

/** Names of the kinds there that copper and many medicines kill. */
export const invertebratesOf = ({ facts }: Pick<KnownOfTank, "facts">): readonly string[] =>
  facts.present.flatMap(({ id, count }) => {
    const animal = animalById.get(id);
    return count > 0 && animal !== undefined && animal.group !== "fish" ? [animal.commonName] : [];
  });
