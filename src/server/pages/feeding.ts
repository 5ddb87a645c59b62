/**
 * Feeding of one tank: its own numbers at once, whom the larder can't feed when the plan is there. Leaving home: what to pack
 * at once, what would happen when the runs are there.
 */
import { feedingOf } from "../../answers/feeding/feeding.ts";
import { withConfidence } from "../../answers/figures/confidence.ts";
import { holidayDates } from "../../answers/holiday/care-dates.ts";
import type { HolidayOutput } from "../../answers/holiday/holiday.ts";
import { type HolidaySpan, packingOf } from "../../answers/holiday/packing.ts";
import { readSpan, spanQuery } from "../../answers/holiday/read-span.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { type WorkingFigure, workingOf, workingOutputOf } from "../../answers/working.ts";
import { animalById } from "../../catalogue/index.ts";
import { preferencesOf } from "../../contract/tank-file/preferences-of.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { to } from "../../web/page.ts";
import { feedingPage, handFedPage } from "../../web/pages/feeding.tsx";
import { FIX } from "../../web/pages/form-fields.tsx";
import { holidayPage, holidayPart } from "../../web/pages/holiday.tsx";
import { holidayWorkingPage } from "../../web/pages/holiday-working.tsx";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { answersFor, ofTank } from "./of-tank.ts";
import { TWENTY_RUNS } from "./soon.ts";

const foodOf = (id: string): string | null => animalById.get(id)?.supplementalFood ?? null;

export const FEEDING_ROUTES: readonly PageRoute[] = [
  {
    method: "GET",
    path: to.tank(":tank", "feeding"),
    answer: ofTank(async (loaded, request, context) => {
      const { head, facts } = loaded;
      const answers = await answersFor(loaded, request, context);
      const byHand = answers?.waves.fed_by_hand ?? null;
      if (request.query["part"] === "1" && byHand !== null)
        return { kind: "page", page: handFedPage({ head, byHand, foodOf }) };
      return { kind: "page", page: feedingPage({ head, feeding: feedingOf(facts), byHand, foodOf }) };
    }),
  },
  { method: "GET", path: to.holiday(":tank"), answer: ofTank(holiday) },
  { method: "GET", path: `${to.holiday(":tank")}/working/:figure`, answer: ofTank(holidayWorking) },
];

async function holiday(loaded: LoadedTank, { query }: PageRequest, context: PageContext): Promise<PageReply> {
  const { head, facts, document } = loaded;
  const { today } = context;
  // A likely fix is sent by its button beside what was typed.
  const text = (field: string) => query[`${FIX}${field}`] ?? query[field] ?? "";
  const every = query["every"];
  const typed = { from: text("from"), to: text("to"), ...(every === undefined ? {} : { every }) };
  const preferences = preferencesOf(document.preferences);
  const { span, doubts } = readSpan(typed, { preferences, today });
  const waits = query["wait"] === "1" || query["part"] === "1";
  const outcome =
    span === null || !waits ? null : ((await answersWith(span, loaded, context)).holiday ?? null);
  if (query["part"] === "1" && outcome !== null) return { kind: "page", page: holidayPart(head, outcome) };
  const plan = span === null ? null : planOf(span, facts, today, outcome);
  return {
    kind: "page",
    page: holidayPage({ head, typed, doubts, today, plan }),
    ...(doubts.length > 0 ? { status: 422 } : {}),
  };
}

function planOf(span: HolidaySpan, facts: TankFacts, today: string, outcome: HolidayOutput | null) {
  const packing = packingOf(facts, span);
  return { span, packing, dates: holidayDates(span, packing, today), outcome };
}

const answersWith = (
  span: HolidaySpan,
  { facts, record }: LoadedTank,
  { answers }: PageContext,
): Promise<TankAnswers> => answers.of(facts, TWENTY_RUNS, { holiday: span }, record);

/** What to pack is known at once; the rest waits for the runs. */
async function holidayWorking(
  loaded: LoadedTank,
  { params, query }: PageRequest,
  context: PageContext,
): Promise<PageReply> {
  const { head, facts, document } = loaded;
  const { today } = context;
  const typed = { from: query["from"] ?? "", to: query["to"] ?? "", every: query["every"] ?? "" };
  const { span } = readSpan(typed, { preferences: preferencesOf(document.preferences), today });
  if (span === null) return { kind: "not_found", what: "holiday that can be read in this address" };
  const id = params["figure"] ?? "";
  const figure: WorkingFigure | null =
    packed(facts, span, id) ?? workingOf(await answersWith(span, loaded, context), id);
  if (figure === null) return { kind: "not_found", what: "figure of that name in this holiday" };
  return {
    kind: "page",
    page: holidayWorkingPage({ head, figure, asOf: facts.asOf }, span, spanQuery(span)),
  };
}

function packed(facts: TankFacts, span: HolidaySpan, id: string): WorkingFigure | null {
  const figure = withConfidence(packingOf(facts, span).figures).find((one) => one.id === id);
  return figure === undefined ? null : workingOutputOf(figure, []).figure;
}
