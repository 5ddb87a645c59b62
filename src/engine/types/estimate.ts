/**
 * A value with its spread. `low` and `high` bound a 90 % band; `central` is the median.
 * Where a figure is exact the three are equal.
 */
export interface Spread {
  readonly low: number;
  readonly central: number;
  readonly high: number;
}

/**
 * Where a fact about a tank comes from: typed by the keeper, worked out from other typed facts,
 * or a stated default with a wide band because nobody said.
 */
export type Origin = "stated" | "derived" | "assumed";

/** A fact about a tank as the engine uses it. */
export interface Estimate extends Spread {
  readonly origin: Origin;
  /** How it was read or worked out, in a few plain words: "typed as 30 US gal", "0.04 m2 per kg of rock". */
  readonly how: string;
}

/** A fact that is a choice, not a number. */
export interface Known<T> {
  readonly value: T;
  readonly origin: Origin;
}
