/** Texts of workings: amounts as a person reads them, and an input that is a figure of its own. */
import type { Spread } from "./estimate.ts";
import type { Figure, WorkingInput } from "./figure.ts";

/** An input that is another figure: shown with that figure's own value, so that the two can't differ. */
export const linkTo = (figure: Figure, label = figure.label): WorkingInput => ({
  ...{ label, value: spreadText(figure.spread, figure.unit) },
  ...{ origin: "figure", figure: figure.id },
});

/** An amount worked out on the way. */
export const workedOut = (label: string, value: string): WorkingInput => ({
  ...{ label, value, origin: "derived" },
});

/** A number without doubt, as a spread. */
export const exact = (value: number): Spread => ({ low: value, central: value, high: value });

/** "12 mg C/d (5 to 30)", or the bare value where it is exact. */
export function spreadText({ low, central, high }: Spread, unit: string): string {
  // A bare ratio has the unit 1, which nobody says.
  const amount = unit === "1" ? round3(central) : `${round3(central)} ${unit}`;
  return low === high ? amount : `${amount} (${round3(low)} to ${round3(high)})`;
}

/** Three figures, without an exponent where a person would not write one. */
export function round3(value: number): string {
  if (value === 0) return "0";
  const rounded = Number(value.toPrecision(3));
  return Math.abs(rounded) >= 1e-4 && Math.abs(rounded) < 1e6 ? String(rounded) : rounded.toExponential(2);
}
