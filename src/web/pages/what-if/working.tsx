/** Working of a figure as it would be with a change: the change in words above it, further workings with the same. */
import { type Page, to } from "../../page.ts";
import { WorkingOf } from "../../parts/tank-context.ts";
import { type TankWorkingView, WorkingArticle } from "../working.tsx";

export function whatIfWorkingPage(view: TankWorkingView, changes: readonly string[], query: string): Page {
  const { head, figure } = view;
  return {
    title: `How do you know? ${figure.label}, what if`,
    tank: head,
    here: null,
    body: (
      <WorkingOf.Provider value={(_, id) => to.whatIfWorking(head.id, id, query)}>
        <p class="note">
          What if {changes.join("; ")}? Nothing of it is saved.{" "}
          <a href={`${to.tank(head.id, "what-if")}?${query}`}>The change and its answers</a>
        </p>
        <WorkingArticle {...view} />
      </WorkingOf.Provider>
    ),
  };
}
