/** Results of many twins in a table: error before and after, share of the weeks that the 80 % band held, inflow. */

import { MEASURED, type Measured } from "./measures.ts";
import type { TwinResult } from "./one.ts";

export interface Row {
  readonly of: Measured | "heads";
  /** Mean error: blind, latest, calibrated. */
  readonly error: readonly [number, number, number];
  /** Share held by the 80 % band: blind, latest, calibrated. */
  readonly within: readonly [number, number, number];
}

const mean = (values: readonly number[]): number =>
  values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);

export const rowsOf = (results: readonly TwinResult[]): readonly Row[] =>
  ([...MEASURED, "heads"] as const).map((of) => {
    const across = (part: "error" | "within") =>
      (["blind", "latest", "calibrated"] as const).map((way) =>
        mean(results.map((result) => result[way][of][part])),
      ) as [number, number, number];
    return { of, error: across("error"), within: across("within") };
  });

/** Share of tanks whose inflow the middle of the members has within 25 %: before and after. */
export const inflowWithin = (results: readonly TwinResult[]): readonly [number, number] =>
  (["before", "after"] as const).map((when) =>
    mean(results.map(({ inflow }) => (Math.abs(inflow[when] / inflow.truth - 1) <= 0.25 ? 1 : 0))),
  ) as [number, number];

export function tableOf(results: readonly TwinResult[]): string {
  const lines = rowsOf(results).map(
    ({ of, error, within }) =>
      `| ${of} | ${error.map((value) => value.toFixed(3)).join(" | ")} | ${(error[2] / error[0]).toFixed(2)} | ${within.map((value) => `${(100 * value).toFixed(1)} %`).join(" | ")} |`,
  );
  const [before, after] = inflowWithin(results);
  return [
    "| quantity | error blind | latest | calibrated | calibrated / blind | in band blind | latest | calibrated |",
    "| --- | --- | --- | --- | --- | --- | --- | --- |",
    ...lines,
    `Inflow of nitrogen within 25 %: ${(100 * before).toFixed(0)} % of tanks before, ${(100 * after).toFixed(0)} % after.`,
  ].join("\n");
}
