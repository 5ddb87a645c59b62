/** The eight questions: a page each, all on one form, and the plan beside them as a part. */
import { echoOf } from "../../answers/questions/echo.ts";
import { MORE } from "../../answers/questions/fields.ts";
import { type Values, valuesOf } from "../../answers/questions/prefill.ts";
import { QUESTIONS } from "../../answers/questions/questions.ts";
import { shownIn } from "../../answers/units-shown.ts";
import { workingOf } from "../../answers/working.ts";
import { to } from "../../web/page.ts";
import { planPartPage, planWorkingPage } from "../../web/pages/plan-part.tsx";
import { type Echo, type QuestionView, questionPage } from "../../web/pages/question.tsx";
import { singleFormPage } from "../../web/pages/single-form.tsx";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { NO_TANK, ofTank } from "./of-tank.ts";
import { saveAnswers } from "./save-answers.ts";
import { sentValues, versionOf } from "./sent.ts";
import { soon, TWENTY_RUNS } from "./soon.ts";
import { toldToday } from "./told-today.ts";

const COUNT = QUESTIONS.length;
const ALL = [...QUESTIONS.keys()].map((i) => i + 1);
const SPARE_LINES = 3;
const MORE_LINES = 8;

export const QUESTION_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: "/tanks/:tank/questions", answer: ofTank(firstOpen) },
  { method: "GET", path: "/tanks/:tank/questions/:number", answer: ofTank(showQuestion) },
  { method: "POST", path: "/tanks/:tank/questions/:number", answer: ofTank(keepQuestion) },
  { method: "GET", path: "/tanks/:tank/form", answer: ofTank(showForm) },
  { method: "POST", path: "/tanks/:tank/form", answer: ofTank(keepForm) },
  { method: "GET", path: "/tanks/:tank/parts/plan", answer: ofTank(planPart) },
  { method: "GET", path: "/tanks/:tank/parts/working/:figure", answer: ofTank(planWorking) },
];

/** The first question that has no answer yet. */
function firstOpen(tank: LoadedTank): PageReply {
  const open = ALL.find((question) => {
    const values = valuesOf(question, toldToday(tank, [question]));
    return Object.entries(values).every(([name, value]) => name.endsWith("_unit") || value === "");
  });
  return { kind: "redirect", to: to.question(tank.row.id, open ?? 1) };
}

/** The question that an address names; null where there is none of that number. */
export const questionIn = (text: string | undefined): number | null =>
  ALL.find((question) => String(question) === text) ?? null;

async function showQuestion(
  tank: LoadedTank,
  request: PageRequest,
  context: PageContext,
): Promise<PageReply> {
  const number = questionIn(request.params["number"]);
  if (number === null) return NO_QUESTION;
  const values = valuesOf(number, toldToday(tank, [number]));
  // The bench comes next, from all runs; no to the last question leaves the facts as they are.
  if (number === COUNT) context.answers.ready(tank.facts);
  return await question(tank, number, { values, doubts: [], echo: echoAsked(tank, request) }, context);
}

const NO_QUESTION: PageReply = { kind: "not_found", what: "question of that number: there are eight" };

type Shown = Pick<QuestionView, "values" | "doubts"> &
  Partial<Pick<QuestionView, "echo" | "clash" | "spareLines">>;

async function question(
  tank: LoadedTank,
  number: number,
  shown: Shown,
  context: PageContext,
  status = 200,
): Promise<PageReply> {
  const answers = await soon(context.answers, tank.facts);
  const view: QuestionView = {
    head: tank.head,
    number,
    version: tank.row.version,
    echo: null,
    clash: null,
    answers,
    spareLines: SPARE_LINES,
    units: shownIn(tank.document.preferences),
    ...shown,
  };
  return { kind: "page", page: questionPage(view), status };
}

/** `?read=3`: question 3 was just answered. */
function echoAsked(tank: LoadedTank, { query }: PageRequest): Echo | null {
  const number = questionIn(query["read"]);
  if (number === null) return null;
  const lines = echoOf(number, toldToday(tank, [number]), tank.notices);
  return { question: number, lines, restore: tank.row.version > 1 ? tank.row.version - 1 : null };
}

