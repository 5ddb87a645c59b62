/**
 * The drawn grain: a seed with two points. One path holds all grains of a kind, so that a long row stays small.
 * Three kinds are told apart by their inside alone: filled, hatched, empty. Pure.
 */

/** Space that one grain of a row takes, in the drawing's units. */
export const GRAIN_WIDTH = 15;
export const GRAIN_HEIGHT = 18;
/** How far a grain of a row leans from upright, in degrees. */
const LEAN = 25;

const LENGTH = 7.5;
const BREADTH = 5;

export interface GrainPlace {
  readonly x: number;
  readonly y: number;
  /** Where its tip points, degrees clockwise from up. */
  readonly tip?: number;
  /** Against the size of a grain in a row. */
  readonly scale?: number;
}

const short = (value: number): string => String(Math.round(value * 10) / 10);

/** Writes points along and across a grain as they lie in the drawing. */
function frame({ x, y, tip = LEAN, scale = 1 }: GrainPlace) {
  const sin = Math.sin((tip * Math.PI) / 180) * scale;
  const cos = Math.cos((tip * Math.PI) / 180) * scale;
  return (along: number, across: number) =>
    `${short(x + along * sin + across * cos)} ${short(y - along * cos + across * sin)}`;
}

/** Outline: two arcs that meet in points. */
function outline(place: GrainPlace): string {
  const at = frame(place);
  const [along, across] = [LENGTH * 0.55, BREADTH * 1.05];
  const end = at(LENGTH, 0);
  return `M${end}C${at(along, across)} ${at(-along, across)} ${at(-LENGTH, 0)}C${at(-along, -across)} ${at(along, -across)} ${end}Z`;
}

/** Strokes inside the outline. */
function hatch(place: GrainPlace): string {
  const at = frame(place);
  return [-3.3, 0, 3.3]
    .map((along) => {
      // The belly's width at that place, a little less.
      const half = BREADTH * 0.76 * (1 - (along / LENGTH) ** 2);
      return `M${at(along - 1, -half)}L${at(along + 1, half)}`;
    })
    .join("");
}

export const outlines = (places: readonly GrainPlace[]): string => places.map(outline).join("");
export const hatches = (places: readonly GrainPlace[]): string => places.map(hatch).join("");
