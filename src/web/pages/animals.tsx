/** Field guide for one tank: who lives here, fits, is not needed, must wait or can never come, each with reasons. */
import { byReason, type FitRow } from "../../answers/animals/fit-words.ts";
import { CAUTION } from "../../answers/statement.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { counted, dateWords } from "../../answers/words.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { AnimalSearch, fitsSearch } from "./animal-search.tsx";
import { Reasons } from "./reasons.tsx";

export interface AnimalsView {
  readonly head: TankHead;
  readonly answers: TankAnswers;
  /** As typed; empty for all. */
  readonly search: string;
}

/** In the order in which a keeper asks for them. */
const GROUPS: readonly (readonly [status: FitRow["status"], title: string])[] = [
  ["lives_here", "Live here"],
  ["in_plan", "Fit, and are in the plan"],
  ["fits", "Fit, and are not needed"],
  ["not_yet", "Not yet"],
  ["never", "Never in this tank"],
];

export function animalsPage({ head, answers, search }: AnimalsView): Page {
  const all = answers.animals.animals;
  const rows = search === "" ? all : all.filter((row) => fitsSearch(row, search));
  return {
    title: `Animals: how ${all.length} kinds fit ${head.name}`,
    tank: head,
    here: "animals",
    body: (
      <>
        <h1>{findingOf(answers)}</h1>
        <p class="gloss">
          Animals: a field guide for this tank, on {dateWords(answers.waves.tank.as_of)}. The reason that
          decides is given; each entry tells all of them.
        </p>
        <AnimalSearch search={search} all={to.tank(head.id, "animals")} found={rows.length}>
          {GROUPS.map(([status, title]) => {
            const groups = byReason(rows, status);
            if (groups.length === 0) return null;
            const count = groups.reduce((sum, group) => sum + group.rows.length, 0);
            return (
              <section key={status} id={status}>
                <h2>
                  {title} ({count})
                </h2>
                <Reasons tank={head.id} groups={groups} />
              </section>
            );
          })}
        </AnimalSearch>
        <p>{CAUTION.wild}</p>
      </>
    ),
  };
}

function findingOf({ animals }: TankAnswers): string {
  const count = (...statuses: readonly FitRow["status"][]) =>
    animals.animals.filter(({ fit }) => fit !== null && statuses.includes(fit.status)).length;
  const here = count("lives_here");
  const living =
    here === 0 ? "none lives here" : `${counted(here, "kind")} ${here === 1 ? "lives" : "live"} here`;
  return `Of ${animals.animals.length} kinds ${count("in_plan", "fits")} fit this tank, ${count("not_yet")} not yet, ${count("never")} never; ${living}`;
}
