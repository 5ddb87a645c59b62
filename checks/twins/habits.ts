/** What a twin's keeper does: the usual, and what more tests or a weighed feed would be worth. */
export interface Habits {
  readonly name: string;
  readonly is: string;
  /** Nitrate and phosphate also half-way between two rounds. */
  readonly testsBetween: boolean;
  /** Times either way within which the feed is known (90 %). */
  readonly feedWithin: number;
}

export const USUAL: Habits = {
  ...{ name: "usual", is: "a round of tests and looks a week, feeds by the pinch" },
  ...{ testsBetween: false, feedWithin: 2.5 },
};

export const HABITS: readonly Habits[] = [
  USUAL,
  { ...USUAL, name: "between", is: "nitrate and phosphate twice as often", testsBetween: true },
  { ...USUAL, name: "weighed", is: "the feed weighed for a week, known within a tenth", feedWithin: 1.1 },
];
