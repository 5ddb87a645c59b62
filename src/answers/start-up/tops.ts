/** The day about which ammonia and nitrite were highest, where the readings rose up to it and fell after: the trend's turn. */
import { dateOn, seriesOf } from "../../engine/trends/series.ts";
import { trendOf } from "../../engine/trends/trend.ts";
import type { ReadingSeen } from "../../engine/types/record.ts";
import type { RecordScene } from "../record-scene.ts";
import type { Tops } from "./words.ts";

export function topsOf({ record, today }: RecordScene): Tops {
  const top = (quantity: ReadingSeen["quantity"]): string | null => {
    const readings = record.observations.filter(
      (one): one is ReadingSeen => one.kind === "reading" && one.quantity === quantity,
    );
    const trend = trendOf({ series: seriesOf(readings, today), events: [], limits: [], seed: 1 });
    // Told as "has fallen since": only where the latest readings still fall.
    return trend?.turn?.shape === "peak" && trend.window.why === "turn" && trend.way === "falling"
      ? dateOn(today, trend.turn.day)
      : null;
  };
  return { tan: top("tan_mg_n_per_l"), no2: top("no2_mg_n_per_l") };
}
