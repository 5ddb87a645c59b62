/** "What is this?" in lines of text: what a key found, and what the record's growths and signs may come from. */

import type { KeyFound } from "../../answers/growths/key.ts";
import { chance, dateWords } from "../../answers/words.ts";
import type { CauseOutput, GrowthsOutput } from "../../contract/output/growths.ts";
import type { GrowthFact, HitchhikerFact, KeyQuestion } from "../../engine/types/diagnosis.ts";

export interface Line {
  readonly text: string;
  readonly indent: number;
}
const line = (text: string, indent = 0): Line => ({ text, indent });

const CAUSES_TOLD = 3;
const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

export function keyLines({ named, found, next }: KeyFound): Line[] {
  const [top] = found;
  return [
    named === null
      ? line("Can't tell yet.")
      : line(`${capital(named.name)}: ${chance(top?.of_20 ?? 0)}. ${named.looks.text}`),
    ...found
      .slice(0, 4)
      .flatMap(({ name, of_20, for: speaks, against }) => [
        line(`${capital(name)}: ${of_20} of 20`, 2),
        ...(speaks.length === 0 ? [] : [line(`for it: ${speaks.join("; ")}`, 4)]),
        ...(against.length === 0 ? [] : [line(`against it: ${against.join("; ")}`, 4)]),
      ]),
    ...(named === null ? [] : adviceLines(named)),
    next === null
      ? line("No further question would tell much more.")
      : line(`Next: ${next.ask} (${optionsOf(next)})`),
  ];
}

const optionsOf = ({ options }: KeyQuestion): string => options.map(({ id }) => id).join(", ");

const VERDICT = { leave: "Leave it.", watch: "Watch it.", remove: "Remove it." } as const;

function adviceLines(thing: GrowthFact | HitchhikerFact): Line[] {
  const says =
    "verdict" in thing
      ? [`${VERDICT[thing.verdict]} ${thing.because.text}`]
      : [thing.crewSaid.text, ...(thing.toxin === null ? [] : [thing.toxin.text])];
  return [
    ...says.map((text) => line(text)),
    ...thing.doLines.map(({ text }) => line(`Do: ${text}`, 2)),
    ...thing.dont.map(({ text }) => line(`Do not: ${text}`, 2)),
    line(thing.stop.text, 2),
  ];
}

/** Every trait of a key, to be named behind --yes and --no. */
export function traitLines(questions: readonly KeyQuestion[]): Line[] {
  return questions.flatMap(({ ask, options }) => [
    line(ask),
    ...options.map(({ id, words }) => line(`${id}: ${words}`, 2)),
  ]);
}

export function recordLines(output: GrowthsOutput): Line[] {
  const { growths, signs, gates_closed, tests_first, unfound_death, hungry } = output;
  const lines = [
    ...gates_closed.map(({ reason }) => line(`No new animals for now. ${reason}`)),
    ...(unfound_death === null
      ? []
      : [
          line(
            `${unfound_death.quantity} rose by ${unfound_death.rise_mg_n_per_l} mg N/L above what is usual, ${dateWords(unfound_death.on)}. ${unfound_death.said.join(" ")}`,
          ),
        ]),
    ...tests_first.map(({ quantity, says, check }) => line(`${quantity}, the test first: ${says} ${check}`)),
    ...hungry.map(({ said }) => line(said)),
    ...growths.flatMap((one) => [
      line(
        `${one.label}, ${one.score} of 4${one.from === "daybook" ? "" : ", told in the questions"}, ${dateWords(one.on)}. ${one.crew_said}`,
      ),
      ...one.asked_first.map(({ test }) => line(`First: ${test}`, 2)),
      ...one.causes.slice(0, CAUSES_TOLD).flatMap(causeLines),
      ...one.do.map((text) => line(`Do: ${text}`, 2)),
      ...one.dont.map((text) => line(`Do not: ${text}`, 2)),
      line(one.stop, 2),
    ]),
    ...signs.flatMap((one) => [
      line(`${one.title}, ${dateWords(one.on)}. ${one.said.join(" ")}`),
      ...one.causes.slice(0, CAUSES_TOLD).flatMap(causeLines),
    ]),
  ];
  return lines.length > 0
    ? lines
    : [line("Nothing in the daybook asks for an answer: no growth scored high, no sign of the last week.")];
}

function causeLines({ name, of_20, for: speaks, against, do: first }: CauseOutput): Line[] {
  return [
    line(`${capital(name)}: ${chance(of_20)}.${first[0] === undefined ? "" : ` ${first[0]}`}`, 2),
    ...(speaks.length === 0 ? [] : [line(`for it: ${speaks.join(" ")}`, 4)]),
    ...(against.length === 0 ? [] : [line(`against it: ${against.join(" ")}`, 4)]),
  ];
}
