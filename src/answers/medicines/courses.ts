/**
 * Medicines of one tank: each treatment of the daybook under its active ingredient, running or over, with the day from
 * which a crew may come back and what water changes since have left of it. What nobody can resolve counts as the worst.
 * Quick: nothing here runs the balance.
 */
import { findMedicine } from "../../catalogue/medicines.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import type { Medicine } from "../../engine/types/medicine.ts";
import type { ChoreDone, TankRecord, Treated } from "../../engine/types/record.ts";

/** A substance that nobody can resolve keeps the gates shut as long as the longest of copper's kind. Judgement. */
export const UNKNOWN_RETURN_DAYS = 90;

export interface MedicineCourse {
  /** As typed, the latest. */
  readonly typed: string;
  /** Null: it names no active ingredient that we know. */
  readonly medicine: Medicine | null;
  /** Null where it was told in the questions, without a day. */
  readonly startedOn: string | null;
  readonly endedOn: string | null;
  readonly entries: readonly string[];
  /** First day on which the crew may come back, test passed; null while it is in the water. */
  readonly backOn: string | null;
  /** Share of what was dissolved that water changes since its end (or since it began, while it runs) leave, 0 to 1. */
  readonly left: number;
  readonly changes: readonly ChoreDone[];
}

const keyOf = (substance: string): string => findMedicine(substance)?.id ?? substance.trim().toLowerCase();

/** Running ones first, then the latest ended. Those whose day has come are left out. */
export function coursesOf(
  told: readonly string[],
  record: Pick<TankRecord, "happenings">,
  today: string,
): readonly MedicineCourse[] {
  const byKey = new Map<string, Treated[]>();
  for (const one of record.happenings) {
    if (one.kind !== "treated") continue;
    const key = keyOf(one.substance);
    byKey.set(key, [...(byKey.get(key) ?? []), one]);
  }
  const kept = [...byKey.values()].map((all) => courseOf(all, record));
  const ofQuestions = told
    .filter((name) => !byKey.has(keyOf(name)))
    .map(
      (typed): MedicineCourse => ({
        ...{ typed, medicine: findMedicine(typed), startedOn: null, endedOn: null, entries: [] },
        ...{ backOn: null, left: 1, changes: [] },
      }),
    );
  return [...ofQuestions, ...kept]
    .filter(({ backOn }) => backOn === null || backOn > today)
    .sort(
      (a, b) =>
        Number(a.endedOn !== null) - Number(b.endedOn !== null) ||
        (b.endedOn ?? "").localeCompare(a.endedOn ?? "") ||
        a.typed.localeCompare(b.typed),
    );
}

function courseOf(all: readonly Treated[], { happenings }: Pick<TankRecord, "happenings">): MedicineCourse {
  // Of one day the start counts last: what might still be in the water is said to be.
  const steps = all.toSorted(
    (a, b) => a.on.localeCompare(b.on) || Number(a.step === "started") - Number(b.step === "started"),
  );
  const last = steps.at(-1)!;
  const typed = last.substance.trim();
  const medicine = findMedicine(typed);
  const running = last.step === "started";
  const startedOn = steps.findLast(({ step }) => step === "started")?.on ?? null;
  const endedOn = running ? null : last.on;
  const since = endedOn ?? startedOn ?? last.on;
  const changes = happenings.filter(
    (one): one is ChoreDone =>
      one.kind === "chore" && one.chore === "water_change" && one.share !== null && one.on >= since,
  );
  return {
    ...{ typed, medicine, startedOn, endedOn, changes },
    entries: steps.map(({ entry }) => entry),
    backOn: endedOn === null ? null : addDays(endedOn, medicine?.returnDays.value ?? UNKNOWN_RETURN_DAYS),
    left: leftAfter(changes.map(({ share }) => share ?? 0)),
  };
}

/** Share left after changes of such shares, one after the other: one of a half is not two of a quarter. */
export const leftAfter = (shares: readonly number[]): number =>
  shares.reduce((left, share) => left * (1 - share), 1);
