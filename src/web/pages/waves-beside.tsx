/** Beside the waves: food by hand, work left to the keeper, wishes with their costs, and what would change the plan. */
import { capital, inFull, lineWords } from "../../answers/animals/fit-words.ts";
import { maybeTold } from "../../answers/sentence.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { counted, dryFood, rationsADay } from "../../answers/words.ts";
import { animalById } from "../../catalogue/index.ts";
import { SHELF_NAME, type ShelfId } from "../../engine/types/shelf.ts";
import { to } from "../page.ts";
import { Quantity } from "../parts/quantity.tsx";
import { askedAt } from "./fact-questions.ts";
import { Sentence } from "./sentence.tsx";

interface Answered {
  readonly answers: TankAnswers;
}
interface OfTank extends Answered {
  readonly tank: string;
}

export function FoodByHand({ answers: { waves } }: Answered) {
  if (waves.fed_by_hand.length === 0) return null;
  return (
    <section>
      <h2>Food by hand</h2>
      <ul>
        {waves.fed_by_hand.map(({ id, name, standing, mg_c_per_day, dry_feed_mg_per_day, figures }) => {
          const what = animalById.get(id)?.supplementalFood ?? null;
          return (
            <li key={id}>
              {STANDING[standing](name)} would go short by{" "}
              <Quantity figure={figures.food}>{rationsADay(mg_c_per_day)}</Quantity>: feed about{" "}
              <Quantity figure={figures.dry_feed}>{dryFood(dry_feed_mg_per_day)}</Quantity> of dry food a day
              by hand{what === null ? "" : ` (${what})`}.
              {standing === "resident" ? " Or give some away." : ""}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

const STANDING = {
  resident: (name: string) => `The ${name} here`,
  wished: (name: string) => `The ${name} you wish for`,
  planned: (name: string) => `The ${name}, when all have come,`,
} as const;

export function LeftToHand({ answers: { waves } }: Answered) {
  if (waves.left_to_hand.length === 0) return null;
  return (
    <section>
      <h2>Left to your own hands</h2>
      <ul>
        {waves.left_to_hand.map(({ shelf, mg_c_per_day, text, figure }) => (
          <li key={shelf}>
            {capital(SHELF_NAME[shelf as ShelfId])}: about{" "}
            <Quantity figure={figure}>{rationsADay(mg_c_per_day)}</Quantity> left. {inFull(text)}
          </li>
        ))}
      </ul>
    </section>
  );
}

export function Wishes({ tank, answers: { waves, animals } }: OfTank) {
  if (waves.wishes.length === 0) return null;
  const rowOf = (id: string) => animals.animals.find((row) => row.id === id);
  return (
    <section>
      <h2>Your wishes</h2>
      <ul>
        {waves.wishes.map(({ id, name, status, costs, figure }) => {
          const row = rowOf(id);
          return (
            <li key={id}>
              <a href={to.animal(tank, id)}>{capital(name)}</a>:{" "}
              {status === "refused" ? (
                row?.fit == null ? (
                  "not in this plan."
                ) : (
                  <Sentence of={["not in this plan. ", ...lineWords(row, row.fit)]} />
                )
              ) : costs.length === 0 ? (
                "in the plan; it costs the others nothing."
              ) : (
                <>
                  in the plan; it takes the place of{" "}
                  <Sentence
                    of={[
                      maybeTold(
                        costWords(costs, (of) => rowOf(of)?.name ?? of),
                        figure,
                      ),
                      ".",
                    ]}
                  />
                </>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

const costWords = (
  costs: readonly { readonly id: string; readonly fewer: number }[],
  nameOf: (id: string) => string,
): string => costs.map(({ id, fewer }) => counted(fewer, nameOf(id))).join(", ");

export function WhatWouldChange({ tank, answers: { waves } }: OfTank) {
  if (waves.would_change.length === 0) return null;
  return (
    <section>
      <h2>What would change this plan most</h2>
      <ul>
        {waves.would_change.map(({ fact, label, ask, heads_if_low, heads_if_high, figure }) => (
          <li key={fact}>
            {capital(label)}
            {heads_if_low === null || heads_if_high === null || heads_if_low === heads_if_high ? null : (
              <>
                {" ("}
                <Quantity figure={figure}>{crewAtEnds(heads_if_low, heads_if_high)}</Quantity>
                {")"}
              </>
            )}
            : {ask}. <a href={askedAt(tank, fact)}>Say it</a>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The crew in all, those that live there too, if an unknown lay at either end. */
const crewAtEnds = (low: number, high: number): string =>
  `a crew of ${low} once it is known to lie low, of ${high} to lie high`;
