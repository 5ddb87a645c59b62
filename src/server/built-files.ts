/** Routes of the built files: kept by the browser for a year, since a changed file has another name. */
import type { FastifyInstance } from "fastify";
import { type BuiltFiles, encodingFor } from "./assets.ts";

const A_YEAR = "public, max-age=31536000, immutable";
/** Asked for by fixed names, so asked again each time. */
const FIXED: Readonly<Record<string, string>> = {
  "/service-worker.js": "offline/service-worker",
  "/favicon.ico": "offline/icon.svg",
};

export function addBuiltFiles(app: FastifyInstance, { addresses, files }: BuiltFiles): void {
  app.get("/assets/*", async (request, reply) => {
    const address = request.url.split("?", 1)[0] ?? "";
    const file = files.get(address);
    if (file === undefined) return reply.callNotFound();
    const tag = `"${address.slice("/assets/".length)}"`;
    reply.header("cache-control", A_YEAR).header("etag", tag).header("vary", "accept-encoding");
    if (request.headers["if-none-match"] === tag) return reply.code(304).send();
    const encoding = encodingFor(request.headers["accept-encoding"], file.bodies);
    if (encoding !== "identity") reply.header("content-encoding", encoding);
    return reply.type(file.type).send(file.bodies[encoding]);
  });
  for (const [path, name] of Object.entries(FIXED)) {
    const address = addresses[name];
    const file = address === undefined ? undefined : files.get(address);
    if (file === undefined) continue;
    app.get(path, async (_request, reply) =>
      reply.header("cache-control", "no-cache").type(file.type).send(file.bodies.identity),
    );
  }
  // What the service worker may keep for opening offline.
  app.get("/assets/manifest.json", async (_request, reply) =>
    reply.header("cache-control", "no-cache").send(addresses),
  );
}
