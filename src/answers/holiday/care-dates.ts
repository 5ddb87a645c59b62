/**
 * What is to be done before a holiday and after it, as dated care. Limits: a holiday is asked for, not kept, so the almanac
 * does not know of one by itself; who has a span can join these.
 */
import { addDays } from "../../contract/quantity/calendar.ts";
import type { CareDate } from "../almanac/care-date.ts";
import { dateWords } from "../words.ts";
import type { HolidaySpan, Packing } from "./packing.ts";

const REHEARSE_DAYS = 7;

export function holidayDates(
  { from, to }: HolidaySpan,
  { bags, figures }: Packing,
  today: string,
): readonly CareDate[] {
  const dated = (
    id: string,
    on: string,
    rest: Pick<CareDate, "do" | "why" | "byWhen"> & Partial<Pick<CareDate, "figures" | "done" | "gate">>,
  ): CareDate => ({
    ...{ id: `holiday.${id}`, kind: "holiday", on: on < today ? today : on, at: null, every: null },
    ...{ until: null, gate: null, figures: [], restsOn: `${from} ${to}`, done: null, leads: null },
    wouldChange: ["Other dates."],
    ...rest,
  });
  const left = `Leaving on ${dateWords(from)}.`;
  return [
    dated("rehearse", addDays(from, -REHEARSE_DAYS), {
      do: ["Show the sitter the tank: one feeding together, the fuse box, whom to call."],
      why: [
        ["What was done once together is done right alone."],
        ["A feeder is tried for a week, over a dish, before it is trusted."],
      ],
      byWhen: [`A week before. ${left}`],
    }),
    dated("pack", addDays(from, -1), {
      do: ["Pack ", bags, " and write a day on each; put the rest of the food away."],
      why: [["Too much food is the commonest harm of a sitter."]],
      byWhen: [`The day before. ${left}`],
      figures,
    }),
    dated("ready", addDays(from, -1), {
      do: ["Change water, wipe the glass, clean the filter, fill the top-up; nothing new goes in."],
      why: [["It is the last care for a while; an animal added now would be watched by nobody."]],
      byWhen: [`The day before. ${left}`],
      done: { kind: "chore", fields: { chore: "water_change" } },
    }),
    dated("home", to, {
      do: ["Count heads, look for the dead, test ammonia and nitrate before the first feeding."],
      why: [["What happened meanwhile shows in the water first."]],
      byWhen: [`On coming back, ${dateWords(to)}.`],
      done: { kind: "head_count", fields: {} },
    }),
  ];
}
