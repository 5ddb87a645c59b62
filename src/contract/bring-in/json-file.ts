/** A daybook taken out as JSON, read back: the same strict reader as the API's, one entry after another. */
import { z } from "zod";
import { readJson } from "../http/json.ts";
import { shown } from "../quantity/show.ts";
import type { Steps } from "../steps.ts";
import { nullsOf } from "../take-out/columns.ts";
import { DAYBOOK_FILE } from "../take-out/json.ts";
import { type Answers, type Refused, refuse } from "./asked.ts";
import { MOST_FILE_ROWS, tooManyRows } from "./limits.ts";
import type { BringInContext, Fault, FileEntry, FileRead } from "./read.ts";
import { readWholeEntry } from "./whole.ts";

const ENTRIES_A_STEP = 200;
/** Habits of whoever took it out: its texts mean what they say to them. */
const preferences = z.object({ locale: z.string().max(40), dateOrder: z.enum(["dmy", "mdy"]).nullable() });

type Loose = Readonly<Record<string, unknown>>;

export const looksLikeJson = (text: string): boolean => /^\s*[{[]/.test(text);

interface Laid {
  readonly file: Loose;
  readonly list: readonly unknown[];
  /** Line of the first entry, where each has its own; else entries are counted from 1. */
  readonly first: number;
}

/** As take-out lays it out, an entry a line: read in steps. Null where it is laid out otherwise, or anything is wrong. */
function* readLines(text: string): Steps<Laid | null> {
  const lines = text
    .replace(/^\ufeff/, "")
    .trimEnd()
    .split("\n");
  if (lines.length < 2 || lines.pop()?.trim() !== "]}") return null;
  const head = readJson(`${lines[0] ?? ""}]}`);
  if (!head.ok) return null;
  const file = head.value as Loose;
  if (!Array.isArray(file["entries"]) || file["entries"].length > 0) return null;
  const list: unknown[] = [];
  for (let i = 1; i < lines.length; i += 1) {
    if (i % ENTRIES_A_STEP === 0) yield;
    const line = (lines[i] ?? "").trimEnd();
    const comma = line.endsWith(",");
    // Between two entries stands one comma, after the last none.
    if (comma === (i === lines.length - 1)) return null;
    const read = readJson(comma ? line.slice(0, -1) : line);
    if (!read.ok) return null;
    list.push(read.value);
  }
  return { file, list, first: 2 };
}

function readWhole(text: string): Laid | Refused {
  const read = readJson(text);
  if (!read.ok) return refuse("FORMAT", read.fault.message);
  const file = read.value as Loose;
  return { file, list: Array.isArray(file["entries"]) ? file["entries"] : [], first: 1 };
}

export function* readJsonFile(text: string, answers: Answers, context: BringInContext): Steps<FileRead> {
  const laid = (yield* readLines(text)) ?? readWhole(text);
  if ("kind" in laid) return laid;
  const { file, list, first } = laid;
  if (file[DAYBOOK_FILE] !== 1 || !Array.isArray(file["entries"])) {
    const words = `This JSON is no daybook: it must hold "${DAYBOOK_FILE}": 1 and a list "entries", as take-out writes it`;
    return refuse("FORMAT", words);
  }
  if (list.length > MOST_FILE_ROWS) return refuse("TOOBIG", tooManyRows());
  const habits = preferences.safeParse(file["preferences"]);
  const inFile: BringInContext = habits.success
    ? {
        ...context,
        entry: { ...context.entry, preferences: { ...context.entry.preferences, ...habits.data } },
      }
    : context;
  const entries: FileEntry[] = [];
  const faults: Fault[] = [];
  let [faulty, leftOut, named] = [0, 0, 0];
  for (const [index, item] of list.entries()) {
    if (index % ENTRIES_A_STEP === 0) yield;
    const line = index + first;
    if (answers[`row.${line}`] === "leave_out") {
      leftOut += 1;
      continue;
    }
    const { entry, kind, on, body, pictures, ...more } = (
      typeof item === "object" && item !== null ? item : {}
    ) as Loose;
    const listed = Array.isArray(pictures);
    if (listed) named += pictures.length;
    const [unknown] = pictures === undefined || listed ? Object.keys(more) : ["pictures"];
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
    said: ["a daybook as JSON", ...(named === 0 ? [] : [picturesWords(named)])],
    columns: [],
    rows: list.length,
    entries,
    faults,
    faulty,
    leftOut,
  };
}

const picturesWords = (named: number): string =>
  `it names ${named === 1 ? "1 picture" : `${named} pictures`} and holds none: pictures come back with a backup alone`;

/** What a file leaves out is null, where it may be. */
const withNulls = (kind: string, body: Loose): Loose => ({ ...nullsOf(kind), ...body });
