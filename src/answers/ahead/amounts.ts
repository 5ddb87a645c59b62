/** Quantities of the weeks ahead as a person reads them: grams for growths, no more digits than they deserve. */
import { QUANTITIES, type QuantityId } from "../../engine/ahead/forecast.ts";

interface Shown {
  readonly id: QuantityId;
  readonly label: string;
  /** From the forecast's unit to the one shown. */
  readonly per: number;
  /** Smallest step worth showing, in the unit shown, and figures at most. */
  readonly step: number;
  readonly figures: number;
}

const water = (id: QuantityId, step: number, figures = 2): Shown => ({
  ...{ id, label: QUANTITIES[id].label, per: 1, step, figures },
});
const growth = (id: QuantityId): Shown => ({
  ...{ id, label: QUANTITIES[id].label, per: 1e-3, step: 0.01, figures: 2 },
});

/** Rows of the table, in this order. */
export const SHOWN: readonly Shown[] = [
  water("tan", 0.01),
  water("nh3", 0.001, 1),
  water("no2", 0.01),
  water("no3", 0.1),
  water("po4", 0.01),
  growth("film_glass"),
  growth("hair_algae"),
  growth("detritus_sand"),
];

/** "0.12", never finer than the step. */
function amount(value: number, { per, step, figures }: Shown): string {
  const shown = value * per;
  const stepped = Math.round(shown / step) * step;
  return String(Number(Number(stepped.toPrecision(figures)).toFixed(3)));
}

/** "0.12 (0.05-0.4)"; the figure alone where the band is no wider. */
export function amountBand(band: { low: number; central: number; high: number }, shown: Shown): string {
  const [low, central, high] = [band.low, band.central, band.high].map((value) => amount(value, shown));
  return low === high ? central! : `${central} (${low}-${high})`;
}
