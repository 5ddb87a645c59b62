/**
 * Text of a CSV file to rows of cells, one at a time. Quotes as spreadsheets write them: a cell that begins with one goes
 * on, over line ends and separators, to the next single one. Quotes elsewhere are letters. Blank lines are passed over.
 */
import { MOST_FILE_COLUMNS } from "./limits.ts";

export interface TableRow {
  /** Line of the file on which the row begins, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
  /** Columns, from 1, into which the keeper put another text: in the keeper's own signs, not the file's. */
  readonly mended?: ReadonlyMap<number, string>;
}

class UnclosedQuote extends Error {
  readonly line: number;
  constructor(line: number) {
    super(`Line ${line}: a quote opens and never closes`);
    this.line = line;
  }
}

class TooManyColumns extends Error {
  constructor(line: number) {
    super(`Line ${line}: more than ${MOST_FILE_COLUMNS} columns`);
  }
}

/** @throws UnclosedQuote, TooManyColumns */
export function* rowsOf(text: string, separator: string): Generator<TableRow> {
  const plainEnd = new RegExp(`[${separator === "|" ? "\\|" : separator}\\r\\n]`, "g");
  let [at, line] = [0, 1];
  while (at < text.length) {
    const cells: string[] = [];
    const start = line;
    for (;;) {
      if (cells.length >= MOST_FILE_COLUMNS) throw new TooManyColumns(line);
      let cell = "";
      if (text[at] === '"') {
        const opened = line;
        at += 1;
        for (;;) {
          const close = text.indexOf('"', at);
          if (close < 0) throw new UnclosedQuote(opened);
          const part = text.slice(at, close);
          line += linesIn(part);
          at = close + 1;
          cell += part;
          if (text[at] !== '"') break;
          cell += '"';
          at += 1;
        }
      }
      plainEnd.lastIndex = at;
      const end = plainEnd.exec(text)?.index ?? text.length;
      cells.push(cell + text.slice(at, end));
      at = end;
      if (text[at] !== separator) break;
      at += 1;
    }
    if (text[at] === "\r" && text[at + 1] === "\n") at += 1;
    at += 1;
    line += 1;
    if (cells.some((cell) => cell.trim() !== "")) yield { line: start, cells };
  }
}

function linesIn(text: string): number {
  let count = 0;
  for (let i = 0; i < text.length; i += 1) {
    const letter = text[i];
    if (letter === "\n" || (letter === "\r" && text[i + 1] !== "\n")) count += 1;
  }
  return count;
}