async function keepQuestion(
  tank: LoadedTank,
  request: PageRequest,
  context: PageContext,
): Promise<PageReply> {
  const number = questionIn(request.params["number"]);
  if (number === null) return NO_QUESTION;
  const sent = sentValues(request.form);
  const go = sent["go"] ?? "keep";
  const values = { ...valuesOf(number, toldToday(tank, [number])), ...unticked(number), ...sent };
  if (go === "more_lines") {
    return await question(tank, number, { values, doubts: [], spareLines: MORE_LINES }, context);
  }
  const answers = { questions: [number], sent, version: versionOf(sent), unsure: go === "not_sure" };
  const saved = await saveAnswers(tank.row.id, answers, context);
  if (saved.kind === "gone") return NO_TANK;
  if (saved.kind === "doubts")
    return await question(tank, number, { values, doubts: saved.doubts }, context, 422);
  if (saved.kind === "clash") {
    const theirs = echoOf(number, saved.current.document, saved.current.notices);
    return await question(saved.current, number, { values, doubts: [], clash: { theirs } }, context, 409);
  }
  if (number === COUNT && isTrouble(sent) && go !== "not_sure")
    return { kind: "redirect", to: `${to.wrong()}?tank=${tank.row.id}` };
  const next = number === COUNT ? to.tank(tank.row.id) : to.question(tank.row.id, number + 1);
  return { kind: "redirect", to: `${next}?read=${number}` };
}

const isTrouble = (sent: Values): boolean =>
  sent["wrong"] === "yes" || (sent["wrong"] === undefined && `${sent["trouble"]}${sent["medicine"]}` !== "");

/** A box that is not ticked sends nothing. */
const unticked = (number: number): Values =>
  number === 4 ? { animals_none: "" } : number === 6 ? { food_none: "" } : {};

const EVERYTHING = [...ALL, MORE];

const allValues = (tank: LoadedTank): Values =>
  Object.assign({}, ...EVERYTHING.map((number) => valuesOf(number, toldToday(tank, [number]))));

function showForm(tank: LoadedTank): PageReply {
  const { head, row } = tank;
  const page = singleFormPage({
    head,
    version: row.version,
    values: allValues(tank),
    doubts: [],
    clash: null,
    spareLines: SPARE_LINES,
  });
  return { kind: "page", page };
}

async function keepForm(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const sent = sentValues(request.form);
  const values = { ...allValues(tank), ...unticked(4), ...unticked(6), ...sent };
  const again = { head: tank.head, version: tank.row.version, values, spareLines: SPARE_LINES };
  if (sent["go"] === "more_lines") {
    const page = singleFormPage({ ...again, doubts: [], clash: null, spareLines: MORE_LINES });
    return { kind: "page", page };
  }
  const answers = { questions: EVERYTHING, sent, version: versionOf(sent), unsure: false };
  const saved = await saveAnswers(tank.row.id, answers, context);
  if (saved.kind === "gone") return NO_TANK;
  if (saved.kind === "doubts")
    return {
      kind: "page",
      page: singleFormPage({ ...again, doubts: saved.doubts, clash: null }),
      status: 422,
    };
  if (saved.kind === "clash") {
    const { current } = saved;
    const theirs = ALL.flatMap((number) => echoOf(number, current.document, current.notices));
    const clash = { ...again, version: current.row.version, doubts: [], clash: { theirs } };
    return { kind: "page", page: singleFormPage(clash), status: 409 };
  }
  return isTrouble(sent)
    ? { kind: "redirect", to: `${to.wrong()}?tank=${tank.row.id}` }
    : { kind: "redirect", to: to.tank(tank.row.id) };
}

async function planPart(tank: LoadedTank, { query }: PageRequest, context: PageContext): Promise<PageReply> {
  const answers = await context.answers.of(tank.facts, TWENTY_RUNS);
  return {
    kind: "page",
    page: planPartPage({
      head: tank.head,
      answers,
      units: shownIn(tank.document.preferences),
      alone: query["part"] !== "1",
    }),
  };
}

async function planWorking(
  tank: LoadedTank,
  { params }: PageRequest,
  context: PageContext,
): Promise<PageReply> {
  const answers = await context.answers.of(tank.facts, TWENTY_RUNS);
  const figure = workingOf(answers, params["figure"] ?? "");
  if (figure === null) return { kind: "not_found", what: "figure of that name in this plan" };
  const page = planWorkingPage({ head: tank.head, figure, asOf: answers.waves.tank.as_of });
  return { kind: "page", page };
}
