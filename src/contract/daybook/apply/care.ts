/**
 * Days between water changes and between wipings as they were kept up lately, and the share changed: from at least three
 * chores of the last 60 days, the time from the first to the last over the spans between them.
 */
import { addDays, daysBetween } from "../../quantity/calendar.ts";
import { figure } from "../../quantity/show.ts";
import type { TankFile } from "../../tank-file/schema.ts";
import type { DaybookEntry } from "../kinds.ts";
import { type ApplyScene, isNews } from "./scene.ts";

const LOOK_BACK_DAYS = 60;
const FEWEST = 3;

type Chore = Extract<DaybookEntry, { kind: "chore" }>;

export interface AppliedCare {
  /** Undefined where the daybook has too little. */
  readonly care: TankFile["care"] | undefined;
  readonly notes: readonly string[];
}

export function careTold(
  document: TankFile,
  dated: readonly DaybookEntry[],
  { today, since }: Pick<ApplyScene, "today" | "since">,
): AppliedCare {
  const from = addDays(today, -LOOK_BACK_DAYS);
  const done = (chore: Chore["body"]["chore"]): Chore[] =>
    dated.flatMap((entry) =>
      entry.kind === "chore" && entry.body.chore === chore && entry.on >= from && isNews(entry, since.care)
        ? [entry]
        : [],
    );
  const notes: string[] = [];
  const care: { [Name in keyof NonNullable<TankFile["care"]>]: number } = {};
  const changes = done("water_change");
  const every = spanOf(changes);
  if (every !== null) {
    care.water_change_every_days = every;
    notes.push(`Water is changed every ${figure(every)} days, as the daybook has it`);
    const share = middle(changes.flatMap(({ body }) => (body.share === null ? [] : [body.share])));
    if (share !== null) care.water_change_percent = rounded(100 * share);
  }
  const wiped = spanOf(done("glass_wiped"));
  if (wiped !== null) {
    care.wipe_glass_every_days = wiped;
    notes.push(`Glass is wiped every ${figure(wiped)} days, as the daybook has it`);
  }
  return { care: notes.length === 0 ? undefined : { ...document.care, ...care }, notes };
}

/** Days between; several on one day are one. Null where there are too few. */
function spanOf(chores: readonly Chore[]): number | null {
  const days = [...new Set(chores.map(({ on }) => on))].toSorted();
  const [first] = days;
  const last = days.at(-1);
  if (days.length < FEWEST || first === undefined || last === undefined) return null;
  return rounded(daysBetween(first, last) / (days.length - 1));
}

/** Median of at least three. */
function middle(values: readonly number[]): number | null {
  if (values.length < FEWEST) return null;
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length / 2;
  const [low = 0, high = 0] = [sorted[Math.ceil(half) - 1], sorted[Math.floor(half)]];
  return (low + high) / 2;
}

const rounded = (value: number): number => Math.round(10 * value) / 10;
