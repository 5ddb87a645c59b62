/** What reading a file gives: entries ready to be kept, rows that are to mend, and how the file was read. */
import type { DaybookEntry, EntryKind } from "../daybook/kinds.ts";
import type { EntryContext, EntryText, ReadEntry } from "../daybook/read-entry.ts";
import type { Choice, Message } from "../quantity/outcome.ts";
import type { FileQuestion } from "./asked.ts";
import type { Column, ColumnHabits } from "./columns.ts";

export interface BringInContext {
  /** What every reader of entries must know of the tank. */
  readonly entry: EntryContext;
  /** The one reader of entries. */
  readonly readEntry: (kind: EntryKind, typed: EntryText, context: EntryContext) => ReadEntry;
  readonly columns: ColumnHabits;
}

/** An entry of the file, not yet of the daybook. */
export interface FileEntry {
  /** Where it stands: line, or line and column where a row holds several; answers name it so. */
  readonly place: string;
  readonly line: number;
  /** Its id in the daybook that it was taken out of; null where the file names none. */
  readonly entry: string | null;
  readonly kind: DaybookEntry["kind"];
  readonly on: string;
  readonly body: DaybookEntry["body"];
  readonly said: readonly Message[];
}

/** One thing to mend: line, field, value, fix. */
export interface Fault {
  readonly line: number;
  /** Under which name another text for the cell is given; null where the file itself must be changed. */
  readonly name: string | null;
  readonly label: string;
  readonly typed: string;
  readonly message: Message;
  readonly choices: readonly Choice[];
}

export interface FileRows {
  /** How it was read: signs, dates, columns, in words. */
  readonly said: readonly string[];
  readonly columns: readonly Column[];
  /** Rows of the file that hold anything. */
  readonly rows: number;
  readonly entries: readonly FileEntry[];
  readonly faults: readonly Fault[];
  /** Rows of which something is to mend. */
  readonly faulty: number;
  /** Rows left out at the keeper's word. */
  readonly leftOut: number;
}

export type FileRead =
  | { readonly kind: "refused"; readonly message: Message }
  | {
      readonly kind: "asked";
      readonly questions: readonly FileQuestion[];
      readonly said: readonly string[];
      readonly columns: readonly Column[];
    }
  | ({ readonly kind: "read" } & FileRows);
