import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { lockedPackages } from "./lockfile.ts";

const packages = lockedPackages();
const manifest = JSON.parse(readFileSync(join(import.meta.dirname, "../package.json"), "utf8")) as Record<
  "dependencies" | "optionalDependencies" | "devDependencies",
  Record<string, string>
>;
const names = (of: typeof packages) => of.map(({ name }) => name);

test("every locked package is fixed by a hash", () => {
  expect(packages.length).toBeGreaterThan(0);
  expect(names(packages.filter(({ integrity }) => !integrity?.startsWith("sha512-")))).toEqual([]);
});

test("no locked package names the place it came from, so there is one source: the one npm is set to", () => {
  expect(names(packages.filter(({ resolved }) => resolved !== undefined))).toEqual([]);
});

test("no locked package has a script that runs when it is installed", () => {
  expect(names(packages.filter(({ hasInstallScript }) => hasInstallScript))).toEqual([]);
});

test("what a keeper runs stays small: at most 25 direct and 150 packages in all", () => {
  const direct = Object.keys({ ...manifest.dependencies, ...manifest.optionalDependencies });
  expect(direct.length).toBeLessThanOrEqual(25);
  expect(packages.filter(({ production }) => production).length).toBeLessThanOrEqual(150);
});

test("every direct version is exact", () => {
  const { dependencies, optionalDependencies, devDependencies } = manifest;
  const versions = Object.values({ ...dependencies, ...optionalDependencies, ...devDependencies });
  expect(versions.filter((version) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
});
