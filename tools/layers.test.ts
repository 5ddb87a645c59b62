import { expect, test } from "vitest";
import { checkTree, wrongImports } from "./layers.ts";

test("a planted import from the engine to the catalogue is caught", () => {
  const planted = 'import { animals } from "../../catalogue/index.ts";\n';
  expect(wrongImports("engine/stocking/plan.ts", planted)).toMatchObject([
    { why: "engine/stocking may not import catalogue" },
  ]);
});

test("a planted import against the order inside the engine is caught", () => {
  const planted = 'export { plan } from "../stocking/plan.ts";\n';
  expect(wrongImports("engine/balance/step.ts", planted)).toHaveLength(1);
});

test("a planted platform import in the engine is caught, static or dynamic", () => {
  expect(wrongImports("engine/larder/supply.ts", 'import { readFileSync } from "node:fs";')).toHaveLength(1);
  expect(wrongImports("engine/larder/supply.ts", 'await import("highs")')).toHaveLength(1);
});

test("a folder that is no layer is caught", () => {
  expect(wrongImports("misc/thing.ts", "")).toHaveLength(1);
});

test("the tree as it stands has no wrong import", () => {
  expect(checkTree(new URL("../src", import.meta.url).pathname)).toEqual([]);
});
