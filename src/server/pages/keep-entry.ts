/**
 * Adds one entry, once. A plain form's key is that of the state it was made from, and holds for ten minutes (once.ts);
 * a key of a browser's outbox was made for one entry and holds for ever: only the same typed words are that entry again.
 */
import type { Values } from "../../answers/questions/prefill.ts";
import type { EntryKind } from "../../contract/daybook/kinds.ts";
import type { Desk, Json } from "../../store/store.ts";
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

/** Of a form that a person sent: other words under a key that was used are meant anew, as no script is there to say so. */
export async function keepForm(
  kind: EntryKind,
  sent: Values,
  read: Read,
  tank: LoadedTank,
  context: PageContext,
): Promise<string> {
  const done = await keepOnce(kind, sent, read, tank, context);
  if (done.other !== true) return done.id;
  return (await keepOnce(kind, { ...sent, once: "" }, read, tank, context)).id;
}

/** Id of the row made now or before; `other`: the key is that of another entry, and nothing was added. */
export async function keepOnce(
  kind: EntryKind,
  sent: Values,
  { on, body }: Read,
  tank: LoadedTank,
  context: PageContext,
): Promise<{ readonly id: string; readonly other?: true }> {
  const key = sent["once"];
  const of = `${kind}:${tank.row.id}`;
  const by = tank.row.keeper.name;
  const entry = { kind, on, body };
  const id = context.newId();
  const work = async (desk: Desk) => {
    await desk.addEntries(tank.row.id, [{ ...entry, id }], { at: context.now, by });
    return id;
  };
  if (key === undefined || !isOwnKey(key)) {
    return { id: await makeOnce({ key, of, content: entry, by, work }, context) };
  }
  const typed = JSON.stringify(Object.entries(typedOf(kind, sent)).toSorted());
  const once = await context.store.once(`${of}:${key}`, typed, { at: context.now, by }, async (desk) => {
    return { status: 303, body: { id: await work(desk), at: context.now } };
  });
  return once.kind === "other_request" ? { id: "", other: true } : { id: String(once.reply.body["id"]) };
}
