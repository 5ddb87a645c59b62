/** The catalogue's fixed scene for tests of bringing in: an invented tank, its keeper's habits, a day. */
import { findAnimal } from "../../src/catalogue/index.ts";
import type { Answers } from "../../src/contract/bring-in/asked.ts";
import type { BringInContext, FileRead } from "../../src/contract/bring-in/read.ts";
import { readFile } from "../../src/contract/bring-in/read-file.ts";
import { readEntry } from "../../src/contract/daybook/read-entry.ts";
import { MEASURES } from "../../src/contract/daybook/read-reading.ts";
import { NO_PREFERENCES } from "../../src/contract/quantity/preferences.ts";
import { atOnce } from "../../src/contract/steps.ts";

export const scene = (more: Partial<BringInContext["entry"]> = {}): BringInContext => ({
  entry: {
    preferences: { ...NO_PREFERENCES, locale: "en-GB" },
    today: "2026-06-15",
    now: "2026-06-15T12:00:00Z",
    zone: "Europe/London",
    stocked: true,
    notBefore: "2020-01-10",
    findAnimal,
    onRecord: () => 0,
    waterL: 200,
    ...more,
  },
  readEntry,
  columns: { unitOf: (quantity) => MEASURES[quantity].units[0] ?? "", remembered: {} },
});

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

export const readText = (text: string, answers: Answers = {}, context = scene()): FileRead =>
  atOnce(readFile(bytesOf(text), answers, context));

export function taken(read: FileRead) {
  if (read.kind !== "read") throw new Error(JSON.stringify(read));
  return read;
}
