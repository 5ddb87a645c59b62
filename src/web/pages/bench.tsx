/**
 * Bench, one tank: what to do next, and why. One sentence, one action, waiting in the same weight; then what else is
 * due, the shelves in short, what can't be told yet, and the latest readings. What is known without the engine (danger,
 * trouble, what is missing) stands there at once; the rest comes when it has been worked out.
 */
import type { ComponentChildren } from "preact";
import type { LatestReading } from "../../answers/bench/latest.ts";
import type { Missing } from "../../answers/bench/missing.ts";
import type { BenchAdvice, Leads } from "../../answers/bench/next.ts";
import { plain } from "../../answers/sentence.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { isBare } from "../charts/shelf.ts";
import { ShelfPairs } from "../charts/shelf-pair.tsx";
import { type Page, type TankHead, to } from "../page.ts";
import { Advice } from "../parts/advice.tsx";
import { Disclosure } from "../parts/disclosure.tsx";
import { Notice } from "../parts/notice.tsx";
import { unitSigns } from "../parts/text.ts";
import { Urgency } from "../parts/urgency.tsx";
import { Sentence } from "./sentence.tsx";
import { shelfFacts } from "./shelf-facts.ts";

export interface BenchView {
  readonly head: TankHead;
  /** "208 L of water, 45 days old." in the keeper's units. */
  readonly gloss: string;
  /** The first is what to do next. */
  readonly advice: readonly [BenchAdvice, ...BenchAdvice[]];
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

export function benchPage(view: BenchView): Page {
  const { head, advice, answers } = view;
  const address = to.tank(head.id);
  return {
    title: `${plain(advice[0].do)} ${head.name}`,
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
  const { head, gloss, advice, missing, latest, notices, kept, answers } = view;
  const [first, ...rest] = advice;
  // Before the plan is known, "keep things as they are" would be said too early.
  const known = answers !== null || first.urgency === "today" || first.urgency === "this_week";
  return (
    <div class="bench">
      <h1>What next for {head.name}?</h1>
      <p class="gloss">{unitSigns(gloss)}</p>
      {kept.length === 0 ? null : (
        <Notice kind="done" title="Kept">
          {kept.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </Notice>
      )}
      {known ? <OneAdvice tank={head.id} advice={first} /> : null}
      {notices.map((text) => (
        <Notice key={text} kind="look">
          <p>{text}</p>
        </Notice>
      ))}
      {children}
      {rest.length === 0 ? null : (
        <section>
          <h2>What else is due</h2>
          <ul class="plain-list">
            {rest.map((advised) => (
              <li key={plain(advised.do)}>
                <Urgency level={advised.urgency} />: <Sentence of={advised.do} />
                <Disclosure summary="Why, by when, and what would change it">
                  <OneAdvice tank={head.id} advice={advised} inner />
                </Disclosure>
              </li>
            ))}
          </ul>
        </section>
      )}
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

const ADDRESS: Readonly<Record<Leads, (tank: string) => string>> = {
  wrong: (tank) => to.wrong(tank),
  waves: (tank) => to.tank(tank, "waves"),
  readings: (tank) => to.tank(tank, "readings"),
  larder: (tank) => to.tank(tank, "larder"),
  ahead: (tank) => to.tank(tank, "ahead"),
  questions: (tank) => to.question(tank, 8),
};

function OneAdvice({
  tank,
  advice,
  inner = false,
}: {
  readonly tank: string;
  readonly advice: BenchAdvice;
  readonly inner?: boolean;
}) {
  return (
    <Advice
      urgency={advice.urgency}
      level={inner ? 3 : 2}
      do={<Sentence of={advice.do} />}
      why={advice.why.map((sentence) => (
        <p key={plain(sentence)}>
          <Sentence of={sentence} />
        </p>
      ))}
      byWhen={<Sentence of={advice.byWhen} />}
      wouldChange={<Sentence of={advice.wouldChange} />}
      act={
        <a class="action" href={ADDRESS[advice.act.leads](tank)}>
          {advice.act.words}
        </a>
      }
      wait={
        <a class="action" href={ADDRESS[advice.wait.leads](tank)}>
          {advice.wait.words}
        </a>
      }
    />
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
      <p>
        <a class="action" href={to.tank(tank, "readings")}>
          Log a reading
        </a>
      </p>
    </section>
  );
}

function aged(days: number | null): string {
  if (days === null) return "day not given";
  return days === 0 ? "today" : days === 1 ? "yesterday" : `${days} days old`;
}
