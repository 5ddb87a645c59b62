import { expect, test } from "vitest";
import { sources } from "../../catalogue/index.ts";
import { restsOn } from "./rests-on.ts";

test("works name what rests on them", () => {
  expect(restsOn("capper-2006")).toEqual(["growth: cyanobacteria"]);
  expect(restsOn("palytoxin-cdc-2015")).toContain("hitchhiker: button polyps");
  expect(restsOn("cadmium-method-353")).toEqual(["fault of a test: nitrite in nitrate"]);
  expect(restsOn("no-such-work")).toEqual([]);
});

test("every work read for diagnosis stands behind something", () => {
  const keys = [...sources.keys()];
  const own = keys.slice(keys.indexOf("accoroni-totti-2016"), keys.indexOf("nerite-shore-page") + 1);
  expect(own.length).toBeGreaterThan(25);
  for (const key of own) expect(restsOn(key).length, key).toBeGreaterThan(0);
});
