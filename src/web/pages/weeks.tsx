/** Weeks 1 to 26: one page of paper, week by week: expect, test, do, don't, buy. */
import { plain } from "../../answers/sentence.ts";
import { CAUTION } from "../../answers/statement.ts";
import { WEEK_LISTS, type WeekList } from "../../answers/weeks/item.ts";
import type { WeekRow, Weeks } from "../../answers/weeks/weeks.ts";
import { dateWords } from "../../answers/words.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Sentence } from "./sentence.tsx";

export interface WeeksView {
  readonly head: TankHead;
  readonly weeks: Weeks;
}

export function weeksPage({ head, weeks }: WeeksView): Page {
  return {
    title: `Weeks 1 to 26 of ${head.name}`,
    tank: head,
    here: "weeks",
    body: (
      <article class="weeks">
        <h1>Weeks 1 to 26</h1>
        <p>
          <Sentence of={weeks.finding} /> A line stands where it first holds, and holds on until another
          changes it. As the tank stood on {dateWords(weeks.asOf)}.
        </p>
        <div class="weeks-rows">
          {weeks.rows.map((row) => (
            <Row key={row.from} tank={head.id} row={row} counted={weeks.counted} />
          ))}
        </div>
        {weeks.later === null ? null : (
          <p>
            <Sentence of={weeks.later} />
          </p>
        )}
        <p class="weeks-foot">
          Dates are the middle of a band: what you see goes first. {CAUTION.mains} {CAUTION.wild}
        </p>
        <p class="screen-only">
          <a href={to.tank(head.id, "almanac")}>The almanac: each duty with its day and its reason</a>
        </p>
      </article>
    ),
  };
}

interface RowProps {
  readonly tank: string;
  readonly row: WeekRow;
  readonly counted: Weeks["counted"];
}

function Row({ tank, row, counted }: RowProps) {
  const weeks = row.from === row.to ? `Week ${row.from}` : `Weeks ${row.from} to ${row.to}`;
  const lists = (Object.keys(WEEK_LISTS) as WeekList[]).filter((list) => row.lists[list].length > 0);
  return (
    <section class="weeks-row">
      <h2>
        {weeks}
        {counted === "ahead" ? " from today" : ""}{" "}
        <span class="weeks-days">
          {dateWords(row.starts)} to {dateWords(row.ends)}
        </span>
      </h2>
      {lists.length === 0 ? null : (
        <dl>
          {lists.map((list) => (
            <div key={list}>
              <dt>{WEEK_LISTS[list]}</dt>
              {row.lists[list].map((sentence) => (
                <dd key={plain(sentence)}>
                  <Sentence of={sentence} />
                </dd>
              ))}
            </div>
          ))}
        </dl>
      )}
      {row.more === 0 ? null : (
        <p>
          And {row.more} more: <a href={to.tank(tank, "almanac")}>see the almanac</a>.
        </p>
      )}
    </section>
  );
}
