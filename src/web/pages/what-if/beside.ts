/**
 * A what-if's answers beside today's, as the page shows them: few rows of short texts, each with its figure. Small
 * enough to be sent with the page and drawn again while a keeper types. Pure.
 */
import { chance, dateWords, rations } from "../../../answers/words.ts";
import type { AnswerParts } from "../../../contract/worker/messages.ts";
import { capital } from "../../parts/text.ts";
import { limitWords, two } from "../interests.ts";

export interface Shown {
  readonly text: string;
  /** Null where the text tells no number of the engine. */
  readonly figure: string | null;
}
export interface Pair {
  readonly name: string;
  readonly today: Shown;
  readonly changed: Shown;
}
export interface BesideView {
  readonly members: number;
  readonly changes: readonly string[];
  readonly shelves: readonly Pair[];
  /** Kinds of which another number is added. */
  readonly differs: readonly string[];
  readonly kinds: readonly Pair[];
  /** Middle and range on the last day of the runs. */
  readonly levels: readonly Pair[];
  readonly lastDay: string;
  readonly chances: readonly Pair[];
  readonly starving: readonly Pair[];
}

type Parts = Pick<AnswerParts, "larder" | "waves" | "ahead">;
type Outlook = AnswerParts["ahead"]["as_it_is"];

const NONE: Shown = { text: "none", figure: null };

/** @throws where the answers are those of no what-if */
export function besideView({ larder, waves, ahead }: Parts): BesideView {
  if (larder.what_if === null || waves.what_if === null || ahead.what_if === null) {
    throw new TypeError("Cannot show a what-if beside today: the answers hold no change");
  }
  const then = ahead.what_if.outlook;
  return {
    members: ahead.members,
    changes: ahead.what_if.changes,
    shelves: shelfPairs(larder, larder.what_if),
    ...planPairs(waves, waves.what_if.today.animals),
    levels: levelPairs(ahead.as_it_is, then),
    lastDay: dateWords(ahead.weeks.at(-1) ?? ahead.tank.as_of),
    chances: ahead.as_it_is.chances.map((now, i) => chancePair(now, then.chances[i] ?? now, ahead.as_it_is)),
    starving: starvingPairs(ahead.as_it_is, then),
  };
}

function shelfPairs(larder: Parts["larder"], today: NonNullable<Parts["larder"]["what_if"]>): Pair[] {
  return larder.shelves.flatMap(({ id, name, supply_mg_c_per_day: { central }, figures }) => {
    const before = today.today_central_mg_c_per_day[id] ?? 0;
    const [now, then] = [rations(before), rations(central)];
    if (now === "0" && then === "0") return [];
    return [
      {
        name: capital(name),
        today: { text: now, figure: today.today_figures[id] ?? null },
        changed: { text: then, figure: figures.supply },
      },
    ];
  });
}

function planPairs(
  { to_add, refused, fits_but_not_needed }: Parts["waves"],
  today: NonNullable<Parts["waves"]["what_if"]>["today"]["animals"],
): Pick<BesideView, "differs" | "kinds"> {
  const names = new Map([...to_add, ...refused, ...fits_but_not_needed].map(({ id, name }) => [id, name]));
  const ids = [...new Set([...today, ...to_add].map(({ id }) => id))];
  const rows = ids.map((id) => ({
    name: names.get(id) ?? id.replaceAll("-", " "),
    before: today.find((row) => row.id === id),
    after: to_add.find((row) => row.id === id),
  }));
  const shown = (row: { readonly count: number; readonly figure: string } | undefined): Shown =>
    row === undefined ? NONE : { text: String(row.count), figure: row.figure };
  return {
    differs: rows.flatMap(({ name, before, after }) => (before?.count === after?.count ? [] : [name])),
    kinds: rows.map(({ name, before, after }) => ({
      name: capital(name),
      today: shown(before),
      changed: shown(after),
    })),
  };
}

const LEVELS = ["no3", "po4"];

function levelPairs(now: Outlook, then: Outlook): Pair[] {
  return LEVELS.flatMap((id) => {
    const [a, b] = [now, then].map(({ quantities }) => quantities.find((one) => one.id === id));
    if (a === undefined || b === undefined) return [];
    const shown = ({ q05, q50, q95, unit, figure }: typeof a): Shown => {
      const [low, middle, high] = [q05, q50, q95].map((weeks) => two(weeks.at(-1) ?? 0));
      return { text: `${middle} (${low} to ${high}) ${unit}`, figure };
    };
    return [{ name: capital(a.label), today: shown(a), changed: shown(b) }];
  });
}

function chancePair(
  now: Outlook["chances"][number],
  then: Outlook["chances"][number],
  { quantities }: Outlook,
): Pair {
  const label = quantities.find(({ id }) => id === now.quantity)?.label ?? now.quantity;
  return {
    name: `${capital(label)} above ${limitWords(now)}${now.missing === null ? "" : ", of a typical tank"}`,
    today: { text: chance(now.of_20), figure: now.figures.chance },
    changed: { text: chance(then.of_20), figure: then.figures.chance },
  };
}

function starvingPairs(now: Outlook, then: Outlook): Pair[] {
  const ids = [...new Set([...now.kinds, ...then.kinds].map(({ id }) => id))];
  const shown = (kind: Outlook["kinds"][number] | undefined): Shown =>
    kind === undefined ? NONE : { text: chance(kind.starves_of_20), figure: kind.figures.starves };
  return ids.map((id) => {
    const [a, b] = [now, then].map(({ kinds }) => kinds.find((kind) => kind.id === id));
    return { name: capital((b ?? a)?.name ?? id), today: shown(a), changed: shown(b) };
  });
}
