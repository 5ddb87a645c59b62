/**
 * A file's entries beside those of the daybook: already here, new, at odds with one that is here, or taken away before.
 * Entries are matched one to one, so that two that are alike stay two, and a file brought in again adds nothing.
 * Limits: knows what was kept and what was taken away, not what stood in between: a value that was corrected is at odds.
 */
import type { EntryKind } from "../daybook/kinds.ts";
import type { Steps } from "../steps.ts";
import type { FileEntry } from "./read.ts";

const ENTRIES_A_STEP = 300;

/** An entry of the daybook, as it is now. */
export interface HeldEntry {
  readonly id: string;
  readonly kind: string;
  readonly on: string;
  readonly body: Readonly<Record<string, unknown>>;
  readonly version: number;
  /** False where it was taken away, `changedAt` then. */
  readonly kept: boolean;
  readonly changedAt: string;
}

export interface Pair {
  readonly entry: FileEntry;
  readonly held: HeldEntry;
}

export interface Comparison {
  readonly fresh: readonly FileEntry[];
  readonly same: readonly Pair[];
  /** The same as an earlier row of the file. */
  readonly twice: readonly { readonly entry: FileEntry; readonly first: FileEntry }[];
  /** Another value at the same time and of the same thing, or another text under the same id. */
  readonly clashes: readonly Pair[];
  readonly deleted: readonly Pair[];
}

/** @param undone ids of entries that the undoing of an act took away: nobody deleted those, and they count as never here */
export function* compareEntries(
  entries: readonly FileEntry[],
  held: readonly HeldEntry[],
  undone: ReadonlySet<string>,
): Steps<Comparison> {
  const kept = held.filter((one) => one.kept);
  const removed = held.filter((one) => !one.kept && !undone.has(one.id));
  const free = new Map(kept.map((one) => [one.id, one]));
  const gone = new Map(removed.map((one) => [one.id, one]));
  const same: Pair[] = [];
  const clashes: Pair[] = [];
  const deleted: Pair[] = [];
  const { once, twice } = yield* withoutRepeats(entries);
  let open = once;
  function* match(
    pairs: Pair[],
    from: Map<string, HeldEntry>,
    find: (entry: FileEntry) => HeldEntry | undefined,
  ): Steps<void> {
    const rest: FileEntry[] = [];
    for (const [i, entry] of open.entries()) {
      if (i % ENTRIES_A_STEP === 0) yield;
      const found = find(entry);
      if (found === undefined) rest.push(entry);
      else {
        from.delete(found.id);
        pairs.push({ entry, held: found });
      }
    }
    open = rest;
  }
  const byId = (from: ReadonlyMap<string, HeldEntry>) => (entry: FileEntry) =>
    entry.entry === null ? undefined : from.get(entry.entry);

  const sameById = byId(free);
  yield* match(same, free, (entry) => {
    const found = sameById(entry);
    return found !== undefined && isSame(entry, found) ? found : undefined;
  });
  const whole = yield* index(free, wholeKey);
  yield* match(same, free, (entry) => whole.take(wholeKey(entry), free));
  const alike = yield* index(free, alikeKey);
  yield* match(same, free, (entry) => alike.take(alikeKey(entry), free, (found) => isSame(entry, found)));
  yield* match(deleted, gone, byId(gone));
  const goneAlike = yield* index(gone, alikeKey);
  yield* match(deleted, gone, (entry) =>
    goneAlike.take(alikeKey(entry), gone, (found) => isSame(entry, found)),
  );
  yield* match(clashes, free, byId(free));
  const places = yield* index(free, placeKey);
  yield* match(clashes, free, (entry) => places.take(placeKey(entry), free));
  return { fresh: open, same, twice, clashes, deleted };
}

interface Repeats {
  readonly once: FileEntry[];
  readonly twice: { readonly entry: FileEntry; readonly first: FileEntry }[];
}

/** Rows that say the same are one; with two ids of their own they are two. */
function* withoutRepeats(entries: readonly FileEntry[]): Steps<Repeats> {
  const firsts = new Map<string, FileEntry[]>();
  const once: FileEntry[] = [];
  const twice: { readonly entry: FileEntry; readonly first: FileEntry }[] = [];
  for (const [i, entry] of entries.entries()) {
    if (i % ENTRIES_A_STEP === 0) yield;
    const key = wholeKey(entry);
    const before = firsts.get(key);
    const first = before?.find(
      (one) => one.entry === null || entry.entry === null || one.entry === entry.entry,
    );
    if (first !== undefined) {
      twice.push({ entry, first });
      continue;
    }
    once.push(entry);
    if (before === undefined) firsts.set(key, [entry]);
    else before.push(entry);
  }
  return { once, twice };
}

