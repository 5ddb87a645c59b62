/**
 * The drawn grain: a seed, leaning. One path holds all grains of a kind in a row, so that a long row stays small.
 * Three kinds are told apart by their inside alone: filled, hatched, empty. Pure.
 */

/** Space that one grain takes, in the drawing's units. */
export const GRAIN_WIDTH = 15;
export const GRAIN_HEIGHT = 18;

const LENGTH = 7.5;
const BREADTH = 5;
/** Sine and cosine of the lean, 25 degrees from upright. */
const LEAN_SIN = Math.sin((25 * Math.PI) / 180);
const LEAN_COS = Math.cos((25 * Math.PI) / 180);

const short = (value: number): string => String(Math.round(value * 100) / 100);

/** A point of the grain, along and across it, as drawn about (x, y). */
function at(x: number, y: number, along: number, across: number): string {
  return `${short(x + along * LEAN_SIN + across * LEAN_COS)} ${short(y - along * LEAN_COS + across * LEAN_SIN)}`;
}

/** Outline about (x, y): two arcs that meet in points. */
export function grainOutline(x: number, y: number): string {
  const belly = (side: number) =>
    `C${at(x, y, LENGTH * 0.55, side * BREADTH * 1.05)} ${at(x, y, -LENGTH * 0.55, side * BREADTH * 1.05)}`;
  const back = `C${at(x, y, -LENGTH * 0.55, -BREADTH * 1.05)} ${at(x, y, LENGTH * 0.55, -BREADTH * 1.05)}`;
  return `M${at(x, y, LENGTH, 0)}${belly(1)} ${at(x, y, -LENGTH, 0)}${back} ${at(x, y, LENGTH, 0)}Z`;
}

/** Strokes inside the outline, for a hatched grain. */
export function grainHatch(x: number, y: number): string {
  return [-3.3, 0, 3.3]
    .map((along) => {
      // The belly's width at that place, a little less.
      const half = BREADTH * 0.76 * (1 - (along / LENGTH) ** 2);
      return `M${at(x, y, along - 1, -half)}L${at(x, y, along + 1, half)}`;
    })
    .join("");
}
