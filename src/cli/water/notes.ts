/** What a reader of the figures must know beside them. */
import { ACT_TODAY, isDanger } from "../../answers/water/ammonia-limits.ts";
import type { WaterOutput } from "../../contract/output/water.ts";
import type { WaterReadings } from "./read.ts";
import type { FigureRule } from "./rules.ts";

const ESTIMATES =
  "These are estimates from what was typed: an error of the instrument goes straight into them. " +
  "A range, such as 34-36, carries one through.";

export function notesOn(
  { ph, phScaleStated, tan, notes }: WaterReadings,
  beyondFit: readonly FigureRule[],
  limits: WaterOutput["ammonia_limits"],
): string[] {
  const all = limits !== null && isDanger(limits) ? [ACT_TODAY, ...notes] : [...notes];
  if (ph === null) {
    const wanted = tan === null ? "un-ionised ammonia" : "how much of that ammonia is un-ionised";
    all.push(`Without --ph there is no telling ${wanted}.`);
  } else if (!phScaleStated) {
    all.push(
      "pH taken as read with NBS buffers, as keepers' meters are set; --ph-scale nbs says so, and narrows the range.",
    );
  }
  if (beyondFit.length > 0) {
    const names = beyondFit.map(({ label }) => label).join(", ");
    all.push(`Rough, as the water lies outside what the equations were fitted to: ${names}.`);
  }
  return [...all, ESTIMATES];
}