type Fields = Readonly<Record<string, unknown>>;
type Told = Pick<HeldEntry, "kind" | "on" | "body"> | FileEntry;

interface Index {
  /** The first that is still free and fits. */
  readonly take: (
    key: string | null,
    free: ReadonlyMap<string, HeldEntry>,
    fits?: (held: HeldEntry) => boolean,
  ) => HeldEntry | undefined;
}

function* index(
  from: ReadonlyMap<string, HeldEntry>,
  keyOf: (held: HeldEntry) => string | null,
): Steps<Index> {
  const lists = new Map<string, HeldEntry[]>();
  let i = 0;
  for (const held of from.values()) {
    if (i++ % ENTRIES_A_STEP === 0) yield;
    const key = keyOf(held);
    if (key === null) continue;
    const list = lists.get(key);
    if (list === undefined) lists.set(key, [held]);
    else list.push(held);
  }
  return {
    take(key, free, fits = () => true) {
      const list = key === null ? undefined : lists.get(key);
      if (list === undefined) return undefined;
      while (list[0] !== undefined && !free.has(list[0].id)) list.shift();
      return list.find((held) => free.has(held.id) && fits(held));
    },
  };
}

/** What is told of when: the instant, a local time as it was typed, or nothing but the day. */
function timeOf(body: Fields): string {
  const at = body["observed_at"];
  if (typeof at === "string") return String(Date.parse(at));
  const text = body["observed_text"];
  const local =
    typeof text === "string" ? /^\s*\d{4}-\d\d-\d\d[T ](\d\d:\d\d(?::\d\d)?)\s*$/.exec(text) : null;
  return local?.[1] ?? "";
}

/** When it was typed is no matter of what it says; nor is what was said of it then. */
const NOT_MATTER: ReadonlySet<string> = new Set(["observed_text", "observed_at", "said", "flag"]);

/** Keys are asked for again and again. */
const keys = new WeakMap<object, string>();

function wholeKey(told: Told): string {
  const known = keys.get(told.body);
  if (known !== undefined) return known;
  const { kind, on, body } = told;
  const matter = Object.entries(body)
    .filter(([name]) => !NOT_MATTER.has(name))
    .sort(([a], [b]) => (a < b ? -1 : 1));
  const key = keyOf([kind, on, timeOf(body as Fields), matter]);
  keys.set(body, key);
  return key;
}

/** Of readings the figure decides, not how it was typed; a note or a kit's step may be missing on one side. */
function alikeKey(told: Told): string {
  const { kind, on, body } = told;
  if (kind !== "reading") return wholeKey(told);
  const { quantity, value, censored } = body as Fields;
  return keyOf([kind, on, timeOf(body as Fields), quantity, censored, value]);
}

function isSame(entry: FileEntry, held: HeldEntry): boolean {
  if (entry.kind !== held.kind || entry.on !== held.on) return false;
  if (entry.kind !== "reading") return wholeKey(entry) === wholeKey(held);
  if (alikeKey(entry) !== alikeKey(held)) return false;
  const mine = entry.body as Fields;
  return ["note", "kit_step"].every((name) => mine[name] === null || mine[name] === held.body[name]);
}

/** What can be there only once at one time, so that another value is at odds with it; null where any number can. */
const ONCE_AT_A_TIME: Readonly<Partial<Record<EntryKind, readonly string[]>>> = {
  reading: ["quantity"],
  growth: ["growth"],
  head_count: ["animal", "animal_text"],
};

function placeKey({ kind, on, body }: Told): string | null {
  const names = ONCE_AT_A_TIME[kind as EntryKind];
  if (names === undefined) return null;
  const fields = body as Fields;
  const [first, other] = names;
  const of = fields[first ?? ""] ?? fields[other ?? ""];
  return keyOf([kind, on, timeOf(fields), of]);
}

const DIGITS = 12;

/** As one text, figures to twelve digits and names in order. */
const keyOf = (parts: readonly unknown[]): string =>
  JSON.stringify(parts, (_, part: unknown) => {
    if (typeof part === "number") return Number(part.toPrecision(DIGITS));
    if (typeof part !== "object" || part === null || Array.isArray(part)) return part;
    return Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1));
  });
