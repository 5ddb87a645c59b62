/**
 * Sends what waits, in order, one sender at a time over all tabs and the worker. What can't be read is kept with its
 * doubts and the rest goes on; where the server can't be reached, all of it stays. Run by pages and by the worker.
 */
import { dropEntry, entriesWaiting, keepEntry, type OutboxEntry } from "./outbox-store.ts";

/** What the server answers to an entry of the outbox: src/server/pages/outbox.ts. */
export type OutboxAnswer =
  | {
      readonly kind: "kept";
      readonly id: string;
      readonly version: number;
      readonly sentence: string;
      /** What is dangerous about it, in words. */
      readonly danger: string | null;
      /** Where the daybook shows it. */
      readonly next: string;
    }
  | { readonly kind: "refused"; readonly doubts: readonly string[] }
  /** Its key came before with other words: it is another entry, and gets a key of its own. */
  | { readonly kind: "other" };

export type Ended = OutboxAnswer | { readonly kind: "not_reached" };

/** Everybody who shows the count listens here. */
export const OUTBOX_NEWS = "grazewell-outbox";
const PATIENCE_MS = 10_000;
/** Answers that will be another one later. */
const LATER: ReadonlySet<number> = new Set([408, 425, 429]);

/** Whether the server could be reached, where there was anything to send. */
export async function sendWaiting(): Promise<boolean> {
  return (await sendAll()).reached;
}

/** Sends what waits, and says how this one of it ended: also where another tab was quicker. */
export async function sendOwn(own: OutboxEntry): Promise<Ended> {
  const { ended, reached } = await sendAll();
  const known = ended.get(own.key);
  if (known !== undefined) return known;
  const left = (await entriesWaiting()).find(({ key }) => key === own.key);
  if (left?.state === "refused") return { kind: "refused", doubts: left.doubts };
  // Sent by another: asked again, the server tells what it said then.
  return reached ? await ask(own) : { kind: "not_reached" };
}

async function sendAll(): Promise<{ readonly ended: ReadonlyMap<string, Ended>; readonly reached: boolean }> {
  const ended = new Map<string, Ended>();
  await oneAtATime(async () => {
    for (const entry of await entriesWaiting()) {
      if (entry.state === "refused") continue;
      const answer = await sendEntry(entry);
      ended.set(entry.key, answer);
      if (answer.kind === "not_reached") return;
    }
  });
  if (ended.size > 0) tellNews();
  return { ended, reached: ![...ended.values()].some(({ kind }) => kind === "not_reached") };
}

async function oneAtATime(work: () => Promise<void>): Promise<void> {
  // Two at once would still be one entry each, by their keys; only the order could be another.
  if (navigator.locks === undefined) await work();
  else await navigator.locks.request(OUTBOX_NEWS, work);
}

async function sendEntry(entry: OutboxEntry): Promise<Ended> {
  const answer = await ask(entry);
  if (answer.kind === "kept") await dropEntry(entry.key);
  if (answer.kind === "refused") await keepEntry({ ...entry, state: "refused", doubts: answer.doubts });
  if (answer.kind !== "other") return answer;
  const anew = { ...entry, key: crypto.randomUUID() };
  await keepEntry(anew);
  await dropEntry(entry.key);
  return await sendEntry(anew);
}

async function ask({ tank, kind, key, typedAt, fields }: OutboxEntry): Promise<Ended> {
  const body = new URLSearchParams(fields.map(([name, value]) => [name, value]));
  for (const [name, value] of Object.entries({ kind, once: key, typed_at: typedAt })) body.set(name, value);
  try {
    const response = await fetch(`/tanks/${tank}/daybook/outbox`, {
      method: "POST",
      body,
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    if (response.status >= 500 || LATER.has(response.status)) return { kind: "not_reached" };
    if (response.status === 404) return { kind: "refused", doubts: ["This tank is not there any more."] };
    if (!response.ok) return { kind: "refused", doubts: [`It was not taken (answer ${response.status}).`] };
    return (await response.json()) as OutboxAnswer;
  } catch {
    return { kind: "not_reached" };
  }
}

/** Also to who tells it: a channel does not speak to itself. */
export function tellNews(): void {
  const channel = new BroadcastChannel(OUTBOX_NEWS);
  channel.postMessage("changed");
  channel.close();
}
