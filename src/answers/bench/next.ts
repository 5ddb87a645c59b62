/**
 * What to do next for one tank, and why: the most urgent first, then the weightiest. Everything is in one list: what was
 * told, measured and seen, what trends, heads and growths ask for, the plan and its gate, what is missing, silence.
 * A danger is never averaged away by what is well; waiting is an answer of the same weight as doing; advice that was
 * declined waits until what it rests on changes. Pure: today is handed in.
 */
import type { WavesOutput } from "../../contract/output/waves.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import type { Advice } from "../advice.ts";
import { dateWords, lowered } from "../words.ts";
import { agreeing, compareAdvice } from "./agreeing.ts";
import { dangerAdvice, troubleAdvice } from "./danger.ts";
import { type DeclinedAdvice, sortDeclined } from "./declined.ts";
import { unsettled } from "./events.ts";
import type { KnownOfTank } from "./known.ts";
import { lossAdvice } from "./losses.ts";
import { medicineAdvice, nuisanceAdvice, outageAdvice } from "./mishaps.ts";
import { missingReadings } from "./missing.ts";
import { nothingAdvice, waveAdvice } from "./plan-advice.ts";
import { handWorkAdvice, hungryAdvice } from "./shelf-advice.ts";
import { signAdvice } from "./signs.ts";
import { silenceAdvice, silenceAfterTrouble } from "./silence.ts";
import { waterAdvice } from "./water.ts";

export interface BenchScene extends KnownOfTank {
  /** Null while they are being worked out. */
  readonly waves: WavesOutput | null;
  /** What trends, heads and growths ask for. */
  readonly lists: readonly Advice[];
}

export interface RankedAdvice {
  /** The first is what to do next; there is always one. */
  readonly standing: readonly [Advice, ...Advice[]];
  readonly declined: readonly DeclinedAdvice[];
}

/** Id of the advice that is given where nothing else is. */
export const NOTHING_DUE = "nothing_due";

export function adviceFor(scene: BenchScene): RankedAdvice {
  const { waves, record, today } = scene;
  const all = [
    ...quickAdvice(scene),
    ...scene.lists,
    ...(waves === null ? [] : hungryAdvice(waves)),
    ...(waves === null ? [] : planAdvice(waves, scene)),
    ...(waves === null ? [] : handWorkAdvice(waves, today)),
    ...missingAdvice(scene),
  ];
  const { standing, declined } = sortDeclined(agreeing(all, waves), record.declined);
  const [first = nothingDue(today), ...rest] = standing.toSorted(compareAdvice);
  return { standing: [first, ...rest], declined };
}

/** What is told, measured and seen, without the engine: bench and round judge a tank by the same. */
export function quickAdvice(known: KnownOfTank): Advice[] {
  const events = unsettled(known);
  const troubles = [
    ...lossAdvice(known, events),
    ...signAdvice(known, events),
    ...outageAdvice(known, events),
  ];
  return [
    ...dangerAdvice(known),
    ...troubleAdvice(known),
    ...medicineAdvice(known, events),
    ...waterAdvice(known),
    ...troubles,
    ...nuisanceAdvice(known),
    ...silenceAfterTrouble(known, events, troubles),
    ...silenceAdvice(known, events),
  ];
}

const planAdvice = (waves: WavesOutput, known: KnownOfTank): readonly Advice[] =>
  waves.kind === "nothing_yet" ? nothingAdvice(waves, known.today) : waveAdvice(waves, known);

function missingAdvice({ latest, today }: KnownOfTank): readonly Advice[] {
  const [first, ...more] = missingReadings(latest);
  if (first === undefined) return [];
  const others = more.length === 0 ? "" : `, and ${more.length} more below`;
  return [
    {
      id: `missing.${first.quantity}`,
      urgency: "cannot_tell",
      weight: 10,
      about: "missing",
      do: [`Measure ${lowered(first.label)} when you next test the water.`],
      why: [[`${first.label}: ${first.have}${others}. It tells ${first.settles}.`]],
      byWhen: [`By ${dateWords(addDays(today, 7))}; nothing is lost by waiting.`],
      by: addDays(today, 7),
      wouldChange: ["A reading with its date, even from a rough kit."],
      restsOn: latest.find(({ quantity }) => quantity === first.quantity)?.on ?? "never measured",
      act: { words: "Log a reading", leads: "readings" },
      wait: { words: "Wait: the wide range stands meanwhile", leads: "ahead" },
    },
  ];
}

function nothingDue(today: string): Advice {
  return {
    id: NOTHING_DUE,
    urgency: "next_visit",
    weight: 0,
    about: "nothing_yet",
    do: ["Keep things as they are, and look at the tank as you feed."],
    why: [["Nothing that was told or measured asks for more."]],
    byWhen: [`Look again on ${dateWords(addDays(today, 7))}.`],
    by: addDays(today, 7),
    wouldChange: ["A reading out of the usual, or an animal that sits still, gasps or is missing."],
    act: { words: "Log a reading", leads: "readings" },
    wait: { words: "Wait: nothing is due", leads: "ahead" },
  };
}
