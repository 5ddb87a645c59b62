/**
 * What stands around every drawing: a title that is a finding, a sentence, the drawing (an image with these two as its
 * name), a stepper for keys, the same numbers as a table and as a file. Drawn twice, for narrow and for wide columns,
 * so that its words keep their size; the style sheet shows the one that fits.
 */
import type { ComponentChildren } from "preact";
import { useContext } from "preact/hooks";
import { to } from "../page.ts";
import { Table, type TableProps } from "../parts/table.tsx";
import { TankId } from "../parts/tank-context.ts";
import { type Step, stepsJson } from "./steps.ts";

/** Widths of a drawing, in its own units, about CSS pixels. */
export const NARROW = 328;
export const WIDE = 760;
export type DrawingWidth = typeof NARROW | typeof WIDE;

export interface Drawing {
  readonly height: number;
  readonly body: ComponentChildren;
}

interface ChartProps {
  /** In the document, and the name of its file of numbers. */
  readonly id: string;
  /** The finding, a sentence without its stop. */
  readonly title: ComponentChildren;
  readonly sentence: ComponentChildren;
  readonly draw: (width: DrawingWidth) => Drawing;
  /** Between the drawing and its table: what the marks mean. */
  readonly legend?: ComponentChildren;
  readonly steps: readonly Step[];
  readonly table: TableProps;
  /** False where no file is served for it. */
  readonly csv?: boolean;
  readonly level?: 2 | 3;
}

export function Chart({
  id,
  title,
  sentence,
  draw,
  legend,
  steps,
  table,
  csv = true,
  level = 2,
}: ChartProps) {
  const tank = useContext(TankId);
  const Heading = level === 2 ? "h2" : "h3";
  return (
    <figure class="chart" data-chart={id}>
      <Heading id={`${id}-title`} class="chart-title">
        {title}
      </Heading>
      <p id={`${id}-sentence`} class="chart-sentence">
        {sentence}
      </p>
      <div class="chart-body">
        <div role="img" aria-labelledby={`${id}-title ${id}-sentence`}>
          {([NARROW, WIDE] as const).map((width) => {
            const { height, body } = draw(width);
            return (
              <svg
                key={width}
                class={width === NARROW ? "drawing narrow" : "drawing wide"}
                aria-hidden="true"
                viewBox={`0 0 ${width} ${height}`}
                width={width}
                height={height}
              >
                {body}
              </svg>
            );
          })}
        </div>
        {legend === undefined ? null : <div class="chart-legend">{legend}</div>}
      </div>
      <Stepper steps={steps} />
      <div class="chart-more">
        <details class="chart-table">
          <summary>The numbers as a table</summary>
          <Table {...table} />
        </details>
        {csv && tank !== null ? (
          <a class="chart-csv" href={to.csv(tank, id)}>
            The numbers as a file (CSV)
          </a>
        ) : null}
      </div>
    </figure>
  );
}

/** Hidden until the client module has found it. */
function Stepper({ steps }: { readonly steps: readonly Step[] }) {
  if (steps.length === 0) return null;
  return (
    <>
      <fieldset class="chart-stepper" data-chart-stepper hidden>
        <legend class="unseen">Step through the chart</legend>
        <button type="button" data-step-by="-1">
          Back
        </button>
        <button type="button" data-step-by="1">
          Next
        </button>
        <p class="chart-says" aria-live="polite" data-chart-says>
          {steps.length === 1 ? "One value" : `${steps.length} values`}, by these buttons or the left and
          right keys.
        </p>
      </fieldset>
      <script
        type="application/json"
        data-chart-steps
        dangerouslySetInnerHTML={{ __html: stepsJson(steps) }}
      />
    </>
  );
}

/** Shown while its step is announced. */
export function StepMark({ step, d }: { readonly step: number; readonly d: string }) {
  return <path class="step-mark" data-step-mark={step} visibility="hidden" d={d} />;
}
