/**
 * A steady load over HTTP: each request leaves at its own instant whether or not earlier ones have come back, and its
 * time counts from that instant, so that a server that stalls is not spared the waiting. Each client has an address of
 * its own on loopback, since changes are bounded for each client.
 */
import { Agent, request } from "node:http";

export interface Asked {
  readonly method: "GET" | "POST";
  readonly path: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
}

export interface Load {
  readonly address: URL;
  readonly perSecond: number;
  readonly seconds: number;
  readonly clients: number;
  readonly ask: (i: number) => Asked;
}

export interface Took {
  readonly count: number;
  readonly ms: { readonly p50: number; readonly p95: number; readonly p99: number; readonly most: number };
  /** Connections that failed, and answers of 500 and more. */
  readonly errors: number;
  readonly byStatus: Readonly<Record<string, number>>;
}

/** Of the whole of 127/8 a program may speak from any: the first client is 127.0.0.2. */
const agentOf = (client: number) =>
  new Agent({ keepAlive: true, maxSockets: 8, localAddress: `127.0.0.${client + 2}` });

/** A client sends so many in turn: with one each, a client would meet the same kind of request each time. */
const TURN = 10;

export async function load({ address, perSecond, seconds, clients, ask }: Load): Promise<Took> {
  const agents = Array.from({ length: clients }, (_, client) => agentOf(client));
  const took: number[] = [];
  const byStatus: Record<string, number> = {};
  const count = perSecond * seconds;
  const began = performance.now();
  const send = (i: number, due: number) =>
    new Promise<void>((resolve) => {
      const { method, path, headers = {}, body } = ask(i);
      const end = (status: string) => {
        took.push(performance.now() - due);
        byStatus[status] = (byStatus[status] ?? 0) + 1;
        resolve();
      };
      const sent = request(
        {
          host: address.hostname,
          port: address.port,
          path,
          method,
          headers,
          agent: agents[Math.floor(i / TURN) % clients],
        },
        (answer) => {
          answer.resume();
          answer.on("end", () => end(String(answer.statusCode)));
        },
      );
      sent.on("error", (error: NodeJS.ErrnoException) => end(error.code ?? "failed"));
      sent.end(body);
    });
  const all: Promise<void>[] = [];
  for (let i = 0; i < count; ) {
    const due = began + (1000 * i) / perSecond;
    const early = due - performance.now();
    if (early > 1) await new Promise((resolve) => setTimeout(resolve, early));
    else {
      all.push(send(i, due));
      i += 1;
    }
  }
  await Promise.all(all);
  for (const agent of agents) agent.destroy();
  const sorted = took.toSorted((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  return {
    count,
    ms: { p50: at(0.5), p95: at(0.95), p99: at(0.99), most: sorted.at(-1) ?? 0 },
    errors: Object.entries(byStatus).reduce((sum, [status, n]) => sum + (/^[234]/.test(status) ? 0 : n), 0),
    byStatus,
  };
}
