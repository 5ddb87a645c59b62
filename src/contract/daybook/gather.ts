/** One entry under way: its texts by field, what was doubtful in them, and what is worth saying of the rest. */
import { readCount } from "../quantity/count.ts";
import { readDate } from "../quantity/date.ts";
import type { FoundAnimal } from "../quantity/find-animal.ts";
import { readInstant } from "../quantity/instant.ts";
import { type Choice, isKept, type Message, type MessageKind, type Outcome } from "../quantity/outcome.ts";
import { shown } from "../quantity/show.ts";
import { readSpecies } from "../quantity/species.ts";
import { readName, readNote } from "../quantity/text.ts";
import { ENTRY_FIELDS, type EntryField } from "./fields.ts";
import type { EntryKind } from "./kinds.ts";
import type { EntryContext, EntryDoubt, EntryText } from "./read-entry.ts";
import { withOffset } from "./read-reading.ts";

/** Most letters that a text of an entry is kept with, beside notes. */
const LONGEST_WORDS = 200;
const LONGEST_REASON = 1000;

const TRAIT = /^trait\.([a-z0-9][a-z0-9_-]{0,59})$/;
export const isTrait = (field: string): boolean => TRAIT.test(field);

export interface When {
  readonly observed_text: string;
  readonly observed_at: string | null;
  readonly note: string | null;
}

export class Gather {
  readonly doubts: EntryDoubt[] = [];
  readonly said: Message[] = [];
  readonly context: EntryContext;
  /** Day of the entry; null while it is not known. */
  on: string | null = null;
  readonly #typed: EntryText;
  readonly #fields: ReadonlyMap<string, EntryField>;

  constructor(kind: EntryKind, typed: EntryText, context: EntryContext) {
    this.#typed = typed;
    this.context = context;
    this.#fields = new Map(ENTRY_FIELDS[kind].map((field) => [field.name, field]));
  }

