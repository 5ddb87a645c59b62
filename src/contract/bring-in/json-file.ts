/** A daybook taken out as JSON, read back: the same strict reader as the API's, one entry after another. */
import { z } from "zod";
import { readJson } from "../http/json.ts";
import { shown } from "../quantity/show.ts";
import { nullsOf } from "../take-out/columns.ts";
import { DAYBOOK_FILE } from "../take-out/json.ts";
import type { Answers } from "./asked.ts";
import { MOST_FILE_ROWS, tooManyRows } from "./limits.ts";
import type { BringInContext, Fault, FileEntry, FileRead, Steps } from "./read.ts";
import { readWholeEntry } from "./whole.ts";

const ENTRIES_A_STEP = 200;
/** Habits of whoever took it out: its texts mean what they say to them. */
const preferences = z.object({ locale: z.string().max(40), dateOrder: z.enum(["dmy", "mdy"]).nullable() });

type Loose = Readonly<Record<string, unknown>>;

export const looksLikeJson = (text: string): boolean => /^\s*[{[]/.test(text);

export function* readJsonFile(text: string, answers: Answers, context: BringInContext): Steps<FileRead> {
  const read = readJson(text);
  if (!read.ok) return { kind: "refused", message: { kind: "FORMAT", text: read.fault.message } };
  const file = read.value as Loose;
  const list = file[DAYBOOK_FILE] === 1 ? file["entries"] : undefined;
  if (!Array.isArray(list)) {
    const words = `This JSON is no daybook: it must hold "${DAYBOOK_FILE}": 1 and a list "entries", as take-out writes it`;
    return { kind: "refused", message: { kind: "FORMAT", text: words } };
  }
  if (list.length > MOST_FILE_ROWS)
    return { kind: "refused", message: { kind: "TOOBIG", text: tooManyRows() } };
  const habits = preferences.safeParse(file["preferences"]);
  const inFile: BringInContext = habits.success
    ? {
        ...context,
        entry: { ...context.entry, preferences: { ...context.entry.preferences, ...habits.data } },
      }
    : context;
  const entries: FileEntry[] = [];
  const faults: Fault[] = [];
  let [faulty, leftOut] = [0, 0];
  for (const [index, item] of list.entries()) {
    if (index % ENTRIES_A_STEP === 0) yield;
    const line = index + 1;
    if (answers[`row.${line}`] === "leave_out") {
      leftOut += 1;
      continue;
    }
    const { entry, kind, on, body, ...more } = (
      typeof item === "object" && item !== null ? item : {}
    ) as Loose;
    const [unknown] = Object.keys(more);
    const whole =
      unknown === undefined && typeof body === "object" && body !== null
        ? readWholeEntry(String(kind ?? ""), String(on ?? ""), withNulls(String(kind), body as Loose), inFile)
        : null;
    if (whole?.ok === true) {
      const id = typeof entry === "string" && entry.length <= 200 ? entry : null;
      entries.push({ ...whole.entry, place: String(line), line, entry: id });
      continue;
    }
    faulty += 1;
    const doubts = whole?.doubts ?? [
      {
        field: unknown ?? "body",
        typed: "",
        message: {
          kind: "FORMAT" as const,
          text: unknown === undefined ? `body: must be an object` : `unknown field "${shown(unknown)}"`,
        },
      },
    ];
    for (const { field, typed, message } of doubts) {
      faults.push({ line, name: null, label: field, typed, message, choices: [] });
    }
  }
  return {
    kind: "read",
    said: ["a daybook as JSON"],
    columns: [],
    rows: list.length,
    entries,
    faults,
    faulty,
    leftOut,
  };
}

/** What a file leaves out is null, where it may be. */
const withNulls = (kind: string, body: Loose): Loose => ({ ...nullsOf(kind), ...body });
