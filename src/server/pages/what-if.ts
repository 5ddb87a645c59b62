/**
 * What if, by GET: nothing is saved. The page waits for the answers where a change was asked for; twenty runs unless
 * `runs` says otherwise. The same answers as data for the page that asks while fields change, and their workings.
 */
import { DEFAULT_ENSEMBLE } from "../../answers/plan/plan-tank.ts";
import { Refusal } from "../../answers/refusal.ts";
import { whatIf } from "../../answers/what-if.ts";
import { workingOf } from "../../answers/working.ts";
import type { ChangeTexts } from "../../contract/worker/messages.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { besideView } from "../../web/pages/what-if/beside.ts";
import type { WhatIfBodyView } from "../../web/pages/what-if/body.tsx";
import { fieldGroups, todayValues } from "../../web/pages/what-if/fields.ts";
import {
  changeOf,
  changeParts,
  type Faults,
  faultOf,
  queryOf,
  type Typed,
  typedOf,
} from "../../web/pages/what-if/typed.ts";
import { whatIfWorkingPage } from "../../web/pages/what-if/working.tsx";
import { whatIfPage } from "../../web/pages/what-if.tsx";
import type { AnswerChoice, LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { ofTank } from "./of-tank.ts";
import { TWENTY_RUNS } from "./soon.ts";

export const WHAT_IF_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: "/tanks/:tank/what-if", answer: ofTank(page) },
  { method: "GET", path: "/tanks/:tank/what-if/beside.json", answer: ofTank(data) },
  { method: "GET", path: "/tanks/:tank/what-if/facts.json", answer: ofTank(factsAsData) },
  { method: "GET", path: "/tanks/:tank/what-if/working/:figure", answer: ofTank(working) },
];

async function page(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const body = await bodyOf(tank, request, context);
  return {
    kind: "page",
    page: whatIfPage({ head: tank.head, body }),
    ...(Object.keys(body.faults).length > 0 ? { status: 422 } : {}),
  };
}

/** For the engine in the browser, which asks once the page is there. */
async function factsAsData(
  { facts, record }: LoadedTank,
  _request: PageRequest,
  { answers }: PageContext,
): Promise<PageReply> {
  // What the daybook taught goes with them, so that both engines answer of the same tank.
  const { taught = null } =
    record.observations.length === 0
      ? {}
      : (answers.ready(facts, undefined, record) ??
        (await answers.of(facts, TWENTY_RUNS, undefined, record)));
  return {
    kind: "file",
    name: "facts.json",
    type: "application/json",
    text: JSON.stringify(taught === null ? facts : { ...facts, learned: taught }),
  };
}

async function data(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const { faults, beside } = await bodyOf(tank, request, context);
  return {
    kind: "file",
    name: "what-if.json",
    type: "application/json",
    text: JSON.stringify({ faults, beside }),
  };
}

async function bodyOf(
  { row, facts, record }: LoadedTank,
  { query }: PageRequest,
  { answers }: PageContext,
): Promise<WhatIfBodyView> {
  const typed = typedOf(query);
  const { change, faults } = readChange(typed, facts);
  const asked = change !== null && Object.keys(faults).length === 0;
  return {
    tank: row.id,
    groups: fieldGroups(facts, typed),
    today: todayValues(facts),
    typed,
    faults,
    besideTyped: typed,
    beside: asked ? besideView(await answers.of(facts, choiceOf(query), change, record)) : null,
  };
}

async function working(
  { head, facts, record }: LoadedTank,
  { params, query }: PageRequest,
  { answers }: PageContext,
): Promise<PageReply> {
  const typed = typedOf(query);
  const { change, faults } = readChange(typed, facts);
  if (change === null || Object.keys(faults).length > 0) {
    return { kind: "not_found", what: "change that can be read in this address" };
  }
  const choice = choiceOf(query);
  const found = await answers.of(facts, choice, change, record);
  const figure = workingOf(found, params["figure"] ?? "");
  if (figure === null) return { kind: "not_found", what: "figure of that name with this change" };
  const changes = found.ahead.what_if?.changes ?? [];
  const own = queryOf(typed, { runs: String(choice.members) });
  const view = { head, figure, asOf: found.waves.tank.as_of };
  return { kind: "page", page: whatIfWorkingPage(view, changes, own) };
}

/** Each part is read by itself, so that every field hears of its own fault at once. */
function readChange(
  typed: Typed,
  facts: TankFacts,
): { readonly change: ChangeTexts | null; readonly faults: Faults } {
  const { parts, faults } = changeParts(typed, todayValues(facts));
  const found: Record<string, Faults[string]> = { ...faults };
  for (const part of parts) {
    try {
      whatIf(part.change, facts);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      found[part.field] = faultOf(error.lines, part);
    }
  }
  return { change: changeOf(parts), faults: found };
}

/** Twenty runs answer soon; two hundred refine. No other number is worked out for an address. */
const choiceOf = (query: PageRequest["query"]): AnswerChoice =>
  query["runs"] === String(DEFAULT_ENSEMBLE.members) ? DEFAULT_ENSEMBLE : TWENTY_RUNS;
