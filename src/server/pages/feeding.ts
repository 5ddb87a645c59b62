/**
 * Feeding of one tank: its own numbers at once, whom the larder can't feed when the plan is there. Leaving home: what to pack
 * at once, what would happen when the runs are there.
 */
import { feedingOf } from "../../answers/feeding/feeding.ts";
import { withConfidence } from "../../answers/figures/confidence.ts";
import { absencesAhead } from "../../answers/holiday/absences.ts";
import { sitterCare } from "../../answers/holiday/advice.ts";
import { holidayDates } from "../../answers/holiday/care-dates.ts";
import type { HolidayOutput } from "../../answers/holiday/holiday.ts";
import { type HolidaySpan, packingOf } from "../../answers/holiday/packing.ts";
import { type HolidayTyped, readSpan, spanQuery, USUAL_EVERY } from "../../answers/holiday/read-span.ts";
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { type WorkingFigure, workingOf, workingOutputOf } from "../../answers/working.ts";
import { animalById } from "../../catalogue/index.ts";
import type { EntryBody } from "../../contract/daybook/kinds.ts";
import { preferencesOf } from "../../contract/tank-file/preferences-of.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Json } from "../../store/store.ts";
import { to } from "../../web/page.ts";
import { feedingPage, handFedPage } from "../../web/pages/feeding.tsx";
import { FIX } from "../../web/pages/form-fields.tsx";
import { holidayPage, holidayPart } from "../../web/pages/holiday.tsx";
import { holidayWorkingPage } from "../../web/pages/holiday-working.tsx";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { readSentEntry } from "./entry-of.ts";
import { keepForm } from "./keep-entry.ts";
import { answersFor, ofTank } from "./of-tank.ts";
import { stateKey } from "./once.ts";
import { sentValues } from "./sent.ts";
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
  { method: "POST", path: to.holiday(":tank"), answer: ofTank(keepDates) },
  { method: "GET", path: `${to.holiday(":tank")}/working/:figure`, answer: ofTank(holidayWorking) },
];

async function holiday(loaded: LoadedTank, { query }: PageRequest, context: PageContext): Promise<PageReply> {
  const { head, document } = loaded;
  const { today } = context;
  const [next] = absencesAhead(sceneOf(loaded, today));
  const asked = typedIn(query);
  // Opened without dates, it shows those that are kept.
  const opened = asked.from === "" && asked.to === "" && next !== undefined;
  const every = next?.fedBy === "sitter" ? String(next.sitterEvery) : USUAL_EVERY;
  const typed = opened ? { from: next.from, to: next.to, every } : asked;
  const preferences = preferencesOf(document.preferences);
  const { span, doubts } = opened
    ? { span: { from: next.from, to: next.to, sitterEvery: Number(every) }, doubts: [] }
    : readSpan(typed, { preferences, today });
  const waits = query["wait"] === "1" || query["part"] === "1";
  const outcome =
    span === null || span.from < today || !waits
      ? null
      : ((await answersWith(span, loaded, context)).holiday ?? null);
  if (query["part"] === "1" && outcome !== null) return { kind: "page", page: holidayPart(head, outcome) };
  return drawn(loaded, { typed, doubts, span, outcome }, context);
}

/** A likely fix is sent by its button beside what was typed. */
function typedIn(sent: Readonly<Record<string, string | undefined>>) {
  const text = (field: string) => sent[`${FIX}${field}`] ?? sent[field] ?? "";
  const every = sent["every"];
  return { from: text("from"), to: text("to"), ...(every === undefined ? {} : { every }) };
}

interface Asked {
  readonly typed: HolidayTyped;
  readonly doubts: readonly FieldDoubt[];
  readonly span: HolidaySpan | null;
  readonly outcome: HolidayOutput | null;
}

function drawn(
  loaded: LoadedTank,
  { typed, doubts, span, outcome }: Asked,
  { today }: PageContext,
): PageReply {
  const { head, facts, record, row } = loaded;
  const plan =
    span === null
      ? null
      : {
          ...planOf(span, facts, today, outcome),
          kept: overlapping(span, loaded, today),
          sitter: sitterCare(sceneOf(loaded, today), { ...KEPT_AS_SITTER, ...span }),
          once: stateKey(row.id, "absence", record.absences ?? []),
        };
  return {
    kind: "page",
    page: holidayPage({ head, typed, doubts, today, plan }),
    ...(doubts.length > 0 ? { status: 422 } : {}),
  };
}

const KEPT_AS_SITTER = { key: "", entry: null, fedBy: "sitter", portions: null } as const;

const sceneOf = ({ facts, record }: LoadedTank, today: string) => ({ facts, record, today });

/** The kept absence that these dates run into: it is corrected, not doubled. */
const overlapping = ({ from, to: back }: HolidaySpan, loaded: LoadedTank, today: string) =>
  absencesAhead(sceneOf(loaded, today)).find((one) => one.from < back && from < one.to) ?? null;

function planOf(span: HolidaySpan, facts: TankFacts, today: string, outcome: HolidayOutput | null) {
  const packing = packingOf(facts, span);
  return { span, packing, dates: holidayDates(span, packing, today), outcome };
}

/** "Keep these dates": an entry of the daybook, or the correction of the one that they run into. */
async function keepDates(
  loaded: LoadedTank,
  { form }: PageRequest,
  context: PageContext,
): Promise<PageReply> {
  const sent = sentValues(form);
  const { today, store, now } = context;
  const typed = typedIn(sent);
  const preferences = preferencesOf(loaded.document.preferences);
  const { span, doubts } = readSpan(typed, { preferences, today });
  if (span === null) return drawn(loaded, { typed, doubts: someDoubt(doubts), span, outcome: null }, context);
  const kept = overlapping(span, loaded, today);
  const fedBy = sent["fed_by"] ?? "";
  const sitter = fedBy === "sitter";
  const values = {
    ...{ from: span.from, to: span.to, fed_by: fedBy, observed: "", once: sent["once"] ?? "" },
    every_days: sitter ? String(span.sitterEvery) : "",
    portions: sitter ? String(packingOf(loaded.facts, span).feedOn.length) : "",
  };
  const read = await readSentEntry("absence", values, loaded, context, kept?.entry ?? null);
  if (!read.ok) return drawn(loaded, { typed, doubts: read.doubts, span, outcome: null }, context);
  const done = (id: string): PageReply => ({
    kind: "redirect",
    to: `${to.tank(loaded.row.id, "daybook")}?kept=${id}`,
  });
  const row = kept?.entry == null ? null : await store.entry(kept.entry);
  if (row === null || !row.kept) return done((await keepForm("absence", values, read, loaded, context)).id);
  // It was noted when it was noted; the note stays.
  const had = row.body as unknown as EntryBody<"absence">;
  const { observed_text, observed_at, note } = had;
  const body = { ...(read.body as unknown as EntryBody<"absence">), observed_text, observed_at, note };
  if (JSON.stringify(body) !== JSON.stringify(had))
    await store.correctEntry(
      row.id,
      row.version,
      { on: row.on, body: body as unknown as Json, kept: true },
      { at: now, by: loaded.row.keeper.name },
    );
  return done(row.id);
}

/** Nothing typed is no doubt of a reader, but nothing that could be kept either. */
const someDoubt = (doubts: readonly FieldDoubt[]): readonly FieldDoubt[] =>
  doubts.length > 0 ? doubts : [{ field: "from", text: "Leaving: nothing entered", choices: [] }];

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
