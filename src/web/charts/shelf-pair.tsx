/** What grows above, who eats it below, on one start line; the difference is bracketed and named. */
import type { ComponentChildren } from "preact";
import { capital, listed } from "../parts/text.ts";
import { Chart, type Drawing, type DrawingWidth, NARROW, StepMark } from "./chart.tsx";
import { GrainLegend } from "./grain-legend.tsx";
import { GrainRow } from "./grain-row.tsx";
import { grainsDrawn } from "./grain-row-view.ts";
import { GRAIN_HEIGHT, GRAIN_WIDTH } from "./grain-shape.ts";
import { Label } from "./label.tsx";
import { leaning, type ShelfFacts } from "./shelf.ts";
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

/** Between the rows lies the bracket. */
const BETWEEN = 12;
/** In a row of none, where there is something all the same. */
const TOO_LITTLE = "under half a grain";
const ROWS = 2 * GRAIN_HEIGHT + BETWEEN;

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
      // Words stand where the grains would: beside a long upper row they would leave a phone's screen.
      const lowerWords = pair.shelf.wanted === 0 ? "nobody eats" : pair.tooLittle.wanted ? TOO_LITTLE : null;
      return (
        <g key={pair.shelf.id}>
          {narrow ? (
            <Label x={0} y={top + 15} kind="strong">
              {pair.shelf.name}
            </Label>
          ) : (
            <>
              <Label x={0} y={rows + 15} kind="strong">
                {pair.shelf.name}
              </Label>
              <Label x={x - 12} y={rows + 14} anchor="end" kind="small">
                grown
              </Label>
              <Label x={x - 12} y={rows + BETWEEN + 32} anchor="end" kind="small">
                wanted
              </Label>
            </>
          )}
          <path class="start-line" d={`M${x} ${rows - 2}V${rows + ROWS + 2}`} />
          <GrainRow counts={pair.grown} side="kelp" x={x + 2} y={rows + GRAIN_HEIGHT / 2} />
          <GrainRow counts={pair.wanted} side="damson" x={x + 2} y={rows + 1.5 * GRAIN_HEIGHT + BETWEEN} />
          {pair.tooLittle.grown ? (
            <Label x={x + 8} y={rows + 14} kind="small">
              {TOO_LITTLE}
            </Label>
          ) : null}
          {lowerWords === null ? null : (
            <Label x={x + 8} y={rows + BETWEEN + 32} kind="small">
              {lowerWords}
            </Label>
          )}
          <Difference pair={pair} x={x + 2} y={rows} />
          {narrow ? null : <path class="row-rule" d={`M0 ${top + each - 9.5}H${width}`} />}
          <StepMark step={i} d={`M${x - 5} ${rows - 4}V${rows + ROWS + 4}`} />
        </g>
      );
    }),
  };
}

/** The bracket lies between the rows; where they agree the word stands alone. */
function Difference({
  pair,
  x,
  y,
}: {
  readonly pair: ShelfPairView;
  readonly x: number;
  readonly y: number;
}) {
  if (pair.shelf.wanted === 0) return null;
  const { words } = leaning(pair.shelf);
  const drawn = Math.max(grainsDrawn(pair.grown), grainsDrawn(pair.wanted)) * GRAIN_WIDTH + 10;
  const end = x + (pair.tooLittle.grown || pair.tooLittle.wanted ? Math.max(drawn, 140) : drawn);
  const middle = y + ROWS / 2 + 5;
  if (pair.bracket === null) {
    return (
      <Label x={end} y={middle}>
        {words}
      </Label>
    );
  }
  const [from, to] = [x + pair.bracket.from * GRAIN_WIDTH, x + pair.bracket.to * GRAIN_WIDTH];
  const row = y + ROWS / 2;
  return (
    <>
      <path
        class="bracket"
        d={`M${from} ${row - 4}V${row + 4}M${from} ${row}H${to}M${to} ${row - 4}V${row + 4}`}
      />
      <Label x={end} y={middle} kind="strong">
        {words}
      </Label>
    </>
  );
}
