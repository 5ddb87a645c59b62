/**
 * An entry as a keeper types it, at any door, to the entry as it is kept, or every doubt about it at once.
 * Field names are those of the body without `_text`: `animal`, `seen`, `count`, `observed`, `amount`.
 */
import type { FindAnimal } from "../quantity/find-animal.ts";
import type { Choice, Message } from "../quantity/outcome.ts";
import { shown } from "../quantity/show.ts";
import type { AskedAdvice } from "./asked-advice.ts";
import { ENTRY_FIELDS, KIND_LABELS } from "./fields.ts";
import { Gather, isTrait } from "./gather.ts";
import { ENTRY_BODIES, ENTRY_KINDS, type EntryBody, type EntryKind } from "./kinds.ts";
import type { FindTank, MovedOut } from "./other-tank.ts";
import { readAbsence } from "./read-absence.ts";
import {
  readAddition,
  readDeparture,
  readHeadCount,
  readIdentification,
  readLoss,
  readOrder,
} from "./read-animals.ts";
import { readChore, readDecline, readOutage, readRelocation, readTreatment } from "./read-care.ts";
import { readChange } from "./read-change.ts";
import { readMove } from "./read-move.ts";
import { type ReadingContext, readReading } from "./read-reading.ts";
import { readGrowth, readSign } from "./read-sighting.ts";

/** Texts by field, as typed; an absent one is an empty field. `trait.ID`: "yes", "no". */
export type EntryText = Readonly<Record<string, string>>;

export interface EntryContext extends ReadingContext {
  /** Which animal a name means; the catalogue's. */
  readonly findAnimal: FindAnimal;
  /** Heads of a kind that the record holds on a day: what a loss or a count is held against. */
  readonly onRecord: (animal: string, on: string) => number;
  /** Day on which it was said what lives in the tank: what is dated earlier is in that already. Null, or absent: never. */
  readonly toldOn?: (animal: string | null) => string | null;
  /** What heads that were called so on a day are known to be today; absent: nothing was found out. */
  readonly knownAs?: (animal: string, on: string) => string | null;
  /** Heads of a kind that were moved to other tanks up to a day; absent: none. */
  readonly movedOut?: (animal: string, on: string) => readonly MovedOut[];
  /** Other tanks of the store; absent where only this daybook can be written. */
  readonly findTank?: FindTank;
  /** Advice that can be declined; absent where none was worked out, as for what comes from a file. */
  readonly asked?: readonly AskedAdvice[];
  /** Water of the tank, L: what "20 L changed" is a share of; null where unknown. */
  readonly waterL: number | null;
}

export interface EntryDoubt {
  readonly field: string;
  readonly label: string;
  readonly typed: string;
  readonly message: Message;
  /** `text` is what to put into the field instead. */
  readonly choices: readonly Choice[];
}

export type ReadEntry<Kind extends EntryKind = EntryKind> =
  | {
      readonly ok: true;
      readonly kind: Kind;
      readonly body: EntryBody<Kind>;
      readonly on: string;
      readonly said: readonly Message[];
    }
  | { readonly ok: false; readonly doubts: readonly EntryDoubt[] };

type Reader<Kind extends EntryKind> = (gather: Gather) => EntryBody<Kind> | undefined;

/** A reading has a reader of its own, shared with the doors that take nothing else. */
const READERS: { readonly [Kind in Exclude<EntryKind, "reading">]: Reader<Kind> } = {
  growth: readGrowth,
  sign: readSign,
  head_count: readHeadCount,
  order: readOrder,
  addition: readAddition,
  loss: readLoss,
  departure: readDeparture,
  move: readMove,
  identification: readIdentification,
  chore: readChore,
  change: readChange,
  treatment: readTreatment,
  outage: readOutage,
  relocation: readRelocation,
  absence: readAbsence,
  decline: readDecline,
};

export function readEntry<Kind extends EntryKind>(
  kind: Kind,
  typed: EntryText,
  context: EntryContext,
): ReadEntry<Kind> {
  const unknown = unknownFields(kind, typed);
  if (kind === "reading") {
    const { quantity = "", text = "", unit, kit_step, observed, note } = typed;
    const read = readReading({ quantity, text, ...given({ unit, kit_step, observed, note }) }, context);
    if (!read.ok || unknown.length > 0)
      return { ok: false, doubts: [...unknown, ...(read.ok ? [] : read.doubts)] };
    return { ok: true, kind, body: read.body as EntryBody<Kind>, on: read.on, said: read.said };
  }
  const gather = new Gather(kind, typed, context);
  const body = READERS[kind as Exclude<EntryKind, "reading">](gather);
  const doubts = [...unknown, ...gather.doubts];
  if (body === undefined || gather.on === null || doubts.length > 0) return { ok: false, doubts };
  const tooLong = ENTRY_BODIES[kind].safeParse(body);
  if (!tooLong.success)
    return { ok: false, doubts: [doubtOf(kind, typed, tooLong.error.issues[0]?.path[0])] };
  return { ok: true, kind, body: body as EntryBody<Kind>, on: gather.on, said: gather.said };
}

/** A kind by its name; a doubt with all there are where there is none such. */
export function entryKind(name: string): EntryKind | EntryDoubt {
  const known = ENTRY_KINDS.find((kind) => kind === name);
  if (known !== undefined) return known;
  const choices = ENTRY_KINDS.map((kind) => ({ label: KIND_LABELS[kind], text: kind }));
  const text = `Kind of entry "${shown(name)}": must be one of these: ${ENTRY_KINDS.join(", ")}`;
  return { field: "kind", label: "Kind of entry", typed: name, message: { kind: "FORMAT", text }, choices };
}

const given = <T extends Readonly<Record<string, string | undefined>>>(texts: T) =>
  Object.fromEntries(Object.entries(texts).filter(([, text]) => text !== undefined));

function unknownFields(kind: EntryKind, typed: EntryText): EntryDoubt[] {
  const fields = ENTRY_FIELDS[kind].filter(({ input }) => input !== "traits").map(({ name }) => name);
  const hasTraits = ENTRY_FIELDS[kind].some(({ input }) => input === "traits");
  return Object.keys(typed)
    .filter((name) => !fields.includes(name) && !(hasTraits && isTrait(name)))
    .map((name) => {
      const text = `Field "${shown(name)}": ${KIND_LABELS[kind].toLowerCase()} has no such field. It has ${fields.join(", ")}`;
      const label = "Field";
      return { field: name, label, typed: typed[name] ?? "", message: { kind: "FORMAT", text }, choices: [] };
    });
}

/** Longer than can be kept: the readers count letters as people do, the record as machines do. */
function doubtOf(kind: EntryKind, typed: EntryText, key: PropertyKey | undefined): EntryDoubt {
  const field = String(key ?? "note").replace(/_text$/, "");
  const label = ENTRY_FIELDS[kind].find(({ name }) => name === field)?.label ?? field;
  const text = typed[field] ?? "";
  const message = { kind: "TOOBIG" as const, text: `${label} "${shown(text)}": longer than can be kept` };
  return { field, label, typed: text, message, choices: [] };
}
