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
  const key = sent["once"];
  const of = `${kind}:${tank.row.id}`;
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
  try {
    return await once();
  } catch (error) {
    if (error instanceof NotKept) return { id: "", refused: `${error.message}.` };
    throw error;
  }

  async function once(): Promise<Done> {
    if (key === undefined || !isOwnKey(key)) {
      return { id: await makeOnce({ key, of, content: entry, by, work }, context) };
    }
    const typed = JSON.stringify(Object.entries(typedOf(kind, sent)).toSorted());
    const done = await context.store.once(`${of}:${key}`, typed, { at: context.now, by }, async (desk) => {
      return { status: 303, body: { id: await work(desk), at: context.now } };
    });
    return done.kind === "other_request" ? { id: "", other: true } : { id: String(done.reply.body["id"]) };
  }
}

/** Ends the write, so that nothing of it stays, its key neither. */
class NotKept extends Error {}
