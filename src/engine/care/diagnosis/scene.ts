/** What diagnosis looks at: the tank, its record, the catalogue and the facts of diagnosis, all as arguments. */
import { daysBetween } from "../../stocking/suitability.ts";
import type { Animal } from "../../types/animal.ts";
import type { DiagnosisFacts, Effect } from "../../types/diagnosis.ts";
import type { Observation, ReadingSeen, SignKind, TankRecord } from "../../types/record.ts";
import type { Cover, Growth, Reading, TankFacts } from "../../types/tank.ts";

export interface DiagnosisScene {
  readonly facts: TankFacts;
  readonly record: TankRecord;
  readonly animals: ReadonlyMap<string, Animal>;
  readonly diagnosis: DiagnosisFacts;
}

/** What a clue is asked about. */
export interface Subject {
  readonly effect: Effect;
  /** The day it was seen, ISO date: evidence is looked for in the weeks before it. */
  readonly on: string;
  /** The kind it is about, in the catalogue; null where it is about none or several. */
  readonly animal: string | null;
  readonly kindsSeen: number | null;
  readonly hoursFromLightsOut: number | null;
}

/** What the questions were told of a growth, on the daybook's scale. */
export const SCORE_OF_COVER: Readonly<Record<Cover, number>> = { none: 0, trace: 1, patches: 2, covered: 4 };

/** Days from the entry to the day that is asked about: 0 on that day, above 0 before it. */
const daysBefore = (on: string, day: string): number => daysBetween(on, day);

export const within = (on: string, day: string, days: number): boolean => {
  const before = daysBefore(on, day);
  return before >= 0 && before <= days;
};

export const observed = <Kind extends Observation["kind"]>(
  { observations }: TankRecord,
  kind: Kind,
): readonly Extract<Observation, { kind: Kind }>[] =>
  observations.filter((one): one is Extract<Observation, { kind: Kind }> => one.kind === kind);

/** Readings of the daybook, and those told in the questions on days that it has none of; oldest first. */
export function readingsOf(
  { record, facts }: Pick<DiagnosisScene, "record" | "facts">,
  quantity: Reading["quantity"],
): readonly ReadingSeen[] {
  const logged = observed(record, "reading").filter((reading) => reading.quantity === quantity);
  const days = new Set(logged.map(({ on }) => on));
  const told = facts.readings
    .filter((reading) => reading.quantity === quantity && !days.has(reading.on ?? facts.asOf))
    .map(({ value, censored, on }): ReadingSeen => {
      return {
        kind: "reading",
        entry: "told",
        on: on ?? facts.asOf,
        quantity,
        value,
        censored,
        step: null,
        flag: null,
      };
    });
  return told.length === 0 ? logged : [...logged, ...told].sort((a, b) => a.on.localeCompare(b.on));
}

export const growthsSeen = (record: TankRecord, growth: Growth) =>
  observed(record, "growth").filter((seen) => seen.growth === growth);

export const signsSeen = (record: TankRecord, sign: SignKind) =>
  observed(record, "sign").filter((seen) => seen.sign === sign);

/** Kinds that live in the tank, with their heads. */
export function livingIn({ facts, animals }: DiagnosisScene): { animal: Animal; count: number }[] {
  return facts.present.flatMap(({ id, count }) => {
    const animal = animals.get(id);
    return animal === undefined || count <= 0 ? [] : [{ animal, count }];
  });
}

export interface FeedChange {
  readonly on: string;
  /** Grams a day. */
  readonly to: number;
  /** What was given before it: by the change before, or as the questions were told; null where nobody said. */
  readonly before: number | null;
}

/** Changes of the usual feed, oldest first. The first after the questions were answered changed what was told there. */
export function feedChanges({ happenings, told }: TankRecord): readonly FeedChange[] {
  const feed = told?.feed ?? null;
  const changes: FeedChange[] = [];
  for (const one of happenings) {
    if (one.kind !== "changed" || one.what !== "feed" || one.to === null) continue;
    const stated = feed !== null && feed.changedBy === one.entry ? feed.gPerDay : null;
    changes.push({ on: one.on, to: one.to, before: stated ?? changes.at(-1)?.to ?? null });
  }
  return changes;
}
