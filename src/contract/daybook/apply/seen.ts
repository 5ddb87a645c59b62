/** Readings, growths and running treatments of the daybook, as a tank file has them. */
import type { Growth } from "../../../engine/types/tank.ts";
import type { TankFile } from "../../tank-file/schema.ts";
import { ammoniaDoseIn } from "../ammonia-dose.ts";
import { coverOfScore } from "../growth-anchors.ts";
import type { DaybookEntry } from "../kinds.ts";
import type { Measured, ReadingBody } from "../reading.ts";
import { type ApplyScene, isNews } from "./scene.ts";

/** The engine starts from the last ones of each quantity: more say nothing, and each costs reading. */
const READINGS_TOLD = 5;

type DocumentReading = NonNullable<TankFile["readings"]>[number];

/** The last ones of each quantity, latest first. `dated`: oldest first. `firstDay`: null where unknown. */
export function readingsTold(dated: readonly DaybookEntry[], firstDay: string | null): DocumentReading[] {
  const told = new Map<Measured, number>();
  const added: DocumentReading[] = [];
  for (const entry of dated.toReversed()) {
    if (entry.kind !== "reading" || (firstDay !== null && entry.on < firstDay)) continue;
    const count = told.get(entry.body.quantity) ?? 0;
    if (count >= READINGS_TOLD) continue;
    told.set(entry.body.quantity, count + 1);
    added.push(asWritten(entry.on, entry.body));
  }
  return added;
}

function asWritten(on: string, { quantity, text, kit_step }: ReadingBody): DocumentReading {
  return { on, [quantity]: text, ...(kit_step === null ? {} : { kit_steps: { [quantity]: kit_step } }) };
}

/** The latest score of each growth; undefined where none was seen since the answers were given. */
export function sightingsTold(
  document: TankFile,
  dated: readonly DaybookEntry[],
  { since }: Pick<ApplyScene, "since">,
): TankFile["sightings"] | undefined {
  const latest = new Map<Growth, number>();
  for (const entry of dated) {
    if (entry.kind !== "growth" || !isNews(entry, since.sightings)) continue;
    latest.set(entry.body.growth, entry.body.score);
  }
  if (latest.size === 0) return undefined;
  const seen = [...latest].map(([growth, score]) => [growth, coverOfScore(score)] as const);
  return { ...document.sightings, ...Object.fromEntries(seen) };
}

/** Ingredients in the water now: put in and not said to be gone; undefined where the daybook has none. */
export function medicinesTold(
  document: TankFile,
  dated: readonly DaybookEntry[],
  { since }: Pick<ApplyScene, "since">,
): string[] | undefined {
  const steps = dated.flatMap((entry) =>
    entry.kind === "treatment" &&
    isNews(entry, since.medicines) &&
    ammoniaDoseIn(entry.body.substance) === null
      ? [entry]
      : [],
  );
  if (steps.length === 0) return undefined;
  const running = new Map((document.medicines ?? []).map((name) => [nameOf(name), name]));
  // Of one day the start counts last: what might still be in the water is said to be.
  for (const { body } of steps.toSorted((a, b) => a.on.localeCompare(b.on) || rank(a.body) - rank(b.body))) {
    if (body.step === "started") running.set(nameOf(body.substance), body.substance);
    else running.delete(nameOf(body.substance));
  }
  return [...running.values()];
}

const nameOf = (name: string): string => name.trim().toLowerCase();
const rank = ({ step }: { readonly step: "started" | "ended" }): number => (step === "ended" ? 0 : 1);
