/** What was found in a file as its preview shows it: counts of all, and the first of each kind in words. */
import { dateWords } from "../../answers/words.ts";
import type { FileQuestion } from "../../contract/bring-in/asked.ts";
import type { Column } from "../../contract/bring-in/columns.ts";
import type { HeldEntry, Pair } from "../../contract/bring-in/compare.ts";
import type { Decided } from "../../contract/bring-in/plan.ts";
import type { FileEntry } from "../../contract/bring-in/read.ts";
import { ENTRY_FIELDS } from "../../contract/daybook/fields.ts";
import { type DaybookEntry, entryOfRow } from "../../contract/daybook/kinds.ts";
import { MEASURES } from "../../contract/daybook/read-reading.ts";
import { whenWritten } from "../../contract/take-out/csv-file.ts";
import type { PreviewFault, PreviewPair, PreviewView } from "../../web/pages/bring-in-preview.tsx";
import { entrySentence } from "../../web/pages/daybook-words.ts";
import type { Examined } from "./examine.ts";

const FRESH_SHOWN = 10;
const SHOWN = 50;

type Found = Omit<PreviewView, "head" | "held" | "file" | "answers">;
const NOTHING: Found = {
  said: [],
  columns: [],
  questions: [],
  counts: null,
  fresh: [],
  clashes: [],
  deleted: [],
  faults: [],
  more: { clashes: 0, deleted: 0, faults: 0 },
};

export function foundIn(examined: Exclude<Examined, { readonly kind: "refused" }>): Found {
  if (examined.kind === "asked") {
    const questions: readonly FileQuestion[] = examined.questions;
    return {
      ...NOTHING,
      questions,
      said: examined.said,
      columns: examined.columns.map((one) => columnOf(one, questions)),
    };
  }
  const { file, comparison, plan } = examined;
  const beyond = (all: readonly unknown[]) => Math.max(0, all.length - SHOWN);
  const named = new Set<string>();
  return {
    said: file.said,
    columns: file.columns.map((one) => columnOf(one, [])),
    questions: [],
    counts: {
      rows: file.rows,
      fresh: comparison.fresh.length,
      same: comparison.same.length + comparison.twice.length,
      clashes: plan.clashes.length,
      undecided: plan.undecided,
      deleted: plan.deleted.length,
      back: plan.deleted.filter(({ answer }) => answer === "bring_back").length,
      faulty: file.faulty,
      leftOut: file.leftOut,
      ready: { add: plan.add.length, change: plan.change.length },
    },
    fresh: comparison.fresh.slice(0, FRESH_SHOWN).map(wordsOf),
    clashes: plan.clashes.slice(0, SHOWN).map(clashOf),
    deleted: plan.deleted
      .slice(0, SHOWN)
      .map((pair) =>
        pairOf(pair, `You deleted this on ${dateWords(pair.held.changedAt.slice(0, 10))}.`, pair.answer),
      ),
    faults: file.faults
      .slice(0, SHOWN)
      .map(({ line, name, label, typed, message, choices }): PreviewFault => {
        const first = name !== null && !named.has(name);
        if (name !== null) named.add(name);
        const offered = choices.flatMap((one) =>
          one.text === null ? [] : [{ label: one.label, text: one.text }],
        );
        return { line, name: first ? name : null, label, typed, text: message.text, choices: offered };
      }),
    more: { clashes: beyond(plan.clashes), deleted: beyond(plan.deleted), faults: beyond(file.faults) },
  };
}

function columnOf({ number, header, role, from, question }: Column, open: readonly FileQuestion[]) {
  const { name, choices } = question;
  if (open.some((one) => one.name === name))
    return { number, header, holds: "asked above", name: null, choices: [] };
  const holds =
    role.is === "reading"
      ? `${MEASURES[role.quantity].label}${role.unit === "" ? "" : `, ${role.unit}`}`
      : role.is === "field"
        ? role.name.replaceAll("_", " ")
        : { on: "the date", time: "the time of day", entry: "the entry's name", leave_out: "left out" }[
            role.is
          ];
  const said = from === "remembered" ? `${holds}, as before` : holds;
  return { number, header, holds: said, name, choices };
}

/** Where both read alike as sentences, the fields in which they differ stand behind them. */
function clashOf({ entry, held, answer }: Decided<string | null>): PreviewPair {
  const pair = pairOf({ entry }, sentenceOf(held), answer);
  const mine = entryOfRow(held);
  if (pair.mine !== pair.file || mine?.kind !== entry.kind) return pair;
  const differ = ENTRY_FIELDS[entry.kind]
    .map(({ name, label }) => ({ label, mine: fieldOf(mine.body, name), file: fieldOf(entry.body, name) }))
    .filter((field) => field.mine !== field.file);
  const behind = (whose: "mine" | "file") =>
    [pair[whose], ...differ.map((field) => `${field.label}: ${field[whose]}.`)].join(" ");
  return { ...pair, mine: behind("mine"), file: behind("file") };
}

/** As it was typed, where that is kept. */
function fieldOf(body: Readonly<Record<string, unknown>>, name: string): string {
  const value = body[`${name}_text`] ?? body[name] ?? "";
  if (typeof value !== "object") return String(value) || "not said";
  const told = Object.entries(value).map(([trait, seen]) => `${trait} ${seen === true ? "yes" : "no"}`);
  return told.join(", ") || "not said";
}

function pairOf({ entry }: Pick<Pair, "entry">, mine: string, answer: string | null): PreviewPair {
  return {
    place: entry.place,
    line: entry.line,
    when: whenOf(entry),
    mine,
    file: sentence(entry),
    answer: answer ?? "",
  };
}

const sentence = ({ kind, on, body }: Pick<FileEntry, "kind" | "on" | "body">): string =>
  entrySentence({ id: "", kind, on, body } as DaybookEntry);

function sentenceOf(held: HeldEntry): string {
  const entry = entryOfRow(held);
  return entry === null ? held.kind : entrySentence(entry);
}

function whenOf({ on, body }: Pick<FileEntry, "on" | "body">): string {
  const hour = /T(\d\d:\d\d)/.exec(whenWritten(on, body))?.[1];
  return hour === undefined ? dateWords(on) : `${dateWords(on)}, ${hour}`;
}

export const wordsOf = (entry: Pick<FileEntry, "kind" | "on" | "body">): string =>
  `${whenOf(entry)}: ${sentence(entry)}`;
