/**
 * What to do next for one tank, and why: the most urgent first. Until the daybook advises, this comes from what is
 * told, the latest readings and the plan alone. A danger is never averaged away by what is well; waiting is an answer
 * of the same weight as doing. Pure: today is handed in.
 */
import type { WavesOutput } from "../../contract/output/waves.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Sentence } from "../sentence.ts";
import { dateWords, lowered } from "../words.ts";
import { dangerAdvice, troubleAdvice } from "./danger.ts";
import type { LatestReading } from "./latest.ts";
import { missingReadings } from "./missing.ts";
import { nothingAdvice, waveAdvice } from "./plan-advice.ts";
import { handWorkAdvice, hungryAdvice } from "./shelf-advice.ts";

export const URGENCY_ORDER = ["today", "this_week", "next_visit", "cannot_tell"] as const;
export type BenchUrgency = (typeof URGENCY_ORDER)[number];

/** Where an action leads; the page knows the address. */
export type Leads = "wrong" | "waves" | "readings" | "larder" | "questions" | "ahead";

export interface BenchAdvice {
  readonly urgency: BenchUrgency;
  readonly about:
    | "danger"
    | "trouble"
    | "medicine"
    | "wave"
    | "nothing_yet"
    | "hungry"
    | "hand_work"
    | "missing";
  /** One sentence, at most 20 words, the verb first. */
  readonly do: Sentence;
  readonly why: readonly Sentence[];
  readonly byWhen: Sentence;
  readonly wouldChange: Sentence;
  readonly act: { readonly words: string; readonly leads: Leads };
  /** In the same weight; what waiting means here. */
  readonly wait: { readonly words: string; readonly leads: Leads };
}

export interface BenchScene {
  readonly facts: Pick<TankFacts, "trouble" | "medicines" | "asOf">;
  readonly latest: readonly LatestReading[];
  /** Null while they are being worked out. */
  readonly waves: WavesOutput | null;
  /** ISO date. */
  readonly today: string;
}

/** The first is what to do next; there is always one. */
export function adviceFor(scene: BenchScene): readonly [BenchAdvice, ...BenchAdvice[]] {
  const { waves, today } = scene;
  const urgent = [...dangerAdvice(scene.latest), ...troubleAdvice(scene.facts)];
  const all = [
    ...urgent,
    ...(waves === null ? [] : hungryAdvice(waves)),
    ...(waves === null ? [] : planAdvice(waves, today, urgent.length > 0)),
    ...(waves === null ? [] : handWorkAdvice(waves, today)),
    ...missingAdvice(scene.latest, today),
  ];
  const rank = ({ urgency }: BenchAdvice) => URGENCY_ORDER.indexOf(urgency);
  const [first = quiet(today), ...rest] = all.toSorted((a, b) => rank(a) - rank(b));
  return [first, ...rest];
}

/** No wave is brought up while something is dangerous or wrong: nothing is added to such a tank. */
function planAdvice(waves: WavesOutput, today: string, urgent: boolean): readonly BenchAdvice[] {
  if (waves.kind === "nothing_yet") return nothingAdvice(waves, today);
  return urgent ? [] : waveAdvice(waves, today);
}

function missingAdvice(latest: readonly LatestReading[], today: string): readonly BenchAdvice[] {
  const [first, ...more] = missingReadings(latest);
  if (first === undefined) return [];
  const others = more.length === 0 ? "" : `, and ${more.length} more below`;
  return [
    {
      urgency: "cannot_tell",
      about: "missing",
      do: [`Measure ${lowered(first.label)} when you next test the water.`],
      why: [[`${first.label}: ${first.have}${others}. It tells ${first.settles}.`]],
      byWhen: [`By ${dateWords(addDays(today, 7))}; nothing is lost by waiting.`],
      wouldChange: ["A reading with its date, even from a rough kit."],
      act: { words: "Log a reading", leads: "readings" },
      wait: { words: "Wait: the wide range stands meanwhile", leads: "ahead" },
    },
  ];
}

function quiet(today: string): BenchAdvice {
  return {
    urgency: "next_visit",
    about: "nothing_yet",
    do: ["Keep things as they are, and look at the tank as you feed."],
    why: [["Nothing that was told or measured asks for more."]],
    byWhen: [`Look again on ${dateWords(addDays(today, 7))}.`],
    wouldChange: ["A reading out of the usual, or an animal that sits still, gasps or is missing."],
    act: { words: "Log a reading", leads: "readings" },
    wait: { words: "Wait: nothing is due", leads: "ahead" },
  };
}
