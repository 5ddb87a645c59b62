/** What full, hatched and empty grains mean, and how much one is. */
import type { ComponentChildren } from "preact";
import { GrainRow } from "./grain-row.tsx";
import type { GrainCounts } from "./grain-row-view.ts";
import { GRAIN_HEIGHT, GRAIN_WIDTH } from "./grain-shape.ts";

interface GrainLegendProps {
  /** "1 ration a day" */
  readonly grain: string;
  /** What lies above and below, or to the sides. */
  readonly children?: ComponentChildren;
}

const ONE = { sure: 0, likely: 0, possible: 0 };

export function GrainLegend({ grain, children }: GrainLegendProps) {
  return (
    <p class="grain-legend">
      {children} One grain is {grain}. <One counts={{ ...ONE, sure: 1 }} /> sure: 18 or more of 20 runs have
      it. <One counts={{ ...ONE, likely: 1 }} /> likely: 10 to 17. <One counts={{ ...ONE, possible: 1 }} />{" "}
      possible: 2 to 9.
    </p>
  );
}

function One({ counts }: { readonly counts: GrainCounts }) {
  return (
    <svg
      class="legend-grain"
      viewBox={`0 0 ${GRAIN_WIDTH} ${GRAIN_HEIGHT}`}
      width={GRAIN_WIDTH}
      height={GRAIN_HEIGHT}
      aria-hidden="true"
    >
      <GrainRow counts={counts} side="slate" x={0} y={GRAIN_HEIGHT / 2} />
    </svg>
  );
}
