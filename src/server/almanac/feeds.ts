/**
 * Feeds: addresses that a calendar program asks by itself. The token is 128 bits of chance, told once and kept as its hash;
 * whoever has it reads the duties and nothing else, until it is taken back. Limits: the page answers on its own machine
 * alone, so does the feed.
 */
import { createHash, randomBytes } from "node:crypto";
import type { Store } from "../../store/store.ts";
import { LIMITS } from "../limits.ts";
import { WriteLimit } from "../write-limit.ts";

const TOKEN_BYTES = 16;
export const newToken = (): string => randomBytes(TOKEN_BYTES).toString("base64url");
export const isToken = (text: string): boolean => /^[\w-]{22}$/.test(text);
export const hashOf = (token: string): string => createHash("sha256").update(token).digest("hex");

interface Limits {
  readonly each: WriteLimit;
  readonly unknown: WriteLimit;
  now: number;
}
const limits = new WeakMap<Store, Limits>();

const words = (wait: string, most: number): string =>
  `More than ${most} askings of a calendar's address in a minute. Ask again in ${wait}.`;

/** Counts an asking. @throws TooMany */
export function countAsking(store: Store, hash: string | null, now: string): void {
  let known = limits.get(store);
  if (known === undefined) {
    const made: Limits = {
      each: new WriteLimit(LIMITS.feedsPerMinute, () => made.now, words),
      unknown: new WriteLimit(LIMITS.unknownFeedsPerMinute, () => made.now, words),
      now: 0,
    };
    known = made;
    limits.set(store, known);
  }
  known.now = Date.parse(now);
  if (hash === null) known.unknown.count("unknown");
  else known.each.count(hash);
}
