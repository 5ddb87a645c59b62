/**
 * A daybook under import as a page of plain rules, and random lives of one: files brought in, entries corrected, taken away
 * and brought back, imports undone, the same file again. Knows values, not the program's versions, ids or comparisons.
 */
import fc from "fast-check";

/** One reading as a person sees it: the day, the quantity, the figure. */
export interface Line {
  readonly day: number;
  readonly quantity: "ph" | "calcium_mg_per_l";
  readonly figure: number;
}

export type Deed =
  | {
      readonly deed: "bring_in";
      readonly lines: readonly Line[];
      readonly clash: "mine" | "file" | "both";
      readonly deleted: "leave_out" | "bring_back";
    }
  | {
      readonly deed: "again";
      readonly which: number;
      readonly clash: "mine" | "file" | "both";
      readonly deleted: "leave_out" | "bring_back";
    }
  | { readonly deed: "undo"; readonly which: number; readonly answer: "keep" | "undo" }
  | { readonly deed: "correct"; readonly which: number; readonly figure: number }
  | { readonly deed: "take_away" | "bring_back"; readonly which: number }
  | { readonly deed: "take_out"; readonly format: "csv" | "json" }
  | { readonly deed: "log"; readonly line: Line };

const line: fc.Arbitrary<Line> = fc.record({
  day: fc.integer({ min: 1, max: 6 }),
  quantity: fc.constantFrom("ph", "calcium_mg_per_l"),
  figure: fc.integer({ min: 0, max: 4 }),
});
const answers = {
  clash: fc.constantFrom("mine", "file", "both"),
  deleted: fc.constantFrom("leave_out", "bring_back"),
} as const;
const which = fc.nat(7);

export const lives: fc.Arbitrary<Deed[]> = fc.array(
  fc.oneof(
    {
      weight: 4,
      arbitrary: fc.record({
        deed: fc.constant("bring_in"),
        lines: fc.array(line, { maxLength: 8 }),
        ...answers,
      }),
    },
    { weight: 2, arbitrary: fc.record({ deed: fc.constant("again"), which, ...answers }) },
    {
      weight: 2,
      arbitrary: fc.record({ deed: fc.constant("undo"), which, answer: fc.constantFrom("keep", "undo") }),
    },
    {
      weight: 2,
      arbitrary: fc.record({ deed: fc.constant("correct"), which, figure: fc.integer({ min: 0, max: 4 }) }),
    },
    { weight: 2, arbitrary: fc.record({ deed: fc.constantFrom("take_away", "bring_back"), which }) },
    { weight: 1, arbitrary: fc.record({ deed: fc.constant("log"), line }) },
    {
      weight: 1,
      arbitrary: fc.record({ deed: fc.constant("take_out"), format: fc.constantFrom("csv", "json") }),
    },
  ),
  { minLength: 2, maxLength: 14, size: "max" },
) as fc.Arbitrary<Deed[]>;

export interface Entry {
  line: Line;
  kept: boolean;
  /** Taken away by undoing the import that added it: as if it had never been. */
  never: boolean;
}
/** What an import did to one entry: as it was before (null: not there), and as the import left it. */
export interface Trace {
  readonly entry: Entry;
  readonly before: { readonly line: Line; readonly kept: boolean } | null;
  readonly after: Line;
}
export interface Act {
  readonly traces: readonly Trace[];
  undone: boolean;
}

/** A line of a file; `of` where the file names the entry that it was taken from. */
export type Told = Line & { readonly of?: Entry };

const bare = ({ day, quantity, figure }: Line): Line => ({ day, quantity, figure });
const same = (a: Line, b: Line) => a.day === b.day && a.quantity === b.quantity && a.figure === b.figure;
const place = (a: Line, b: Line) => a.day === b.day && a.quantity === b.quantity;

export class Page {
  readonly entries: Entry[] = [];
  readonly acts: Act[] = [];

  log(line: Line): void {
    this.entries.push({ line, kept: true, never: false });
  }

  /** All that is there now, as a file that names each entry. */
  takeOut(): Told[] {
    return this.entries.filter(({ kept }) => kept).map((entry) => ({ ...entry.line, of: entry }));
  }

  /** A file's lines, each told once; lines of entries with names of their own are each their own. */
  bringIn(lines: readonly Told[], clash: string, deleted: string): void {
    const told = lines.filter(
      (one, i) =>
        !lines.slice(0, i).some((other) => same(one, other) && (one.of === undefined || one.of === other.of)),
    );
    // The latest that was made comes first, as lists have it.
    const latest = [...this.entries].reverse().filter(({ never, kept }) => kept || !never);
    const free = new Set(latest.filter(({ kept }) => kept));
    const gone = new Set(latest.filter(({ kept }) => !kept));
    const take = (from: Set<Entry>, fits: (entry: Entry) => boolean): Entry | undefined => {
      const found = [...from].find(fits);
      if (found !== undefined) from.delete(found);
      return found;
    };
    let open = told;
    const pairs = (from: Set<Entry>, fits: (entry: Entry, one: Told) => boolean): [Entry, Line][] => {
      const found: [Entry, Line][] = [];
      open = open.filter((one) => {
        const entry = take(from, (candidate) => fits(candidate, one));
        if (entry !== undefined) found.push([entry, bare(one)]);
        return entry === undefined;
      });
      return found;
    };
    pairs(free, (entry, one) => entry === one.of && same(entry.line, one));
    pairs(free, (entry, one) => same(entry.line, one));
    const back = [
      ...pairs(gone, (entry, one) => entry === one.of),
      ...pairs(gone, (entry, one) => same(entry.line, one)),
    ];
    const odds = [
      ...pairs(free, (entry, one) => entry === one.of),
      ...pairs(free, (entry, one) => place(entry.line, one)),
    ];
    const traces: Trace[] = [];
    const put = (entry: Entry, line: Line) => {
      traces.push({ entry, before: { line: entry.line, kept: entry.kept }, after: line });
      Object.assign(entry, { line, kept: true });
    };
    const add = open.map(bare);
    for (const [entry, one] of odds) {
      if (clash === "file") put(entry, one);
      if (clash === "both") add.push(one);
    }
    if (deleted === "bring_back") for (const [entry, one] of back) put(entry, one);
    for (const one of add) {
      const entry = { line: one, kept: true, never: false };
      this.entries.push(entry);
      traces.push({ entry, before: null, after: one });
    }
    if (traces.length > 0) this.acts.push({ traces, undone: false });
  }

  undo(act: Act, answer: string): void {
    if (act.undone) return;
    act.undone = true;
    for (const { entry, before, after } of act.traces) {
      const untouched = entry.kept && same(entry.line, after);
      if (!untouched && !(entry.kept && answer === "undo")) continue;
      if (before === null) Object.assign(entry, { kept: false, never: true });
      else Object.assign(entry, before);
    }
  }

  correct(entry: Entry, figure: number): void {
    if (entry.kept) entry.line = { ...entry.line, figure };
  }
  keep(entry: Entry, kept: boolean): void {
    // Whoever takes away or brings back by hand has touched it: it has been, after all.
    if (entry.kept !== kept) Object.assign(entry, { kept, never: false });
  }

  /** What a person sees. */
  seen(): string[] {
    return this.entries
      .filter(({ kept }) => kept)
      .map(({ line: { day, quantity, figure } }) => `${day} ${quantity} ${figure}`)
      .sort();
  }
}
