/**
 * What the daybook has taught of one tank. While the engine learns anew, what it taught before, with what came since;
 * and what is learned from, as data, for the engine in the browser.
 */
import { teachingPart } from "../../answers/learned/teaching-part.ts";
import { to } from "../../web/page.ts";
import { learnedPage } from "../../web/pages/learned.tsx";
import { waitingPage } from "../../web/pages/waiting.tsx";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { keepLearning, keptLearning } from "./kept-learning.ts";
import { answersFor, ofTank } from "./of-tank.ts";

export const LEARNED_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: to.learned(":tank"), answer: ofTank(page) },
  { method: "GET", path: to.learnPart(":tank"), answer: ofTank(daybook) },
];

async function page(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const { head, record } = tank;
  const { store } = context;
  const answers = await answersFor(tank, request, context);
  if (answers !== null) {
    const learned = answers.learned ?? null;
    if (learned !== null) keepLearning(store, head.id, record, learned);
    return { kind: "page", page: learnedPage({ head, learned }) };
  }
  const kept = keptLearning(store, head.id, record);
  if (kept !== null)
    return { kind: "page", page: learnedPage({ head, learned: kept.output, since: kept.since }) };
  const what = "What the daybook has taught";
  const waiting = waitingPage({ head, here: "daybook", what, address: to.learned(head.id) });
  // Its slot will hold the page that wants it.
  return { kind: "page", page: { ...waiting, scripts: ["learn-again"] } };
}

function daybook({ facts, record }: LoadedTank): PageReply {
  const text = JSON.stringify({ facts, record: teachingPart(record) });
  return { kind: "file", name: "learn.json", type: "application/json", text };
}
