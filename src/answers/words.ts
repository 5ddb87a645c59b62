/** Small words of the plan's sentences: names in number, dates, rations, chances. */

import { round3 } from "../engine/types/link.ts";
import { RATION_MG_C } from "../engine/types/shelf.ts";

const SAME_IN_PLURAL = /(shrimp|fish|copepods|amphipods|nassarius)$/;

/** "3 dwarf ceriths", "1 lawnmower blenny"; what stands in brackets stays behind. */
export function counted(count: number, name: string): string {
  if (count === 1) return `1 ${name}`;
  const [, bare = name, rest = ""] = /^(.*?)(\s*\(.*\))?$/.exec(name) ?? [];
  return `${count} ${plural(bare)}${rest}`;
}

function plural(name: string): string {
  if (SAME_IN_PLURAL.test(name)) return name;
  if (/[^aeiou]y$/.test(name)) return `${name.slice(0, -1)}ies`;
  return /(s|x|sh|ch)$/.test(name) && !/conch$/.test(name) ? `${name}es` : `${name}s`;
}

/** A label inside a sentence: "nitrate", but "pH". */
export const lowered = (label: string): string =>
  label === "pH" ? label : label.slice(0, 1).toLowerCase() + label.slice(1);

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** "15 Jun 2026" of an ISO date. */
export function dateWords(iso: string): string {
  const [year, month, day] = iso.split("-").map(Number) as [number, number, number];
  return `${day} ${MONTHS[month - 1]} ${year}`;
}

/** A sentence of the engine's, its ISO dates in words. */
export const withDates = (text: string): string => text.replaceAll(/\b\d{4}-\d\d-\d\d\b/g, dateWords);

/** mg C a day as rations a day, two figures. */
export function rations(mgC: number): string {
  const amount = mgC / RATION_MG_C;
  return amount < 0.005 ? "0" : round3(Number(amount.toPrecision(2)));
}

/** "3 rations a day", "1 ration a day". */
export function rationsADay(mgC: number): string {
  const amount = rations(mgC);
  return `${amount} ${amount === "1" ? "ration" : "rations"} a day`;
}

/** "9.5 mg", "1.2 g": an amount of dry food, two figures; the same wherever it is told. */
export function dryFood(mg: number): string {
  const amount = Number(mg.toPrecision(2));
  return amount < 1000 ? `${amount} mg` : `${amount / 1000} g`;
}

const LIKELY = [
  [2, "rarely"],
  [7, "seldom"],
  [12, "about even"],
  [17, "usually"],
] as const;
type ChanceWord = (typeof LIKELY)[number][1] | "nearly always";

/** For data, where the number stands beside it; in a sentence the word never stands alone: `chance`. */
export const chanceWord = (of20: number): ChanceWord =>
  LIKELY.find(([most]) => of20 <= most)?.[1] ?? "nearly always";

/** "usually, 14 of 20". */
export function chance(of20: number): string {
  return `${chanceWord(of20)}, ${of20} of 20`;
}

/** Breaks a text into lines of at most `width`, later lines indented. */
export function wrap(text: string, width: number, first = "", later = first): string {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(/\s+/)) {
    if (!empty && line.length + 1 + word.length > width) {
      lines.push(line);
      line = later;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  lines.push(line);
  return lines.join("\n");
}

/** Rows of cells under each other, columns as wide as their widest; numbers to the right. */
export function table(rows: readonly (readonly string[])[], rightFrom = 1, indent = "  "): string {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => (row[column] ?? "").length)));
  return rows
    .map((row) => {
      const cells = row.map((cell, column) =>
        column < rightFrom ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!),
      );
      return (indent + cells.join("  ")).trimEnd();
    })
    .join("\n");
}

/** A table as it is where every line fits, else a line of words for each row. */
export function fitted(wide: string, width: number, inWords: () => readonly string[]): string {
  if (wide.split("\n").every((line) => line.length <= width)) return wide;
  return inWords()
    .map((line) => wrap(line, width, "  ", "    "))
    .join("\n");
}
