/** Bench of one tank: drawn at once from what is kept, and again when the answers are there. */
import { latestReadings } from "../../answers/bench/latest.ts";
import { missingReadings } from "../../answers/bench/missing.ts";
import { adviceFor } from "../../answers/bench/next.ts";
import { echoOf } from "../../answers/questions/echo.ts";
import { shownIn, shownValue } from "../../answers/units-shown.ts";
import { counted } from "../../answers/words.ts";
import { benchPage } from "../../web/pages/bench.tsx";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { keptReadings } from "./kept-readings.ts";
import { answersFor, ofTank } from "./of-tank.ts";
import { questionIn } from "./questions.ts";

export const BENCH_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: "/tanks/:tank", answer: ofTank(bench) },
];

async function bench(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const { facts, document, notices, head } = tank;
  const answers = await answersFor(tank, request, context);
  const latest = latestReadings(keptReadings(tank.readings), document, notices, context.today);
  const advice = adviceFor({
    facts,
    latest,
    waves: answers?.waves ?? null,
    today: context.today,
  });
  const asked = questionIn(request.query["read"]);
  const page = benchPage({
    head,
    gloss: glossOf(tank),
    advice,
    missing: missingReadings(latest),
    latest,
    notices: notices
      .filter(({ kind, path }) => ["DANGER", "UNUSUAL", "NOTFOUND"].includes(kind) && !isReading(path))
      .map(({ text }) => text),
    kept: asked === null ? [] : echoOf(asked, document, notices),
    answers,
  });
  return { kind: "page", page };
}

/** Readings stand in their own list, with their flags. */
const isReading = (path: string): boolean => /^(?:readings|temperature_c|salinity_psu|ph$)/.test(path);

function glossOf({ facts, document }: LoadedTank): string {
  const days = Math.round(facts.ageDays.central);
  const about = facts.ageDays.origin === "assumed" ? "about " : "";
  const age = days < 0 ? `to be filled in ${counted(-days, "day")}` : `${about}${counted(days, "day")} old`;
  return `${shownValue("volume", facts.waterL.central, shownIn(document.preferences))} of water, ${age}.`;
}
