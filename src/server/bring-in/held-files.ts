/**
 * Files that were sent and are looked at before they are brought in. Held in memory, a few and not for long: whoever comes
 * back later chooses the file again, and nothing of it was kept.
 */
import { MOST_FILE_BYTES } from "../../contract/bring-in/limits.ts";
import { newId } from "../new-id.ts";
import type { SentFile } from "./examine.ts";

export interface HeldFile extends SentFile {
  readonly tankId: string;
  readonly atMs: number;
}

const MOST_HELD = 12;
const MOST_HELD_BYTES = 6 * MOST_FILE_BYTES;
const HELD_MS = 2 * 60 * 60_000;

export class HeldFiles {
  readonly #files = new Map<string, HeldFile>();

  hold(tankId: string, file: SentFile, atMs: number): string {
    const id = newId();
    this.#files.set(id, { ...file, tankId, atMs });
    let bytes = [...this.#files.values()].reduce((sum, one) => sum + one.bytes.length, 0);
    for (const [oldest, one] of this.#files) {
      const goes = this.#files.size > MOST_HELD || bytes > MOST_HELD_BYTES || one.atMs < atMs - HELD_MS;
      if (!goes || oldest === id) break;
      bytes -= one.bytes.length;
      this.#files.delete(oldest);
    }
    return id;
  }

  get(id: string, tankId: string, atMs: number): HeldFile | null {
    const file = this.#files.get(id);
    return file !== undefined && file.tankId === tankId && file.atMs >= atMs - HELD_MS ? file : null;
  }

  drop(id: string): void {
    this.#files.delete(id);
  }
}
