/**
 * An act undone as one: what it added is taken away, what it changed is as it was before, what it brought back is away
 * again. Entries that were changed since are asked about first: kept as they are now, or undone with the rest.
 */
import { UNDO_CHOICES } from "../../contract/bring-in/plan.ts";
import type { Desk, EntryRow, Stamp } from "../../store/store.ts";
import { changeEntry, type Hand } from "../moves/keep.ts";
import { BROUGHT_IN } from "./carry-out.ts";
import { rowsOfTank } from "./daybook.ts";
import { turn } from "./in-turn.ts";

export { UNDO_CHOICES as UNDO_ANSWERS };

type UndoAnswer = (typeof UNDO_CHOICES)[number];

export type Undone =
  | { readonly kind: "not_found" }
  | { readonly kind: "already"; readonly by: Stamp }
  /** These were changed since, and nobody said what is to become of them. */
  | { readonly kind: "ask"; readonly changed: readonly EntryRow[] }
  | {
      readonly kind: "undone";
      readonly taken: number;
      readonly restored: number;
      /** Changed since, or not to be undone, and left as they are. */
      readonly left: number;
    };

const ROWS_AT_ONCE = 100;

/** Inside one write. @param answer to the question about entries that were changed since; null where nobody was asked */
export async function undoAct(
  desk: Desk,
  tankId: string,
  actId: string,
  answer: UndoAnswer | null,
  { stamp, today }: Pick<Hand, "stamp" | "today">,
): Promise<Undone> {
  const act = await desk.act(actId);
  if (act === null || act.tankId !== tankId || act.kind !== BROUGHT_IN) return { kind: "not_found" };
  if (act.undone !== null) return { kind: "already", by: act.undone };
  const made = new Map((await desk.actEntries(actId)).map(({ entryId, version }) => [entryId, version]));
  const rows: EntryRow[] = [];
  for await (const some of rowsOfTank(desk, tankId, { withRemoved: true })) {
    rows.push(...some.filter(({ id }) => made.has(id)));
  }
  const asMade: EntryRow[] = [];
  const changed: EntryRow[] = [];
  for (const row of rows) {
    if (row.version === made.get(row.id) || (await saysTheSame(desk, row, made.get(row.id))))
      asMade.push(row);
    // One that the keeper has taken away since is away: there is nothing to ask.
    else if (row.kept) changed.push(row);
  }
  if (changed.length > 0 && answer === null) return { kind: "ask", changed };
  const added = asMade.filter(({ version }) => version === 1);
  await desk.takeAdded(
    added.map(({ id }) => id),
    stamp,
  );
  const undone = added.map(({ id }) => ({ entryId: id, undoneVersion: 2 }));
  const others = [...asMade.filter(({ version }) => version > 1), ...(answer === "undo" ? changed : [])];
  let left = answer === "keep" ? changed.length : 0;
  for (const [i, row] of others.entries()) {
    const version = made.get(row.id) ?? 1;
    const before =
      version === 1 ? null : (await desk.entryHistory(row.id)).find((one) => one.version === version - 1);
    const { on, body, kept } = before ?? { ...row, kept: false };
    const saved = await changeEntry(desk, row, row.version, { on, body, kept }, { stamp, today });
    // A move that the two daybooks could not both take back stays as it is.
    if (saved.kind === "refused") {
      left += 1;
      continue;
    }
    if (saved.kind !== "saved")
      throw new Error(`Cannot undo an act: entry ${row.id} changed within one write`);
    undone.push({ entryId: row.id, undoneVersion: saved.row.version });
    if (i % ROWS_AT_ONCE === 0) await turn();
  }
  await desk.undoAct(actId, undone, stamp);
  const taken = undone.filter(({ entryId }) => made.get(entryId) === 1).length;
  return {
    kind: "undone",
    taken,
    restored: undone.length - taken,
    left,
  };
}

/** Changed and changed back, as by a later act that was undone: as it was made. */
async function saysTheSame(desk: Desk, row: EntryRow, version: number | undefined): Promise<boolean> {
  const then = (await desk.entryHistory(row.id)).find((one) => one.version === version);
  const matter = ({ on, kept, body }: EntryRow) => JSON.stringify([on, kept, body]);
  return then !== undefined && matter(then) === matter(row);
}
