/**
 * One server and one browser for every file of the browser checks: vitest starts this once, before the first of them,
 * and not at all when none is asked for.
 */
import { chromium } from "playwright-core";
import type { TestProject } from "vitest/node";
import { type Cast, makeCast } from "./cast.ts";
import { EXECUTABLE } from "./executable.ts";
import { startProgram } from "./program.ts";

declare module "vitest" {
  interface ProvidedContext {
    readonly browser: string;
    readonly address: string;
    readonly cast: Cast;
  }
}

export default async function share({ provide }: TestProject): Promise<() => Promise<void>> {
  // All files share it: together they change more in a minute than any keeper.
  const program = await startProgram(makeCast, ["--changes-a-minute", "100000"]);
  const browser = await chromium.launchServer({
    executablePath: EXECUTABLE,
    args: [
      "--no-sandbox",
      "--disable-dev-shm-usage",
      // Whatever is asked of another machine finds none; the watcher records that it was asked.
      "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost",
    ],
  });
  provide("browser", browser.wsEndpoint());
  provide("address", program.address);
  provide("cast", program.prepared);
  return async () => {
    await browser.close();
    await program.stop();
  };
}
