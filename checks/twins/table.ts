/** Results of many twins in a table: error before and after, share of the weeks that the 80 % band held, inflow. */

import { MEASURED, type Measured } from "./measures.ts";
import type { TwinResult } from "./one.ts";

export interface Row {
  readonly of: Measured | "heads" | "heads page";
  /** Mean error: blind, latest, calibrated. */
  readonly error: readonly [number, number, number];
  /** What chance alone leaves. */
  readonly floor: number;
  /** Share held by the 80 % band: blind, latest, calibrated. */
  readonly within: readonly [number, number, number];
}

const mean = (values: readonly number[]): number =>
  values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);

const WAYS = ["blind", "latest", "calibrated"] as const;

export const rowsOf = (results: readonly TwinResult[]): readonly Row[] =>
  ([...MEASURED, "heads", "heads page"] as const).map((of) => {
    const row = of === "heads page" ? "heads" : of;
    const across = (part: "error" | "within") =>
      WAYS.map((way) =>
        mean(
          results.map((result) =>
            of === "heads page" && way === "calibrated" ? result.counted[part] : result[way][row][part],
          ),
        ),
      ) as [number, number, number];
    const floor = mean(results.map((result) => result.floor[row].error));
    return { of, error: across("error"), floor, within: across("within") };
  });

const near = (found: number, truth: number): number => (Math.abs(found / truth - 1) <= 0.25 ? 1 : 0);

/** Share of tanks whose inflow the middle of the members has within 25 %: before and after. */
export const inflowWithin = (results: readonly TwinResult[]): readonly [number, number] =>
  (["before", "after"] as const).map((when) =>
    mean(results.map(({ inflow }) => near(inflow[when], inflow.truth))),
  ) as [number, number];

/** Share of tanks whose inflow lies in the learned band from 10 to 90 %. */
const inflowHeld = (results: readonly TwinResult[]): number =>
  mean(results.map(({ inflow: { truth, low, high } }) => (truth >= low && truth <= high ? 1 : 0)));

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

export function tableOf(results: readonly TwinResult[]): string {
  const lines = rowsOf(results).map(
    ({ of, error, floor, within }) =>
      `| ${of} | ${error.map((value) => value.toFixed(3)).join(" | ")} | ${(error[2] / error[0]).toFixed(2)} | ${floor.toFixed(3)} | ${within.map(percent).join(" | ")} |`,
  );
  const [before, after] = inflowWithin(results);
  return [
    "| quantity | error blind | latest | calibrated | calibrated / blind | chance alone | in band blind | latest | calibrated |",
    "| --- | --- | --- | --- | --- | --- | --- | --- | --- |",
    ...lines,
    `Inflow of nitrogen within 25 %: ${percent(before)} of tanks before, ${percent(after)} after; in the learned band ${percent(inflowHeld(results))}.`,
  ].join("\n");
}
