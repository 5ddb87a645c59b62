/** Weeks 1 to 26 as `weeks --json` prints them. */
import type { WeeksOutput } from "../../contract/output/weeks.ts";
import { plain } from "../sentence.ts";
import { STATEMENT } from "../statement.ts";
import { ENGINE_VERSION } from "../version.ts";
import type { Weeks } from "./weeks.ts";

export const weeksOutputOf = (name: string, { counted, asOf, finding, rows, later }: Weeks): WeeksOutput => ({
  ...{ schema: "grazewell.weeks/1", engine: ENGINE_VERSION, tank: { name, as_of: asOf } },
  ...{ counted, finding: plain(finding) },
  weeks: rows.map(({ from, to, starts, ends, lists, more }) => ({
    ...{ from, to, starts, ends },
    ...{ expect: lists.expect.map(plain), test: lists.test.map(plain), do: lists.do.map(plain) },
    ...{ dont: lists.dont.map(plain), buy: lists.buy.map(plain), more },
  })),
  later: later === null ? null : plain(later),
  statement: STATEMENT,
});
