/** Where the build put the engine: asked for when it is needed, since names change with every build. */
import type { EngineAddresses } from "./engine.ts";

export async function engineAddresses(): Promise<EngineAddresses> {
  const response = await fetch("/assets/manifest.json");
  const addresses = (await response.json()) as Readonly<Record<string, string | undefined>>;
  const worker = addresses["client/engine-worker"];
  const solver = addresses["highs/highs.wasm"];
  if (worker === undefined || solver === undefined)
    throw new Error("the build has no engine for the browser");
  return { worker, solver };
}
