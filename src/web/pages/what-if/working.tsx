/** Working of a figure as it would be with a change: the change in words above it, further workings with the same. */
import { type Page, to } from "../../page.ts";
import { WorkingOf } from "../../parts/tank-context.ts";
import { WorkingArticle, type WorkingView } from "../working.tsx";

export function whatIfWorkingPage(view: WorkingView, changes: readonly string[], query: string): Page {
  const { head, figure } = view;
  return {
    title: `How do you know? ${figure.label}, what if`,
    tank: head,
    here: null,
    body: (
      <WorkingOf.Provider value={(tank, id) => to.whatIfWorking(tank, id, query)}>
        <p class="note">
          What if {changes.join("; ")}? Nothing of it is saved.{" "}
          <a href={`${to.tank(head.id, "what-if")}?${query}`}>The change and its answers</a>
        </p>
        <WorkingArticle {...view} />
      </WorkingOf.Provider>
    ),
  };
}
