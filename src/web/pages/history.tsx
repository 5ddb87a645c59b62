/** What was told of a tank, version by version: nothing is ever lost, and any of them is one step away. */
import { type Page, type TankHead, to } from "../page.ts";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { Field } from "../parts/field.tsx";
import { Notice } from "../parts/notice.tsx";

export interface VersionLine {
  readonly version: number;
  readonly written: string;
  readonly by: string;
  /** Labels of what changed; empty for the first. */
  readonly changed: readonly string[];
  readonly kept: boolean;
}

export interface HistoryView {
  readonly head: TankHead;
  /** Latest first. */
  readonly versions: readonly VersionLine[];
  /** What could not be done, and why. */
  readonly error: { readonly field: string; readonly text: string } | null;
  readonly typedName: string;
}

export function historyPage({ head, versions, error, typedName }: HistoryView): Page {
  const current = versions[0]?.version ?? 1;
  const gone = versions[0]?.kept === false;
  const address = to.history(head.id);
  return {
    title: `${error === null ? "" : "Error: "}History of ${head.name}`,
    tank: gone ? null : head,
    here: null,
    body: (
      <>
        <ErrorSummary errors={error === null ? [] : [error]} />
        <h1>History of {head.name}</h1>
        {gone ? (
          <Notice kind="note" title="Taken away">
            <form method="post" action={address} class="beside-actions">
              <input type="hidden" name="version" value={current} />
              <button type="submit" name="go" value="bring_back">
                Bring this tank back
              </button>
            </form>
          </Notice>
        ) : null}
        <p class="lead">Every change is kept. Going back adds a version too, so nothing is lost by it.</p>
        <ul class="plain-list" id="versions">
          {versions.map(({ version, written, by, changed, kept }) => (
            <li key={version}>
              <p>
                {written}, by {by}:{" "}
                {kept ? (changed.length === 0 ? "begun" : changed.join(", ")) : "taken away"}
                {version === current ? " (now)" : ""}
              </p>
              {version === current || gone || !kept ? null : (
                <form method="post" action={address}>
                  <input type="hidden" name="version" value={current} />
                  <input type="hidden" name="restore" value={version} />
                  <button
                    type="submit"
                    class="plain"
                    aria-label={`Go back to this: version ${version} of ${written}`}
                  >
                    Go back to this
                  </button>
                </form>
              )}
            </li>
          ))}
        </ul>
        {gone ? null : (
          <section>
            <h2>Take this tank away</h2>
            <p>It leaves the list with its readings. This page, by its address, brings it back.</p>
            <form method="post" action={address} novalidate>
              <input type="hidden" name="version" value={current} />
              <Field
                name="confirm"
                label={`Type its name: ${head.name}`}
                value={typedName}
                width="middle"
                error={error?.field === "confirm" ? { text: error.text } : null}
              />
              <button type="submit" name="go" value="take_away">
                Take it away
              </button>
            </form>
          </section>
        )}
      </>
    ),
  };
}
