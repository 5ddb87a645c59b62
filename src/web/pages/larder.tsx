/**
 * Larder: what a tank grows and drops as food, shelf by shelf, against what those that live there want of it; and what
 * the crew of the whole plan would take of it.
 */
import { maybeTold, plain, type Sentence as SentenceParts, told } from "../../answers/sentence.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { counted, dateWords, rations, rationsADay } from "../../answers/words.ts";
import { SHELF_NAME, type ShelfId } from "../../engine/types/shelf.ts";
import { isBare, leaning, type ShelfFacts } from "../charts/shelf.ts";
import { ShelfPairs } from "../charts/shelf-pair.tsx";
import { ShelfSentence } from "../charts/shelf-words.tsx";
import { TankWedge } from "../charts/tank-wedge.tsx";
import { tankWedgeView, wedgeFinding } from "../charts/tank-wedge-view.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Quantity } from "../parts/quantity.tsx";
import { Table } from "../parts/table.tsx";
import { capital } from "../parts/text.ts";
import { Assumed } from "./assumed.tsx";
import { FallowNotice } from "./fallow-notice.tsx";
import { Sentence } from "./sentence.tsx";
import { shelfFacts } from "./shelf-facts.ts";

export interface LarderView {
  readonly head: TankHead;
  readonly answers: TankAnswers;
  /** First day with fish again where the tank lies fallow, ISO date. */
  readonly fallowUntil?: string | null;
}

/** Names of its charts, and of their files of numbers. */
export const LARDER_CHARTS = { wedge: "larder-wedge", pairs: "larder-pairs" } as const;

export function larderPage({ head, answers, fallowUntil }: LarderView): Page {
  const { larder, waves } = answers;
  const shelves = shelfFacts(larder);
  const drawn = shelves.filter((shelf) => !isBare(shelf));
  const finding = larderFinding(answers);
  return {
    title: `Larder: ${plain(finding)}`,
    tank: head,
    here: "larder",
    body: (
      <>
        <h1>
          <Sentence of={asTitle(finding)} />
        </h1>
        <p class="gloss">
          Larder: food your tank makes, on {dateWords(larder.tank.as_of)}. A ration is a snail's daily food:{" "}
          {larder.ration_mg_c} mg of carbon, about what one 22 mm trochus eats.
        </p>
        <FallowNotice tank={head.id} until={fallowUntil} />
        {larder.mouths.length === 0 ? null : (
          <p>
            All shelves together grow{" "}
            <Quantity figure={larder.total_figure}>
              {rationsADay(larder.total_mg_c_per_day.central)} ({rations(larder.total_mg_c_per_day.low)} to{" "}
              {rations(larder.total_mg_c_per_day.high)})
            </Quantity>
            .
          </p>
        )}
        <TankWedge id={LARDER_CHARTS.wedge} shelves={shelves} title={wedgeTitle(drawn)} />
        <ShelfPairs
          id={LARDER_CHARTS.pairs}
          shelves={shelves}
          title={`${drawn.length} shelves: what grows, and who wants it`}
          sentence="Upper row: what the shelf grows. Lower row: what the animals there want to keep their weight."
        />
        <h2>Shelf by shelf</h2>
        {drawn.map((shelf) => (
          <Shelf key={shelf.id} shelf={shelf} answers={answers} tank={head.id} />
        ))}
        <WithThePlan answers={answers} />
        <Assumed tank={head.id} fields={waves.tank.assumed} />
      </>
    ),
  };
}

/** Another finding than the page's: that one tells the two ends, or that nobody eats. */
function wedgeTitle(drawn: readonly ShelfFacts[]): string {
  if (drawn.every(({ wanted }) => wanted === 0)) {
    const [most] = drawn.toSorted((a, b) => b.supply.central - a.supply.central);
    return most === undefined ? "No shelf grows anything yet" : `Most grows as ${most.name}`;
  }
  const count = (kind: string) => drawn.filter((shelf) => leaning(shelf).kind === kind).length;
  return `Of ${drawn.length} shelves ${count("over")} over, ${count("even")} even, ${count("short")} short`;
}

