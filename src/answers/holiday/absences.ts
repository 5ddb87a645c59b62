/**
 * Times away from home that are kept and not long over: those of the daybook, by their entry, and those that a tank file
 * alone tells of. One list for almanac, bench and the sheet of a sitter.
 */
import { addDays, daysBetween } from "../../contract/quantity/calendar.ts";
import type { RecordScene } from "../record-scene.ts";
import type { HolidaySpan } from "./packing.ts";

export interface KeptAbsence extends HolidaySpan {
  /** The same through corrections: what calendars know its duties by. */
  readonly key: string;
  /** Entry of the daybook; null where a tank file tells of it. */
  readonly entry: string | null;
  readonly fedBy: "nobody" | "sitter" | "feeder";
  /** As said; null where nobody said. */
  readonly portions: number | null;
}

/** Coming back is a duty until heads were counted, or for so many days. */
const AFTER_DAYS = 7;

/** The first first. */
export function absencesIn({ facts, record, today }: RecordScene): readonly KeptAbsence[] {
  const kept = (record.absences ?? []).map(
    ({ entry, from, to, fedBy, everyDays, portions }): KeptAbsence => ({
      ...{ key: entry.replaceAll(/[^\w-]/g, "-"), entry, from, to, fedBy, sitterEvery: everyDays, portions },
    }),
  );
  const told = (facts.absences ?? [])
    .filter(({ from, to }) => !kept.some((one) => one.from === from && one.to === to))
    .map(
      ({ from, to, fedBy, everyDays }): KeptAbsence => ({
        ...{ key: from.replaceAll("-", ""), entry: null, from, to, fedBy, sitterEvery: everyDays },
        portions: null,
      }),
    );
  return [...kept, ...told]
    .filter(({ to }) => daysBetween(to, today) <= AFTER_DAYS)
    .toSorted((a, b) => a.from.localeCompare(b.from));
}

/** Those that today is before, or in. */
export const absencesAhead = (scene: RecordScene): readonly KeptAbsence[] =>
  absencesIn(scene).filter(({ to }) => to > scene.today);

/** The absence that a day falls into: from the day of leaving on, until the day before coming back. */
export const awayOn = (absences: readonly KeptAbsence[], day: string): KeptAbsence | undefined =>
  absences.find(({ from, to }) => from <= day && day < to);

/** The last day at home before it. */
export const lastDayHome = ({ from }: HolidaySpan): string => addDays(from, -1);
