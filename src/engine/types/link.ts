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
export function spreadText(spread: Spread, unit: string): string {
  const { low, central, high } = tellingApart(spread);
  // A bare ratio has the unit 1, which nobody says.
  const amount = unit === "1" ? central : `${central} ${unit}`;
  return spread.low === spread.high ? amount : `${amount} (${low} to ${high})`;
}

/** A specific gravity of 1.0264 (1.0256 to 1.0272) needs more figures than three to be told at all. */
const MOST_FIGURES = 7;
/** Steps of the last figure that a range is told in at least. */
const STEPS_OF_RANGE = 8;

/** Three figures each, or as many more as it takes to tell the range. */
export function tellingApart({ low, central, high }: Spread): Record<keyof Spread, string> {
  const size = Math.max(Math.abs(low), Math.abs(high));
  const [, power = "0"] = size.toExponential().split("e");
  let figures = 3;
  const isCoarse = () => high - low < STEPS_OF_RANGE * 10 ** (Number(power) + 1 - figures);
  while (high > low && figures < MOST_FIGURES && isCoarse()) figures += 1;
  return {
    ...{ low: rounded(low, figures), central: rounded(central, figures), high: rounded(high, figures) },
  };
}

/** Three figures, without an exponent where a person would not write one. */
export const round3 = (value: number): string => rounded(value, 3);

function rounded(value: number, figures: number): string {
  if (value === 0) return "0";
  const near = Number(value.toPrecision(figures));
  return Math.abs(near) >= 1e-4 && Math.abs(near) < 1e6 ? String(near) : near.toExponential(2);
}
