/**
 * How much of the weeks fits one page of A4 or Letter, in two columns of small print. Reckoned in lines, with room to
 * spare; a check prints it and counts pages (checks/browser/paper.test.ts).
 */
import { plain } from "../sentence.ts";
import type { WeekItem } from "./item.ts";

/** Letters in a line of a column. */
const LINE = 56;
/** Lines of both columns on the shorter of the two papers, less what breaks unevenly. */
const LINES = 84;
/** Heading and space of a row, in lines. */
const HEAD = 2;

interface Row {
  readonly items: readonly WeekItem[];
}

const linesOf = ({ text }: WeekItem): number => Math.ceil((plain(text).length + 8) / LINE);
const heightOf = ({ items }: Row): number => HEAD + items.reduce((sum, item) => sum + linesOf(item), 0);

/** The rows with their weightiest lines, and how many of each are left out. */
export function fitted<R extends Row>(rows: readonly R[]): readonly (R & { readonly more: number })[] {
  const kept = rows.map((row) => ({ ...row, more: 0 }));
  const height = () => kept.reduce((sum, row) => sum + heightOf(row) + (row.more > 0 ? 1 : 0), 0);
  while (height() > LINES) {
    const lightest = kept
      .flatMap((row, at) => row.items.map((item) => ({ at, item })))
      .sort((a, b) => a.item.weight - b.item.weight || b.at - a.at)[0];
    if (lightest === undefined) break;
    const row = kept[lightest.at]!;
    kept[lightest.at] = {
      ...row,
      items: row.items.filter((item) => item !== lightest.item),
      more: row.more + 1,
    };
  }
  return kept;
}
