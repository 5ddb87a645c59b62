/** Names and notes: kept as typed, counted in graphemes, without characters that show nothing or turn the text. */
import { kept, type MessageKind, type Outcome, refused } from "./outcome.ts";
import { shown } from "./show.ts";

const LONGEST_NAME = 100;
const LONGEST_NOTE = 10_000;
/** Controls that cannot be shown; a note may break lines. */
const UNSHOWABLE = /(?![\t\n\r])\p{Cc}|\p{Cs}|[\ufffe\uffff]/u;
/** Characters that turn the direction of the text around them. */
const TURNING = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

const graphemes = new Intl.Segmenter("en", { granularity: "grapheme" });

function length(text: string): number {
  let count = 0;
  for (const _ of graphemes.segment(text)) count += 1;
  return count;
}

function readText(text: string, label: string, most: number, example: string): Outcome<string> {
  const original = { text, unit: null };
  const say = (kind: MessageKind, words: string) => ({ kind, text: `${label} "${shown(text)}": ${words}` });
  const clean = text.replace(TURNING, "").normalize("NFC").trim();
  if (clean === "") return refused(original, say("MISSING", `nothing entered. Enter ${example}`));
  if (UNSHOWABLE.test(clean))
    return refused(original, say("FORMAT", "holds a character that can't be shown"));
  // A grapheme has at least one code unit: only a text that may be too long is counted out.
  const size = clean.length > most ? length(clean) : clean.length;
  if (size > most) {
    const words = `must be ${most.toLocaleString("en-GB")} characters or fewer; you have ${size.toLocaleString("en-GB")}`;
    return refused(original, say("TOOBIG", words));
  }
  if (TURNING.test(text)) {
    TURNING.lastIndex = 0;
    return kept(
      "convert",
      clean,
      original,
      say("ECHO", `kept as "${shown(clean)}", without the hidden characters`),
    );
  }
  return kept("accept", clean, original);
}

export function readName(text: string, label = "Tank name"): Outcome<string> {
  return readText(text, label, LONGEST_NAME, "a name, such as Kitchen");
}

export function readNote(text: string, label = "Note"): Outcome<string> {
  return readText(text, label, LONGEST_NOTE, "some words");
}
