/**
 * Round: all tanks, the neediest first. Each row says why now, what to do, by when, and how old its data are; its name
 * opens the tank's bench. Found by keeper, urgency or words, in three orders; on paper it is a list in black and white.
 */
import type { RoundFilter, RoundRow, RoundSort } from "../../answers/round/round.ts";
import { NO_FILTER, ROUND_SORTS, urgencyOf } from "../../answers/round/round.ts";
import { byWhen, dataAge, whatToDo, whyNow } from "../../answers/round/words.ts";
import { type Page, to } from "../page.ts";
import { Disclosure } from "../parts/disclosure.tsx";
import { TankId } from "../parts/tank-context.ts";
import { URGENCIES, Urgency, type UrgencyLevel } from "../parts/urgency.tsx";
import { Sentence } from "./sentence.tsx";

export interface RoundView {
  /** "Of 400 tanks, you are needed at 3 today, at 12 more this week." */
  readonly finding: string;
  /** Null when all that is known of every tank was read. */
  readonly stillReading: string | null;
  readonly rows: readonly RoundRow[];
  /** Of how many, with the filter and without. */
  readonly found: number;
  readonly all: number;
  readonly keepers: readonly string[];
  readonly filter: RoundFilter;
  /** How many rows are shown at most; null: all. */
  readonly most: number | null;
  /** ISO date. */
  readonly today: string;
}

/** Rows that fit a page of paper, and so many on a first look. */
export const ROUND_ROWS = 18;

const SORT_WORDS: Readonly<Record<RoundSort, string>> = {
  need: "the neediest first",
  name: "by name",
  stale: "the oldest data first",
};
const URGENCY_WORDS: Readonly<Record<UrgencyLevel | "nothing_due", string>> = {
  today: "Today",
  this_week: "This week",
  next_visit: "Next visit",
  cannot_tell: "Can't tell yet",
  nothing_due: "Nothing due",
};

export function roundPage(view: RoundView): Page {
  const { finding, rows, all } = view;
  return {
    title: `Round: ${finding}`,
    tank: null,
    here: null,
    body: (
      <div class="round">
        <h1>Who needs me?</h1>
        <p class="lead">{finding}</p>
        <p class="gloss">Round: all tanks, the neediest first.</p>
        {view.stillReading === null ? null : <p role="status">{view.stillReading}</p>}
        {all === 0 ? (
          <p>
            <a class="action first" href={to.newTank()}>
              New tank
            </a>
          </p>
        ) : (
          <Disclosure
            summary="Look for words, a keeper or an urgency; another order"
            open={JSON.stringify(view.filter) !== JSON.stringify(NO_FILTER)}
          >
            <Filter {...view} />
          </Disclosure>
        )}
        {all > 0 && rows.length === 0 ? (
          <p role="status">
            No tank fits what you look for. <a href={to.round()}>Show all of them</a>
          </p>
        ) : null}
        {rows.length === 0 ? null : <Rows {...view} />}
      </div>
    ),
  };
}

function Filter({ filter, keepers, most }: RoundView) {
  return (
    <form method="get" action={to.round()} class="round-filter">
      <div>
        <label for="round-words">Words</label>
        <input
          id="round-words"
          class="input"
          type="text"
          name="words"
          value={filter.words}
          autocomplete="off"
        />
      </div>
      <div>
        <label for="round-keeper">Keeper</label>
        <select id="round-keeper" class="input" name="keeper">
          <option value="">All keepers</option>
          {keepers.map((keeper) => (
            <option key={keeper} value={keeper} selected={keeper === filter.keeper}>
              {keeper}
            </option>
          ))}
        </select>
      </div>
      <div>
        <label for="round-urgency">How soon</label>
        <select id="round-urgency" class="input" name="urgency">
          <option value="">Any</option>
          {[...URGENCIES, "nothing_due" as const].map((urgency) => (
            <option key={urgency} value={urgency} selected={urgency === filter.urgency}>
              {URGENCY_WORDS[urgency]}
            </option>
          ))}
        </select>
      </div>
      <div>
        <label for="round-sort">Order</label>
        <select id="round-sort" class="input" name="sort">
          {ROUND_SORTS.map((sort) => (
            <option key={sort} value={sort} selected={sort === filter.sort}>
              {SORT_WORDS[sort]}
            </option>
          ))}
        </select>
      </div>
      {most === null ? <input type="hidden" name="rows" value="all" /> : null}
      <button type="submit">Show</button>
    </form>
  );
}

function Rows({ rows, found, all, filter, most, today }: RoundView) {
  const hidden = found - rows.length;
  return (
    <>
      <p class="round-count" role="status">
        {rows.length} of {found === all ? all : `${found} found, of ${all},`} shown, {SORT_WORDS[filter.sort]}
        .
        {hidden > 0 ? (
          <>
            {" "}
            <a href={addressOf(filter, "all")}>Show all {found}</a>
          </>
        ) : most === null && found > ROUND_ROWS ? (
          <>
            {" "}
            <a href={addressOf(filter, null)}>Show the first {ROUND_ROWS}</a>
          </>
        ) : null}
      </p>
      <ol class="round-list">
        {rows.map((row) => (
          <li key={row.id}>
            <TankId.Provider value={row.id}>
              <Row row={row} today={today} />
            </TankId.Provider>
          </li>
        ))}
      </ol>
      {hidden > 0 ? (
        <p>
          <a class="action" href={addressOf(filter, "all")}>
            Show all {found}
          </a>
        </p>
      ) : null}
    </>
  );
}

function Row({ row, today }: { readonly row: RoundRow; readonly today: string }) {
  const { id, name, keeper, demonstration, more } = row;
  const urgency = urgencyOf(row);
  return (
    <>
      <p class="round-when">
        {urgency === "nothing_due" ? (
          <span class="round-quiet">{URGENCY_WORDS.nothing_due}</span>
        ) : (
          <Urgency level={urgency} />
        )}
      </p>
      <p class="round-tank">
        <a href={to.tank(id)}>{name}</a>
        <span class="note">
          {keeper}
          {demonstration ? ", invented" : ""}
        </span>
      </p>
      <p class="round-why">
        <Sentence of={whyNow(row)} />
      </p>
      <p class="round-do">
        <Sentence of={whatToDo(row)} />
        {more === 0 ? null : <span class="note"> And {more} more on its bench.</span>}
      </p>
      <p class="round-data note">
        {urgency === "nothing_due" ? null : <>{byWhen(row, today)}; </>}data: {dataAge(row)}
        {row.dataDays !== null && row.dataDays > 0 ? " old" : ""}
      </p>
    </>
  );
}

function addressOf({ keeper, urgency, words, sort }: RoundFilter, rows: "all" | null): string {
  const query = new URLSearchParams();
  if (words !== "") query.set("words", words);
  if (keeper !== null) query.set("keeper", keeper);
  if (urgency !== null) query.set("urgency", urgency);
  if (sort !== "need") query.set("sort", sort);
  if (rows !== null) query.set("rows", rows);
  const text = query.toString();
  return text === "" ? to.round() : `${to.round()}?${text}`;
}
