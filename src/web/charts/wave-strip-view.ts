/** Waves and gates in time. A wave is a step: it may come on any day of its window, so the step leans. Pure. */
import { scaleLinear } from "d3-scale";
import { counted, dateWords } from "../../answers/words.ts";
import { listed } from "../parts/text.ts";
import { dayOf } from "./days.ts";
import type { Step } from "./steps.ts";

export interface WaveFacts {
  readonly number: number;
  /** ISO dates between which it may come. */
  readonly from: string;
  readonly to: string;
  readonly animals: readonly { readonly id: string; readonly name: string; readonly count: number }[];
  /** Conditions, each a sentence's end: "film is back on the glass three days after wiping". */
  readonly gate: readonly string[];
}

export interface WaveStep {
  readonly wave: WaveFacts;
  /** Animals of the plan before and after it. */
  readonly before: number;
  readonly after: number;
  /** Shares of the strip's width. */
  readonly fromShare: number;
  readonly toShare: number;
}

export interface WaveStripView {
  readonly steps: readonly WaveStep[];
  readonly heads: number;
  readonly first: string;
  readonly last: string;
}

/** The strip ends a little after the last wave. */
const DAYS_AFTER = 21;

export function waveStripView(waves: readonly WaveFacts[]): WaveStripView {
  const [first] = waves;
  const last = waves.at(-1);
  if (first === undefined || last === undefined) throw new Error("Cannot draw a strip of no waves");
  const share = scaleLinear([dayOf(first.from), dayOf(last.to) + DAYS_AFTER], [0, 1]);
  let before = 0;
  const steps = waves.map((wave) => {
    const after = before + headsOf(wave);
    const step = { wave, before, after, fromShare: share(dayOf(wave.from)), toShare: share(dayOf(wave.to)) };
    before = after;
    return step;
  });
  return { steps, heads: before, first: first.from, last: last.to };
}

const headsOf = (wave: WaveFacts): number => wave.animals.reduce((sum, { count }) => sum + count, 0);

export const animalWords = (wave: WaveFacts): string =>
  listed(wave.animals.map(({ count, name }) => counted(count, name)));

/** "Wave 2: 15 Jun 2026 to 29 Jun 2026" */
export const windowWords = ({ from, to }: WaveFacts): string =>
  from === to ? dateWords(from) : `${dateWords(from)} to ${dateWords(to)}`;

export function waveSteps(waves: readonly WaveFacts[]): readonly Step[] {
  return waves.map((wave) => ({
    label: `Wave ${wave.number}, ${windowWords(wave)}`,
    text: `${animalWords(wave)}${wave.gate.length === 0 ? "" : `, only if ${wave.gate.join("; ")}`}`,
  }));
}

/** "7 animals in 2 waves, the first from 15 Jun 2026" */
export function waveFinding({ steps, heads, first }: WaveStripView): string {
  const waves = steps.length === 1 ? "1 wave" : `${steps.length} waves`;
  return `${heads} ${heads === 1 ? "animal" : "animals"} in ${waves}, the first from ${dateWords(first)}`;
}
