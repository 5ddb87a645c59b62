/** The sign between a table's cells: the one that cuts its first rows into equally many. Two that do are asked about. */
import { type Answers, answered, ask, done, type FileQuestion, type Step } from "./asked.ts";
import { rowsOf } from "./table.ts";

export type Separator = "," | ";" | "\t" | "|";
export const SEPARATORS: Readonly<Record<Separator, string>> = {
  ",": "comma",
  ";": "semicolon",
  "\t": "tab",
  "|": "bar",
};

const ROWS_LOOKED_AT = 40;
const LETTERS_LOOKED_AT = 60_000;

interface Cut {
  readonly separator: Separator;
  readonly columns: number;
  /** Share of the rows with as many cells as the first. */
  readonly agree: number;
}

export interface Found {
  readonly separator: Separator;
  /** The table's own text, without the line by which some spreadsheets tell their separator. */
  readonly from: number;
}

export function findSeparator(text: string, answers: Answers): Step<Found> {
  const told = /^sep=([,;\t|])\r?\n/i.exec(text);
  if (told !== null) return done({ separator: told[1] as Separator, from: told[0].length });
  const start = text.slice(0, LETTERS_LOOKED_AT);
  const cuts = (Object.keys(SEPARATORS) as Separator[])
    .map((separator) => cutBy(start, separator))
    .filter(({ columns }) => columns > 1)
    .sort((a, b) => b.agree - a.agree || b.columns - a.columns);
  const [best, next] = cuts;
  if (best === undefined) return done({ separator: ",", from: 0 });
  if (next === undefined || next.agree < best.agree) return done({ separator: best.separator, from: 0 });
  const equal = cuts.filter(({ agree }) => agree === best.agree);
  const question: FileQuestion = {
    name: "separator",
    kind: "AMBIG",
    text: "Which sign stands between the columns?",
    choices: equal.map(({ separator, columns }) => ({
      label: `${SEPARATORS[separator]}: ${columns} columns`,
      value: SEPARATORS[separator],
    })),
  };
  const chosen = answered(answers, question);
  const found = equal.find(({ separator }) => SEPARATORS[separator] === chosen);
  return found === undefined ? ask(question) : done({ separator: found.separator, from: 0 });
}

function cutBy(text: string, separator: Separator): Cut {
  const counts: number[] = [];
  try {
    for (const { cells } of rowsOf(text, separator)) {
      counts.push(withoutBlankEnd(cells).length);
      if (counts.length >= ROWS_LOOKED_AT) break;
    }
  } catch {
    // A quote that stays open here is told when the whole is read.
  }
  const [columns = 0] = counts;
  const agree = counts.filter((count) => count === columns).length / Math.max(1, counts.length);
  return { separator, columns, agree };
}

/** Spreadsheets leave empty columns at the right edge. */
export function withoutBlankEnd(cells: readonly string[]): readonly string[] {
  let end = cells.length;
  while (end > 0 && cells[end - 1]?.trim() === "") end -= 1;
  return cells.slice(0, end);
}
