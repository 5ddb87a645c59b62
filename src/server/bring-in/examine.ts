/** A file read and held against a tank's daybook: what bringing it in would do, and what is open. Changes nothing. */
import { createHash } from "node:crypto";
import { firstUnit } from "../../answers/questions/fields.ts";
import { entryContext, type KnownTank } from "../../answers/record/entry-context.ts";
import { MEASURED_AS, shownIn } from "../../answers/units-shown.ts";
import type { Answers } from "../../contract/bring-in/asked.ts";
import { type Column, headerKey, roleText } from "../../contract/bring-in/columns.ts";
import { type Comparison, compareEntries } from "../../contract/bring-in/compare.ts";
import { type Plan, planOf } from "../../contract/bring-in/plan.ts";
import type { BringInContext, FileRead, FileRows } from "../../contract/bring-in/read.ts";
import { readFile } from "../../contract/bring-in/read-file.ts";
import { readEntry } from "../../contract/daybook/read-entry.ts";
import { MEASURES } from "../../contract/daybook/read-reading.ts";
import type { Measured } from "../../contract/daybook/reading.ts";
import type { Desk, Stamp } from "../../store/store.ts";
import { heldEntries } from "./daybook.ts";
import { inTurn } from "./in-turn.ts";

export interface SentFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface Request {
  readonly tankId: string;
  readonly tank: KnownTank;
  readonly today: string;
  /** Instant, UTC. */
  readonly now: string;
  readonly file: SentFile;
  readonly answers: Answers;
}

export type Examined =
  | Exclude<FileRead, { readonly kind: "read" }>
  | { readonly kind: "read"; readonly file: FileRows; readonly comparison: Comparison; readonly plan: Plan };

export async function examine(desk: Desk, request: Request): Promise<Examined> {
  const read = await readSentFile(desk, request);
  return read.kind === "read" ? await beside(desk, request, read) : read;
}

/** Reads alone: nothing of it depends on what the daybook holds meanwhile. */
export async function readSentFile(desk: Desk, request: Request): Promise<FileRead> {
  const { tank, tankId, today, now, file, answers } = request;
  const context: BringInContext = {
    entry: entryContext(tank, { today, now }),
    readEntry,
    columns: { unitOf: unitOf(tank), remembered: await rememberedColumns(desk, tankId) },
  };
  return await inTurn(readFile(file.bytes, answers, context));
}

export async function beside(
  desk: Desk,
  { tankId, answers }: Pick<Request, "tankId" | "answers">,
  file: FileRows,
): Promise<Extract<Examined, { readonly kind: "read" }>> {
  const held = await heldEntries(desk, tankId);
  const undone = await desk.undoneAdditions(tankId);
  const comparison = await inTurn(compareEntries(file.entries, held, undone));
  return { kind: "read", file, comparison, plan: planOf(comparison, answers) };
}

/** Tells one file with its answers from another. */
export const fingerprintOf = ({ file, answers }: Pick<Request, "file" | "answers">): string =>
  createHash("sha256")
    .update(file.bytes)
    .update(JSON.stringify(Object.entries(answers).sort()))
    .digest("base64url");

/** The unit that the keeper reads a quantity in. */
const unitOf =
  ({ document }: KnownTank) =>
  (quantity: Measured): string => {
    const { units } = MEASURES[quantity];
    const shownAs = MEASURED_AS[quantity];
    const field = { kind: "text", name: "", label: "", path: "", width: "short", units } as const;
    return firstUnit(shownAs === undefined ? field : { ...field, shownAs }, shownIn(document.preferences));
  };

const settingOf = (tankId: string): string => `bring_in.columns.${tankId}`;
/** Of one tank: more are no keeper's sheets. */
const MOST_REMEMBERED = 300;

async function rememberedColumns(desk: Desk, tankId: string): Promise<Answers> {
  const setting = await desk.setting(settingOf(tankId));
  return Object.fromEntries(
    Object.entries(setting ?? {}).filter((pair): pair is [string, string] => typeof pair[1] === "string"),
  );
}

/** What was answered about columns, for the next file. */
export async function rememberColumns(
  desk: Desk,
  tankId: string,
  columns: readonly Column[],
  stamp: Stamp,
): Promise<void> {
  const said = columns.filter(({ from, header }) => from === "answer" && headerKey(header) !== "");
  if (said.length === 0) return;
  const before = Object.entries(await rememberedColumns(desk, tankId));
  const all = new Map([
    ...before,
    ...said.map(({ header, role }) => [headerKey(header), roleText(role)] as const),
  ]);
  await desk.saveSetting(settingOf(tankId), Object.fromEntries([...all].slice(-MOST_REMEMBERED)), stamp);
}
