/** So many writes a minute from one client: more are told to wait, and how long. */
import { TooMany } from "./refused.ts";

const MINUTE_MS = 60_000;
/** Clients remembered; on loopback there is one. */
const MOST_CLIENTS = 10_000;

export class WriteLimit {
  readonly #most: number;
  readonly #nowMs: () => number;
  readonly #words: ((wait: string, most: number) => string) | undefined;
  /** Instants of each client's writes in the last minute, oldest first. */
  readonly #writes = new Map<string, number[]>();

  /** @param words what is told who has to wait; of changes where left out */
  constructor(most: number, nowMs: () => number, words?: (wait: string, most: number) => string) {
    this.#most = most;
    this.#nowMs = nowMs;
    this.#words = words;
  }

  /** @throws TooMany */
  count(client: string): void {
    const now = this.#nowMs();
    const recent = (this.#writes.get(client) ?? []).filter((at) => at > now - MINUTE_MS && at <= now);
    const oldest = recent[0];
    if (recent.length >= this.#most && oldest !== undefined) {
      this.#writes.set(client, recent);
      throw new TooMany(Math.max(1, Math.ceil((oldest + MINUTE_MS - now) / 1000)), this.#most, this.#words);
    }
    recent.push(now);
    this.#writes.delete(client);
    this.#writes.set(client, recent);
    for (const first of this.#writes.keys()) {
      if (this.#writes.size <= MOST_CLIENTS) break;
      this.#writes.delete(first);
    }
  }
}
