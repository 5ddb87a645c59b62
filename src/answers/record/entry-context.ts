/** What the reader of entries must know of a tank: the keeper's habits, the day, what lives in it and since when. */
import { findAnimal } from "../../catalogue/index.ts";
import { givenFor, headsOn } from "../../contract/daybook/apply/lots.ts";
import type { Since } from "../../contract/daybook/apply/scene.ts";
import type { AskedAdvice } from "../../contract/daybook/asked-advice.ts";
import { byDay } from "../../contract/daybook/by-day.ts";
import type { DaybookEntry } from "../../contract/daybook/kinds.ts";
import { knownToday } from "../../contract/daybook/known-today.ts";
import type { FindTank, MovedOut } from "../../contract/daybook/other-tank.ts";
import type { EntryContext } from "../../contract/daybook/read-entry.ts";
import type { ReadingContext } from "../../contract/daybook/read-reading.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import { preferencesOf } from "../../contract/tank-file/preferences-of.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import type { TankFacts } from "../../engine/types/tank.ts";

interface Moment {
  /** ISO date. */
  readonly today: string;
  /** Instant, UTC; null where there is no clock. */
  readonly now: string | null;
}

export interface KnownTank {
  /** The tank's answers, without the daybook. */
  readonly document: TankFile;
  readonly facts: TankFacts;
  readonly entries: readonly DaybookEntry[];
  readonly since: Since;
}

export function readingContext(
  { document, facts, entries }: Pick<KnownTank, "document" | "facts" | "entries">,
  { today, now }: Moment,
): ReadingContext {
  return {
    preferences: preferencesOf(document.preferences),
    today,
    now,
    zone: zoneOf({ document, entries }, today),
    // Nobody said that nothing lives in it: a dangerous reading is then told as one.
    stocked:
      facts.present.length > 0 ||
      (document.fish?.length ?? 0) > 0 ||
      (document.animals_present === undefined && document.fish === undefined),
    notBefore: facts.assumed.includes("ageDays") ? null : addDays(facts.asOf, -facts.ageDays.central),
  };
}

interface Beside {
  /** An entry that is being corrected: it is not held against itself. */
  readonly correcting?: string | null;
  /** Other tanks of the store, where the entry can be kept there too. */
  readonly findTank?: FindTank | undefined;
  /** Advice that stands, where the entry declines some. */
  readonly asked?: readonly AskedAdvice[] | undefined;
}

export function entryContext(
  tank: KnownTank,
  moment: Moment,
  { correcting = null, findTank, asked }: Beside = {},
): EntryContext {
  const { document, facts, since } = tank;
  const entries = tank.entries.filter(({ id }) => id !== correcting);
  const scene = { today: moment.today, findAnimal, since };
  const known = knownToday(byDay(entries));
  return {
    ...readingContext(tank, moment),
    findAnimal,
    onRecord: (animal, on) => headsOn(document, entries, scene, animal, on),
    toldOn: (animal) => givenFor(document, scene, animal)?.on ?? null,
    knownAs: (animal, on) => known.of({ on }, animal),
    movedOut: (animal, on) => movedOut(entries, animal, on),
    ...(findTank === undefined ? {} : { findTank }),
    ...(asked === undefined ? {} : { asked }),
    waterL: facts.waterL.origin === "assumed" ? null : facts.waterL.central,
  };
}

const movedOut = (entries: readonly DaybookEntry[], animal: string, upTo: string): MovedOut[] =>
  entries.flatMap(({ kind, on, body }) =>
    kind === "move" && body.to_text !== null && body.animal === animal && on <= upTo
      ? [{ tank: body.to_text, count: body.count, on }]
      : [],
  );

/** Zone of the tank: of its last move that named one, else as its file says; null: times are kept as their day. */
export function zoneOf(
  { document, entries }: Pick<KnownTank, "document" | "entries">,
  today: string,
): string | null {
  const moves = entries.flatMap((entry) =>
    entry.kind === "relocation" && entry.body.zone !== null && entry.on <= today
      ? [{ on: entry.on, zone: entry.body.zone }]
      : [],
  );
  return (
    moves.toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0)).at(-1)?.zone ??
    document.preferences?.zone ??
    null
  );
}
