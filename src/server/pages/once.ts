/**
 * One form, one row: a form carries a key of the state it was made from, so a page that has not changed is the same page
 * to the letter, and a form sent twice is known. Long after, the same words are meant anew.
 */
import { createHash } from "node:crypto";
import type { Desk, Once, Reply } from "../../store/store.ts";
import type { PageContext } from "../route.ts";

export const stateKey = (...parts: readonly unknown[]): string =>
  createHash("sha256").update(JSON.stringify(parts)).digest("base64url").slice(0, 22);

/** A double tap, a reload, a line that broke and was tried again: within this time. */
const SAME_FORM_MS = 10 * 60_000;

interface SentForm {
  /** As the form carried it; anything may come here. */
  readonly key: string | undefined;
  /** What the key is for: "reading" of a tank. */
  readonly of: string;
  /** All that is written. */
  readonly content: unknown;
  readonly by: string;
  /** Does it; the reply holds the new row's `id`. */
  readonly work: (desk: Desk) => Promise<string>;
}

/** Id of the row that the form has made, now or before. */
export async function makeOnce(
  { key, of, content, by, work }: SentForm,
  context: PageContext,
): Promise<string> {
  const { store, newId, now } = context;
  const stamp = { at: now, by };
  const fingerprint = JSON.stringify(content);
  const write = (name: string): Promise<Once> =>
    store.once(`${of}:${name}`, fingerprint, stamp, async (desk): Promise<Reply> => {
      return { status: 303, body: { id: await work(desk), at: now } };
    });
  const known = /^[\w-]{8,100}$/.test(key ?? "") ? (key ?? "") : newId();
  const first = await write(known);
  // The same form with other words, or the same words long after, is another row.
  const meantAnew = first.kind === "other_request" || (first.kind === "again" && isOld(first.reply, now));
  const done = meantAnew ? await write(newId()) : first;
  if (done.kind === "other_request") throw new Error("Cannot keep a form: a new key was taken already");
  return String(done.reply.body["id"]);
}

const isOld = ({ body }: Reply, now: string): boolean =>
  Date.parse(now) - Date.parse(String(body["at"])) > SAME_FORM_MS;
