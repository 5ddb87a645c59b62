/**
 * What a tank's sums are filled from, as data: for a device that works them out by itself. Of the daybook only what a
 * field can take: tests and water changes of the last months.
 */
import { daysBetween } from "../../contract/quantity/calendar.ts";
import type { Preferences } from "../../contract/quantity/preferences.ts";
import type { TankRecord } from "../../engine/types/record.ts";
import type { TankFacts } from "../../engine/types/tank.ts";

export interface KnownForSums<Head> {
  readonly head: Head;
  /** Where the tank stands; null where nobody said. */
  readonly zone: string | null;
  readonly preferences: Preferences;
  readonly facts: TankFacts;
  readonly record: TankRecord;
  /** ISO date. */
  readonly today: string;
}

/** Longer than any field looks back; known.test.ts holds that. */
const KEPT_DAYS = 120;

export function knownForSums<Head>(tank: KnownForSums<Head>): KnownForSums<Head> {
  const { record, today } = tank;
  const late = ({ on }: { readonly on: string }) => daysBetween(on, today) <= KEPT_DAYS;
  return {
    ...tank,
    record: {
      observations: record.observations.filter((one) => one.kind === "reading" && late(one)),
      happenings: record.happenings.filter((one) => one.kind === "chore" && late(one)),
      ...{ declined: [], asOf: record.asOf },
    },
  };
}
