/**
 * The plan in short, beside the questions: who would come, on what condition, how wide the range still is, and what
 * would narrow it most. From twenty runs, so that it answers at once; the pages of the tank say the whole.
 */
import { Fragment } from "preact";
import { linked } from "../../answers/sentence.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { shownValue } from "../../answers/units-shown.ts";
import { counted, dateWords, withDates } from "../../answers/words.ts";
import type { ShownIn } from "../../contract/tank-file/shown-in.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Quantity } from "../parts/quantity.tsx";
import { WorkingOf } from "../parts/tank-context.ts";
import { askedAt } from "./fact-questions.ts";
import { Sentence } from "./sentence.tsx";
import { type TankWorkingView, WorkingArticle } from "./working.tsx";

/** Runs behind it. */
export const PLAN_PART_RUNS = 20;

/** Workings of these twenty runs, not of the two hundred behind the other pages. */
const planPartWorking =
  (tank: string) =>
  (_: string | null, figure: string): string =>
    to.planPartWorking(tank, figure, PLAN_PART_RUNS);

interface PlanSlotProps {
  readonly tank: string;
  readonly version: number;
  /** Null while it is being worked out: filled where script runs, a link where it does not. */
  readonly answers: TankAnswers | null;
  readonly units: ShownIn;
}

export function PlanSlot({ tank, version, answers, units }: PlanSlotProps) {
  return (
    <section
      class="plan-part"
      data-plan-part={answers === null ? `${to.planPart(tank, PLAN_PART_RUNS)}&part=1` : ""}
      data-tank={tank}
      data-version={version}
      aria-label="The plan so far"
    >
      {answers === null ? (
        <>
          <h2>The plan so far</h2>
          <p role="status">
            It is being worked out, which takes a few seconds. It is a plan already, with a wide range.
          </p>
          <p>
            <a href={to.planPart(tank, PLAN_PART_RUNS)}>Show the plan</a>
          </p>
        </>
      ) : (
        <PlanShort tank={tank} answers={answers} units={units} />
      )}
    </section>
  );
}

interface PlanPartView {
  readonly head: TankHead;
  readonly answers: TankAnswers;
  readonly units: ShownIn;
  /** A page of its own, not put into another. */
  readonly alone: boolean;
}

/** The part alone: what the slot is filled with, and a page of its own without script. */
export function planPartPage({ head, answers, units, alone }: PlanPartView): Page {
  return {
    title: `The plan so far: ${head.name}`,
    tank: head,
    here: "questions",
    body: (
      <>
        {alone ? <h1>Questions of {head.name}</h1> : null}
        <PlanShort tank={head.id} answers={answers} units={units} />
      </>
    ),
  };
}

/** The working of one of its figures, further ones from the same twenty runs. */
export function planWorkingPage(view: TankWorkingView): Page {
  return {
    title: `How do you know? ${view.figure.label}, in ${PLAN_PART_RUNS} runs`,
    tank: view.head,
    here: null,
    body: (
      <WorkingOf.Provider value={planPartWorking(view.head.id)}>
        <p class="note">From {PLAN_PART_RUNS} runs, as beside the questions.</p>
        <WorkingArticle {...view} />
      </WorkingOf.Provider>
    ),
  };
}

interface PlanShortProps {
  readonly tank: string;
  readonly answers: TankAnswers;
  readonly units: ShownIn;
}

function PlanShort({ tank, answers: { waves }, units }: PlanShortProps) {
  return (
    <WorkingOf.Provider value={planPartWorking(tank)}>
      <h2>The plan so far</h2>
      <p class="hint">
        Reckoned for{" "}
        <Quantity figure={waves.tank.figures.water}>
          {waterWords(waves.tank.water_l, units)} of water
        </Quantity>
        , in {PLAN_PART_RUNS} runs. {assumedWords(waves.tank.assumed.length)}
      </p>
      {waves.kind === "nothing_yet" ? <Nothing waves={waves} /> : <Waves waves={waves} />}
      <Narrower tank={tank} waves={waves} />
      <p>
        <a href={to.tank(tank, "waves")}>The whole plan</a>
      </p>
    </WorkingOf.Provider>
  );
}

interface OfWaves {
  readonly waves: TankAnswers["waves"];
}

/** "200 L", "180 L to 220 L" */
function waterWords({ low, high }: { readonly low: number; readonly high: number }, units: ShownIn): string {
  const [least, most] = [shownValue("volume", low, units), shownValue("volume", high, units)];
  return least === most ? least : `${least} to ${most}`;
}

const assumedWords = (count: number): string =>
  count === 0
    ? "Nothing had to be assumed."
    : `${count} ${count === 1 ? "fact is" : "facts are"} assumed, each with a wide range; every answer takes some away.`;

function Waves({ waves }: OfWaves) {
  return (
    <ul class="plain-list">
      {waves.waves.map(({ number, from, to: until, animals, only_if, figures }) => (
        <li key={number}>
          <strong>
            Wave {number},{" "}
            <Quantity figure={figures.from}>
              {dateWords(from)} to {dateWords(until)}
            </Quantity>
            :
          </strong>{" "}
          {animals.map(({ id, name, count, figures: { count: figure } }, i) => (
            <Fragment key={id}>
              {i === 0 ? null : ", "}
              <Quantity figure={figure}>{counted(count, name)}</Quantity>
            </Fragment>
          ))}
          . Only if {only_if[0] ?? "nothing has changed"}
          {only_if.length > 1 ? `, and ${only_if.length - 1} more` : ""}.
        </li>
      ))}
    </ul>
  );
}

function Nothing({ waves }: OfWaves) {
  return (
    <>
      <p>
        <strong>Add nothing yet.</strong> Waiting costs nothing.
        {waves.look_again_on === null ? null : (
          <>
            {" "}
            Look again on{" "}
            {waves.look_again_figure === null ? (
              dateWords(waves.look_again_on)
            ) : (
              <Quantity figure={waves.look_again_figure}>{dateWords(waves.look_again_on)}</Quantity>
            )}
            .
          </>
        )}
      </p>
      <ul>
        {waves.because.map((text, i) => (
          <li key={text}>
            <Sentence of={linked(withDates(text), waves.because_figures[i])} />
          </li>
        ))}
      </ul>
    </>
  );
}

/** How far apart the crews are, and the answer that would bring them closest. */
function Narrower({ tank, waves }: OfWaves & { readonly tank: string }) {
  const [most] = waves.would_change;
  if (most === undefined) return null;
  const { fact, label, ask, heads_if_low, heads_if_high, figure } = most;
  return (
    <p>
      {heads_if_low === null || heads_if_high === null ? null : (
        <>
          The crew in all may be{" "}
          <Quantity figure={figure}>
            {Math.min(heads_if_low, heads_if_high)} to {Math.max(heads_if_low, heads_if_high)}
          </Quantity>
          , by {label} alone.{" "}
        </>
      )}
      What would narrow it most: <a href={askedAt(tank, fact)}>{ask}</a>.
    </p>
  );
}
