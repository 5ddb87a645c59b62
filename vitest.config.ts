import { defineConfig } from "vitest/config";
import { LongestFirst } from "./checks/longest-first.ts";

const BROWSER = "checks/browser/**/*.test.ts";

/**
 * Layers below the server, which Node reads as they stand: rewritten by the test runner, every call from one file to
 * another goes through a getter, and the engine takes twice as long. They import nothing that is rewritten (no layer
 * above them, no .tsx), or it would be there twice.
 */
const AS_IT_STANDS = /\/src\/(engine|solver|catalogue|contract|answers|store)\/(?!.*\.test\.ts$).*\.ts$/;

export default defineConfig({
  test: {
    globalSetup: ["checks/journeys/build.ts"],
    // As many as a small machine has cores: left to itself it takes one fewer, and the browser's tests wait a lot.
    maxWorkers: 2,
    sequence: { sequencer: LongestFirst },
    server: { deps: { external: [AS_IT_STANDS] } },
    // Limits end what hangs; on a machine that has other work too, nothing else may reach them.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    expect: { poll: { timeout: 240_000, interval: 50 } },
    projects: [
      {
        extends: true,
        test: {
          name: "program",
          include: ["src/**/*.test.{ts,tsx}", "checks/**/*.test.ts", "tools/**/*.test.ts"],
          exclude: [BROWSER],
        },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: [BROWSER],
          // One server and one browser for all of them; not started when none of them runs.
          globalSetup: ["checks/browser/kit/shared.ts"],
        },
      },
    ],
  },
});
