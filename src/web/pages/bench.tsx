/**
 * Bench, one tank: what to do next, and why. One sentence, one action, waiting in the same weight; then what else is
 * due, the shelves in short, what can't be told yet, and the latest readings. What is known without the engine (danger,
 * trouble, what is missing) stands there at once; the rest comes when it has been worked out.
 */

import type { ComponentChildren } from "preact";
import type { Advice as Advised } from "../../answers/advice.ts";
import { inFull } from "../../answers/animals/fit-words.ts";
import { type DeclinedAdvice, isDanger } from "../../answers/bench/declined.ts";
import type { LatestReading } from "../../answers/bench/latest.ts";
import type { Missing } from "../../answers/bench/missing.ts";
import { NOTHING_DUE } from "../../answers/bench/next.ts";
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { plain } from "../../answers/sentence.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { dateWords } from "../../answers/words.ts";
import { isBare } from "../charts/shelf.ts";
import { ShelfPairs } from "../charts/shelf-pair.tsx";
import { type Page, type TankHead, to } from "../page.ts";
import { Advice } from "../parts/advice.tsx";
import { Disclosure } from "../parts/disclosure.tsx";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { Field } from "../parts/field.tsx";
import { Notice } from "../parts/notice.tsx";
import { unitSigns } from "../parts/text.ts";
import { Urgency } from "../parts/urgency.tsx";
import { adviceAddress } from "./advice-address.ts";
import { summaryOf } from "./form-fields.tsx";
import { Sentence } from "./sentence.tsx";
import { shelfFacts } from "./shelf-facts.ts";

export interface BenchView {
  readonly head: TankHead;
  /** "208 L of water, 45 days old." in the keeper's units. */
  readonly gloss: string;
  /** The first is what to do next. */
  readonly advice: readonly [Advised, ...Advised[]];
  readonly declined: readonly DeclinedAdvice[];
  /** Short for what a piece of advice rests on: what is declined is what was shown. */
  readonly tokenOf: (advice: Advised) => string;
  /** Sent with a form: however often it arrives, it adds one row. */
  readonly once: string;
  /** A reason as it was typed, and what keeps it from being kept. */
  readonly sent: Values;
  readonly doubts: readonly FieldDoubt[];
  readonly missing: readonly Missing[];
  readonly latest: readonly LatestReading[];
  /** What else has to be known: an animal that eats the crew, a figure that is unusual. */
  readonly notices: readonly string[];
  /** Of the last question, just answered. */
  readonly kept: readonly string[];
  /** Null while they are being worked out. */
  readonly answers: TankAnswers | null;
}

const SHELVES_SHOWN = 4;

/** Name of a reason's field begins so; its number follows, as there are several on a page. */
export const REASON = "reason.";

export function benchPage(view: BenchView): Page {
  const { head, advice, answers, doubts } = view;
  const address = to.tank(head.id);
  return {
    title: `${doubts.length > 0 ? "Error: " : ""}${plain(advice[0].do)} ${head.name}`,
    tank: head,
    here: "bench",
    body:
      answers === null ? (
        <div class="awaiting" data-await data-src={`${address}?part=1`}>
          <BenchBody view={view}>
            <p role="status">The plan is being worked out, which takes a few seconds.</p>
            <p>
              <a href={`${address}?wait=1`}>Wait for it</a>
            </p>
          </BenchBody>
        </div>
      ) : (
        <BenchBody view={view}>
          <Shelves tank={head.id} answers={answers} />
        </BenchBody>
      ),
  };
}

