/** Working of a figure of a holiday: its dates above it, further workings with the same. */
import type { HolidaySpan } from "../../answers/holiday/packing.ts";
import { dateWords } from "../../answers/words.ts";
import { type Page, to } from "../page.ts";
import { WorkingOf } from "../parts/tank-context.ts";
import { type TankWorkingView, WorkingArticle } from "./working.tsx";

export function holidayWorkingPage(
  view: TankWorkingView,
  { from, to: back }: HolidaySpan,
  query: string,
): Page {
  const { head, figure } = view;
  return {
    title: `How do you know? ${figure.label}`,
    tank: head,
    here: null,
    body: (
      <WorkingOf.Provider value={(_, id) => to.holidayWorking(head.id, id, query)}>
        <p class="note">
          Away from {dateWords(from)} to {dateWords(back)}.{" "}
          <a href={to.holiday(head.id, query)}>That holiday</a>
        </p>
        <WorkingArticle {...view} />
      </WorkingOf.Provider>
    ),
  };
}
