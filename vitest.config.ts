import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["src/**/*.test.{ts,tsx}", "checks/**/*.test.ts", "tools/**/*.test.ts"],
    globalSetup: ["checks/journeys/build.ts"],
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
