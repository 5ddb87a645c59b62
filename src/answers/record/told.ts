/**
 * What the questions were told, beside the record, with the day on which they were: growths age like those of the daybook,
 * and the feed of a usual day is what the first logged change changed. Limits: sightings and feeding alone; other answers
 * have no use for their day yet.
 */
import { isNews, type Since } from "../../contract/daybook/apply/scene.ts";
import { byDay } from "../../contract/daybook/by-day.ts";
import type { DaybookEntry } from "../../contract/daybook/kinds.ts";
import type { TankRecord, ToldInAnswers } from "../../engine/types/record.ts";
import type { TankFacts } from "../../engine/types/tank.ts";

/** @param answers the tank file alone, without its daybook @param since when each of its parts was told */
export function withTold(
  record: TankRecord,
  answers: Pick<TankFacts, "sightings" | "feedGPerDay" | "assumed" | "asOf">,
  since: Since,
  entries: readonly DaybookEntry[],
): TankRecord {
  const { sightings, feeding } = since;
  const told: ToldInAnswers = {
    sightings: { on: sightings?.on ?? answers.asOf, covers: answers.sightings },
    feed:
      feeding === undefined || answers.assumed.includes("feedGPerDay")
        ? null
        : {
            gPerDay: answers.feedGPerDay.central,
            changedBy:
              byDay(entries).find(
                (entry) =>
                  entry.kind === "change" &&
                  entry.body.changed === "feed" &&
                  entry.body.to !== null &&
                  isNews(entry, feeding),
              )?.id ?? null,
          },
  };
  return { ...record, told };
}
