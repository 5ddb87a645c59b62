/** Spreads through a sum's arithmetic: every corner of what was typed, so that a band never hides an end. */
import type { Spread } from "../../engine/types/estimate.ts";
import type { WorkingInput } from "../../engine/types/figure.ts";
import { spreadText } from "../../engine/types/link.ts";
import type { GivenAmount } from "./sum.ts";

/** @param of the result at these values; `end` tells which end of a doubt of its own it is to take */
export function cornersOf(
  inputs: readonly Spread[],
  of: (values: readonly number[], end: "low" | "central" | "high") => number,
): Spread {
  let corners: readonly (readonly number[])[] = [[]];
  for (const { low, high } of inputs)
    corners = corners.flatMap((corner) =>
      (low === high ? [low] : [low, high]).map((end) => [...corner, end]),
    );
  return {
    low: Math.min(...corners.map((corner) => of(corner, "low"))),
    central: of(
      inputs.map(({ central }) => central),
      "central",
    ),
    high: Math.max(...corners.map((corner) => of(corner, "high"))),
  };
}

/** An amount as a line of a working: typed, of the tank, or taken where nothing was said. */
export function inputOf(label: string, amount: GivenAmount): WorkingInput {
  const { unit, taken } = amount;
  const value = spreadText(amount, unit === "" ? "1" : unit);
  if (taken === undefined) return { label, value, origin: "stated" };
  return { label, value: `${value} (${taken.how})`, origin: taken.known ? "stated" : "assumed" };
}
