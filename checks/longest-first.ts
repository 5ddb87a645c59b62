/**
 * The order in which test files are begun: those that take longest first, so that no core stands still at the end while
 * the other still has minutes to go. A file that is not named here is short; a wrong place costs time, nothing else.
 */
import { BaseSequencer, type TestSpecification } from "vitest/node";

const LONGEST = [
  "checks/browser/pages.test.ts",
  "checks/twins/",
  "checks/http/fuzz.test.ts",
  "checks/browser/same-everywhere.test.ts",
  "checks/browser/",
  "checks/stocking/random-tanks.test.ts",
  "src/cli/commands/waves.test.ts",
  "checks/",
];

/** @param file with slashes forward; the lower, the earlier */
const placeOf = (file: string): number => {
  const place = LONGEST.findIndex((part) => file.includes(`/${part}`));
  return place === -1 ? LONGEST.length : place;
};

export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const usual = await super.sort(files);
    return usual.toSorted((a, b) => placeOf(a.moduleId) - placeOf(b.moduleId));
  }
}
