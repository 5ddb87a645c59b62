/** Reads the test runner's JSON report: how many tests passed, how many failed. */

export interface Count {
  readonly passed: number;
  readonly failed: number;
}

export const NOTHING: Count = { passed: 0, failed: 0 };

/** As much of the report as is needed. */
interface Report {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly testResults: readonly { readonly status: string; readonly assertionResults: readonly unknown[] }[];
}

/** A file that could not even be loaded has no test to its name: it counts as one failure. */
export function countTests({ numPassedTests, numFailedTests, testResults }: Report): Count {
  const unloaded = testResults.filter(
    ({ status, assertionResults }) => status === "failed" && assertionResults.length === 0,
  );
  return { passed: numPassedTests, failed: numFailedTests + unloaded.length };
}
