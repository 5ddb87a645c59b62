/** What can't be told yet for want of a reading: what the plan rests on and nobody measured, or not for weeks. */

import { MEASURES } from "../../contract/daybook/read-reading.ts";
import type { Measured } from "../../contract/daybook/reading.ts";
import type { LatestReading } from "./latest.ts";

/** After this many days a reading says little of the water today; judgement. */
const STALE_DAYS = 28;

/** What a plan or a forecast rests on, and what each would settle. */
const WANTED: readonly (readonly [Measured, string])[] = [
  ["no3_mg_per_l", "how fast algae grow, and so how much food there is"],
  ["po4_mg_per_l", "whether algae are held back, and so how much food there is"],
  ["alkalinity_dkh", "whether shells can be built"],
  ["salinity_psu", "whether the water suits the animals"],
  ["temperature_c", "how much animals eat"],
];

export interface Missing {
  readonly quantity: Measured;
  readonly label: string;
  /** "no reading yet", "1 reading, 40 days old" */
  readonly have: string;
  readonly settles: string;
}

export function missingReadings(latest: readonly LatestReading[]): readonly Missing[] {
  return WANTED.flatMap(([quantity, settles]): Missing[] => {
    const { label } = MEASURES[quantity];
    const known = latest.find((one) => one.quantity === quantity);
    if (known === undefined) return [{ quantity, label, have: "no reading yet", settles }];
    if (known.ageDays === null || known.ageDays <= STALE_DAYS) return [];
    const have =
      known.count === 1
        ? `1 reading, ${known.ageDays} days old`
        : `${known.count} readings, the latest ${known.ageDays} days old`;
    return [{ quantity, label, have, settles }];
  });
}
