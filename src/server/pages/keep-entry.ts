/**
 * Adds one entry, once. A plain form's key is that of the state it was made from, and holds for ten minutes (once.ts);
 * a key of a browser's outbox was made for one entry and holds for ever: only the same typed words are that entry again.
 */
import type { Values } from "../../answers/questions/prefill.ts";
import type { EntryKind } from "../../contract/daybook/kinds.ts";
import type { Desk, Json } from "../../store/store.ts";
import { isChecked, keepEntry } from "../moves/keep.ts";
import type { LoadedTank, PageContext } from "../route.ts";
import { typedOf } from "./entry-of.ts";
import { makeOnce } from "./once.ts";

/** A UUID, as browsers make it. */
export const isOwnKey = (key: string): boolean =>
  /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/.test(key);

interface Read {
  readonly on: string;
  readonly body: Json;
}

export interface Done {
  /** Id of the row made now or before. */
  readonly id: string;
  /** The key is that of another entry, and nothing was added. */
  readonly other?: true;
  /** Why it can't be, one sentence or two; nothing was added. */
  readonly refused?: string;
}

/** Of a form that a person sent: other words under a key that was used are meant anew, as no script is there to say so. */
export async function keepForm(
  kind: EntryKind,
  sent: Values,
  read: Read,
  tank: LoadedTank,
  context: PageContext,
): Promise<Done> {
  const done = await keepOnce(kind, sent, read, tank, context);
  return done.other === true ? await keepOnce(kind, { ...sent, once: "" }, read, tank, context) : done;
}

export async function keepOnce(
  kind: EntryKind,
  sent: Values,
  { on, body }: Read,
  tank: LoadedTank,
  context: PageContext,
): Promise<Done> {
  const by = tank.row.keeper.name;
  const entry = { kind, on, body };
  const id = context.newId();
  const hand = {
    stamp: { at: context.now, by },
    newId: context.newId,
    today: context.today,
    beyondRecord: isChecked(sent["count"] ?? ""),
  };
  const work = async (desk: Desk) => {
    const added = await keepEntry(desk, tank.row.id, { ...entry, id }, hand);
    if (added.kind === "refused") throw new NotKept(added.because);
    return id;
  };
  const key = sent["once"];
  try {
    if (key !== undefined && isOwnKey(key)) return await underOwnKey(key, kind, sent, tank, context, work);
    return { id: await makeOnce({ key, of: keysOf(kind, tank), content: entry, by, work }, context) };
  } catch (error) {
    if (error instanceof NotKept) return { id: "", refused: `${error.message}.` };
    throw error;
  }
}

/**
 * What was kept under an entry's own key; null where nothing was, or it has none. For one that can't be read any more: a
 * loss that is sent again has fewer to lose, as it was kept.
 */
export async function keptBefore(
  kind: EntryKind,
  sent: Values,
  tank: LoadedTank,
  context: PageContext,
): Promise<Done | null> {
  const key = sent["once"];
  if (key === undefined || !isOwnKey(key)) return null;
  try {
    const none = () => Promise.reject(new NotKept());
    const done = await underOwnKey(key, kind, sent, tank, context, none);
    return done.other === true ? null : done;
  } catch (error) {
    if (error instanceof NotKept) return null;
    throw error;
  }
}

const keysOf = (kind: EntryKind, { row }: LoadedTank): string => `${kind}:${row.id}`;

async function underOwnKey(
  key: string,
  kind: EntryKind,
  sent: Values,
  tank: LoadedTank,
  { store, now }: PageContext,
  work: (desk: Desk) => Promise<string>,
): Promise<Done> {
  const typed = JSON.stringify(Object.entries(typedOf(kind, sent)).toSorted());
  const stamp = { at: now, by: tank.row.keeper.name };
  const done = await store.once(`${keysOf(kind, tank)}:${key}`, typed, stamp, async (desk) => {
    return { status: 303, body: { id: await work(desk), at: now } };
  });
  return done.kind === "other_request" ? { id: "", other: true } : { id: String(done.reply.body["id"]) };
}

/** Ends the write, so that nothing of it stays, its key neither. */
class NotKept extends Error {}
