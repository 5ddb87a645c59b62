/**
 * What a chart tells by keyboard: its values in order, each announced when stepped to. Written into the page as a block
 * of JSON inside the chart's figure; the client module `chart-steps` reads it, shows the stepper and moves the mark.
 *
 * In the figure (`[data-chart]`):
 *   `script[data-chart-steps]`   JSON of `readonly Step[]`
 *   `[data-chart-stepper]`       hidden until script runs; holds two buttons, `[data-step-by="-1"]` and `"1"`
 *   `[data-chart-says]`          aria-live; gets "label: text"
 *   `[data-step-mark="3"]`       marks of the fourth step in the drawings; attribute `visibility` hidden or visible
 * Left and right keys step while the focus is on one of the buttons; Home and End go to the first and the last.
 */
export interface Step {
  /** What is stepped to: a date, a shelf, a wave. */
  readonly label: string;
  /** Its values in words. */
  readonly text: string;
}

/** As it is written between the tags: `<` would end the block. */
export const stepsJson = (steps: readonly Step[]): string => JSON.stringify(steps).replaceAll("<", "\\u003c");
