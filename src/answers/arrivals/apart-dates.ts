/** Quarantine and fallow times of the daybook as dated care, and the one piece of advice that can't wait for its day. */
import { addDays } from "../../contract/quantity/calendar.ts";
import type { Advice } from "../advice.ts";
import type { CareDate } from "../almanac/care-date.ts";
import { medicineDates } from "../medicines/after.ts";
import type { RecordScene } from "../record-scene.ts";
import { dateWords } from "../words.ts";
import { type Apart, apartIn, QUARANTINED, quarantineDays, REFUSAL_DAY } from "./quarantine.ts";

const whoOf = ({ words, group }: Apart): string => (words === "" ? QUARANTINED[group].name : words);

/** Ids of a calendar know letters, digits, dots, dashes alone. */
const idOf = (entry: string): string => entry.replaceAll(/[^\w-]/g, "-");

const CALM: readonly string[] = ["A sign of illness: the days begin anew.", "A vet's word."];

function datesOf(apart: Apart, today: string): CareDate[] {
  const { what, group, entry, from, until } = apart;
  const due = (on: string): string => (on < today ? today : on);
  const common: Omit<CareDate, "id" | "kind" | "on" | "do" | "why" | "byWhen" | "done"> = {
    ...{ at: null, every: null, until: null, gate: null, figures: [] },
    leads: "arrivals",
    restsOn: `${what} ${entry}`,
    wouldChange: [CALM.join(" ")],
  };
  if (what === "fallow") {
    return [
      {
        ...common,
        ...{ id: `fallow.${idOf(entry)}.end`, kind: "quarantine", on: due(until) },
        do: ["End the fallow time: the first fish may come back, itself out of quarantine."],
        why: [
          [
            `No fish since ${dateWords(from)}. Shorter times have brought white spot back; common practice, no source.`,
          ],
        ],
        byWhen: [`On ${dateWords(until)} at the earliest.`],
        done: { kind: "change", fields: { changed: "other", to: "fallow ended" } },
      },
    ];
  }
  const refusal = addDays(from, REFUSAL_DAY);
  return [
    ...(group === "fish" && today <= refusal
      ? [
          {
            ...common,
            ...({ id: `quarantine.${idOf(entry)}.day3`, kind: "quarantine", on: due(refusal) } as const),
            do: [`Has it eaten? Day three of ${whoOf(apart)} in quarantine.`],
            why: [["A fish that has not eaten by the third day is a matter of its own."]],
            byWhen: [`On ${dateWords(refusal)}.`],
            done: { kind: "sign", fields: {} } as const,
          },
        ]
      : []),
    {
      ...common,
      ...{ id: `quarantine.${idOf(entry)}.end`, kind: "quarantine", on: due(until) },
      do: [`End the quarantine of ${whoOf(apart)}, if no sign was seen for two weeks.`],
      why: [[`Apart since ${dateWords(from)}: ${QUARANTINED[group].days} days, common practice, no source.`]],
      byWhen: [`On ${dateWords(until)} at the earliest.`],
      done: { kind: "change", fields: { changed: "other", to: `quarantine ended: ${whoOf(apart)}` } },
    },
  ];
}

/** Quarantine, fallow and medicines, for the almanac. */
export function arrivalDates(scene: RecordScene): readonly CareDate[] {
  const { record, today } = scene;
  return [...apartIn(record).flatMap((apart) => datesOf(apart, today)), ...medicineDates(scene)];
}

/** What the day's plan asks of who is apart, until the day after it. */
export function arrivalAdvice({ record, today }: RecordScene): readonly Advice[] {
  return apartIn(record).flatMap((apart): Advice[] => {
    const { what, group, entry, from, until } = apart;
    if (what === "fallow") {
      return [
        {
          id: `fallow.${idOf(entry)}`,
          urgency: "next_visit",
          weight: 35,
          about: "arrival",
          do: [`Keep fish out until ${dateWords(until)}: the tank lies fallow.`],
          why: [["Leftovers have stopped: see who goes hungry, and what to feed or move."]],
          byWhen: [`Until ${dateWords(until)}.`],
          by: until,
          wouldChange: ["A fish that was left in it: the days begin anew."],
          restsOn: `${entry} ${until}`,
          act: { words: "Who goes hungry meanwhile", leads: "arrivals" },
          wait: { words: `Wait until ${dateWords(until)}`, leads: "ahead" },
        },
      ];
    }
    const row = quarantineDays(group, from).findLast(({ on }) => on <= today);
    if (row === undefined) return [];
    const third = group === "fish" && row.day === REFUSAL_DAY;
    return [
      {
        id: `quarantine.${idOf(entry)}`,
        urgency: row.on === today || addDays(row.on, 1) === today ? "today" : "next_visit",
        weight: third ? 60 : 38,
        about: "arrival",
        do: [
          third
            ? `Look whether ${whoOf(apart)} has eaten: day three of its quarantine.`
            : `Go on with the quarantine of ${whoOf(apart)}: day ${row.day} of its plan.`,
        ],
        why: [[row.do]],
        byWhen: [`From ${dateWords(row.on)}; the quarantine ends on ${dateWords(until)} at the earliest.`],
        by: row.on,
        wouldChange: ["A sign of illness: ask an aquatic vet."],
        restsOn: `${entry} ${row.day}`,
        act: { words: "The plan, day by day", leads: "arrivals" },
        wait: { words: "Wait: look again tomorrow", leads: "daybook" },
      },
    ];
  });
}
