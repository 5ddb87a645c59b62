/** Arrivals of one tank, its medicines, and a fallow time worked out where it is asked for. All by GET. */
import { FALLOW, fallowOf } from "../../answers/arrivals/fallow.ts";
import {
  apartIn,
  FALLOW_DAYS,
  QUARANTINED,
  type Quarantined,
  quarantineDays,
} from "../../answers/arrivals/quarantine.ts";
import { coursesOf } from "../../answers/medicines/courses.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { sourcesOf, workingOf } from "../../answers/working.ts";
import { medicineById, medicines } from "../../catalogue/medicines.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import type { Medicine } from "../../engine/types/medicine.ts";
import { to } from "../../web/page.ts";
import { arrivalsPage, DEAD_DAYS, fallowWorkingPage } from "../../web/pages/arrivals.tsx";
import { medicinePage } from "../../web/pages/medicine.tsx";
import { waitingPage } from "../../web/pages/waiting.tsx";
import { deadLately } from "../pictures/arrived.ts";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { ofTank } from "./of-tank.ts";
import { TWENTY_RUNS } from "./soon.ts";

export const ARRIVALS_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: to.tank(":tank", "arrivals"), answer: ofTank(show) },
  { method: "GET", path: to.medicine(":tank", ":ingredient"), answer: ofTank(showMedicine) },
  { method: "GET", path: "/tanks/:tank/arrivals/fallow/working/:figure", answer: ofTank(fallowWorking) },
];

const fallowAnswers = ({ facts, record }: LoadedTank, { answers }: PageContext): Promise<TankAnswers> =>
  answers.of(facts, TWENTY_RUNS, FALLOW, record);

/** It takes seconds: the page is sent at once with a slot for it, or waits where somebody said that they would. */
const waits = (query: PageRequest["query"]): boolean => query["wait"] === "1" || query["part"] === "1";

const waitingFor = ({ head }: LoadedTank, address: string): PageReply => ({
  kind: "page",
  page: waitingPage({ head, here: "arrivals", what: "A fallow time", address }),
});

const DATE = /^\d{4}-\d\d-\d\d$/;

async function show(tank: LoadedTank, { query }: PageRequest, context: PageContext): Promise<PageReply> {
  const { facts, record, head } = tank;
  const { today } = context;
  const apart = apartIn(record);
  const group = Object.keys(QUARANTINED).find((one): one is Quarantined => one === query["group"]) ?? "fish";
  const asked = query["from"] ?? "";
  const from = DATE.test(asked) && !Number.isNaN(Date.parse(asked)) ? asked : today;
  const fallowing = apart.find(({ what }) => what === "fallow");
  const asksFallow = query["fallow"] === "1";
  if (asksFallow && !waits(query)) return waitingFor(tank, `${to.tank(tank.row.id, "arrivals")}?fallow=1`);
  const fallow = asksFallow ? fallowOf(await fallowAnswers(tank, context), facts) : null;
  return {
    kind: "page",
    page: arrivalsPage({
      ...{ head, today, apart, fallow, medicines },
      plan: { group, from, days: quarantineDays(group, from) },
      courses: coursesOf(facts.medicines, record, today),
      dead: await deadLately(tank.entries, addDays(today, -DEAD_DAYS), context.store),
      fallowFrom: fallowing?.from ?? today,
      fallowUntil: fallowing?.until ?? addDays(today, FALLOW_DAYS),
    }),
  };
}

async function fallowWorking(
  tank: LoadedTank,
  { params, query }: PageRequest,
  context: PageContext,
): Promise<PageReply> {
  if (!waits(query)) return waitingFor(tank, to.fallowWorking(tank.row.id, params["figure"] ?? ""));
  const figure = workingOf(await fallowAnswers(tank, context), params["figure"] ?? "");
  if (figure === null) return { kind: "not_found", what: "figure of that name in this fallow time" };
  return { kind: "page", page: fallowWorkingPage({ head: tank.head, figure, asOf: tank.facts.asOf }) };
}

function showMedicine(
  { head, facts, record }: LoadedTank,
  { params }: PageRequest,
  { today }: PageContext,
): PageReply {
  const medicine = medicineById.get(params["ingredient"] ?? "");
  if (medicine === undefined) return { kind: "not_found", what: "medicine of that name" };
  const course = coursesOf(facts.medicines, record, today).find((one) => one.medicine === medicine) ?? null;
  return { kind: "page", page: medicinePage({ head, medicine, course, sources: worksOf(medicine) }) };
}

/** Works behind its facts, each once. */
function worksOf(medicine: Medicine): { key: string; title: string }[] {
  const keys = new Set<string>();
  const gather = (value: unknown): void => {
    if (Array.isArray(value)) value.forEach(gather);
    else if (typeof value === "object" && value !== null)
      for (const [field, inner] of Object.entries(value)) {
        if (field === "sources" && Array.isArray(inner)) for (const key of inner) keys.add(String(key));
        else gather(inner);
      }
  };
  gather(medicine);
  return sourcesOf([...keys]).map(({ key, title }) => ({ key, title }));
}