/** With a capital, whatever it begins with. */
const asTitle = ([first, ...rest]: SentenceParts): SentenceParts =>
  typeof first === "string" ? [capital(first), ...rest] : [first!, ...rest];

function larderFinding({ larder }: TankAnswers): SentenceParts {
  const shelves = shelfFacts(larder);
  if (shelves.some(({ wanted }) => wanted > 0))
    return wedgeFinding(
      tankWedgeView(shelves),
      (shelf) => larder.shelves.find(({ id }) => id === shelf)?.figures.balance ?? null,
    );
  const { central, low, high } = larder.total_mg_c_per_day;
  return [
    "it grows ",
    told(`${rationsADay(central)} (${rations(low)} to ${rations(high)})`, larder.total_figure),
    ", and nobody eats from it yet",
  ];
}

interface ShelfProps {
  readonly tank: string;
  readonly shelf: ShelfFacts;
  readonly answers: TankAnswers;
}

function Shelf({ tank, shelf, answers: { larder } }: ShelfProps) {
  const row = larder.shelves.find(({ id }) => id === shelf.id);
  const eaters = larder.mouths.filter(
    ({ by_shelf_mg_c_per_day: by }) => (by[shelf.id] ?? 0) >= LEAST_TOLD_MG_C,
  );
  return (
    <section id={shelf.id}>
      <h3>
        {capital(shelf.name)}
        {shelf.wanted === 0 || row === undefined ? null : (
          <>
            : <Quantity figure={row.figures.balance}>{leaning(shelf).words}</Quantity>
          </>
        )}
      </h3>
      <p>
        <ShelfSentence shelf={shelf} />
        {row === undefined ? null : (
          <>
            {" "}
            In 15 of 20 runs it grows at least{" "}
            <Quantity figure={row.figures.pessimistic}>{rationsADay(row.pessimistic_mg_c_per_day)}</Quantity>.
          </>
        )}
      </p>
      {eaters.length === 0 ? null : (
        <ul>
          {eaters.map(({ id, name, heads, by_shelf_mg_c_per_day, figures }) => (
            <li key={id}>
              <Quantity figure={figures.heads}>{counted(heads, name)}</Quantity>{" "}
              {heads === 1 ? "wants" : "want"}{" "}
              <Sentence
                of={[
                  maybeTold(rationsADay(by_shelf_mg_c_per_day[shelf.id] ?? 0), figures.by_shelf[shelf.id]),
                  " of it.",
                ]}
              />{" "}
              <a href={to.animal(tank, id)}>About {heads === 1 ? "it" : "them"}</a>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** Less is rounding, mg C a day. */
const LEAST_TOLD_MG_C = 0.05;

/** What the crew of all waves would take, on the day of the last. */
function WithThePlan({ answers: { waves } }: { readonly answers: TankAnswers }) {
  const last = waves.waves.at(-1);
  if (last === undefined) return null;
  const shelves = Object.keys(last.figures.shelves).filter(
    (shelf) => (last.supply_central_mg_c_per_day[shelf] ?? 0) >= 0.5,
  );
  return (
    <section>
      <h2>With the whole plan</h2>
      <Table
        caption={`Rations a day once wave ${last.number} has come, from ${dateWords(last.from)}`}
        columns={[
          { name: "Shelf" },
          { name: "Grown then", numeric: true },
          { name: "Eaten by the crew", numeric: true },
        ]}
        rows={shelves.map((shelf) => {
          const figures = last.figures.shelves[shelf]!;
          return [
            SHELF_NAME[shelf as ShelfId],
            <Quantity key="grown" figure={figures.central}>
              {rations(last.supply_central_mg_c_per_day[shelf] ?? 0)}
            </Quantity>,
            <Quantity key="eaten" figure={figures.eaten}>
              {rations(last.eaten_central_mg_c_per_day[shelf] ?? 0)}
            </Quantity>,
          ];
        })}
      />
    </section>
  );
}
