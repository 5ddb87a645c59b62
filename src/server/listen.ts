/**
 * Listening on this machine alone, and ending: no new connections, what is under way is finished, then the rest is cut.
 * Wider than loopback only once there are accounts.
 */
import type { AddressInfo } from "node:net";
import type { FastifyInstance } from "fastify";
import { LIMITS } from "./limits.ts";

/** The one address listened on. */
const LOOPBACK = "127.0.0.1";

/** No port of that number is free. */
export class PortTaken extends Error {
  readonly port: number;
  constructor(port: number) {
    super(`Port ${port} is taken by another program.`);
    this.port = port;
  }
}

/** Tries the ports in turn; 0 means any that is free. Gives the address to open. @throws PortTaken */
export async function listen(app: FastifyInstance, ports: readonly number[]): Promise<string> {
  app.server.maxConnections = LIMITS.connections;
  for (const port of ports) {
    try {
      await app.listen({ host: LOOPBACK, port });
      const { port: given } = app.server.address() as AddressInfo;
      return `http://${LOOPBACK}:${given}/`;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "EADDRINUSE") throw error;
    }
  }
  throw new PortTaken(ports[0] ?? 0);
}

/** Ends within the time to drain. `release` frees what requests may still wait for. */
export async function stop(app: FastifyInstance, release: () => Promise<void>): Promise<void> {
  const cut = setTimeout(() => app.server.closeAllConnections(), LIMITS.drainMs);
  const closed = app.close();
  await release();
  await closed;
  clearTimeout(cut);
}
