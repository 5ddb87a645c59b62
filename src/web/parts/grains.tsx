/**
 * Twenty grains: how many of twenty runs say a thing. Full grains do, empty ones do not; the sentence beside them has
 * word and number together, so that the drawing is never the only teller.
 */
import type { ComponentChildren } from "preact";
import { chanceWord } from "../../answers/words.ts";
import { GRAIN_HEIGHT, GRAIN_WIDTH, outlines } from "../charts/grain-shape.ts";

interface GrainsProps {
  /** 0 to 20. */
  readonly of20: number;
  /** What those runs do, after "14 of 20": "stay under 20 mg/L". */
  readonly yes: string;
  /** What the others do. */
  readonly no: string;
  /** Beside the grains; the word with its number where left out. */
  readonly children?: ComponentChildren;
}

const ROW = 10;

export function Grains({ of20, yes, no, children }: GrainsProps) {
  const place = (grain: number) => ({
    x: ((grain % ROW) + 0.5) * GRAIN_WIDTH,
    y: (Math.floor(grain / ROW) + 0.5) * GRAIN_HEIGHT,
  });
  const path = (from: number, to: number) =>
    outlines(Array.from({ length: to - from }, (_, i) => place(from + i)));
  return (
    <span class="grains" data-grains-yes={of20} data-grains-no={20 - of20}>
      <svg
        role="img"
        aria-label={`${of20} of 20 runs ${yes}, ${20 - of20} ${no}`}
        viewBox={`0 0 ${ROW * GRAIN_WIDTH} ${2 * GRAIN_HEIGHT}`}
        width={ROW * GRAIN_WIDTH}
        height={2 * GRAIN_HEIGHT}
      >
        <path class="grain sure" d={path(0, of20)} />
        <path class="grain possible" d={path(of20, 20)} />
      </svg>
      <span class="grains-words">
        {children ?? (
          <>
            {chanceWord(of20)}, {of20} of 20
          </>
        )}
      </span>
    </span>
  );
}