  text(name: string): string {
    return (Object.hasOwn(this.#typed, name) ? (this.#typed[name] ?? "") : "").trim();
  }

  label(name: string): string {
    return this.#fields.get(name)?.label ?? name;
  }

  /** The value of an outcome; undefined where it was not kept, and is a doubt now. */
  take<T>(name: string, outcome: Outcome<T>): T | undefined {
    if (isKept(outcome)) {
      if (outcome.message !== null) this.said.push(outcome.message);
      return outcome.value;
    }
    const { message, choices } = outcome;
    this.doubts.push({ field: name, label: this.label(name), typed: this.text(name), message, choices });
    return undefined;
  }

  doubt(name: string, kind: MessageKind, words: string, choices: readonly Choice[] = []): undefined {
    const typed = this.text(name);
    const label = this.label(name);
    const text = typed === "" ? `${label}: ${words}` : `${label} "${shown(typed)}": ${words}`;
    this.doubts.push({ field: name, label, typed, message: { kind, text }, choices });
    return undefined;
  }

  say(name: string, kind: MessageKind, words: string): void {
    this.said.push({ kind, text: `${this.label(name)} "${shown(this.text(name))}": ${words}` });
  }

  /** One of the field's choices, by its text or its label; null where the field is empty and may be. */
  choice<Name extends string>(name: string, among: readonly Name[]): Name | null | undefined {
    const typed = this.text(name);
    const field = this.#fields.get(name);
    const { choices = [], needed = false } = field ?? {};
    if (typed === "") return needed ? this.#missing(name, choices) : null;
    const low = typed.toLowerCase();
    const found = choices.find(
      ({ text, label }) => text.toLowerCase() === low || label.toLowerCase() === low,
    );
    const known = among.find((one) => one === found?.text);
    return known ?? this.doubt(name, "FORMAT", `must be one of these: ${list(choices)}`, choices);
  }

  yesNo(name: string): boolean | null | undefined {
    const typed = this.text(name).toLowerCase();
    if (typed === "") return null;
    if (["yes", "y", "true", "1", "on"].includes(typed)) return true;
    if (["no", "n", "false", "0", "off"].includes(typed)) return false;
    return this.doubt(name, "FORMAT", "must be yes or no, or left empty", [
      { label: "Yes", text: "yes" },
      { label: "No", text: "no" },
    ]);
  }

  /** A few words on one line; null where the field is empty and may be. */
  words(name: string, longest = LONGEST_WORDS): string | null | undefined {
    const typed = this.text(name);
    if (typed === "") return this.#fields.get(name)?.needed === true ? this.#missing(name, []) : null;
    const read =
      longest > LONGEST_WORDS ? readNote(typed, this.label(name)) : readName(typed, this.label(name));
    const kept = this.take(name, read);
    if (kept === undefined || kept.length <= longest) return kept;
    return this.doubt(name, "TOOBIG", `must be ${longest} characters or fewer; you have ${kept.length}`);
  }

  reason(name: string): string | null | undefined {
    return this.words(name, LONGEST_REASON);
  }

  /** Which animal; `animal` null for the keeper's own. */
  animal(name = "animal"): { readonly text: string; readonly found: FoundAnimal | null } | undefined {
    const text = this.text(name);
    const species = this.take(name, readSpecies(text, this.context.findAnimal, this.label(name)));
    if (species === undefined) return undefined;
    return { text, found: species.kind === "known" ? species.animal : null };
  }

  /** Whole animals; null for "many". `known`: what the record holds, where it is to be held against that. */
  heads(
    name: string,
    meaning: "seen" | "lost" | "other",
    known: number | null = null,
  ): { readonly count: number | null; readonly about: boolean } | undefined {
    const { preferences, waterL } = this.context;
    const outcome = readCount(this.text(name), {
      preferences,
      label: this.label(name),
      waterL,
      ...(meaning === "other" ? {} : { onRecord: known, meaning }),
    });
    // The record's own figure is the likely one.
    const mended =
      !isKept(outcome) && outcome.message.kind === "CONFLICT" && known !== null && known > 0
        ? { ...outcome, choices: [{ label: String(known), text: String(known) }, ...outcome.choices] }
        : outcome;
    const head = this.take(name, mended);
    if (head === undefined) return undefined;
    return head.kind === "many" ? { count: null, about: true } : head;
  }

  /** Whole animals of which a figure is needed. */
  counted(name: string, meaning: "lost" | "other", known: number | null = null): number | undefined {
    const heads = this.heads(name, meaning, known);
    if (heads === undefined) return undefined;
    if (heads.count !== null && heads.count > 0) return heads.count;
    if (heads.count === 0) return this.doubt(name, "RANGE", "must be 1 or more");
    return this.doubt(name, "FORMAT", "a figure is needed here, a rough one will do", [
      { label: "about 100", text: "about 100 (checked)" },
      { label: "about 1000", text: "about 1000 (checked)" },
    ]);
  }

  /** `trait.ID`: yes or no, each. */
  traits(): Record<string, boolean> | undefined {
    const traits: Record<string, boolean> = {};
    let sound = true;
    for (const name of Object.keys(this.#typed)) {
      const id = TRAIT.exec(name)?.[1];
      if (id === undefined) continue;
      const seen = this.yesNo(name);
      if (seen === undefined) sound = false;
      else if (seen !== null) traits[id] = seen;
    }
    return sound ? traits : undefined;
  }

  /** When, and the note. */
  when(): When | undefined {
    const { preferences, today, now, zone, notBefore } = this.context;
    const observed = this.text("observed") || "today";
    const label = this.label("observed");
    const read = readInstant(observed, { preferences, today, now, zone, notBefore, future: "refuse", label });
    // An empty field means today: nobody needs to be told.
    const quiet = this.text("observed") === "" && isKept(read);
    const seen = this.take("observed", quiet ? { ...read, message: null } : read);
    const typed = this.text("note");
    const note = typed === "" ? null : this.take("note", readNote(typed, this.label("note")));
    if (seen !== undefined) this.on = seen.day;
    if (seen === undefined || note === undefined) return undefined;
    return {
      observed_text: observed.slice(0, 60),
      observed_at: seen.at === null ? null : withOffset(seen.at),
      note,
    };
  }

  /** A day that may lie ahead, ISO date; null where the field is empty. */
  plannedDay(name: string): string | null | undefined {
    const typed = this.text(name);
    if (typed === "") return null;
    const { preferences, today } = this.context;
    return this.take(
      name,
      readDate(typed, { preferences, today, future: "planned", label: this.label(name) }),
    );
  }

  #missing(name: string, choices: readonly Choice[]): undefined {
    const words = choices.length === 0 ? "nothing entered" : `nothing chosen. One of these: ${list(choices)}`;
    return this.doubt(name, "MISSING", words, choices);
  }
}

const list = (choices: readonly Choice[]): string => choices.map(({ label }) => label).join(", ");
