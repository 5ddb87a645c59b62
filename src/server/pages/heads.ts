/** Heads of one tank, and its chart's numbers as a file. */
import { headsOf } from "../../answers/heads/heads.ts";
import { to } from "../../web/page.ts";
import { cellOf } from "../../web/pages/chart-csv.ts";
import { headsPage } from "../../web/pages/heads.tsx";
import { HEADS_CHART, headsRows } from "../../web/pages/heads-chart.tsx";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { ofTank } from "./of-tank.ts";

export const HEADS_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: to.tank(":tank", "heads"), answer: ofTank(show) },
  { method: "GET", path: to.csv(":tank", HEADS_CHART), answer: ofTank(numbers) },
];

const outputOf = ({ facts, record }: LoadedTank, { today }: PageContext) =>
  headsOf({ facts, record, today }).output;

function show(tank: LoadedTank, _: PageRequest, context: PageContext): PageReply {
  return { kind: "page", page: headsPage({ head: tank.head, output: outputOf(tank, context) }) };
}

function numbers(tank: LoadedTank, _: PageRequest, context: PageContext): PageReply {
  const name = `${tank.head.name}-${HEADS_CHART}-${context.today}.csv`;
  const rows = headsRows(outputOf(tank, context).kinds);
  const text = rows.map((row) => `${row.map(cellOf).join(",")}\r\n`).join("");
  return { kind: "file", name, type: "text/csv; charset=utf-8", text };
}
