/** How well forecasts held: errors of the middle run and how often the 80 % band held the truth, by quantity and week. */
import { acrossMembers, type QuantityId, type Sheaf } from "../../src/engine/ahead/forecast.ts";
import { quantile } from "../../src/engine/numeric/quantile.ts";
import type { Spread } from "../../src/engine/types/estimate.ts";
import { DAYBOOK_DAYS } from "./tank.ts";
import type { Truth } from "./truth.ts";

/** Below these two values are one: errors are taken on log(x + floor). Units of the forecast. */
export const FLOORS = {
  tan: 0.02,
  no3: 0.5,
  po4: 0.01,
  film_glass: 20,
  film_rock: 20,
  film_sand: 20,
  hair_algae: 50,
  detritus_sand: 20,
} as const satisfies Partial<Record<QuantityId, number>>;
export type Measured = keyof typeof FLOORS;
export const MEASURED = Object.keys(FLOORS) as readonly Measured[];

export interface Held {
  /** |log| distance of the median from the truth after four weeks. */
  readonly error: number;
  /** Share of the four weeks in which the band from 10 % to 90 % held the truth. */
  readonly within: number;
}

/** What is asked of a forecast here. */
export interface Ahead {
  readonly quantities: Readonly<Record<Measured, Sheaf>>;
  readonly kinds: readonly { readonly heads: Sheaf }[];
}

export function heldBy(forecast: Ahead, { days }: Truth): Record<Measured | "heads", Held> {
  const of = (id: Measured): Held => {
    const floor = FLOORS[id];
    let within = 0;
    let error = 0;
    for (let week = 1; week <= 4; week += 1) {
      const runs = acrossMembers(forecast.quantities[id], week);
      const truth = days[DAYBOOK_DAYS + 7 * week]![id];
      if (truth >= quantile(runs, 0.1) && truth <= quantile(runs, 0.9)) within += 0.25;
      error = Math.abs(Math.log((quantile(runs, 0.5) + floor) / (truth + floor)));
    }
    return { error, within };
  };
  return {
    ...(Object.fromEntries(MEASURED.map((id) => [id, of(id)])) as Record<Measured, Held>),
    heads: headsHeld(forecast, days),
  };
}

function headsHeld({ kinds }: Ahead, days: Truth["days"]): Held {
  const last = days[DAYBOOK_DAYS + 28]!;
  return heldOfHeads(
    kinds.map(({ heads }, s) => {
      const runs = acrossMembers(heads, 4);
      const [low, central, high] = [quantile(runs, 0.1), quantile(runs, 0.5), quantile(runs, 0.9)];
      return { low, central, high, truth: last.heads[s]! };
    }),
  );
}

/** Of the kinds of a tank, each with its band, its middle and what it came to. */
export function heldOfHeads(kinds: readonly (Spread & { readonly truth: number })[]): Held {
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);
  return {
    error: mean(kinds.map(({ central, truth }) => Math.abs(central - truth))),
    within: mean(kinds.map(({ low, high, truth }) => (truth >= low && truth <= high ? 1 : 0))),
  };
}
