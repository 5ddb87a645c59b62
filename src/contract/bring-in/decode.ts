/**
 * Bytes of a file to its text. What is no text (a picture, a workbook) is told by its content, whatever it is called.
 * UTF-8 and UTF-16 show themselves; bytes that are neither are shown as they would read, and asked about.
 */
import { shown } from "../quantity/show.ts";
import { type Answers, answered, ask, done, type FileQuestion, refuse, type Step } from "./asked.ts";
import { MOST_FILE_BYTES, tooManyBytes } from "./limits.ts";

export interface Decoded {
  readonly text: string;
  /** How it was read, in words. */
  readonly encoding: string;
}

/** First bytes of what people take for tables. */
const OTHERS: readonly (readonly [bytes: readonly number[], is: string])[] = [
  [[0x89, 0x50, 0x4e, 0x47], "a picture, not a table"],
  [[0xff, 0xd8, 0xff], "a picture, not a table"],
  [[0x47, 0x49, 0x46, 0x38], "a picture, not a table"],
  [[0x52, 0x49, 0x46, 0x46], "a picture or a sound, not a table"],
  [[0x25, 0x50, 0x44, 0x46], "a PDF document, not a table"],
  [[0x50, 0x4b, 0x03, 0x04], "a workbook or a packed folder. Save the sheet as CSV, and choose that file"],
  [[0xd0, 0xcf, 0x11, 0xe0], "a workbook. Save the sheet as CSV, and choose that file"],
  [[0x1f, 0x8b], "a packed file. Unpack it first"],
  [[0x53, 0x51, 0x4c, 0x69, 0x74, 0x65], "a database. Use grazewell restore for a store"],
];

const NOT_TEXT = "not a table: it holds bytes that no text has";
/** Code pages that old programs write, and what each is called. */
const OLD: readonly (readonly [label: string, name: string])[] = [
  ["windows-1252", "Western European"],
  ["windows-1250", "Central European"],
  ["macintosh", "old Macintosh"],
];

export function decode(bytes: Uint8Array, answers: Answers): Step<Decoded> {
  if (bytes.length === 0) return refuse("MISSING", "The file is empty");
  if (bytes.length > MOST_FILE_BYTES) return refuse("TOOBIG", tooManyBytes(bytes.length));
  const other = OTHERS.find(([start]) => start.every((byte, i) => bytes[i] === byte));
  if (other !== undefined) return refuse("FORMAT", `This is ${other[1]}`);
  const wide = utf16Of(bytes);
  if (wide !== null)
    return asText(decoded(bytes, wide), wide === "utf-16le" ? "UTF-16" : "UTF-16, big end first");
  try {
    return asText(new TextDecoder("utf-8", { fatal: true }).decode(bytes), "UTF-8");
  } catch {
    return old(bytes, answers);
  }
}

const decoded = (bytes: Uint8Array, label: string): string => new TextDecoder(label).decode(bytes);

/** A mark at the start says so; without one, nulls at every other place of ordinary letters do. */
function utf16Of(bytes: Uint8Array): "utf-16le" | "utf-16be" | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  const some = bytes.subarray(0, 2000);
  const nulls = [0, 0];
  for (const [i, byte] of some.entries()) if (byte === 0) nulls[i % 2] = (nulls[i % 2] ?? 0) + 1;
  const [even = 0, odd = 0] = nulls;
  const half = some.length / 2;
  if (odd > 0.4 * half && even < 0.05 * half) return "utf-16le";
  if (even > 0.4 * half && odd < 0.05 * half) return "utf-16be";
  return null;
}

function asText(text: string, encoding: string): Step<Decoded> {
  const at = text.search(NO_TEXT);
  if (at >= 0) {
    const line = text.slice(0, at).split("\n").length;
    return refuse("FORMAT", `This is ${NOT_TEXT} (line ${line})`);
  }
  return text.trim() === "" ? refuse("MISSING", "The file is empty") : done({ text, encoding });
}

/** Controls that no table holds; what is left of a broken UTF-16. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const NO_TEXT = /[\u0000-\u0008\u000e-\u001a\u001c-\u001f]|\p{Cs}/u;

function old(bytes: Uint8Array, answers: Answers): Step<Decoded> {
  if (NO_TEXT.test(decoded(bytes, "windows-1252"))) return refuse("FORMAT", `This is ${NOT_TEXT}`);
  const around = firstOdd(bytes);
  const readings = OLD.map(([label, name]) => ({ label, name, as: shown(decoded(around, label).trim()) }));
  const offered = readings.filter(({ as }, i) => readings.findIndex((other) => other.as === as) === i);
  const question: FileQuestion = {
    name: "encoding",
    kind: "FORMAT",
    text: `The file is not in UTF-8. Shown as '${offered[0]?.as}'. Right?`,
    choices: offered.map(({ label, name, as }) => ({ label: `'${as}' (${name})`, value: label })),
  };
  const chosen = answered(answers, question);
  return chosen === null ? ask(question) : asText(decoded(bytes, chosen), chosen);
}

/** The word around the first byte beyond ASCII. */
function firstOdd(bytes: Uint8Array): Uint8Array {
  const at = bytes.findIndex((byte) => byte > 0x7f);
  const isEdge = (byte: number | undefined) =>
    byte === undefined || byte === 0x0a || byte === 0x0d || byte === 0x2c || byte === 0x3b || byte === 0x09;
  let [start, end] = [at, at];
  while (start > 0 && at - start < 40 && !isEdge(bytes[start - 1])) start -= 1;
  while (end < bytes.length && end - at < 40 && !isEdge(bytes[end])) end += 1;
  return bytes.subarray(start, end);
}
