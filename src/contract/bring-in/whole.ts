/**
 * An entry that a file tells whole, body and all, as a daybook taken out does. Its shape is held to the kind's, its texts
 * go through the same reader as if they were typed, and its figures must be what those texts say; then it is taken as it
 * stands, so that it is the very entry that was taken out.
 */
import { ENTRY_FIELDS } from "../daybook/fields.ts";
import { ENTRY_BODIES, ENTRY_KINDS, type EntryKind } from "../daybook/kinds.ts";
import type { FindTank } from "../daybook/other-tank.ts";
import { readDate } from "../quantity/date.ts";
import { isKept, type Message } from "../quantity/outcome.ts";
import { shown } from "../quantity/show.ts";
import type { BringInContext, FileEntry } from "./read.ts";

export interface WholeDoubt {
  /** Path in the body, joined as the columns of a CSV file are. */
  readonly field: string;
  readonly typed: string;
  readonly message: Message;
}

export type Whole =
  | { readonly ok: true; readonly entry: Pick<FileEntry, "kind" | "on" | "body" | "said"> }
  | { readonly ok: false; readonly doubts: readonly WholeDoubt[] };

/** Letters that can't be shown, or be kept by both databases. */
const UNSHOWABLE = /(?![\t\n\r])\p{Cc}|\p{Cs}|[\ufffe\uffff]/u;
/** Settled when it was kept: told by the file, not worked out anew from a text read on another day. */
const FIGURES = [
  "value",
  "censored",
  "score",
  "seen",
  "count",
  "dead_on_arrival",
  "film_days",
  "hours",
] as const;

export function readWholeEntry(
  kindText: string,
  on: string,
  raw: Readonly<Record<string, unknown>>,
  context: BringInContext,
): Whole {
  const kind = ENTRY_KINDS.find((one) => one === kindText);
  if (kind === undefined) return no("kind", kindText, `must be one of ${ENTRY_KINDS.join(", ")}`);
  const day = readDate(on, { ...context.entry, future: "refuse", label: "on" });
  if (!/^\d{4}-\d\d-\d\d$/.test(on)) return no("on", on, "must be a date such as 2026-06-15");
  if (!isKept(day)) return { ok: false, doubts: [{ field: "on", typed: on, message: day.message }] };
  const unshowable = findUnshowable(raw, []);
  if (unshowable !== null) return no(...unshowable, "holds a character that can't be shown");
  const parsed = ENTRY_BODIES[kind].safeParse(raw);
  if (!parsed.success) {
    const doubts = parsed.error.issues.map(({ path, message, code, ...issue }) => {
      const keys = code === "unrecognized_keys" && "keys" in issue ? (issue.keys as string[]) : [];
      const field = [...path, ...keys.slice(0, 1)].join("_");
      const typed = String(at(raw, path) ?? "");
      const words = keys.length > 0 ? `unknown field "${shown(keys[0] ?? "")}"` : message;
      return doubt(field, typed, words);
    });
    return { ok: false, doubts };
  }
  return held(kind, on, parsed.data as Readonly<Record<string, unknown>>, context);
}

/** Held against what the reader makes of its texts. */
function held(
  kind: EntryKind,
  on: string,
  body: Readonly<Record<string, unknown>>,
  context: BringInContext,
): Whole {
  // How many there were was asked when it was kept: the record of now says nothing of it.
  const then = { ...context.entry, onRecord: () => Number.POSITIVE_INFINITY, findTank: anyTank(body) };
  const read = context.readEntry(kind, typedTexts(kind, on, body), then);
  if (!read.ok) {
    return { ok: false, doubts: read.doubts.map(({ field, typed, message }) => ({ field, typed, message })) };
  }
  const again = read.body as Readonly<Record<string, unknown>>;
  for (const name of FIGURES) {
    if (!Object.hasOwn(again, name) || same(body[name], again[name])) continue;
    const [told, reads] = [JSON.stringify(body[name]), JSON.stringify(again[name])];
    return no(name, told, `the text beside it reads as ${reads}. Change one of them`);
  }
  // What is dangerous stays told, whoever wrote the file.
  const flag =
    body["flag"] === null && again["flag"] !== null ? { flag: again["flag"], said: again["said"] } : {};
  const taken = { ...body, ...flag } as FileEntry["body"];
  return { ok: true, entry: { kind, on, body: taken, said: read.said } };
}

/** The other tank of a move as the file names it: it may be of another store, and its own file tells its half. */
const anyTank =
  (body: Readonly<Record<string, unknown>>): FindTank =>
  (id) => ({
    kind: "one",
    tank: {
      ...{ id, name: String(body["to_text"] ?? body["from_text"] ?? id), notBefore: null },
      onRecord: () => Number.POSITIVE_INFINITY,
      knownAs: (animal) => animal,
      toldOn: () => null,
    },
    receiving: { said: () => [], gateNotMet: null },
  });

/** The fields as a keeper would type them. */
function typedTexts(
  kind: EntryKind,
  on: string,
  body: Readonly<Record<string, unknown>>,
): Record<string, string> {
  const typed: Record<string, string> = {};
  for (const { name, input } of ENTRY_FIELDS[kind]) {
    if (input === "when") typed[name] = typeof body["observed_at"] === "string" ? body["observed_at"] : on;
    else if (input === "traits") {
      for (const [id, seen] of Object.entries((body["traits"] ?? {}) as Record<string, boolean>)) {
        typed[`trait.${id}`] = seen ? "yes" : "no";
      }
    } else {
      const own =
        input === "animal" || input === "tank"
          ? (body[name] ?? body[`${name}_text`])
          : (body[`${name}_text`] ?? body[name]);
      if (own !== null && own !== undefined)
        typed[name] = typeof own === "boolean" ? (own ? "yes" : "no") : String(own);
    }
  }
  return typed;
}

const CLOSE = 1e-9;

/** Figures to nine digits: another machine's last bit is no other figure. */
function same(a: unknown, b: unknown): boolean {
  if (typeof a === "number" && typeof b === "number") {
    return Math.abs(a - b) <= CLOSE * Math.max(1, Math.abs(a), Math.abs(b));
  }
  if (typeof a === "object" && typeof b === "object" && a !== null && b !== null) {
    return Object.keys({ ...a, ...b }).every((key) =>
      same((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
    );
  }
  return a === b;
}

const at = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (part, key) => (part as Record<PropertyKey, unknown> | null | undefined)?.[key],
    value,
  );

function findUnshowable(value: unknown, path: readonly string[]): [field: string, typed: string] | null {
  if (typeof value === "string") return UNSHOWABLE.test(value) ? [path.join("_"), value] : null;
  if (typeof value !== "object" || value === null) return null;
  for (const [key, part] of Object.entries(value)) {
    if (UNSHOWABLE.test(key)) return [path.join("_"), key];
    const found = findUnshowable(part, [...path, key]);
    if (found !== null) return found;
  }
  return null;
}

const doubt = (field: string, typed: string, words: string): WholeDoubt => ({
  field,
  typed,
  message: { kind: "FORMAT", text: `${field} "${shown(typed)}": ${words}` },
});
const no = (field: string, typed: string, words: string): Whole => ({
  ok: false,
  doubts: [doubt(field, typed, words)],
});
