/** What grows above, who eats it below, on one start line; the difference is bracketed and named. */
import type { ComponentChildren } from "preact";
import { Chart, type Drawing, type DrawingWidth, NARROW, StepMark } from "./chart.tsx";
import { GrainLegend } from "./grain-legend.tsx";
import { GrainRow } from "./grain-row.tsx";
import { grainsDrawn } from "./grain-row-view.ts";
import { GRAIN_HEIGHT, GRAIN_WIDTH } from "./grain-shape.ts";
import { capital, leaning, listed, type ShelfFacts } from "./shelf.ts";
import { type ShelfPairView, shelfPairsView } from "./shelf-pair-view.ts";
import { shelfStep, shelfTable } from "./shelf-words.tsx";

interface ShelfPairsProps {
  readonly id: string;
  readonly title: ComponentChildren;
  readonly sentence: ComponentChildren;
  readonly shelves: readonly ShelfFacts[];
  readonly csv?: boolean;
  readonly level?: 2 | 3;
}

export function ShelfPairs({ id, title, sentence, shelves, csv, level }: ShelfPairsProps) {
  const { grain, pairs, bare } = shelfPairsView(shelves);
  return (
    <Chart
      id={id}
      title={title}
      sentence={sentence}
      draw={(width) => drawPairs(pairs, width)}
      legend={
        <GrainLegend grain={grain}>
          Upper row grown, lower row wanted.{" "}
          {bare.length === 0 ? null : `${capital(listed(bare))}: nothing grown, nothing wanted.`}
        </GrainLegend>
      }
      steps={pairs.map(({ shelf }) => shelfStep(shelf))}
      table={shelfTable(shelves)}
      {...(csv === undefined ? {} : { csv })}
      {...(level === undefined ? {} : { level })}
    />
  );
}

const ROWS = 2 * GRAIN_HEIGHT + 4;

function drawPairs(pairs: readonly ShelfPairView[], width: DrawingWidth): Drawing {
  const narrow = width === NARROW;
  const nameHeight = narrow ? 24 : 0;
  const x = narrow ? 8 : 232;
  const each = nameHeight + ROWS + 20;
  return {
    height: pairs.length * each,
    body: pairs.map((pair, i) => {
      const top = i * each + 6;
      const rows = top + nameHeight;
      return (
        <g key={pair.shelf.id}>
          {narrow ? (
            <text class="label strong" x={0} y={top + 15}>
              {pair.shelf.name}
            </text>
          ) : (
            <>
              <text class="label strong" x={0} y={rows + 15}>
                {pair.shelf.name}
              </text>
              <text class="label small" x={x - 12} y={rows + 14} text-anchor="end">
                grown
              </text>
              <text class="label small" x={x - 12} y={rows + 36} text-anchor="end">
                wanted
              </text>
            </>
          )}
          <path class="start-line" d={`M${x} ${rows - 2}V${rows + ROWS + 2}`} />
          <GrainRow counts={pair.grown} side="kelp" x={x + 2} y={rows + GRAIN_HEIGHT / 2} />
          <GrainRow counts={pair.wanted} side="damson" x={x + 2} y={rows + 1.5 * GRAIN_HEIGHT + 4} />
          <Difference pair={pair} x={x + 2} y={rows} />
          {narrow ? null : <path class="row-rule" d={`M0 ${top + each - 9.5}H${width}`} />}
          <StepMark step={i} d={`M${x - 5} ${rows - 4}V${rows + ROWS + 4}`} />
        </g>
      );
    }),
  };
}

/** The bracket lies in the row that has less; where rows agree the word alone. */
function Difference({
  pair,
  x,
  y,
}: {
  readonly pair: ShelfPairView;
  readonly x: number;
  readonly y: number;
}) {
  const { kind, words } = leaning(pair.shelf);
  const end = x + Math.max(grainsDrawn(pair.grown), grainsDrawn(pair.wanted)) * GRAIN_WIDTH + 10;
  const middle = y + ROWS / 2 + 5;
  const label = pair.shelf.wanted === 0 ? "nobody eats" : words;
  if (pair.bracket === null) {
    return (
      <text class="label" x={end} y={middle}>
        {label}
      </text>
    );
  }
  const row = kind === "over" ? y + 1.5 * GRAIN_HEIGHT + 4 : y + GRAIN_HEIGHT / 2;
  // Past what the shorter row draws at all, so that the bracket never crosses a grain.
  const shorter = kind === "over" ? grainsDrawn(pair.wanted) : grainsDrawn(pair.grown);
  const from = x + Math.max(pair.bracket.from, Math.min(shorter, pair.bracket.to - 0.4)) * GRAIN_WIDTH + 3;
  const to = x + pair.bracket.to * GRAIN_WIDTH - 1;
  return (
    <>
      <path
        class="bracket"
        d={`M${from} ${row - 6}V${row + 6}M${from} ${row}H${to}M${to} ${row - 6}V${row + 6}`}
      />
      <text class="label strong" x={end} y={middle}>
        {label}
      </text>
    </>
  );
}
