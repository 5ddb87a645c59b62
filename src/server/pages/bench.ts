/** Bench of one tank: drawn at once from what is kept, and again when the answers are there; advice can be declined. */
import { isDanger, restsOn } from "../../answers/bench/declined.ts";
import { missingReadings } from "../../answers/bench/missing.ts";
import { adviceFor } from "../../answers/bench/next.ts";
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import { echoOf } from "../../answers/questions/echo.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { plain } from "../../answers/sentence.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { shownIn, shownValue } from "../../answers/units-shown.ts";
import { counted } from "../../answers/words.ts";
import { to } from "../../web/page.ts";
import { type BenchView, benchPage, REASON } from "../../web/pages/bench.tsx";
import { benchScene, rankedWith } from "../bench-scene.ts";
import { keepAdvice } from "../round/kept-advice.ts";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { readSentEntry } from "./entry-of.ts";
import { answersFor, ofTank } from "./of-tank.ts";
import { makeOnce, stateKey } from "./once.ts";
import { questionIn } from "./questions.ts";
import { sentValues, versionOf } from "./sent.ts";

export const BENCH_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: "/tanks/:tank", answer: ofTank(bench) },
  { method: "GET", path: "/tanks/:tank/decline", answer: ofTank(({ row }) => toBench(row.id)) },
  { method: "POST", path: "/tanks/:tank/decline", answer: ofTank(decline) },
];

/** The form stands on the bench. */
const toBench = (tank: string): PageReply => ({ kind: "redirect", to: to.tank(tank) });

async function bench(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const answers = await answersFor(tank, request, context);
  const asked = questionIn(request.query["read"]);
  const kept = asked === null ? [] : echoOf(asked, tank.document, tank.notices);
  const said =
    request.query["declined"] === undefined
      ? kept
      : ["Declined, with your reason. It comes back when what it rests on changes."];
  return await drawn(tank, answers, context, { kept: said });
}

interface Shown {
  readonly kept?: readonly string[];
  readonly sent?: Values;
  readonly doubts?: readonly FieldDoubt[];
  readonly status?: number;
}

async function drawn(
  tank: LoadedTank,
  answers: TankAnswers | null,
  context: PageContext,
  { kept = [], sent = {}, doubts = [], status = 200 }: Shown,
): Promise<PageReply> {
  const { notices, head } = tank;
  const scene = benchScene(tank, answers?.waves ?? null, context.today);
  const { standing, declined } = adviceFor(scene);
  // What the engine asks for is remembered for the round, which does not wait for it.
  if (answers !== null) keepAdvice(context.store, tank.row.id, context.today, standing);
  const { latest } = scene;
  const view: BenchView = {
    head,
    gloss: glossOf(tank),
    advice: standing,
    declined,
    tokenOf: (advice) => stateKey(restsOn(advice)),
    once: stateKey(tank.row.id, context.today, scene.record.declined.length),
    sent,
    doubts,
    missing: missingReadings(latest),
    latest,
    notices: notices
      .filter(({ kind, path }) => ["DANGER", "UNUSUAL", "NOTFOUND"].includes(kind) && !isReading(path))
      .map(({ text }) => text),
    kept,
    answers,
  };
  return { kind: "page", page: benchPage(view), status };
}

async function decline(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const sent = sentValues(request.form);
  if (sent["go"] === "bring_back") return await bringBack(tank, sent, context);
  const { answers, ranked } = await rankedWith(sent["advice"] ?? "", tank, context);
  const advice = ranked.standing.find(({ id }) => id === sent["advice"]);
  const field = Object.keys(sent).find((name) => name.startsWith(REASON)) ?? REASON;
  const say = (text: string, status: number) =>
    drawn(tank, answers, context, { sent, doubts: [{ field, text, choices: [] }], status });
  if (advice === undefined) {
    // By a double tap.
    const already = ranked.declined.some((one) => one.advice.id === sent["advice"]);
    if (already) return { kind: "redirect", to: `${to.tank(tank.row.id)}?declined=1` };
    return await say("No longer asked for: the advice has gone, and there is nothing to decline", 409);
  }
  if (stateKey(restsOn(advice)) !== sent["rests"]) {
    return await say(`Changed since this page was drawn: "${plain(advice.do)}" Look at it again first`, 409);
  }
  const read = await readSentEntry(
    "decline",
    { advice: advice.id, reason: sent[field] ?? "", observed: "" },
    tank,
    context,
  );
  if (!read.ok) return await say(read.doubts[0]?.text ?? "Reason: nothing entered", 422);
  const entry = { kind: "decline", on: read.on, body: read.body };
  const stamp = { at: context.now, by: tank.row.keeper.name };
  await makeOnce(
    {
      key: sent["once"],
      of: `decline:${tank.row.id}`,
      content: [advice.id, restsOn(advice)],
      by: stamp.by,
      work: async (desk) => {
        const row = { ...entry, id: context.newId() };
        await desk.addEntries(tank.row.id, [row], stamp);
        return row.id;
      },
    },
    context,
  );
  return {
    kind: "redirect",
    to: `${to.tank(tank.row.id)}?declined=${isDanger(advice) ? "danger" : "1"}`,
  };
}

/** The entry of the declining is taken away: a version like any other, to be seen in its history. */
async function bringBack(tank: LoadedTank, sent: Values, { store, now }: PageContext): Promise<PageReply> {
  const row = await store.entry(sent["entry"] ?? "");
  const back = toBench(tank.row.id);
  if (row === null || row.tankId !== tank.row.id || row.kind !== "decline" || !row.kept) return back;
  const change = { on: row.on, body: row.body, kept: false };
  const from = versionOf(sent) || row.version;
  await store.correctEntry(row.id, from, change, { at: now, by: tank.row.keeper.name });
  return back;
}

/** Readings stand in their own list, with their flags. */
const isReading = (path: string): boolean => /^(?:readings|temperature_c|salinity_psu|ph$)/.test(path);

function glossOf({ facts, document }: LoadedTank): string {
  const days = Math.round(facts.ageDays.central);
  const about = facts.ageDays.origin === "assumed" ? "about " : "";
  const age = days < 0 ? `to be filled in ${counted(-days, "day")}` : `${about}${counted(days, "day")} old`;
  return `${shownValue("volume", facts.waterL.central, shownIn(document.preferences))} of water, ${age}.`;
}
