/** The course of water and growths: middle and band by date; with a what-if, side by side on a date. */

import { amountBand, SHOWN } from "../../answers/ahead/amounts.ts";
import type { Outlook } from "../../answers/ahead/outlook.ts";
import { acrossMembers } from "../../engine/ahead/forecast.ts";
import { bandOf } from "../../engine/numeric/quantile.ts";
import { grid } from "./grid.ts";
import type { Page } from "./page.ts";

/** A quarter of a year: far enough for film and hair algae to show, near enough to act on. */
const QUARTER_WEEKS = 13;

export function courseText({ outlooks, courses, facts, lastWeek, dateOf, say, io }: Page): string {
  const [asItIs, whatIf] = outlooks;
  const rows = SHOWN.filter(({ id }) => facts.sandM2.high > 0 || id !== "detritus_sand");
  const cell = ({ course }: Outlook, week: number, shown: (typeof SHOWN)[number]) =>
    amountBand(bandOf(acrossMembers(course.forecast.quantities[shown.id], week)), shown);
  const title = say(
    `${io.bold("Middle of the runs")} (18 of 20 lie between the figures in brackets). Water in mg/L, ammonia and nitrite as N, nitrate as NO3, phosphate as PO4; growths in g of carbon a m2`,
  );
  const weeks = [...new Set([Math.min(QUARTER_WEEKS, lastWeek), lastWeek])];
  if (whatIf === undefined) {
    const dates = ["", "today", ...weeks.map(dateOf)];
    const lines = rows.map((row) => [row.label, ...[0, ...weeks].map((week) => cell(asItIs, week, row))]);
    return [title, grid(dates, lines, io.width)].join("\n");
  }
  const tables = weeks.map((week) => {
    const lines = rows.map((row) => [row.label, ...outlooks.map((one) => cell(one, week, row))]);
    return grid([dateOf(week), ...courses], lines, io.width);
  });
  return [title, ...tables].join("\n");
}
