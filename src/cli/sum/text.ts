/** Sums as text: the list, an answer, what can't be read yet. */

import { plain, type Sentence } from "../../answers/sentence.ts";
import { STATEMENT } from "../../answers/statement.ts";
import type { AskedSum } from "../../answers/sums/ask.ts";
import type { SumDoubt } from "../../answers/sums/given.ts";
import { SUM_GROUPS, type Sum, type SumAnswer, type SumGroup } from "../../answers/sums/sum.ts";
import { fitted, table, wrap } from "../../answers/words.ts";
import type { Io } from "../io.ts";

export function listText(sums: readonly Sum[], io: Io): string {
  const width = Math.max(...sums.map(({ id }) => id.length));
  const groups = (Object.keys(SUM_GROUPS) as SumGroup[]).flatMap((group) => {
    const own = sums.filter((sum) => sum.group === group);
    if (own.length === 0) return [];
    const lines = own.map(
      ({ id, question }) =>
        `  ${id.padEnd(width)}  ${wrap(question, io.width - width - 4, "", "").replaceAll("\n", `\n${" ".repeat(width + 4)}`)}`,
    );
    return [io.bold(SUM_GROUPS[group]), ...lines];
  });
  return [...groups, "", "grazewell sum NAME --help tells what a sum asks for."].join("\n");
}

export function answerText(
  sum: Sum,
  { answer, taken, said }: Extract<AskedSum, { ok: true }>,
  io: Io,
): string {
  const put = (text: string, indent = "  ") => wrap(text, io.width, indent, `${indent}  `);
  const part = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : [io.bold(title), ...lines.map((line) => put(line))];
  return [
    ...part("Before you start", answer.cautions),
    io.bold(wrap(plain(answer.kind === "none" ? answer.because : answer.lead), io.width)),
    ...(answer.kind === "none" ? [] : worked(answer, io, part)),
    ...part("Taken for granted", [
      ...taken.map(({ label, text, how }) => `${label}: ${text}, ${how}.`),
      ...said.map(({ text }) => text),
    ]),
    ...(answer.figures.length === 0
      ? []
      : [put(`How do you know? --why ${answer.figures.map(({ id }) => shortName(sum, id)).join(", ")}`, "")]),
    wrap(STATEMENT, io.width),
  ].join("\n");
}

const shortName = (sum: Sum, id: string): string => id.slice(`sum.${sum.id}.`.length);

function worked(
  { rows, tables, notes, wouldChange }: SumAnswer,
  io: Io,
  part: (title: string, lines: readonly string[]) => string[],
): string[] {
  return [
    ...rows.map(({ label, value }) => wrap(`${label}: ${plain(value)}`, io.width, "  ", "    ")),
    ...tables.flatMap(({ title, columns, rows: lines }) => [
      io.bold(title),
      fitted(table([columns, ...lines.map(cells)], columns.length), io.width, () =>
        lines.map((line) => cells(line).join(": ")),
      ),
    ]),
    ...part("Limits", notes),
    ...part("What would change it", wouldChange.length === 0 ? [] : [plain(wouldChange)]),
  ];
}

const cells = (line: readonly Sentence[]): string[] => line.map(plain);

/** What can't be read yet, and the readings on offer as they would be typed. */
export function doubtLines({ field, message, choices }: SumDoubt): string[] {
  const flag = `--${field.replaceAll("_", "-")}`;
  return [
    `${message.text}`,
    ...choices.flatMap(({ label, text }) =>
      text === null ? [] : [`  ${flag} "${text}"${label === text ? "" : `  (${label})`}`],
    ),
  ];
}
