import { expect, test } from "vitest";
import { countTests } from "./count-tests.ts";

test("tests are counted, and a file that could not be loaded is one failure", () => {
  const testResults = [
    { status: "passed", assertionResults: [{}, {}] },
    { status: "failed", assertionResults: [{}] },
    { status: "failed", assertionResults: [] },
  ];
  expect(countTests({ numPassedTests: 2, numFailedTests: 1, testResults })).toEqual({ passed: 2, failed: 2 });
});
