/**
 * Advice from trends: only where a limit is near, or a change is clear and lately. Dangers and what is out of the usual
 * today are advised by the bench's own parts.
 */
import type { QuantityTrend } from "../../contract/output/trends.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import type { Advice } from "../advice.ts";
import { told } from "../sentence.ts";
import { chance, dateWords, lowered } from "../words.ts";
import { withUnit } from "./amounts.ts";

/** About even and above. */
const NEAR_OF_20 = 8;
const SOON_DAYS = 21;
const LATELY_DAYS = 21;

export const trendAdvice = (quantities: readonly QuantityTrend[], today: string): readonly Advice[] =>
  quantities.flatMap((trend) => [...nearLimit(trend, today), ...lateChange(trend, today)]);

function nearLimit(
  { id, label, unit, limits, sentences, danger, way }: QuantityTrend,
  today: string,
): Advice[] {
  if (danger?.stands === true) return [];
  const towards = { rising: "above", falling: "below" }[way as string];
  return limits.flatMap(
    ({ side, value, of_20, already_of_20, first_on, why, within_days, figures }): Advice[] => {
      // Where it does not move there, the chance is that of a level that is near; what is beyond it is told by the bench.
      if (side !== towards || of_20 < NEAR_OF_20 || already_of_20 >= NEAR_OF_20 || first_on === null)
        return [];
      const soon = first_on.middle <= addDays(today, SOON_DAYS);
      const by = first_on.early > addDays(today, 7) ? addDays(first_on.early, -7) : today;
      return [
        {
          ...{
            id: `trend.${id}.${side}`,
            urgency: soon ? "this_week" : "next_visit",
            weight: 30 + of_20,
            about: "trend",
          },
          do: [`Test ${lowered(label)} again${soon ? " this week" : ""}, and look for what drives it.`],
          why: [
            sentences[danger === null ? 0 : 1] ?? [],
            [
              `Going on so, it is ${side} `,
              told(withUnit(String(value), unit), figures.limit),
              ` within ${within_days} days: `,
              told(chance(of_20), figures.chance),
              `. The limit: ${why}.`,
            ],
          ],
          byWhen: [
            soon
              ? `This week: it could be there about ${dateWords(first_on.middle)}.`
              : `By ${dateWords(by)}; it could be there about ${dateWords(first_on.middle)}.`,
          ],
          by,
          wouldChange: [
            `Two readings of ${lowered(label)} that no longer ${side === "above" ? "rise" : "fall"}.`,
          ],
          act: { words: "Log a reading", leads: "readings" },
          wait: { words: "Wait, and watch the trend", leads: "trends" },
          restsOn: `${side} ${value}`,
        },
      ];
    },
  );
}

function lateChange({ id, label, changes, sentences, danger }: QuantityTrend, today: string): Advice[] {
  const change = changes.at(-1);
  if (change === undefined || danger?.stands === true || change.on < addDays(today, -LATELY_DAYS)) return [];
  const why = sentences.find((sentence) =>
    sentence.some((part) => typeof part !== "string" && part.figure === change.figure),
  );
  return [
    {
      ...{ id: `trend.${id}.change`, urgency: "next_visit", weight: 24, about: "trend" },
      do: [`Look at what was changed about ${dateWords(change.on)}: ${lowered(label)} is not as before.`],
      why: why === undefined ? [] : [why],
      byWhen: ["At the next visit; nothing is lost by waiting for one more reading."],
      by: null,
      wouldChange: ["Readings that go back to where they were."],
      act: { words: "See the trend", leads: "trends" },
      wait: { words: "Wait for one more reading", leads: "readings" },
      restsOn: change.on,
    },
  ];
}
