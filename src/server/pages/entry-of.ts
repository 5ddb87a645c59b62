/**
 * Entries of a tank between a form and the store: what was sent, read by the one reader; a kept row as a line of the
 * daybook; a kept entry as the texts of its form.
 */

import { saidOf } from "../../answers/bench/latest.ts";
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { entryContext } from "../../answers/record/entry-context.ts";
import { saidCold } from "../../answers/wrong/list-of-danger.ts";
import { animalById } from "../../catalogue/index.ts";
import { ENTRY_FIELDS } from "../../contract/daybook/fields.ts";
import {
  type DaybookEntry,
  ENTRY_KINDS,
  type EntryBody,
  type EntryKind,
  entryOfRow,
} from "../../contract/daybook/kinds.ts";
import { readEntry } from "../../contract/daybook/read-entry.ts";
import type { EntryRow, Json } from "../../store/store.ts";
import type { DaybookLine } from "../../web/pages/daybook.tsx";
import { entrySentence } from "../../web/pages/daybook-words.ts";
import type { OnRecord } from "../../web/pages/entry-form.tsx";
import { unitSigns } from "../../web/parts/text.ts";
import { rankedWith } from "../bench-scene.ts";
import { adviceAsked } from "../moves/advice-asked.ts";
import { otherTanks } from "../moves/other-tanks.ts";
import type { LoadedTank, PageContext } from "../route.ts";
import { readSent, valuesOfReading } from "./reading-of.ts";

export const entryKindOf = (name: string | undefined): EntryKind | undefined =>
  ENTRY_KINDS.find((kind) => kind === name);

export type SentEntry =
  | { readonly ok: true; readonly on: string; readonly body: Json; readonly said: readonly string[] }
  | { readonly ok: false; readonly doubts: readonly FieldDoubt[] };

/** @param id the entry that it corrects, which does not count beside itself */
export async function readSentEntry(
  kind: EntryKind,
  sent: Values,
  tank: LoadedTank,
  context: PageContext,
  id: string | null = null,
): Promise<SentEntry> {
  if (kind === "reading") {
    const read = readSent(sent, sent["quantity"] ?? "", tank, context, id);
    return read.ok
      ? { ok: true, on: read.on, body: read.body as Json, said: read.said.map(({ text }) => text) }
      : read;
  }
  const typed = typedOf(kind, sent);
  const findTank = await otherTanks(kind, typed, tank, context, id);
  const rank = async (advice: string) => (await rankedWith(advice, tank, context)).ranked;
  const asked = await adviceAsked(kind, typed, tank, rank, id);
  const read = readEntry(kind, typed, entryContext(tank, context, { correcting: id, findTank, asked }));
  if (read.ok) {
    return { ok: true, on: read.on, body: read.body as Json, said: read.said.map(({ text }) => text) };
  }
  const doubts = read.doubts.map(({ field, message, choices }) => ({
    field,
    text: message.text,
    choices: choices.flatMap(({ label, text }) => (text === null ? [] : [{ label, text }])),
  }));
  return { ok: false, doubts };
}

/** The fields that the kind has; what else a form carries (its key, its version) is not the entry's. */
export function typedOf(kind: EntryKind, sent: Values): Record<string, string> {
  const names = new Set(ENTRY_FIELDS[kind].map(({ name }) => name));
  return Object.fromEntries(
    Object.entries(sent).filter(
      ([name, value]) => value !== "" && (names.has(name) || name.startsWith("trait.")),
    ),
  );
}

/** By name, those of whom there is at least one. */
export function onRecord({ facts }: LoadedTank): readonly OnRecord[] {
  const heads = new Map<string, number>();
  for (const { id, count } of facts.present) heads.set(id, (heads.get(id) ?? 0) + count);
  return [...heads]
    .filter(([, count]) => count > 0)
    .map(([id, count]) => ({ id, count, name: animalById.get(id)?.commonName ?? id }))
    .toSorted((a, b) => (a.name < b.name ? -1 : 1));
}

/** Null where this program does not know the row's kind or its shape. */
export function daybookLineOf(row: EntryRow): DaybookLine | null {
  const entry = entryOfRow(row);
  if (entry === null) return null;
  const { id, version, on, kept } = row;
  const flagged = entry.kind === "reading" ? entry.body : null;
  return {
    ...{ id, version, on, kept, kind: entry.kind },
    sentence: entrySentence(entry),
    note: entry.body.note,
    flag:
      flagged === null || flagged.flag === null
        ? null
        : {
            ...{ kind: flagged.flag, quantity: flagged.quantity, cold: saidCold(flagged.said) },
            words: `${unitSigns(saidOf(flagged.said ?? "see its history"))}.`,
          },
  };
}

/** As the form shows a kept entry, ready to be corrected. */
export function valuesOfEntry({ kind, body, on }: DaybookEntry): Values {
  if (kind === "reading") return { ...valuesOfReading(body, on), quantity: body.quantity };
  const kept: Readonly<Record<string, unknown>> = body;
  const values: Record<string, string> = {};
  for (const { name, input } of ENTRY_FIELDS[kind]) {
    // A tank by its id, which a name may not tell.
    const value = input === "tank" ? kept[name] : (kept[`${name}_text`] ?? kept[name]);
    if (typeof value === "boolean") values[name] = value ? "yes" : "no";
    else if (typeof value === "string" || typeof value === "number") values[name] = String(value);
  }
  // "yesterday" would mean another day now.
  values["observed"] = body.observed_at ?? (hasHour(body.observed_text) ? body.observed_text : on);
  for (const [trait, seen] of Object.entries("traits" in body ? body.traits : {})) {
    values[`trait.${trait}`] = seen ? "yes" : "no";
  }
  return values;
}

/** A date with its hour, typed for a tank whose zone is not known: it means the same on any day. */
const hasHour = (text: string): boolean => /^\d{4}-\d\d-\d\dT\d\d:\d\d/.test(text);

/** Labels of the fields with what was typed into them; empty ones are left out. */
export function asTyped({ kind, body, on }: DaybookEntry): readonly (readonly [string, string])[] {
  const values = valuesOfEntry({ kind, body, on, id: "" } as DaybookEntry);
  const kept: Readonly<Record<string, unknown>> = body;
  const lines = ENTRY_FIELDS[kind].flatMap(({ name, label, choices, input }): [string, string][] => {
    const told = input === "tank" ? String(kept[`${name}_text`] ?? "") : (values[name] ?? "");
    const text = name === "observed" ? body.observed_text : told;
    if (text === "" || name === "unit") return [];
    return [[label, choices.find((choice) => choice.text === text)?.label ?? text]];
  });
  return kind === "reading" ? withText(lines, body) : lines;
}

/** Of a reading the text is shown whole, with its unit. */
const withText = (
  lines: readonly (readonly [string, string])[],
  { text }: EntryBody<"reading">,
): readonly (readonly [string, string])[] =>
  lines.map(([label, value]) => [label, label === "Reading" ? unitSigns(text) : value]);
