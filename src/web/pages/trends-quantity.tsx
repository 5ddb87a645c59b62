/** Trend of one quantity: its finding, its course with every reading, the limits, and what would make it surer. */
import { chance, dateWords, lowered } from "../../answers/words.ts";
import { dangerByCold } from "../../answers/wrong/list-of-danger.ts";
import type { QuantityTrend } from "../../contract/output/trends.ts";
import { ReadingCourse } from "../charts/reading-course.tsx";
import { type Page, type TankHead, to } from "../page.ts";
import { FirstSteps } from "../parts/first-steps.tsx";
import { Grains } from "../parts/grains.tsx";
import { Notice } from "../parts/notice.tsx";
import { Quantity } from "../parts/quantity.tsx";
import { Sentence } from "./sentence.tsx";

export interface QuantityTrendView {
  readonly head: TankHead;
  readonly trend: QuantityTrend;
  /** What is drawn: four months, or all there is. */
  readonly span: "recent" | "all";
}

/** Name of a quantity's chart, and of its file of numbers. */
export const trendChart = (quantity: string): string => `trend-${quantity}`;

export function quantityTrendPage({ head, trend, span }: QuantityTrendView): Page {
  const { id, label, title, sentences, danger } = trend;
  const stands = danger?.stands === true;
  const all = `${to.trend(head.id, id)}?span=all`;
  return {
    title: `Trend: ${title}`,
    tank: head,
    here: "trends",
    body: (
      <>
        <h1>{title}</h1>
        <p class="gloss">Trend: what the readings of {lowered(label)} say together.</p>
        {danger !== null && stands && sentences[0] !== undefined ? (
          <Notice kind="danger">
            <p>
              <Sentence of={sentences[0]} />
            </p>
            <p>
              <FirstSteps tank={head.id} quantity={trend.id} cold={dangerByCold(danger.value)} />
            </p>
          </Notice>
        ) : null}
        {sentences.slice(stands ? 1 : 0).map((sentence, i) => (
          <p key={i}>
            <Sentence of={sentence} />
          </p>
        ))}
        <Limits trend={trend} />
        <ReadingCourse
          id={trendChart(id)}
          title={chartTitle(trend)}
          sentence={chartSentence(trend)}
          facts={trend}
        />
        <p>
          {span === "recent" ? (
            <a href={all}>Draw all readings, not the last four months alone</a>
          ) : (
            <a href={to.trend(head.id, id)}>Draw the last four months</a>
          )}
        </p>
        <p>
          <a href={to.readingsOf(head.id, id)}>Log a reading of {lowered(label)}</a>
        </p>
        <p>
          <a href={to.tank(head.id, "trends")}>All trends</a>
        </p>
      </>
    ),
  };
}

function chartTitle({ label, drawn: { from, to: last } }: QuantityTrend): string {
  return `${label} from ${dateWords(from)} to ${dateWords(last)}`;
}

function chartSentence({ drawn, figures, label }: QuantityTrend) {
  const { thinned, marks } = drawn;
  const all =
    thinned === null
      ? "Every day with a reading is drawn."
      : `${thinned} days with readings are gathered into ${marks.filter(({ what }) => what === "bin").length} strokes, lowest to highest; what was dangerous is drawn by itself as well.`;
  if (figures.slope === null) return all;
  return (
    <>
      {all} <Quantity figure={figures.slope}>The line is the trend of {lowered(label)}.</Quantity>
    </>
  );
}

function Limits({ trend: { limits, label, unit } }: { readonly trend: QuantityTrend }) {
  if (limits.length === 0) return null;
  return (
    <section>
      <h2>Limits, if {lowered(label)} goes on as it went</h2>
      <ul class="chances">
        {limits.map(({ side, value, why, of_20, within_days, figures }) => (
          <li key={side}>
            <Grains of20={of_20} yes={`are ${side} it`} no="are not">
              {side === "above" ? "Above" : "Below"}{" "}
              <Quantity figure={figures.limit}>
                {value}
                {unit === "" ? "" : ` ${unit}`}
              </Quantity>{" "}
              within {within_days} days: <Quantity figure={figures.chance}>{chance(of_20)}</Quantity>. The
              limit: {why}.
            </Grains>
          </li>
        ))}
      </ul>
    </section>
  );
}
