/** `grazewell check` for a person. */

import { band } from "../../answers/check/report.ts";
import type { CheckOutput } from "../../contract/output/check.ts";
import { inWordsDate } from "../../contract/quantity/calendar.ts";
import type { Io } from "../io.ts";

type Read = Extract<CheckOutput, { ok: true }>;

export function printCheck(report: Read, io: Io): void {
  const { name, as_of, notices, facts, assumed, unknown_animals } = report;
  io.out(`${io.bold(name)}: nothing to mend. Read for ${inWordsDate(as_of)}.`);
  const dangers = notices.filter(({ kind }) => kind === "DANGER");
  if (dangers.length > 0) section("First", dangers.map(withLine));
  section("How entries were read", notices.filter(({ kind }) => kind !== "DANGER").map(withLine));
  section(
    "What is known (range that holds it 9 times in 10)",
    facts
      .filter(({ origin }) => origin !== "assumed")
      .flatMap((fact) => columns(fact.label, `${band(fact)} ${fact.unit}`.trim(), fact.how)),
  );
  section(
    "Assumed, as nobody said; those that matter most come first",
    assumed.flatMap(({ label, taken_as, answer, matters }) =>
      columns(label, taken_as, `${answer}${matters === "much" ? ", matters much" : ""}`),
    ),
  );
  if (unknown_animals.length > 0) {
    section("Not in our list: they count for nothing", unknown_animals);
  }

  function withLine({ line, message }: Read["notices"][number]): string {
    return line === null ? message : `line ${line}: ${message}`;
  }

  function section(title: string, lines: readonly string[]): void {
    if (lines.length === 0) return;
    io.out("");
    io.out(io.bold(title));
    for (const line of lines) for (const part of wrapped(line, io.width - 2)) io.out(`  ${part}`);
  }

  /** Label and value; the note beside them where there is room, below where there is none. */
  function columns(label: string, value: string, note: string): string[] {
    const start = `${label.padEnd(LABEL)}${value}`;
    const room = Math.max(start.length + 2, LABEL + VALUE);
    if (room + note.length <= io.width - 2) return [`${start.padEnd(room)}${io.dim(note)}`];
    return [
      start,
      ...wrapped(note, io.width - 2 - LABEL).map((part) => `${" ".repeat(LABEL)}${io.dim(part)}`),
    ];
  }
}

const LABEL = 34;
const VALUE = 22;

/** Breaks between words; what follows the first line is set in by two. */
export function wrapped(text: string, width: number): string[] {
  const lines: string[] = [];
  let rest = text;
  while (visibleLength(rest) > width) {
    const cut = rest.lastIndexOf(" ", width);
    // A line is cut only where words part: a long name stays whole.
    if (cut < width / 2) break;
    lines.push(rest.slice(0, cut).trimEnd());
    rest = `  ${rest.slice(cut).trim()}`;
  }
  return [...lines, rest];
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: the terminal's own codes take no room
const visibleLength = (text: string): number => text.replace(/\u001b\[\d+m/g, "").length;
