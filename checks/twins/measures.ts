/** How well forecasts held: errors of the middle run and how often the 80 % band held the truth, by quantity and week. */
import { acrossMembers, type QuantityId, type Sheaf } from "../../src/engine/ahead/forecast.ts";
import { quantile } from "../../src/engine/numeric/quantile.ts";
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

/** Runs of the last week as the chance of each number of heads. */
function headsHeld({ kinds }: Ahead, days: Truth["days"]): Held {
  const last = days[DAYBOOK_DAYS + 28]!;
  return heldOfHeads(
    kinds.map(({ heads }, s) => {
      const runs = acrossMembers(heads, 4);
      const chances = Array.from({ length: Math.max(...runs.map(Math.round)) + 1 }, () => 0);
      for (const run of runs) chances[Math.round(run)]! += 1 / runs.length;
      return { chances, truth: Math.round(last.heads[s]!) };
    }),
  );
}

/** A kind whose heads are forecast: the chance of none, one, two ... and what it came to. */
export interface HeadsForecast {
  readonly chances: readonly number[];
  readonly truth: number;
}

/**
 * Of the kinds of a tank. Heads are whole: a band that ends on a whole head always holds more than it claims, so what is
 * asked is how much of the truth's own step of the distribution lies between 10 and 90 % (the expected value of the
 * randomised probability integral transform).
 * @source Czado, Gneiting & Held 2009, Biometrics 65: 1254-1261, section 2 (memory)
 */
export function heldOfHeads(kinds: readonly HeadsForecast[]): Held {
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);
  return {
    error: mean(kinds.map(({ chances, truth }) => Math.abs(middleOf(chances) - truth))),
    within: mean(kinds.map(claimed)),
  };
}

function middleOf(chances: readonly number[]): number {
  let below = 0;
  return chances.findIndex((chance) => {
    below += chance;
    return below >= 0.5 - 1e-9;
  });
}

function claimed({ chances, truth }: HeadsForecast): number {
  const from = chances.slice(0, truth).reduce((a, b) => a + b, 0);
  const step = chances[truth] ?? 0;
  const [low, high] = [0.1, 0.9];
  if (step === 0) return from >= low && from <= high ? 1 : 0;
  return Math.max(0, Math.min(high, from + step) - Math.max(low, from)) / step;
}
