import { defineConfig } from "vitest/config";

const BROWSER = "checks/browser/**/*.test.ts";

export default defineConfig({
  test: {
    globalSetup: ["checks/journeys/build.ts"],
    // As many as a small machine has cores: left to itself it takes one fewer, and the browser's tests wait a lot.
    maxWorkers: 2,
    testTimeout: 120_000,
    hookTimeout: 120_000,
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
