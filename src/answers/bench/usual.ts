/**
 * The latest value of a quantity against this tank's own usual (engine/trends), once there are eight days of readings;
 * before that, only the reader's general bounds hold. Out of the usual is further beyond the range of four of five days
 * than tests and days differ anyway. Margins and slips are judgement: docs/model/next.md.
 */
import { byDay, median, seriesOf } from "../../engine/trends/series.ts";
import { type Usual, usualOf } from "../../engine/trends/usual.ts";
import type { ReadingSeen } from "../../engine/types/record.ts";
import type { Reading } from "../../engine/types/tank.ts";
import type { Valued } from "./known.ts";

export interface WaterRule {
  readonly quantity: Reading["quantity"];
  /** So far beyond the usual range says nothing yet, in the quantity's unit. */
  readonly margin: number;
  /** The side on which it gets worse. */
  readonly worse: "up" | "either";
  /** So far from the usual, or from the middle of those before where there is no usual yet, it can't wait; null: never. */
  readonly slip: number | null;
}

export const WATER_RULES: readonly WaterRule[] = [
  { quantity: "salinity_psu", margin: 0.8, worse: "either", slip: 2.5 },
  { quantity: "temperature_c", margin: 1, worse: "either", slip: 4 },
  { quantity: "ph", margin: 0.2, worse: "either", slip: null },
  { quantity: "alkalinity_meq_per_l", margin: 0.4, worse: "either", slip: 1.4 },
  { quantity: "no3_mg_n_per_l", margin: 2, worse: "up", slip: null },
  { quantity: "po4_mg_p_per_l", margin: 0.03, worse: "up", slip: null },
  { quantity: "calcium_mg_per_l", margin: 40, worse: "either", slip: null },
  { quantity: "magnesium_mg_per_l", margin: 100, worse: "either", slip: null },
];

export interface Judged {
  /** Margins beyond the usual range, on the worse side; 0 within it, or where there is no usual. */
  readonly margins: number;
  readonly out: boolean;
  readonly slipped: boolean;
  readonly side: "above" | "below";
  readonly usual: Usual | null;
}

/** The last of `values` (oldest first) against those before it. Further out is never judged milder. */
export function judgeLatest(values: readonly Valued[], rule: WaterRule, today: string): Judged {
  const latest = values.at(-1);
  if (latest === undefined) {
    return { margins: 0, out: false, slipped: false, side: "above", usual: null };
  }
  const { points, step } = seriesOf(
    values.map((value) => asSeen(value, rule)),
    today,
  );
  const usual = usualOf(byDay(points), step);
  // Too few for a usual: their middle, so that a slip in small steps is one.
  const earlier = values.slice(0, -1).map(({ central }) => central);
  const from = usual?.central ?? (earlier.length === 0 ? latest.central : median(earlier));
  const away = latest.central - from;
  const worse = rule.worse === "either" ? Math.abs(away) : Math.max(0, away);
  const edge = usual === null ? 0 : away < 0 ? usual.central - usual.from : usual.to - usual.central;
  const margins = usual === null ? 0 : Math.max(0, worse - edge) / rule.margin;
  return {
    margins,
    out: margins > 1,
    slipped: rule.slip !== null && worse >= rule.slip,
    side: away < 0 ? "below" : "above",
    usual,
  };
}

function asSeen(
  { on, central, low, high, censored, step, flag, entry }: Valued,
  { quantity }: WaterRule,
): ReadingSeen {
  return {
    ...{ kind: "reading", entry: entry ?? "", on, quantity, value: { low, central, high } },
    ...{ censored, step, flag },
  };
}
