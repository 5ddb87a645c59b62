/**
 * What every page is: a pure function from ready data to this. The layout puts it into a document; the server sends it.
 * A page knows no store, no clock and no network.
 */
import type { ComponentChildren } from "preact";
import type { EntryKind } from "../contract/daybook/kinds.ts";

/** Pages of one tank as its navigation names them, by what they are asked. */
export const PAGE_GROUPS = [
  { name: "Now", pages: ["bench", "daybook", "almanac", "errands", "sheet"] },
  { name: "Food and crew", pages: ["larder", "waves", "ahead", "what-if", "animals"] },
  { name: "From the record", pages: ["trends", "heads", "growths"] },
  { name: "Water and care", pages: ["sums", "feeding", "arrivals", "start-up", "weeks", "questions"] },
] as const;
export const TANK_PAGES = PAGE_GROUPS.flatMap(({ pages }) => [...pages]);
/** Those, and the form of readings, which the daybook leads to. */
export type TankPage = (typeof PAGE_GROUPS)[number]["pages"][number] | "readings";

export interface TankHead {
  readonly id: string;
  readonly name: string;
  readonly keeper: string;
  readonly demonstration: boolean;
}

export interface Page {
  /** For the document's title: the page's finding or name, without the program's. Begins "Error: " where a form failed. */
  readonly title: string;
  /** The tank the page speaks of; null on start, sources, field guide and crisis pages. */
  readonly tank: TankHead | null;
  /** Marked as the current one in the tank's navigation. */
  readonly here: TankPage | null;
  readonly body: ComponentChildren;
  /**
   * Client modules this page wants, by file name below src/web/client without extension: each finds its own elements
   * by `data-` attributes and the page works for reading without it.
   */
  readonly scripts?: readonly string[];
}

/**
 * Addresses, in one place: links and routes use these alone.
 * The working of a figure is a page of its own and opens over the current one where script runs.
 */
