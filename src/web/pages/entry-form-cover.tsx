/**
 * A score drawn: a pane, a rock or a patch of sand, and on it none, few, some, many or full of what grows, as marks of
 * its own shape. Lines alone, so it reads in grey, in the dark and on paper. The words beside it say what counts: it is
 * hidden from who listens.
 */
import type { Score } from "../../contract/daybook/growth-anchors.ts";
import type { Growth } from "../../engine/types/tank.ts";

/** Where it grows, and how it looks there. */
type Place = "glass" | "rock" | "sand";
type Mark = "haze" | "dust" | "threads" | "bubbles" | "skin" | "strings" | "fluff" | "bits";

const DRAWN: Readonly<Record<Growth, readonly [Place, Mark]>> = {
  film_glass: ["glass", "haze"],
  film_rock: ["rock", "haze"],
  film_sand: ["sand", "haze"],
  diatoms: ["sand", "dust"],
  hair_algae: ["rock", "threads"],
  bubble_algae: ["rock", "bubbles"],
  cyanobacteria: ["sand", "skin"],
  dinoflagellates: ["sand", "strings"],
  detritus_sand: ["sand", "fluff"],
  detritus_crevice: ["rock", "fluff"],
  leftovers: ["sand", "bits"],
};

/** Marks of each score: about twice as many as of the one before. */
const MARKS: Readonly<Record<Score, number>> = { 0: 0, 1: 5, 2: 13, 3: 30, 4: 68 };
/** Steps that fill a square evenly and never in rows: powers of the plastic number. */
const STEP_X = 0.7548776662;
const STEP_Y = 0.569840291;

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Where a place has room for marks, of a drawing 64 wide and 44 high. */
const ROOM: Readonly<Record<Place, (u: number, v: number) => Spot>> = {
  glass: (u, v) => ({ x: 8 + 48 * u, y: 7 + 30 * v }),
  sand: (u, v) => ({ x: 6 + 52 * u, y: 27 + 11 * v }),
  rock: (u, v) => {
    const x = 11 + 42 * u;
    const high = 28 * (1 - ((x - 33) / 29) ** 2);
    return { x, y: 39 - high * (0.06 + 0.84 * v) };
  },
};

const OUTLINE: Readonly<Record<Place, string>> = {
  glass: "M4 3H60V41H4Z",
  sand: "M2 24Q12 20 22 23T42 23T62 22V41H2Z",
  rock: "M4 41C5 32 11 26 14 20 18 11 26 7 33 8 43 9 46 17 52 24 57 30 59 36 60 41Z",
};

/** Of a mark's middle; those of dust and bits are filled. */
const PATH: Readonly<Record<Mark, (x: number, y: number, i: number) => string>> = {
  haze: (x, y) => `M${x - 3} ${y + 1}l6 -3`,
  dust: (x, y) => `M${x - 1} ${y}a1 1 0 1 0 2 0a1 1 0 1 0 -2 0`,
  threads: (x, y, i) => `M${x} ${y}q${i % 2 === 0 ? 2 : -2} -3 0 -6`,
  bubbles: (x, y) => `M${x - 2} ${y}a2 2 0 1 0 4 0a2 2 0 1 0 -4 0`,
  skin: (x, y) => `M${x - 3} ${y}q3 -3 6 0q-3 3 -6 0`,
  strings: (x, y) => `M${x - 3} ${y}q1.5 -3 3 0t3 0`,
  fluff: (x, y) => `M${x - 2} ${y}q1 -3 2 0q1 -3 2 0z`,
  bits: (x, y) => `M${x - 1} ${y - 1}h2v2h-2z`,
};

export function CoverDrawing({ growth, score }: { readonly growth: Growth; readonly score: Score }) {
  const [place, mark] = DRAWN[growth];
  const marks = Array.from({ length: MARKS[score] }, (_, i) => {
    const { x, y } = ROOM[place]((0.5 + STEP_X * i) % 1, (0.5 + STEP_Y * i) % 1);
    return PATH[mark](Math.round(x), Math.round(y), i);
  });
  const filled = mark === "dust" || mark === "bits" || mark === "skin";
  return (
    <svg class="cover-drawing" viewBox="0 0 64 44" width="64" height="44" aria-hidden="true">
      <path class="cover-place" d={OUTLINE[place]} />
      {marks.length === 0 ? null : (
        <path class={filled ? "cover-marks filled" : "cover-marks"} d={marks.join("")} />
      )}
    </svg>
  );
}
