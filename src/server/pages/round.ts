/** The round: every tank of the store, the neediest first; what is looked for stands in the address. */

import { URGENCY_ORDER } from "../../answers/advice.ts";
import { filtered, NO_FILTER, ROUND_SORTS, type RoundFilter, rowOf } from "../../answers/round/round.ts";
import { roundFinding, roundText, stillReadingWords } from "../../answers/round/words.ts";
import { ROUND_ROWS, roundPage } from "../../web/pages/round.tsx";
import { readCloser, roundTanks } from "../round/round-tanks.ts";
import type { PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";

export const ROUND_ROUTES: readonly PageRoute[] = [{ method: "GET", path: "/round", answer: round }];

async function round({ query }: PageRequest, { store, today }: PageContext): Promise<PageReply> {
  const rows = (await roundTanks(store, today)).map((tank) => rowOf(tank, today));
  const unread = filtered(rows, NO_FILTER, roundText).filter(({ stillReading }) => stillReading);
  // Not waited for: what goes wrong in it goes wrong again for who opens that tank, and is told there.
  void readCloser(
    store,
    unread.map(({ id }) => id),
    today,
  ).catch(() => {});
  const filter = filterOf(query);
  const found = filtered(rows, filter, roundText);
  const most = query["rows"] === "all" ? null : ROUND_ROWS;
  const page = roundPage({
    finding: roundFinding(rows),
    stillReading: stillReadingWords(rows),
    rows: most === null ? found : found.slice(0, most),
    found: found.length,
    all: rows.length,
    keepers: [...new Set(rows.map(({ keeper }) => keeper))].sort((a, b) => a.localeCompare(b, "en")),
    filter,
    most,
    today,
  });
  return { kind: "page", page };
}

const URGENCIES = [...URGENCY_ORDER, "nothing_due"] as const;
const MOST_LETTERS = 200;

/** What an address does not say, or says in words of another program, is not looked for. */
function filterOf(query: Readonly<Record<string, string>>): RoundFilter {
  const { keeper = "", urgency, words = "", sort } = query;
  return {
    keeper: keeper === "" ? null : keeper,
    urgency: URGENCIES.find((one) => one === urgency) ?? null,
    words: words.slice(0, MOST_LETTERS).trim(),
    sort: ROUND_SORTS.find((one) => one === sort) ?? NO_FILTER.sort,
  };
}
