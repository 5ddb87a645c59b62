/**
 * Waves: who comes when, in which number, on what condition. Waiting is a plan of equal weight beside the first wave;
 * who does not come is told with the reason, and what would change the plan most leads to the question that asks it.
 */
import { hazardsOf } from "../../answers/animals/cautions.ts";
import { byReason, inFull } from "../../answers/animals/fit-words.ts";
import type { JudgedGate } from "../../answers/bench/gate.ts";
import { linked } from "../../answers/sentence.ts";
import { CAUTION } from "../../answers/statement.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { dateWords } from "../../answers/words.ts";
import { animalById } from "../../catalogue/index.ts";
import { WaveStrip } from "../charts/wave-strip.tsx";
import type { WaveFacts } from "../charts/wave-strip-view.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Disclosure } from "../parts/disclosure.tsx";
import { Notice } from "../parts/notice.tsx";
import { Assumed } from "./assumed.tsx";
import { GateJudged } from "./bench-gate.tsx";
import { FallowNotice } from "./fallow-notice.tsx";
import { Reasons } from "./reasons.tsx";
import { Sentence } from "./sentence.tsx";
import { WaveMore } from "./wave.tsx";
import { FoodByHand, LeftToHand, WhatWouldChange, Wishes } from "./waves-beside.tsx";

export interface WavesView {
  readonly head: TankHead;
  readonly answers: TankAnswers;
  /** ISO date. */
  readonly today: string;
  /** Of the first wave, as the daybook has it; null or absent where there is no wave or no daybook. */
  readonly gate?: JudgedGate | null;
  /** First day with fish again where the tank lies fallow, ISO date. */
  readonly fallowUntil?: string | null;
}

/** Name of its chart, and of its file of numbers. */
export const WAVES_CHART = "waves";

export function wavesPage(view: WavesView): Page {
  const { head, answers, gate = null } = view;
  const finding = findingOf(answers.waves, gate);
  return {
    title: `${finding} ${head.name}`,
    tank: head,
    here: "waves",
    body: (
      <>
        <h1>{finding}</h1>
        <p class="gloss">Waves: who comes when, in which number, and on what condition.</p>
        <FallowNotice tank={head.id} until={view.fallowUntil} />
        <Unreckoned names={answers.waves.tank.unknown_animals} />
        {answers.waves.kind === "nothing_yet" ? <NothingYet {...view} /> : <WavesBody {...view} />}
        <FoodByHand answers={answers} />
        <LeftToHand answers={answers} />
        <Wishes tank={head.id} answers={answers} />
        <Refused {...view} />
        <WhatWouldChange tank={head.id} answers={answers} />
        <Assumed tank={head.id} fields={answers.waves.tank.assumed} />
        <h2>Cautions</h2>
        <ul>
          {Object.values(CAUTION).map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </>
    ),
  };
}

function WavesBody({ head, answers: { waves }, today, gate = null }: WavesView) {
  return (
    <>
      <section class="either">
        <div>
          <h2>Add the first wave</h2>
          <p>
            Only if its conditions hold, all of them, seen with your own eyes.{" "}
            <a class="action" href={`#wave-${waves.waves[0]!.number}`}>
              See its conditions
            </a>
          </p>
        </div>
        <div>
          <h2>Or wait</h2>
          <p>
            Waiting is a plan: nothing is lost by it, and the larder goes on growing. Look again when the next
            condition can be seen.{" "}
            <a class="action" href={to.tank(head.id)}>
              Wait, and go to the bench
            </a>
          </p>
        </div>
      </section>
      {gate === null ? null : (
        <>
          <GateJudged tank={head.id} gate={gate} />
          <p>
            <a class="action" href={to.acceptWave(head.id, gate.wave)}>
              Wave {gate.wave} has come: log what arrived
            </a>
          </p>
        </>
      )}
      <WaveStrip
        id={WAVES_CHART}
        waves={waves.waves.map(waveFacts)}
        more={({ number }) => {
          const wave = waves.waves.find((one) => one.number === number)!;
          return (
            <WaveMore
              tank={head.id}
              wave={wave}
              check={waves.check}
              open={wave.from <= today}
              hazards={Object.fromEntries(
                wave.animals.map(({ id }) => {
                  const animal = animalById.get(id);
                  return [id, animal === undefined ? [] : hazardsOf(animal)];
                }),
              )}
            />
          );
        }}
      />
    </>
  );
}

const waveFacts = ({
  number,
  from,
  to: until,
  animals,
  only_if,
}: TankAnswers["waves"]["waves"][number]): WaveFacts => ({
  number,
  from,
  to: until,
  animals,
  gate: only_if,
});

function NothingYet({ answers: { waves } }: WavesView) {
  return (
    <section>
      <h2>Why nothing yet</h2>
      <ul>
        {waves.because.map((text, i) => (
          <li key={text}>
            <Sentence of={linked(inFull(text), waves.because_figures[i])} />
          </li>
        ))}
      </ul>
      <p>
        {waves.look_again_on === null
          ? "Once that is settled, ask again. Waiting costs nothing."
          : `Look again on ${dateWords(waves.look_again_on)}. Waiting costs nothing.`}
      </p>
    </section>
  );
}

function Unreckoned({ names }: { readonly names: readonly string[] }) {
  if (names.length === 0) return null;
  return (
    <Notice kind="look" title="Not reckoned with">
      <p>
        {names.join(", ")}: not in our list. What it eats, and whether it would eat this crew, find out before
        you add anything.
      </p>
    </Notice>
  );
}

function Refused({ head, answers: { animals } }: WavesView) {
  const count = (status: string) => animals.animals.filter(({ fit }) => fit?.status === status).length;
  return (
    <section>
      <h2>Who does not come, and why</h2>
      {(
        [
          ["not_yet", "Not yet"],
          ["never", "Never in this tank"],
          ["fits", "Fit, and are not needed"],
        ] as const
      ).map(([status, title]) =>
        count(status) === 0 ? null : (
          <Disclosure key={status} summary={`${title} (${count(status)})`}>
            <Reasons tank={head.id} groups={byReason(animals.animals, status)} />
          </Disclosure>
        ),
      )}
      <p>
        <a href={to.tank(head.id, "animals")}>All animals, and how each fits</a>
      </p>
    </section>
  );
}

/** The first sentence of the plan. */
function findingOf({ kind, waves, tank }: TankAnswers["waves"], gate: JudgedGate | null): string {
  if (kind === "nothing_yet" || waves.length === 0) return "Add nothing yet.";
  const heads = (some: typeof waves) =>
    some.reduce((sum, { animals }) => sum + animals.reduce((n, { count }) => n + count, 0), 0);
  const first = waves[0]!;
  const when = first.from <= tank.as_of ? "now" : `from ${dateWords(first.from)}`;
  const now = heads([first]);
  const rest =
    waves.length > 1
      ? `, the first of ${waves.length} waves; ${heads(waves)} in all by ${dateWords(waves.at(-1)!.to)}`
      : "";
  if (gate?.state === "not_met") return `Wait with the first wave of ${now}: its gate is not met.`;
  return `Add ${now} ${now === 1 ? "animal" : "animals"} ${when}, or wait${rest}.`;
}
