/**
 * A file brought in, as one act: everything it adds and changes, or nothing. Nothing is ever deleted. What is open (rows to
 * mend, clashes nobody decided) holds it up until somebody says that the rest is to be added without them.
 */
import type { ActEntry, Desk, Json, NewEntry, Stamp, Store } from "../../store/store.ts";
import { changeEntry } from "../moves/keep.ts";
import {
  beside,
  type Examined,
  fingerprintOf,
  type Request,
  readSentFile,
  rememberColumns,
} from "./examine.ts";
import { turn } from "./in-turn.ts";

/** Kind of the act. */
export const BROUGHT_IN = "bring_in";
const ROWS_AT_ONCE = 250;

/** The answer by which rows that are open are left out. */
export const REST = { name: "rest", value: "leave_out" } as const;

/** Counts of an act, as it keeps them. */
export interface Done extends Json {
  readonly file: string;
  readonly rows: number;
  readonly added: number;
  readonly changed: number;
  readonly brought_back: number;
  readonly already_here: number;
  readonly left_out: number;
}

export type BroughtIn =
  | { readonly kind: "done"; readonly act: string; readonly about: Done }
  /** All of it was here already, or stays out. */
  | { readonly kind: "nothing"; readonly about: Done }
  | { readonly kind: "open"; readonly examined: Examined };

interface Hand {
  readonly stamp: Stamp;
  readonly newId: () => string;
  /** However often the same file comes with the same answers under it, it is brought in once; null: each time. */
  readonly key: string | null;
}

export async function bringIn(store: Store, request: Request, hand: Hand): Promise<BroughtIn> {
  const read = await readSentFile(store, request);
  if (read.kind !== "read") return { kind: "open", examined: read };
  const work = async (desk: Desk): Promise<BroughtIn> => {
    const examined = await beside(desk, request, read);
    const open = read.faulty + examined.plan.undecided;
    if (open > 0 && request.answers[REST.name] !== REST.value) throw new StillOpen(examined);
    return await carryOut(desk, request, examined, hand);
  };
  try {
    if (hand.key === null) return await store.together(work);
    const key = `bring_in:${request.tankId}:${hand.key}`;
    const once = await store.once(key, fingerprintOf(request), hand.stamp, async (desk) => ({
      status: 200,
      body: { ended: await work(desk) },
    }));
    if (once.kind !== "other_request") return once.reply.body["ended"] as BroughtIn;
    // Other answers under the same key: the keeper went back and chose anew.
    return await store.together(work);
  } catch (error) {
    if (error instanceof StillOpen) return { kind: "open", examined: error.examined };
    throw error;
  }
}

/** Ends the write, so that nothing of it stays, its key neither: it is asked again, answered. */
class StillOpen extends Error {
  readonly examined: Examined;
  constructor(examined: Examined) {
    super("Something is open in the file");
    this.examined = examined;
  }
}

async function carryOut(
  desk: Desk,
  { tankId, today, file: sent }: Request,
  { file, comparison, plan }: Extract<Examined, { readonly kind: "read" }>,
  { stamp, newId }: Hand,
): Promise<BroughtIn> {
  const made: Pick<ActEntry, "entryId" | "version">[] = [];
  for (let start = 0; start < plan.add.length; start += ROWS_AT_ONCE) {
    const rows = plan.add
      .slice(start, start + ROWS_AT_ONCE)
      .map(({ kind, on, body }): NewEntry => ({ id: newId(), kind, on, body: body as Json }));
    await desk.addEntries(tankId, rows, stamp);
    made.push(...rows.map(({ id }) => ({ entryId: id, version: 1 })));
    await turn();
  }
  const changed: (typeof plan.change)[number][] = [];
  for (const [i, { entry, held }] of plan.change.entries()) {
    const change = { on: entry.on, body: entry.body as Json, kept: true };
    const saved = await changeEntry(desk, held, held.version, change, { stamp, today });
    // A move that the two daybooks could not both take stays as it is.
    if (saved.kind === "refused") continue;
    if (saved.kind !== "saved")
      throw new Error(`Cannot bring in a file: entry ${held.id} changed within one write`);
    made.push({ entryId: held.id, version: saved.row.version });
    changed.push({ entry, held });
    if (i % ROWS_AT_ONCE === 0) await turn();
  }
  await rememberColumns(desk, tankId, file.columns, stamp);
  const back = changed.filter(({ held }) => !held.kept).length;
  const staying = plan.clashes.filter(({ answer }) => answer === "mine" || answer === null).length;
  const out = plan.deleted.filter(({ answer }) => answer === "leave_out").length;
  const about: Done = {
    file: sent.name.slice(0, 200),
    rows: file.rows,
    added: plan.add.length,
    changed: changed.length - back,
    brought_back: back,
    already_here: comparison.same.length + comparison.twice.length,
    left_out: file.faulty + file.leftOut + staying + out + (plan.change.length - changed.length),
  };
  if (made.length === 0) return { kind: "nothing", about };
  const act = { id: newId(), tankId, kind: BROUGHT_IN, about };
  await desk.addAct(act, made, stamp);
  return { kind: "done", act: act.id, about };
}
