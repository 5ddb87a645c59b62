/** Numbers of a tank's charts as files. */
import { chartCsv } from "../../web/pages/chart-csv.ts";
import type { PageRoute } from "../route.ts";
import { answeredFile } from "./answered.ts";

export const CHARTS_ROUTES: readonly PageRoute[] = [
  answeredFile("/tanks/:tank/charts/:chart", ({ loaded, answers, request }) => {
    const [, chart] = /^([\w-]+)\.csv$/.exec(request.params["chart"] ?? "") ?? [];
    const text = chart === undefined ? null : chartCsv(chart, answers, loaded.facts.readings);
    if (text === null) return { kind: "not_found", what: "chart of that name" };
    const name = `${loaded.head.name}-${chart}-${answers.waves.tank.as_of}.csv`;
    return { kind: "file", name, type: "text/csv; charset=utf-8", text };
  }),
];
