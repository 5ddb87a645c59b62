/** What can't wait: a dangerous reading, something wrong, medicine in the water. Plain words, no metaphor. */
import type { Measured } from "../../contract/daybook/reading.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { lowered } from "../words.ts";
import { type LatestReading, saidOf } from "./latest.ts";
import type { BenchAdvice } from "./next.ts";

const WHAT_TO_DO: Readonly<Partial<Record<Measured, string>>> = {
  tan_mg_n_per_l: "Stop feeding, change a quarter of the water, then test ammonia again.",
};

function firstStep({ quantity, label, said }: LatestReading): string {
  if (quantity === "temperature_c")
    return (said ?? "").includes("too cold")
      ? "Warm the water by 1 °C an hour at most, and watch the thermometer."
      : "Cool the water slowly: lights off, the surface moving, a fan over the water; no ice.";
  return WHAT_TO_DO[quantity] ?? `Measure ${lowered(label)} again now, and act on what it shows.`;
}

/** One for each dangerous reading that no later one of the same quantity has replaced. */
export function dangerAdvice(latest: readonly LatestReading[]): readonly BenchAdvice[] {
  return latest
    .filter(({ flag }) => flag === "danger")
    .map((reading) => ({
      urgency: "today",
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
      wouldChange: [`A second test today that reads otherwise: log it, and this is judged anew.`],
      act: { words: "What to do first", leads: "wrong" },
      wait: { words: "Test again before acting", leads: "readings" },
    }));
}

function agedWords({ ageDays }: LatestReading): string {
  if (ageDays === null || ageDays === 0) return "Measured today, or no day was given.";
  return `Measured ${ageDays === 1 ? "yesterday" : `${ageDays} days ago`}; no later reading says otherwise.`;
}

export function troubleAdvice({
  trouble,
  medicines,
}: Pick<TankFacts, "trouble" | "medicines">): BenchAdvice[] {
  const told: BenchAdvice[] = [];
  if (trouble !== null) {
    told.push({
      urgency: "today",
      about: "trouble",
      do: ["See to what is wrong first, and add no animal."],
      why: [[`You said: ${trouble}.`]],
      byWhen: ["Today."],
      wouldChange: ["An answer of no to question 8, once it is over."],
      act: { words: "What to do first", leads: "wrong" },
      wait: { words: "It is over: change the answer", leads: "questions" },
    });
  }
  if (medicines.length > 0) {
    told.push({
      urgency: "this_week",
      about: "medicine",
      do: ["Add no animal while there is medicine in the water."],
      why: [
        [`You said: ${medicines.join(", ")}. Snails, crabs and shrimps die of copper and of many medicines.`],
        ["Ask an aquatic vet before you treat, and before you stop."],
      ],
      byWhen: ["Until a test shows that it is gone."],
      wouldChange: ["A test that shows none is left, and an answer of no to question 8."],
      act: { words: "What to do first", leads: "wrong" },
      wait: { words: "Wait until it is gone", leads: "ahead" },
    });
  }
  return told;
}
