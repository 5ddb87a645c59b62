/** Numbers of a chart as a file: one header row that names units, plain numbers, texts that no spreadsheet runs. Pure. */
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { RATION_MG_C } from "../../engine/types/shelf.ts";
import type { Reading } from "../../engine/types/tank.ts";
import { shortOf20 } from "../charts/shelf.ts";
import { aheadChart, runsShown } from "./ahead-view.ts";
import { LARDER_CHARTS } from "./larder.tsx";
import { shelfFacts } from "./shelf-facts.ts";
import { WAVES_CHART } from "./waves.tsx";

type Cell = string | number;
type Rows = readonly (readonly Cell[])[];

/** Null where no chart has that name. */
export function chartCsv(chart: string, answers: TankAnswers, readings: readonly Reading[]): string | null {
  if (chart === LARDER_CHARTS.wedge || chart === LARDER_CHARTS.pairs) return csvOf(larderRows(answers));
  if (chart === WAVES_CHART && answers.waves.waves.length > 0) return csvOf(waveRows(answers));
  const shown = runsShown(answers.ahead, readings, 0).find(({ id }) => aheadChart(id) === chart);
  if (shown === undefined) return null;
  const { weeks, runs, unit } = shown.facts;
  return csvOf([
    ["date", ...runs.map((_, run) => `run ${run + 1} (${unit})`)],
    ...weeks.map((date, week) => [date, ...runs.map((values) => five(values[week]!))]),
  ]);
}

function larderRows({ larder }: TankAnswers): Rows {
  const inRations = (mgC: number) => five(mgC / RATION_MG_C);
  return [
    [
      "shelf",
      ...["grown, middle", "grown, low", "grown, high", "wanted", "balance, middle"].map(
        (name) => `${name} (rations/d)`,
      ),
      "runs short (of 20)",
      ...Array.from({ length: 20 }, (_, run) => `grown, run ${run + 1} (rations/d)`),
    ],
    ...shelfFacts(larder).map((shelf) => [
      shelf.name,
      ...[
        shelf.supply.central,
        shelf.supply.low,
        shelf.supply.high,
        shelf.wanted,
        shelf.supply.central - shelf.wanted,
      ].map(inRations),
      shortOf20(shelf),
      ...shelf.runs.map(inRations),
    ]),
  ];
}

const waveRows = ({ waves }: TankAnswers): Rows => [
  ["wave", "from (date)", "to (date)", "animal", "count (heads)", "only if"],
  ...waves.waves.flatMap(({ number, from, to, animals, only_if }) =>
    animals.map(({ name, count }) => [number, from, to, name, count, only_if.join("; ")]),
  ),
];

/** Five figures: what a model of this kind has no more of. */
const five = (value: number): number => Number(value.toPrecision(5));

const csvOf = (rows: Rows): string => rows.map((row) => `${row.map(cellOf).join(",")}\r\n`).join("");

/** A text that begins like a formula gets an apostrophe before it; quotes where commas, quotes or breaks stand inside. */
export function cellOf(cell: Cell): string {
  if (typeof cell === "number") return String(cell);
  const harmless = /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