export const to = {
  start: () => "/",
  newTank: () => "/new",
  tank: (id: string, page: TankPage = "bench") =>
    page === "bench" ? `/tanks/${id}` : `/tanks/${id}/${page}`,
  question: (id: string, number: number) => `/tanks/${id}/questions/${number}`,
  singleForm: (id: string) => `/tanks/${id}/form`,
  animal: (tankId: string, animal: string) => `/tanks/${tankId}/animals/${animal}`,
  working: (tankId: string, figure: string) => `/tanks/${tankId}/working/${encodeURIComponent(figure)}`,
  /** Working of a what-if's figure: `query` holds the change. */
  whatIfWorking: (tankId: string, figure: string, query: string) =>
    `/tanks/${tankId}/what-if/working/${encodeURIComponent(figure)}?${query}`,
  /** The tank's facts as data, for the engine in the browser. */
  whatIfFacts: (tankId: string) => `/tanks/${tankId}/what-if/facts.json`,
  /** A what-if's answers beside today's, as data. */
  whatIfBeside: (tankId: string, query: string) => `/tanks/${tankId}/what-if/beside.json?${query}`,
  /** The form for readings, at that quantity. */
  readingsOf: (tankId: string, quantity: string) => `/tanks/${tankId}/readings?quantity=${quantity}`,
  reading: (tankId: string, entry: string) => `/tanks/${tankId}/readings/${entry}`,
  /** The form for one kind of entry. */
  newEntry: (tankId: string, kind: EntryKind) => `/tanks/${tankId}/daybook/new/${kind}`,
  entry: (tankId: string, entry: string) => `/tanks/${tankId}/daybook/entries/${entry}`,
  /** A picture's bytes. */
  picture: (tankId: string, picture: string) => `/tanks/${tankId}/pictures/${picture}`,
  /** Where pictures of an entry are added, taken away and brought back. */
  pictures: (tankId: string, entry: string) => `/tanks/${tankId}/daybook/entries/${entry}/pictures`,
  /** One entry with its pictures and the order beside it, on paper for who sold the animals. */
  forSeller: (tankId: string, entry: string) => `/tanks/${tankId}/daybook/entries/${entry}/for-the-seller`,
  /** Log it now: worded rows for one wet thumb. */
  wetHand: (tankId: string) => `/tanks/${tankId}/wet-hand`,
  bringIn: (tankId: string) => `/tanks/${tankId}/bring-in`,
  takeOut: (tankId: string) => `/tanks/${tankId}/take-out`,
  /** How the readings moved what the ensemble holds of this tank. */
  learned: (tankId: string) => `/tanks/${tankId}/learned`,
  /** What is learned from, as data, for the engine in the browser. */
  learnPart: (tankId: string) => `/tanks/${tankId}/parts/learn.json`,
  trend: (tankId: string, quantity: string) => `/tanks/${tankId}/trends/${quantity}`,
  /** Where a bench's advice is declined with a reason, or brought up again. */
  decline: (tankId: string) => `/tanks/${tankId}/decline`,
  /** A wave has come, behind its gate: what arrived is logged. */
  acceptWave: (tankId: string, wave: number) => `/tanks/${tankId}/waves/${wave}`,
  /** All tanks, the neediest first. */
  round: () => "/round",
  /** Numbers of a chart as a file. */
  csv: (tankId: string, chart: string) => `/tanks/${tankId}/charts/${chart}.csv`,
  history: (id: string) => `/tanks/${id}/history`,
  units: (id: string) => `/tanks/${id}/units`,
  sources: () => "/sources",
  source: (key: string) => `/sources/${encodeURIComponent(key)}`,
  parameter: (id: string) => `/parameters/${encodeURIComponent(id)}`,
  guide: () => "/animals",
  guideEntry: (animal: string) => `/animals/${animal}`,
  /** `tank`: that the reader comes from. */
  wrong: (tank?: string) => `/something-is-wrong${tank === undefined ? "" : `?tank=${tank}`}`,
  /** All water sums, and one of them; its query holds what was typed. Without a tank nothing is filled in from one. */
  sums: (tankId: string | null) => (tankId === null ? "/sums" : `/tanks/${tankId}/sums`),
  sum: (tankId: string | null, sum: string, query = "") =>
    `${tankId === null ? "" : `/tanks/${tankId}`}/sums/${sum}${query === "" ? "" : `?${query}`}`,
  /** What a tank's sums are filled from, as data, for the device that works them out by itself. */
  sumsKnown: (tankId: string) => `/tanks/${tankId}/parts/sums.json`,
  sumWorking: (tankId: string | null, sum: string, figure: string, query: string) =>
    `${tankId === null ? "" : `/tanks/${tankId}`}/sums/${sum}/working/${encodeURIComponent(figure)}?${query}`,
  /** One medicine by its active ingredient, what it does to the crew and how it is taken out. */
  medicine: (tankId: string, ingredient: string) => `/tanks/${tankId}/arrivals/medicines/${ingredient}`,
  /** Working of a number of a fallow time, which is worked out when it is asked for. */
  fallowWorking: (tankId: string, figure: string) =>
    `/tanks/${tankId}/arrivals/fallow/working/${encodeURIComponent(figure)}`,
  /** Nobody at home from one day to another: what would happen, and the page for a sitter. */
  holiday: (tankId: string, query = "") =>
    `/tanks/${tankId}/feeding/holiday${query === "" ? "" : `?${query}`}`,
  holidayWorking: (tankId: string, figure: string, query: string) =>
    `/tanks/${tankId}/feeding/holiday/working/${encodeURIComponent(figure)}?${query}`,
  /** Dated care as a calendar file, and as a feed whose address can be taken back. */
  calendarFile: (tankId: string) => `/tanks/${tankId}/almanac.ics`,
  calendarFeed: (token: string) => `/calendar/${token}.ics`,
  /** Where a feed is made and taken back. */
  calendarFeeds: (tankId: string) => `/tanks/${tankId}/almanac/feeds`,
  /** What is asked of a shop for a wave, behind its gate: logged before anything comes. */
  orderWave: (tankId: string, wave: number) => `/tanks/${tankId}/waves/${wave}/order`,
  /** How the keeper's shop sells and sends. */
  shop: (tankId: string) => `/tanks/${tankId}/errands/shop`,
  /** One list of "Something is wrong". */
  wrongList: (list: string, tank?: string) =>
    `/something-is-wrong/${list}${tank === undefined ? "" : `?tank=${tank}`}`,
  /** A tank's numbers behind one of those lists. */
  wrongNumbers: (tankId: string, list: string) => `/tanks/${tankId}/something-is-wrong/${list}`,
  /** The plan in short beside the questions, and the workings of its runs. */
  planPart: (tankId: string, members: number) => `/tanks/${tankId}/parts/plan?members=${members}`,
  planPartWorking: (tankId: string, figure: string, members: number) =>
    `/tanks/${tankId}/parts/working/${encodeURIComponent(figure)}?members=${members}`,
} as const;
