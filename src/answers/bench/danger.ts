/** What can't wait by its own word: a reading flagged as dangerous, something told as wrong. Plain words, no metaphor. */
import type { Measured } from "../../contract/daybook/reading.ts";
import type { Advice, Leads } from "../advice.ts";
import { lowered } from "../words.ts";
import { listOfDanger, saidCold } from "../wrong/list-of-danger.ts";
import type { KnownOfTank } from "./known.ts";
import { type LatestReading, saidOf } from "./latest.ts";

const WHAT_TO_DO: Readonly<Partial<Record<Measured, string>>> = {
  tan_mg_n_per_l: "Stop feeding, change a quarter of the water, then test ammonia again.",
};
const WEIGHT: Readonly<Partial<Record<Measured, number>>> = { tan_mg_n_per_l: 97, temperature_c: 95 };

function firstStep({ quantity, label, said }: LatestReading): string {
  if (quantity === "temperature_c")
    return saidCold(said)
      ? "Warm the water by 1 °C an hour at most, and watch the thermometer."
      : "Cool the water slowly: lights off, the surface moving, a fan over the water; no ice.";
  return WHAT_TO_DO[quantity] ?? `Measure ${lowered(label)} again now, and act on what it shows.`;
}

function listFor({ quantity, said }: LatestReading): Leads {
  const list = listOfDanger(quantity, saidCold(said));
  return list === null ? "wrong" : `wrong:${list}`;
}

/** One for each dangerous reading that no later one of the same quantity has replaced. */
export function dangerAdvice({ latest, today }: Pick<KnownOfTank, "latest" | "today">): Advice[] {
  return latest
    .filter(({ flag }) => flag === "danger")
    .map(
      (reading): Advice => ({
        id: `danger.${reading.quantity}`,
        urgency: "today",
        weight: WEIGHT[reading.quantity] ?? 94,
        about: "danger",
        do: [firstStep(reading)],
        why: [
          // What is said of a danger begins with the amount as read, and its unit.
          [
            `${reading.label} ${reading.said === null ? `${reading.text} is out of bounds` : saidOf(reading.said)}.`,
          ],
          [agedWords(reading)],
        ],
        byWhen: ["Today."],
        by: today,
        wouldChange: [`A second test today that reads otherwise: log it, and this is judged anew.`],
        restsOn: reading.entry ?? `${reading.on} ${reading.text}`,
        act: { words: "What to do first", leads: listFor(reading) },
        wait: { words: "Test again before acting", leads: "readings" },
      }),
    );
}

function agedWords({ ageDays }: LatestReading): string {
  if (ageDays === null || ageDays === 0) return "Measured today, or no day was given.";
  return `Measured ${ageDays === 1 ? "yesterday" : `${ageDays} days ago`}; no later reading says otherwise.`;
}

export function troubleAdvice({ facts: { trouble }, today }: Pick<KnownOfTank, "facts" | "today">): Advice[] {
  if (trouble === null) return [];
  return [
    {
      id: "trouble",
      urgency: "today",
      weight: 94,
      about: "trouble",
      do: ["See to what is wrong first, and add no animal."],
      why: [[`You said: ${trouble}.`]],
      byWhen: ["Today."],
      by: today,
      wouldChange: ["An answer of no to question 8, once it is over."],
      restsOn: trouble,
      act: { words: "What to do first", leads: "wrong" },
      wait: { words: "It is over: change the answer", leads: "questions" },
    },
  ];
}
