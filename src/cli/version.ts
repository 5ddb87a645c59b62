import { readFileSync } from "node:fs";

/** Version of the package, which is the engine's too: results carry it. */
export const ENGINE_VERSION: string = (
  JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8")) as { version: string }
).version;
