/** Start-up of one tank, and its twenty runs as files of numbers. */
import { judgeGate } from "../../answers/bench/gate.ts";
import { knownIn } from "../../answers/start-up/stage.ts";
import { to } from "../../web/page.ts";
import { cellOf } from "../../web/pages/chart-csv.ts";
import {
  START_UP_CHARTS,
  type StartUpView,
  startUpPage,
  startUpRunsFacts,
} from "../../web/pages/start-up.tsx";
import type { LoadedTank, PageReply, PageRoute } from "../route.ts";
import { type Answered, answeredFile, answeredPage } from "./answered.ts";

export const START_UP_ROUTES: readonly PageRoute[] = [
  answeredPage({
    path: to.tank(":tank", "start-up"),
    here: "start-up",
    what: "Start-up",
    address: (tank) => to.tank(tank, "start-up"),
    draw: (answered) => startUpPage(viewOf(answered)),
  }),
  ...(["ammonia", "nitrite"] as const).map((what) =>
    answeredFile(to.csv(":tank", START_UP_CHARTS[what]), (answered) => numbers(what, answered)),
  ),
];

function viewOf({ loaded, answers, today }: Answered): StartUpView {
  const { facts, record, head } = loaded;
  const [wave] = answers.waves.waves;
  const known = knownIn({ facts, record, today });
  return {
    head,
    startUp: answers.startUp ?? null,
    gate: wave === undefined ? null : judgeGate(wave, answers.waves, known),
    waveFrom: wave === undefined ? null : { on: wave.from, figure: wave.figures.from },
    readings: readingsOf(loaded),
  };
}

const SHOWN = { tan_mg_n_per_l: "ammonia", no2_mg_n_per_l: "nitrite" } as const;

const readingsOf = ({ record }: Pick<LoadedTank, "record">): StartUpView["readings"] =>
  record.observations.flatMap((one) =>
    one.kind === "reading" && (one.quantity === "tan_mg_n_per_l" || one.quantity === "no2_mg_n_per_l")
      ? [
          {
            quantity: SHOWN[one.quantity],
            date: one.on,
            low: Math.max(0, one.value.low - (one.step ?? 0) / 2),
            high: one.value.high + (one.step ?? 0) / 2,
          },
        ]
      : [],
  );

function numbers(what: "ammonia" | "nitrite", { loaded, answers, today }: Answered): PageReply {
  const facts = answers.startUp === undefined ? null : startUpRunsFacts(answers.startUp, what, []);
  if (facts === null) return { kind: "not_found", what: "chart of that name" };
  const rows = [
    ["date", ...facts.runs.map((_, run) => `run ${run + 1} (mg N/L)`)],
    ...facts.weeks.map((date, day) => [date, ...facts.runs.map((run) => run[day] ?? 0)]),
  ];
  const text = rows.map((row) => `${row.map(cellOf).join(",")}\r\n`).join("");
  const name = `${loaded.head.name}-${START_UP_CHARTS[what]}-${today}.csv`;
  return { kind: "file", name, type: "text/csv; charset=utf-8", text };
}
