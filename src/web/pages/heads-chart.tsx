/** Heads by kind as grains, one grain a head: full where 18 of 20 ways to read the record have it, hatched, empty. */

import { bandWords } from "../../answers/heads/words.ts";
import type { KindOutput } from "../../contract/output/heads.ts";
import { Chart, type Drawing, type DrawingWidth, NARROW, StepMark } from "../charts/chart.tsx";
import { GrainLegend } from "../charts/grain-legend.tsx";
import { GrainRow } from "../charts/grain-row.tsx";
import { grainCounts, grainsDrawn, grainWords } from "../charts/grain-row-view.ts";
import { GRAIN_HEIGHT, GRAIN_WIDTH } from "../charts/grain-shape.ts";
import { Label } from "../charts/label.tsx";

export const HEADS_CHART = "heads-living";

/** Heads a grain, so that the longest row fits a phone. */
const SIZES = [1, 2, 5, 10, 20] as const;
const MOST_GRAINS = 18;

export function grainSize(kinds: readonly KindOutput[]): number {
  const most = Math.max(0, ...kinds.map(({ living_of_20 }) => living_of_20.at(-1) ?? 0));
  return SIZES.find((size) => most / size <= MOST_GRAINS + 0.49) ?? 20;
}

interface HeadsChartProps {
  readonly kinds: readonly KindOutput[];
  readonly title: string;
}

export function HeadsChart({ kinds, title }: HeadsChartProps) {
  const size = grainSize(kinds);
  const rows = kinds.map((kind) => ({ kind, counts: grainCounts(kind.living_of_20, size) }));
  return (
    <Chart
      id={HEADS_CHART}
      title={title}
      sentence="Each row is a kind: how many of its heads live, as far as the record can tell."
      draw={(width) => drawn(rows, width)}
      legend={
        <GrainLegend grain={size === 1 ? "one head" : `${size} heads`}>
          Beside the row: heads of all that came.
        </GrainLegend>
      }
      steps={rows.map(({ kind, counts }) => ({
        label: kind.name,
        text: `${bandWords(kind.living)} of ${kind.came} live, most likely ${kind.living.likely}; grains: ${grainWords(counts)}`,
      }))}
      table={{
        caption: "Heads that live, by kind",
        columns: [
          { name: "Kind" },
          { name: "Came", numeric: true },
          { name: "Most likely", numeric: true },
          { name: "18 of 20 between", numeric: true },
          { name: "By age alone", numeric: true },
        ],
        rows: kinds.map(({ name, came, living, by_age_alone: age }) => [
          name,
          `${came}`,
          `${living.likely}`,
          bandWords(living),
          bandWords(age),
        ]),
      }}
    />
  );
}

interface Row {
  readonly kind: KindOutput;
  readonly counts: ReturnType<typeof grainCounts>;
}

function drawn(rows: readonly Row[], width: DrawingWidth): Drawing {
  const narrow = width === NARROW;
  const x = narrow ? 8 : 232;
  const nameHeight = narrow ? 24 : 0;
  const each = nameHeight + GRAIN_HEIGHT + 16;
  return {
    height: rows.length * each,
    body: rows.map(({ kind, counts }, i) => {
      const top = i * each + 6;
      const y = top + nameHeight;
      const grains = grainsDrawn(counts);
      const words = `${bandWords(kind.living)} of ${kind.came}`;
      return (
        <g key={kind.id}>
          <Label x={0} y={(narrow ? top : y) + 15} kind="strong">
            {narrow ? `${kind.name}: ${words}` : kind.name}
          </Label>
          <path class="start-line" d={`M${x} ${y - 2}V${y + GRAIN_HEIGHT + 2}`} />
          <GrainRow counts={counts} side="damson" x={x + 2} y={y + GRAIN_HEIGHT / 2} />
          {narrow ? null : (
            <Label x={x + 12 + grains * GRAIN_WIDTH} y={y + 14}>
              {words}
            </Label>
          )}
          {narrow ? null : <path class="row-rule" d={`M0 ${top + each - 8.5}H${width}`} />}
          <StepMark step={i} d={`M${x - 5} ${y - 3}V${y + GRAIN_HEIGHT + 3}`} />
        </g>
      );
    }),
  };
}

/** The chart's numbers, for its file. */
export const headsRows = (kinds: readonly KindOutput[]): (string | number)[][] => [
  [
    ...["kind", "came (heads)", "most likely (heads)", "low (heads)", "high (heads)", "by age alone (heads)"],
    ...Array.from({ length: 20 }, (_, run) => `run ${run + 1} (heads)`),
  ],
  ...kinds.map(({ name, came, living, by_age_alone: age, living_of_20 }) => [
    ...[name, came, living.likely, living.low, living.high, age.likely],
    ...living_of_20,
  ]),
];
