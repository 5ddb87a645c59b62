/**
 * Silence: nothing was kept for weeks that shows the tank well. Alone it asks for a word; after trouble it can't wait,
 * because nobody knows how that ended. A further bad sign is no good news, and does not break it.
 */
import { addDays, daysBetween } from "../../contract/quantity/calendar.ts";
import type { Advice, AdviceUrgency } from "../advice.ts";
import { dateWords } from "../words.ts";
import { daysQuiet } from "./calm.ts";
import type { Unsettled } from "./events.ts";
import type { KnownOfTank } from "./known.ts";

/** Days, urgency, weight: the last that is reached counts. Below everything that was seen to be wrong. */
const STEPS: readonly (readonly [number, AdviceUrgency, number])[] = [
  [28, "cannot_tell", 30],
  [41, "this_week", 30],
  [90, "this_week", 34],
];
/** Trouble of this weight, and so many days without good news. */
const TROUBLE_WEIGHT = 60;
const TROUBLE_DAYS = 21;

export function silenceAdvice(known: KnownOfTank, { calm }: Unsettled): Advice[] {
  const days = daysQuiet(known, calm);
  if (days === null) return [];
  const step = STEPS.findLast(([from]) => days >= from);
  if (step === undefined) return [];
  const [from, urgency, weight] = step;
  return [
    {
      id: "silence",
      urgency,
      weight,
      about: "silence",
      do: ["Look at the tank, and log one reading or one count."],
      why: [[`Nothing was kept for ${days} days that shows it well.`]],
      byWhen: [`By ${dateWords(addDays(known.today, 7))}; one line is enough.`],
      by: addDays(known.today, 7),
      wouldChange: ["Any reading, count or chore that is kept."],
      restsOn: `${from} days`,
      act: { words: "Log a reading", leads: "readings" },
      wait: { words: "Wait: nothing is known to be wrong", leads: "daybook" },
    },
  ];
}

/** `troubles`: what the record's events ask for, each standing because nothing settled it. */
export function silenceAfterTrouble(
  known: KnownOfTank,
  events: Unsettled,
  troubles: readonly Advice[],
): Advice[] {
  // From the first of each kind: a further one is no good news.
  const [first] = troubles
    .filter(({ weight }) => weight > TROUBLE_WEIGHT)
    .flatMap(({ id }) => daysOf(id, events))
    .sort();
  if (first === undefined) return [];
  const days = daysBetween(first, known.today);
  if (days < TROUBLE_DAYS) return [];
  return [
    {
      id: "silence.after_trouble",
      urgency: "today",
      weight: 90,
      about: "silence",
      do: ["Ask today how it ended, and look at every animal."],
      why: [[`Trouble was told on ${dateWords(first)}, and no good news for ${days} days since.`]],
      byWhen: ["Today."],
      by: known.today,
      wouldChange: ["Two readings or counts on different days that find all well."],
      restsOn: first,
      act: { words: "Log what you find", leads: "daybook" },
      wait: { words: "Wait: ask the keeper first", leads: "daybook" },
    },
  ];
}

/** Days of the events that a piece of advice rests on. */
function daysOf(id: string, { found, feared, signs, outages }: Unsettled): readonly string[] {
  const [group, which] = id.split(".");
  const events =
    id === "heads.found"
      ? found
      : id === "heads.feared"
        ? feared
        : group === "sign"
          ? signs.filter(({ sign }) => sign === which)
          : outages.filter(({ of }) => of === which);
  return events.map(({ on }) => on);
}
