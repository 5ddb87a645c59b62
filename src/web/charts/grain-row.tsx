/** Grains in a drawing, of one of the larder's two sides: what grows, or who eats. */
import type { GrainCounts } from "./grain-row-view.ts";
import { GRAIN_WIDTH, type GrainPlace, hatches, outlines } from "./grain-shape.ts";

export type Side = "kelp" | "damson" | "slate";

interface GrainMarksProps {
  readonly counts: GrainCounts;
  readonly side: Side;
  /** Where the n-th grain lies, from 0. */
  readonly place: (grain: number) => GrainPlace;
}

export function GrainMarks({ counts: { sure, likely, possible }, side, place }: GrainMarksProps) {
  const places = (from: number, count: number) => Array.from({ length: count }, (_, i) => place(from + i));
  const hatched = places(sure, likely);
  return (
    <g class={`grains-drawn ${side}`} data-sure={sure} data-likely={likely} data-possible={possible}>
      {sure === 0 ? null : <path class="grain sure" d={outlines(places(0, sure))} />}
      {likely === 0 ? null : (
        <>
          <path class="grain likely" d={outlines(hatched)} />
          <path class="grain-hatch" d={hatches(hatched)} />
        </>
      )}
      {possible === 0 ? null : <path class="grain possible" d={outlines(places(sure + likely, possible))} />}
    </g>
  );
}

interface GrainRowProps {
  readonly counts: GrainCounts;
  readonly side: Side;
  /** Left end of the first grain, and the row's middle. */
  readonly x: number;
  readonly y: number;
}

/** On a start line of its own. */
export function GrainRow({ counts, side, x, y }: GrainRowProps) {
  return (
    <GrainMarks counts={counts} side={side} place={(grain) => ({ x: x + (grain + 0.5) * GRAIN_WIDTH, y })} />
  );
}
