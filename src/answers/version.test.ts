import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { ENGINE_VERSION } from "./version.ts";

test("the version that results carry is the package's", () => {
  const text = readFileSync(new URL("../../package.json", import.meta.url), "utf8");
  expect(ENGINE_VERSION).toBe((JSON.parse(text) as { version: string }).version);
});
