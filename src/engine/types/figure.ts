import type { Origin, Spread } from "./estimate.ts";

/** How sure a figure is, from the weakest of its parts. */
export type Confidence = "measured" | "read" | "computed" | "judgement";

/** One input of a figure: a fact about the tank or another figure, by its id. */
export interface WorkingInput {
  readonly label: string;
  readonly value: string;
  readonly origin: Origin | "figure";
  /** Id of the figure this input is, when it is one. */
  readonly figure?: string;
}

/** One parameter of a figure, by its symbol in facts/parameters. */
export interface WorkingParameter {
  readonly symbol: string;
  readonly spread: Spread;
  readonly unit: string;
}

/** How a number came about. Rendered, never written by hand. */
export interface Working {
  /** Heading in docs/model that explains the formula. */
  readonly formulaKey: string;
  /** The formula in one line, with words for symbols. */
  readonly formula: string;
  readonly inputs: readonly WorkingInput[];
  readonly parameters: readonly WorkingParameter[];
  /** Animal ids whose catalogue facts enter. */
  readonly animals: readonly string[];
  /** Published sources that no parameter or animal brings along: equations, tables, standards. */
  readonly references?: readonly string[];
  readonly confidence: Confidence;
  /** What would change it most: up to two inputs, in words. */
  readonly wouldChange: readonly string[];
}

/** A shown number that can be asked "how do you know?". */
export interface Figure {
  /** Stable key, e.g. `larder.film_glass.supply`. */
  readonly id: string;
  readonly label: string;
  readonly spread: Spread;
  readonly unit: string;
  readonly working: Working;
}
