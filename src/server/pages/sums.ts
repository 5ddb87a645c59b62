/**
 * Water sums, by GET alone: nothing is saved, and an address holds all that was asked. The same pages with a tank, whose
 * readings fill the fields, and without one.
 */
import { askSum } from "../../answers/sums/ask.ts";
import type { SumContext, SumText } from "../../answers/sums/given.ts";
import { sumWorking } from "../../answers/sums/output.ts";
import type { Sum } from "../../answers/sums/sum.ts";
import { SUMS, sumOf } from "../../answers/sums/table.ts";
import { workingOf } from "../../answers/working.ts";
import { to } from "../../web/page.ts";
import { FIX } from "../../web/pages/form-fields.tsx";
import { sumPage, sumWorkingPage } from "../../web/pages/sum.tsx";
import { sumsPage } from "../../web/pages/sums.tsx";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { sumContextOf } from "../sum-context.ts";
import { ofTank } from "./of-tank.ts";

type WithOrWithout = (tank: LoadedTank | null, request: PageRequest, context: PageContext) => PageReply;

/** One page at two addresses: of a tank, and of none. */
const both = (path: string, answer: WithOrWithout): readonly PageRoute[] => [
  { method: "GET", path, answer: async (request, context) => answer(null, request, context) },
  { method: "GET", path: `/tanks/:tank${path}`, answer: ofTank(answer) },
];

export const SUMS_ROUTES: readonly PageRoute[] = [
  ...both("/sums", (tank) => ({ kind: "page", page: sumsPage({ head: tank?.head ?? null, sums: SUMS }) })),
  ...both("/sums/:sum", one),
  ...both("/sums/:sum/working/:figure", working),
];

const NO_SUM: PageReply = { kind: "not_found", what: "sum of that name" };

function one(tank: LoadedTank | null, { params, query }: PageRequest, context: PageContext): PageReply {
  const sum = sumOf(params["sum"] ?? "");
  if (sum === null) return NO_SUM;
  if (Object.keys(query).some((name) => name.startsWith(FIX)))
    return { kind: "redirect", to: to.sum(tank?.head.id ?? null, sum.id, fixed(query)) };
  const typed = typedOf(query);
  const sent = Object.keys(typed).length > 0;
  const about = sumContextOf(tank, context.today);
  const asked = askSum(sum, typed, about);
  return {
    kind: "page",
    page: sumPage({ head: tank?.head ?? null, tank: about.tank, sum, typed, sent, asked }),
    ...(sent && !asked.ok ? { status: 422 } : {}),
  };
}

function working(tank: LoadedTank | null, { params, query }: PageRequest, context: PageContext): PageReply {
  const sum = sumOf(params["sum"] ?? "");
  if (sum === null) return NO_SUM;
  const typed = typedOf(query);
  const id = params["figure"] ?? "";
  const figure = figureOf(sum, typed, id, sumContextOf(tank, context.today));
  if (figure === null) return { kind: "not_found", what: "figure of that name in this sum" };
  const view = { head: tank?.head ?? null, figure, asOf: context.today };
  const own = new URLSearchParams(Object.entries(typed)).toString();
  return { kind: "page", page: sumWorkingPage({ working: view, sum, query: own }) };
}

function figureOf(sum: Sum, typed: SumText, id: string, context: SumContext) {
  const asked = askSum(sum, typed, context);
  return (asked.ok ? sumWorking(asked.answer, id) : null) ?? workingOf(null, id);
}

/** Names of a query that are no field's. */
const OWN = new Set(["part", "wait"]);

const typedOf = (query: PageRequest["query"]): SumText =>
  Object.fromEntries(Object.entries(query).filter(([name]) => !OWN.has(name)));

/** A chosen fix in the place of what was typed; it brings its own unit. */
function fixed(query: PageRequest["query"]): string {
  const typed: Record<string, string> = {};
  for (const [name, text] of Object.entries(query)) if (!name.startsWith(FIX)) typed[name] = text;
  for (const [name, text] of Object.entries(query)) {
    if (!name.startsWith(FIX)) continue;
    typed[name.slice(FIX.length)] = text;
    delete typed[`${name.slice(FIX.length)}.unit`];
  }
  return new URLSearchParams(typed).toString();
}
