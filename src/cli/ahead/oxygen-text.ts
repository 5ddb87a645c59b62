/** Oxygen at dawn, its lowest week in each run, against the catalogue's alarm. */

import { chance } from "../../answers/words.ts";
import { supplyParameters } from "../../catalogue/index.ts";
import type { Sheaf } from "../../engine/ahead/forecast.ts";
import { ofTwenty } from "../../engine/ahead/forecast.ts";
import { bandOf } from "../../engine/numeric/quantile.ts";
import type { Page } from "./page.ts";

const ALARM_MG_PER_L = supplyParameters.get("tox.O2_alarm")!.spread.central;

export function oxygenText({ outlooks, courses, say }: Page): string {
  const lines = outlooks.map(({ course }, i) => {
    const low = lowestOf(course.forecast.dawnOxygen);
    if (low.length === 0) return "";
    const { low: least, central, high } = bandOf(low);
    const below = ofTwenty(low.filter((value) => value < ALARM_MG_PER_L).length / low.length);
    const whose = outlooks.length > 1 ? `, ${courses[i]}` : "";
    return say(
      `Oxygen at dawn, lowest week${whose}: ${central.toFixed(1)} mg/L (${least.toFixed(1)}-${high.toFixed(1)}), from the water's load and usual movement at the surface; below ${ALARM_MG_PER_L} ${chance(below)}.`,
    );
  });
  return lines.filter((line) => line !== "").join("\n");
}

/** Lowest weekly value of every run that holds water at all. */
function lowestOf({ weeks, values }: Sheaf): number[] {
  return Array.from({ length: values.length / weeks }, (_, m) =>
    Math.min(...values.subarray(m * weeks, (m + 1) * weeks).filter(Number.isFinite)),
  ).filter(Number.isFinite);
}
