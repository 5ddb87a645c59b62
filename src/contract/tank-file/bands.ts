/** Arithmetic of 90 % bands whose errors are independent: products add in logs, sums add in squares. */
import type { Spread } from "../../engine/types/estimate.ts";

export const spread = (low: number, central: number, high: number): Spread => ({ low, central, high });

export const exactly = (value: number): Spread => spread(value, value, value);

export const scaled = ({ low, central, high }: Spread, factor: number): Spread =>
  spread(low * factor, central * factor, high * factor);

/** Widens by `doubt` on either side, whatever was known already. */
export function withDoubt({ low, central, high }: Spread, doubt: number): Spread {
  return spread(
    central - Math.hypot(central - low, doubt),
    central,
    central + Math.hypot(high - central, doubt),
  );
}

/** Product of bands at or above nought; a lower end of nought stays nought. */
export function product(...factors: readonly Spread[]): Spread {
  const central = factors.reduce((all, { central: c }) => all * c, 1);
  if (central === 0)
    return spread(
      0,
      0,
      factors.reduce((all, { high }) => all * high, 1),
    );
  const side = (end: "low" | "high") => Math.hypot(...factors.map((f) => Math.log(f[end] / f.central)));
  return spread(central * Math.exp(-side("low")), central, central * Math.exp(side("high")));
}

export function sum(...terms: readonly Spread[]): Spread {
  const central = terms.reduce((all, term) => all + term.central, 0);
  const low = central - Math.hypot(...terms.map((term) => term.central - term.low));
  return spread(low, central, central + Math.hypot(...terms.map((term) => term.high - term.central)));
}

/** `whole` less `parts`, never below `floor`. */
export function less(whole: Spread, parts: readonly Spread[], floor: number): Spread {
  const { low, central, high } = sum(whole, ...parts.map((p) => spread(-p.high, -p.central, -p.low)));
  return spread(Math.max(floor, low), Math.max(floor, central), Math.max(floor, high));
}
