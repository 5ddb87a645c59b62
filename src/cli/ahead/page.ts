/** What every part of the page needs: the report, its dates, how to break lines. */

import type { Outlook } from "../../answers/ahead/outlook.ts";
import type { AheadReport } from "../../answers/ahead/report.ts";
import { dateWords, wrap } from "../../answers/words.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import { ROW_DAYS } from "../../engine/ahead/forecast.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Io } from "../io.ts";

export interface Page {
  readonly report: AheadReport;
  readonly facts: TankFacts;
  readonly io: Io;
  /** Today's course, and that of a what-if where there is one. */
  readonly outlooks: readonly [Outlook] | readonly [Outlook, Outlook];
  /** Heads of their columns. */
  readonly courses: readonly string[];
  readonly lastWeek: number;
  readonly dateOf: (week: number) => string;
  readonly say: (text: string, first?: string, later?: string) => string;
}

export function pageOf(report: AheadReport, facts: TankFacts, io: Io): Page {
  const { asItIs, whatIf } = report;
  return {
    report,
    facts,
    io,
    outlooks: whatIf === null ? [asItIs] : [asItIs, whatIf],
    courses: whatIf === null ? ["chance"] : ["as it is", "what if"],
    lastWeek: asItIs.course.forecast.weeks - 1,
    dateOf: (week) => dateWords(addDays(facts.asOf, Math.round(week) * ROW_DAYS)),
    say: (text, first = "", later = first) => wrap(text, io.width, first, later),
  };
}
