/**
 * Water sums: the same pages with a tank, whose readings fill the fields, and without one; and what a tank's sums are
 * filled from, as data, for the device that is to work them out without the network.
 */
import { knownForSums } from "../../answers/sums/known.ts";
import { to } from "../../web/page.ts";
import { type SumsAsked, sumsReply } from "../../web/pages/sum-pages.ts";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { sumContextOf } from "../sum-context.ts";
import { ofTank } from "./of-tank.ts";

/** One page at two addresses: of a tank, and of none. */
const both = (path: string): readonly PageRoute[] => [
  { method: "GET", path, answer: async (request, context) => answer(null, request, context) },
  { method: "GET", path: `/tanks/:tank${path}`, answer: ofTank(answer) },
];

export const SUMS_ROUTES: readonly PageRoute[] = [
  ...both("/sums"),
  ...both("/sums/:sum"),
  ...both("/sums/:sum/working/:figure"),
  { method: "GET", path: to.sumsKnown(":tank"), answer: ofTank(known) },
];

function answer(tank: LoadedTank | null, { params, query }: PageRequest, context: PageContext): PageReply {
  const asked: SumsAsked = { sum: params["sum"] ?? null, figure: params["figure"] ?? null, query };
  return sumsReply(asked, { head: tank?.head ?? null, context: sumContextOf(tank, context.today) });
}

function known(tank: LoadedTank, _: PageRequest, { today }: PageContext): PageReply {
  const { preferences } = sumContextOf(tank, today);
  const { head, zone, facts, record } = tank;
  const text = JSON.stringify(knownForSums({ head, zone, preferences, facts, record, today }));
  return { kind: "file", name: "sums.json", type: "application/json", text };
}
