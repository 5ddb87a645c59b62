/**
 * Advice that names a day, as dated care. What is dangerous or wrong now has no place in a calendar: the bench says it;
 * what the almanac's own parts date (tests, waves, orders, counts) is not told twice.
 */
import type { Advice } from "../advice.ts";
import { type AlmanacScene, type Dated, dated, duty, later } from "./scene.ts";

const DATED: ReadonlySet<Advice["about"]> = new Set([
  ...(["hungry", "hand_work", "growth", "sign", "heads", "way_down"] as const),
]);

export function advisedDates({ advice, today }: AlmanacScene): Dated {
  return dated(
    ...advice.flatMap((one) =>
      one.by === null || !DATED.has(one.about)
        ? []
        : [
            duty({
              ...{
                id: `advice.${one.id.replaceAll(/[^\w.-]/g, "_")}`,
                kind: "look",
                on: later(one.by, today),
              },
              ...{ do: one.do, why: one.why, byWhen: one.byWhen, wouldChange: one.wouldChange },
              restsOn: one.restsOn ?? one.id,
              leads: one.act.leads,
            }),
          ],
    ),
  );
}
