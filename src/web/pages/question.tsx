/**
 * One question a page: why it is asked, its fields, "I'm not sure" with what is taken then, and the plan beside it.
 * How the answer before was read stands on top, and is taken back in one step. Works without script.
 */
import { type FormField, fieldsOf } from "../../answers/questions/fields.ts";
import { QUESTIONS } from "../../answers/questions/questions.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import type { ShownIn } from "../../contract/tank-file/shown-in.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { Notice } from "../parts/notice.tsx";
import { type Filled, FormFields, ReturnKey, summaryOf } from "./form-fields.tsx";
import { PlanSlot } from "./plan-part.tsx";

export interface Echo {
  readonly question: number;
  /** How it was read, or that it was left open. */
  readonly lines: readonly string[];
  /** Version to go back to; null where there is none before. */
  readonly restore: number | null;
}

/** Another writer came first. */
export interface Clash {
  /** What is kept now, in words, a line a field. */
  readonly theirs: readonly string[];
}

export interface QuestionView extends Filled {
  readonly head: TankHead;
  /** 1 to 8. */
  readonly number: number;
  /** Version of the tank's facts that the form was made from. */
  readonly version: number;
  readonly echo: Echo | null;
  readonly clash: Clash | null;
  /** Of twenty runs; null while they are being worked out. */
  readonly answers: TankAnswers | null;
  readonly spareLines: number;
  readonly units: ShownIn;
}

export function questionPage(view: QuestionView): Page {
  const { head, number, doubts } = view;
  const question = QUESTIONS[number - 1]!;
  return {
    title: `${doubts.length > 0 ? "Error: " : ""}${question.title} Question ${number} of ${QUESTIONS.length}, ${head.name}`,
    tank: head,
    here: "questions",
    body: (
      <div class="question-page">
        <div>
          <ErrorSummary errors={summaryOf(doubts)} />
          <EchoNotice tank={head.id} version={view.version} echo={view.echo} />
          {view.clash === null ? null : (
            <ClashNotice clash={view.clash} again={to.question(head.id, number)} />
          )}
          <Steps tank={head.id} here={number} />
          <h1>{question.title}</h1>
          <p class="lead">{question.why}</p>
          <QuestionForm view={view} fields={fieldsOf(number)} />
        </div>
        <PlanSlot tank={head.id} version={view.version} answers={view.answers} units={view.units} />
      </div>
    ),
  };
}

function QuestionForm({
  view,
  fields,
}: {
  readonly view: QuestionView;
  readonly fields: readonly FormField[];
}) {
  const { head, number, version, values, doubts, spareLines } = view;
  const question = QUESTIONS[number - 1]!;
  const last = number === QUESTIONS.length;
  const next = last ? to.tank(head.id) : to.question(head.id, number + 1);
  return (
    <form
      method="post"
      action={to.question(head.id, number)}
      novalidate
      data-draft={to.question(head.id, number)}
    >
      <ReturnKey name="go" value="keep" />
      <input type="hidden" name="version" value={version} />
      <FormFields
        fields={fields}
        values={values}
        doubts={doubts}
        focus={doubts.length > 0 ? null : (fields[0]?.name ?? null)}
        spareLines={spareLines}
      />
      {number === 4 ? (
        <p>
          <button type="submit" class="plain" name="go" value="more_lines">
            More lines
          </button>
        </p>
      ) : null}
      <p class="hint">If you are not sure: {question.notSure}.</p>
      <div class="actions">
        <button type="submit" class="first" name="go" value="keep">
          {view.clash === null ? (last ? "Keep and see what to do" : "Keep and go on") : "Save what I typed"}
        </button>
        <button type="submit" name="go" value="not_sure">
          I'm not sure
        </button>
        <a class="action" href={next}>
          Skip
        </a>
      </div>
    </form>
  );
}

/** All eight, the open one as plain words, and the way to them on one sheet. */
function Steps({ tank, here }: { readonly tank: string; readonly here: number }) {
  return (
    <nav aria-label="Questions">
      <ol class="question-steps">
        {QUESTIONS.map(({ flag }, i) => (
          <li key={flag}>
            {i + 1 === here ? (
              <strong aria-current="step">
                {i + 1}
                <span class="unseen">: {STEP_WORDS[i]}, this question</span>
              </strong>
            ) : (
              <a href={to.question(tank, i + 1)} aria-label={`Question ${i + 1}: ${STEP_WORDS[i]}`}>
                {i + 1}
              </a>
            )}
          </li>
        ))}
        <li>
          <a href={to.singleForm(tank)}>All on one form</a>
        </li>
      </ol>
    </nav>
  );
}

const STEP_WORDS = [
  "water",
  "age and rock",
  "what you see",
  "animals",
  "floor",
  "food",
  "readings",
  "anything wrong",
] as const;

function EchoNotice({
  tank,
  version,
  echo,
}: {
  readonly tank: string;
  readonly version: number;
  readonly echo: Echo | null;
}) {
  if (echo === null) return null;
  return (
    <Notice kind="done" title={`Question ${echo.question} kept`}>
      {echo.lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <form method="post" action={to.history(tank)} class="beside-actions">
        <a href={to.question(tank, echo.question)}>Change it</a>
        {echo.restore === null ? null : (
          <>
            <input type="hidden" name="version" value={version} />
            <input type="hidden" name="restore" value={echo.restore} />
            <input type="hidden" name="next" value={echo.question} />
            <button type="submit" class="plain">
              Take it back
            </button>
          </>
        )}
      </form>
    </Notice>
  );
}

export function ClashNotice({ clash, again }: { readonly clash: Clash; readonly again: string }) {
  return (
    <Notice kind="look" title="This was changed since you opened it">
      <p>Kept now:</p>
      <ul>
        {clash.theirs.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <p>
        What you typed stands below and is not saved yet. <a href={again}>Keep what is there now</a>, or save
        what you typed.
      </p>
    </Notice>
  );
}
