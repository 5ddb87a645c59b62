/**
 * Lists the licence of every package a keeper runs, and fails on one that asks more than to be named: `npm run
 * licences`. Packages that only build and test are counted by licence, not judged: nothing of them is passed on.
 */
import { lockedPackages } from "./lockfile.ts";

/** Licences that ask for no more than their own text and the authors' names. */
const PERMISSIVE = new Set([
  ...["MIT", "ISC", "BSD-2-Clause", "BSD-3-Clause", "Apache-2.0", "0BSD", "Unlicense"],
  // Of fonts: they may be passed on with a program, whatever its licence, under their own name.
  "OFL-1.1",
]);

const packages = lockedPackages();
const production = packages.filter((each) => each.production);
for (const { name, version, licence } of production) console.log(`${name} ${version}: ${licence}`);

const tools = new Map<string, number>();
for (const { production, licence } of packages) {
  if (!production) tools.set(licence, (tools.get(licence) ?? 0) + 1);
}
const counted = [...tools].map(([licence, count]) => `${count} ${licence}`).join(", ");
console.log(`to build and test only: ${counted}`);

const wrong = production.filter(({ licence }) => !PERMISSIVE.has(licence));
for (const { name, licence } of wrong) {
  console.error(`${name}: ${licence} is not among the licences this program may be passed on with`);
}
process.exitCode = wrong.length === 0 ? 0 : 1;
