/** Water and care over the API, on the day it is where the tank stands. */
import type { z } from "zod";
import { almanacOutputOf } from "../../answers/almanac/output.ts";
import { FALLOW } from "../../answers/arrivals/fallow.ts";
import { arrivalsOutputOf } from "../../answers/arrivals/output.ts";
import { feedingOf } from "../../answers/feeding/feeding.ts";
import { feedingOutputOf } from "../../answers/feeding/output.ts";
import { holidayJsonOf } from "../../answers/holiday/output.ts";
import { readSpan } from "../../answers/holiday/read-span.ts";
import { pastStartUp } from "../../answers/start-up/with-start-up.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { weeksOutputOf } from "../../answers/weeks/output.ts";
import { weeksOf } from "../../answers/weeks/weeks.ts";
import { isCrisisId } from "../../answers/wrong/list-ids.ts";
import { hasNumbers, needsEngine } from "../../answers/wrong/numbers.ts";
import { wrongListOutputOf, wrongOutputOf } from "../../answers/wrong/output.ts";
import type { AnswersQuery } from "../../contract/http/answers.ts";
import type { arrivalsQuery, holidayQuery } from "../../contract/http/care-operations.ts";
import { preferencesOf } from "../../contract/tank-file/preferences-of.ts";
import { almanacFor } from "../almanac/almanac-of.ts";
import { steadied } from "../almanac/steadied.ts";
import { NoAnswer } from "../answers.ts";
import { TWENTY_RUNS } from "../pages/soon.ts";
import type { LoadedTank } from "../route.ts";
import { choiceOf } from "./answers.ts";
import { type Call, fault, type Handler, mend, notFound } from "./call.ts";

export const startUpOfTank: Handler = async (call) => {
  const { facts, record } = await tankOf(call);
  const past = pastStartUp(facts, record);
  const said = past ?? (await call.context.answers.of(facts, undefined, undefined, record)).startUp;
  // The engine's thread leaves it out of a quick look of a few runs.
  if (said === undefined)
    throw new NoAnswer("few", "Too few runs were made to tell of a start-up. Ask again in a minute.");
  return { status: 200, body: said };
};

export const arrivalsOfTank: Handler = async (call) => {
  const { facts, record, today } = await tankOf(call);
  const { group = "fish", from = today, fallow } = call.query as z.infer<typeof arrivalsQuery>;
  const hungry =
    fallow === undefined ? null : await call.context.answers.of(facts, TWENTY_RUNS, FALLOW, record);
  return { status: 200, body: arrivalsOutputOf({ facts, record, today, from, group }, hungry) };
};

export const feedingOfTank: Handler = async (call) => {
  const { facts } = await tankOf(call);
  return { status: 200, body: feedingOutputOf(facts, feedingOf(facts)) };
};

export const holidayOfTank: Handler = async (call) => {
  const { facts, record, document, today } = await tankOf(call);
  const { every, ...typed } = call.query as z.infer<typeof holidayQuery>;
  const asked = { ...typed, ...(every === undefined ? {} : { every }) };
  const { span, doubts } = readSpan(asked, { preferences: preferencesOf(document.preferences), today });
  if (span === null)
    throw mend(
      422,
      doubts.length === 0
        ? [fault("/from", "MISSING", "Leaving and coming back: both days are needed")]
        : doubts.map(({ field, text, choices }) => ({
            ...fault(`/${field}`, "RANGE", text),
            choices: [...choices],
          })),
    );
  const { holiday, workings } = await call.context.answers.of(facts, TWENTY_RUNS, { holiday: span }, record);
  if (holiday === undefined) throw new Error("Cannot tell a holiday: the engine's thread gave none");
  return { status: 200, body: holidayJsonOf(facts, holiday, workings, today) };
};

export const weeksOfTank: Handler = async (call) => {
  const { tank, answers } = await answered(call);
  const { dates } = almanacFor(tank, answers, tank.today);
  return { status: 200, body: weeksOutputOf(tank.head.name, weeksOf(answers, dates)) };
};

export const almanacOfTank: Handler = async (call) => {
  const { tank, answers } = await answered(call);
  const almanac = await steadied(almanacFor(tank, answers, tank.today), tank, call.context);
  return { status: 200, body: almanacOutputOf({ name: tank.head.name, zone: tank.zone }, almanac) };
};

export const wrongLists: Handler = async () => ({ status: 200, body: wrongOutputOf() });

export const wrongList: Handler = async ({ params }) => ({
  status: 200,
  body: wrongListOutputOf(listIn(params), null, null),
});

export const wrongListOfTank: Handler = async (call) => {
  const list = listIn(call.params);
  const { facts, record } = await tankOf(call);
  const { members, seed } = call.query as AnswersQuery;
  const answers =
    hasNumbers(list) && needsEngine(list)
      ? await call.context.answers.of(facts, choiceOf({ members, seed }), undefined, record)
      : null;
  return { status: 200, body: wrongListOutputOf(list, facts, answers) };
};

function listIn(params: Call["params"]) {
  const list = params["list"] ?? "";
  if (!isCrisisId(list)) throw notFound();
  return list;
}

async function tankOf({ params, context }: Call): Promise<LoadedTank> {
  const tank = await context.loadTank(params["tank"] ?? "");
  if (tank === null) throw notFound();
  return tank;
}

async function answered(call: Call): Promise<{ readonly tank: LoadedTank; readonly answers: TankAnswers }> {
  const tank = await tankOf(call);
  const { members, seed } = call.query as AnswersQuery;
  const { facts, record } = tank;
  const answers = await call.context.answers.of(facts, choiceOf({ members, seed }), undefined, record);
  return { tank, answers };
}
