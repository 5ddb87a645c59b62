/** Routes of the HTTP API, /api/v1. */
import type { FastifyInstance } from "fastify";
import { ENGINE_VERSION } from "../../answers/version.ts";
import type { Served } from "../app.ts";

export function addApi(app: FastifyInstance, _served: Served): void {
  app.get("/api/v1/", async () => ({ program: "grazewell", engine: ENGINE_VERSION }));
}
