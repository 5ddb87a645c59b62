/** Trends of one tank: every quantity in a few sentences, the most pressing first, each with its course in little. */
import type { LatestReading } from "../../answers/bench/latest.ts";
import { counted, dateWords, lowered } from "../../answers/words.ts";
import { dangerByCold, saidCold } from "../../answers/wrong/list-of-danger.ts";
import type { FlowsOutput, QuantityTrend, TrendsOutput } from "../../contract/output/trends.ts";
import { SmallCourse } from "../charts/reading-course.tsx";
import { type Page, type TankHead, to } from "../page.ts";
import { FirstSteps } from "../parts/first-steps.tsx";
import { Notice } from "../parts/notice.tsx";
import { listed } from "../parts/text.ts";
import { Sentence } from "./sentence.tsx";

export interface TrendsView {
  readonly head: TankHead;
  readonly output: TrendsOutput;
  /** Dangerous readings told in the questions, which no daybook entry has replaced. */
  readonly dangers: readonly Pick<LatestReading, "quantity" | "label" | "text" | "on" | "said">[];
  /** Null while the engine works them out. */
  readonly flows: FlowsOutput | null;
}

export function trendsPage({ head, output, dangers, flows }: TrendsView): Page {
  const [first] = output.quantities;
  const [danger] = dangers;
  const title =
    danger !== undefined
      ? `${danger.label} of ${danger.text} is dangerous`
      : first === undefined
        ? "Not enough data: no reading in the daybook yet"
        : first.title;
  return {
    title: `Trends: ${title}`,
    tank: head,
    here: "trends",
    body: (
      <>
        <h1>{title}</h1>
        <p class="gloss">
          Trends: which way readings go, how surely, and when a limit could be met, by{" "}
          {dateWords(output.tank.as_of)}. The most pressing first.
        </p>
        {dangers.map(({ quantity, label, text, on, said }) => (
          <Notice key={quantity} kind="danger">
            <p>
              {label} {text}
              {on === null ? "" : ` on ${dateWords(on)}`}, told in the questions
              {said === null ? "." : `: ${said}.`}
            </p>
            <p>
              <FirstSteps tank={head.id} quantity={quantity} cold={saidCold(said)} />
            </p>
          </Notice>
        ))}
        {output.quantities.map((trend) => (
          <OneTrend key={trend.id} tank={head.id} trend={trend} />
        ))}
        <Unread labels={output.unread} tank={head.id} none={first === undefined} />
        <Flows tank={head.id} flows={flows} />
      </>
    ),
  };
}

function OneTrend({ tank, trend }: { readonly tank: string; readonly trend: QuantityTrend }) {
  const id = `trend-${trend.id}`;
  const says = trend.sentences.map((sentence, i) => (
    <p key={i}>
      <Sentence of={sentence} />
    </p>
  ));
  return (
    <section class="one-trend" data-trend={trend.id}>
      <h2 id={id}>{trend.label}</h2>
      {trend.danger?.stands === true ? (
        <Notice kind="danger">
          {says[0]}
          <p>
            <FirstSteps tank={tank} quantity={trend.id} cold={dangerByCold(trend.danger.value)} />
          </p>
        </Notice>
      ) : null}
      {trend.danger?.stands === true ? says.slice(1) : says}
      <SmallCourse facts={trend} labelledBy={id} />
      <p>
        <a href={to.trend(tank, trend.id)}>
          {trend.label}: {counted(trend.readings, "reading")} one by one
        </a>
      </p>
    </section>
  );
}

function Unread({
  labels,
  tank,
  none,
}: {
  readonly labels: readonly string[];
  readonly tank: string;
  readonly none: boolean;
}) {
  if (labels.length === 0) return null;
  return (
    <section>
      <h2>No reading in the daybook yet</h2>
      <p>
        {listed(labels.map((label, i) => (i === 0 ? label : lowered(label))))}. Four readings on different
        days, a week or more from first to last, make a trend.
      </p>
      {none ? (
        <p>
          <a class="action" href={to.tank(tank, "readings")}>
            Log a reading
          </a>
        </p>
      ) : null}
    </section>
  );
}

function Flows({ tank, flows }: { readonly tank: string; readonly flows: FlowsOutput | null }) {
  const address = to.trend(tank, FLOWS);
  return (
    <section>
      <h2>Where nitrogen and phosphorus come from and go</h2>
      {flows === null ? (
        <p>
          A test shows what is left in the water, not what passes through it. That is worked out in some
          seconds.
        </p>
      ) : (
        flows.elements.map(({ element, title, sentences }) => (
          <div key={element}>
            <h3>{title}</h3>
            <p>
              {sentences.map((sentence, i) => (
                <span key={i}>
                  <Sentence of={sentence} />{" "}
                </span>
              ))}
            </p>
          </div>
        ))
      )}
      <p>
        <a href={address}>What comes in, what algae take, what leaves</a>
      </p>
    </section>
  );
}

/** Stands where a quantity's name stands in the address. */
export const FLOWS = "flows";
