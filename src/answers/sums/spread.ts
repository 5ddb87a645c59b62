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

/** What came of doubts that have nothing to do with one another, and how much of it each brought. */
export interface Independent extends Spread {
  /** Width that each input alone would give, in their order. */
  readonly shares: readonly number[];
}

/**
 * The band of a result whose inputs err independently: each moved to its ends alone, the steps added as squares. Where a
 * result bends little between the ends this is a 90 % band of 90 % bands; corners would be wider.
 * @param own relative error of the equation itself, added the same way
 */
export function independently(
  inputs: readonly Spread[],
  of: (values: readonly number[]) => number,
  own = 0,
): Independent {
  const middle = inputs.map(({ central }) => central);
  const central = of(middle);
  const steps = inputs.map(({ low, high }, i) => {
    if (low === high) return { down: 0, up: 0 };
    const ends = [low, high].map((end) => of(middle.with(i, end)));
    return { down: Math.max(0, central - Math.min(...ends)), up: Math.max(0, Math.max(...ends) - central) };
  });
  const all = [...steps, { down: own * Math.abs(central), up: own * Math.abs(central) }];
  const root = (of: (step: { down: number; up: number }) => number) =>
    Math.sqrt(all.reduce((sum, step) => sum + of(step) ** 2, 0));
  return {
    low: central - root(({ down }) => down),
    central,
    high: central + root(({ up }) => up),
    shares: steps.map(({ down, up }) => down + up),
  };
}