function BenchBody({ view, children }: { readonly view: BenchView; readonly children: ComponentChildren }) {
  const { head, gloss, advice, declined, missing, latest, notices, kept, answers, doubts } = view;
  const [first, ...rest] = advice;
  // Before the plan is known, "keep things as they are" would be said too early.
  const known = answers !== null || first.urgency === "today" || first.urgency === "this_week";
  // What is not told as the first thing to do is due all the same.
  const others = known || first.id === NOTHING_DUE ? rest : advice;
  return (
    <div class="bench">
      <ErrorSummary errors={summaryOf(doubts)} />
      <h1>What next for {head.name}?</h1>
      <p class="gloss">{unitSigns(gloss)}</p>
      {kept.length === 0 ? null : (
        <Notice kind="done" title="Kept">
          {kept.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </Notice>
      )}
      {known ? <OneAdvice view={view} advice={first} at={0} /> : null}
      {notices.map((text) => (
        <Notice key={text} kind="look">
          <p>{inFull(text)}</p>
        </Notice>
      ))}
      {children}
      {others.length === 0 ? null : (
        <section>
          <h2>{known ? "What else is due" : "What is due already"}</h2>
          <ul class="plain-list">
            {others.map((advised) => (
              <li key={advised.id}>
                <Urgency level={advised.urgency} />: <Sentence of={advised.do} />
                <Disclosure
                  summary="Why, by when, and what would change it"
                  open={view.sent["advice"] === advised.id}
                >
                  <OneAdvice view={view} advice={advised} at={advice.indexOf(advised)} />
                </Disclosure>
              </li>
            ))}
          </ul>
        </section>
      )}
      <DeclinedList tank={head.id} declined={declined} />
      <CannotTell tank={head.id} missing={missing} />
      <Latest tank={head.id} latest={latest} />
      <section>
        <h2>What is told of this tank</h2>
        <ul>
          <li>
            <a href={to.tank(head.id, "questions")}>The eight questions</a>, or{" "}
            <a href={to.singleForm(head.id)}>all on one form</a>
          </li>
          <li>
            <a href={to.units(head.id)}>Units and ways of writing</a>
          </li>
          <li>
            <a href={to.history(head.id)}>History, or take this tank away</a>
          </li>
        </ul>
      </section>
    </div>
  );
}

interface OneAdviceProps {
  readonly view: BenchView;
  readonly advice: Advised;
  /** Its place in the list; the first stands by itself. */
  readonly at: number;
}

function OneAdvice({ view, advice, at }: OneAdviceProps) {
  const tank = view.head.id;
  return (
    <>
      <Advice
        urgency={advice.urgency}
        level={at === 0 ? 2 : 3}
        do={<Sentence of={advice.do} />}
        why={advice.why.map((sentence) => (
          <p key={plain(sentence)}>
            <Sentence of={sentence} />
          </p>
        ))}
        byWhen={<Sentence of={advice.byWhen} />}
        wouldChange={<Sentence of={advice.wouldChange} />}
        act={
          <a class="action" href={adviceAddress(tank, advice.act.leads)}>
            {advice.act.words}
          </a>
        }
        wait={
          <a class="action" href={adviceAddress(tank, advice.wait.leads)}>
            {advice.wait.words}
          </a>
        }
      />
      {advice.id === NOTHING_DUE ? null : <DeclineForm view={view} advice={advice} at={at} />}
    </>
  );
}

/** A native form: works without script. What is declined is what this page showed, not what has come since. */
function DeclineForm({ view, advice, at }: OneAdviceProps) {
  const { head, sent, doubts, once, tokenOf } = view;
  const name = `${REASON}${at}`;
  const doubt = doubts.find(({ field }) => field === name);
  return (
    <Disclosure summary="Decline this, with a reason" open={doubt !== undefined}>
      <form method="post" action={to.decline(head.id)} class="decline">
        <input type="hidden" name="advice" value={advice.id} />
        <input type="hidden" name="rests" value={tokenOf(advice)} />
        <input type="hidden" name="once" value={once} />
        <Field
          name={name}
          label={`Why not: ${plain(advice.do)}`}
          hint={
            isDanger(advice)
              ? "Kept in the daybook. A danger stays listed below, and comes back with the next entry."
              : "Kept in the daybook. It is not brought up again until what it rests on changes."
          }
          value={sent[name] ?? ""}
          error={doubt ?? null}
          lines={2}
        />
        <button type="submit">Decline, and keep the reason</button>
      </form>
    </Disclosure>
  );
}

function DeclinedList({
  tank,
  declined,
}: {
  readonly tank: string;
  readonly declined: readonly DeclinedAdvice[];
}) {
  if (declined.length === 0) return null;
  return (
    <section>
      <h2>Declined</h2>
      <ul class="plain-list">
        {declined.map(({ advice, reason, on, entry }) => (
          <li key={advice.id}>
            <p>
              <Urgency level={advice.urgency} />: <Sentence of={advice.do} />
            </p>
            <p>
              Declined on <a href={to.entry(tank, entry)}>{dateWords(on)}</a>: {reason}
            </p>
            <form method="post" action={to.decline(tank)}>
              <input type="hidden" name="go" value="bring_back" />
              <input type="hidden" name="entry" value={entry} />
              <button type="submit">Bring it up again</button>
            </form>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The shelves with most on them, or most wanted of them. */
function Shelves({ tank, answers }: { readonly tank: string; readonly answers: TankAnswers }) {
  const drawn = shelfFacts(answers.larder).filter((shelf) => !isBare(shelf));
  const weight = ({ supply, wanted }: (typeof drawn)[number]) => Math.max(supply.central, wanted);
  const shown = drawn.toSorted((a, b) => weight(b) - weight(a)).slice(0, SHELVES_SHOWN);
  return (
    <section>
      {shown.length === 0 ? (
        <p>Nothing grows yet that a crew could eat.</p>
      ) : (
        <ShelfPairs
          id="bench-shelves"
          title="The larder in short"
          sentence="Food your tank makes, above, against what those that live there want of it, below."
          shelves={shown}
          csv={false}
        />
      )}
      <p>
        <a href={to.tank(tank, "larder")}>{drawn.length > shown.length ? "All shelves" : "The larder"}</a>
      </p>
    </section>
  );
}

function CannotTell({ tank, missing }: { readonly tank: string; readonly missing: readonly Missing[] }) {
  if (missing.length === 0) return null;
  return (
    <section>
      <h2>Can't tell yet</h2>
      <ul>
        {missing.map(({ quantity, label, have, settles }) => (
          <li key={quantity}>
            {label}: {have}. It tells {settles}.{" "}
            <a href={to.readingsOf(tank, quantity)}>Log {label === "pH" ? label : label.toLowerCase()}</a>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Latest({ tank, latest }: { readonly tank: string; readonly latest: readonly LatestReading[] }) {
  return (
    <section>
      <h2>Latest readings</h2>
      {latest.length === 0 ? <p>None yet.</p> : null}
      <ul class="plain-list">
        {latest.map(({ quantity, label, text, ageDays, flag, entry }) => (
          <li key={quantity}>
            {label}:{" "}
            {entry === null ? unitSigns(text) : <a href={to.reading(tank, entry)}>{unitSigns(text)}</a>},{" "}
            {ageDays === null && entry === null ? "told in the questions" : aged(ageDays)}
            {flag === null ? "" : flag === "danger" ? ". Dangerous: act today" : ". Unusual: measure again"}
          </li>
        ))}
      </ul>
      <p class="actions">
        <a class="action" href={to.tank(tank, "readings")}>
          Log a reading
        </a>{" "}
        <a class="action" href={to.wetHand(tank)}>
          Log it with a wet hand
        </a>
      </p>
    </section>
  );
}

function aged(days: number | null): string {
  if (days === null) return "day not given";
  return days === 0 ? "today" : days === 1 ? "yesterday" : `${days} days old`;
}
