/** What workings are put together from: amounts as a person reads them, facts, parameters, other figures. */
import type { Estimate, Spread } from "./estimate.ts";
import type { Figure, WorkingInput, WorkingParameter } from "./figure.ts";
import { figureId } from "./figure-id.ts";
import type { Parameter } from "./parameter.ts";
import type { TankFacts } from "./tank.ts";

/** An input that is another figure: shown with that figure's own value, so that the two can't differ. */
export const linkTo = (figure: Figure, label = figure.label): WorkingInput => ({
  ...{ label, value: spreadText(figure.spread, figure.unit) },
  ...{ origin: "figure", figure: figure.id },
});

/** An amount worked out on the way. */
export const workedOut = (label: string, value: string): WorkingInput => ({
  ...{ label, value, origin: "derived" },
});

/** A fact of the tank, with how it was read, and the door to it. */
export function factInput(
  facts: TankFacts,
  field: keyof TankFacts,
  label: string,
  unit: string,
): WorkingInput {
  const estimate = facts[field] as Estimate;
  return {
    ...{ label, value: `${spreadText(estimate, unit)} (${estimate.how})` },
    ...{ origin: estimate.origin, figure: figureId.tank(field) },
  };
}

/** Parameters by their symbol or dotted id, as a working lists them. What the table lacks is left out. */
export function parametersOf(
  ids: readonly string[],
  table: ReadonlyMap<string, Parameter>,
): WorkingParameter[] {
  return ids.flatMap((id) => {
    const parameter = table.get(id);
    return parameter === undefined ? [] : [{ symbol: id, spread: parameter.spread, unit: parameter.unit }];
  });
}

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
