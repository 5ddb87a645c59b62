/** One line of the page of weeks: in which week it first holds, in which of the five lists, and in which words. */
import type { Sentence } from "../sentence.ts";

/** In the order in which a week is read. */
export const WEEK_LISTS = { expect: "Expect", test: "Test", do: "Do", dont: "Don't", buy: "Buy" } as const;
export type WeekList = keyof typeof WEEK_LISTS;

export interface WeekItem {
  /** Days from today to the first day that it holds on; 0 or less: it holds already. */
  readonly inDays: number;
  readonly list: WeekList;
  readonly text: Sentence;
  /** What is kept where a page has not room for all: the weightier first. */
  readonly weight: number;
}
