/**
 * A note beside an embedded store that says who serves it and where, so that a second start names the first instead of
 * opening another page on the same tanks. A note left by a program that was killed counts for nothing.
 */
import { readFileSync, rmSync, writeFileSync } from "node:fs";

interface Note {
  readonly pid: number;
  readonly address: string;
}

const fileOf = (store: string) => `${store}.serving`;

/** Address of the program that serves this store now; null where none does. */
export async function servedAt(store: string): Promise<string | null> {
  const note = readNote(store);
  if (note === null || !runs(note.pid)) return null;
  try {
    const answer = await fetch(new URL("api/v1/", note.address), { signal: AbortSignal.timeout(3000) });
    const about = (await answer.json()) as { readonly program?: unknown };
    return about.program === "grazewell" ? note.address : null;
  } catch {
    // Another program has that number now, or the first is just ending.
    return null;
  }
}

export function writeNote(store: string, address: string): void {
  writeFileSync(fileOf(store), JSON.stringify({ pid: process.pid, address } satisfies Note));
}

export function removeNote(store: string): void {
  if (readNote(store)?.pid === process.pid) rmSync(fileOf(store), { force: true });
}

function readNote(store: string): Note | null {
  try {
    const note = JSON.parse(readFileSync(fileOf(store), "utf8")) as Partial<Note>;
    return typeof note.pid === "number" && typeof note.address === "string"
      ? { pid: note.pid, address: note.address }
      : null;
  } catch {
    return null;
  }
}

function runs(pid: number): boolean {
  if (pid === process.pid) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}
