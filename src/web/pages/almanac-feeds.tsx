/** Addresses by which a calendar program asks for a tank's duties: made, told once, taken back. */
import { dateWords } from "../../answers/words.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Notice } from "../parts/notice.tsx";

export interface FeedsView {
  readonly head: TankHead;
  readonly feeds: readonly {
    readonly id: string;
    readonly made: { readonly at: string };
    readonly takenBack: { readonly at: string } | null;
  }[];
  /** The address that was made just now; it is not told again. */
  readonly made: string | null;
}

export function feedsPage({ head, feeds, made }: FeedsView): Page {
  const standing = feeds.filter(({ takenBack }) => takenBack === null);
  const gone = feeds.filter(({ takenBack }) => takenBack !== null);
  return {
    title: `Calendar addresses, ${head.name}`,
    tank: head,
    here: "almanac",
    body: (
      <>
        <h1>Addresses for a calendar program</h1>
        <p class="lead">
          A calendar program that asks such an address has the almanac's duties, and asks again by itself.
          Whoever knows the address can read the duties of this tank, and nothing else of it; nothing can be
          changed by it.
        </p>
        {made === null ? null : (
          <Notice kind="done" title="Made. Copy it now: it is not told again">
            <p>
              <code class="almanac-address">{made}</code>
            </p>
            <p>It answers where this page does: on this machine.</p>
          </Notice>
        )}
        <section>
          <h2>Standing</h2>
          {standing.length === 0 ? <p>None.</p> : null}
          <ul>
            {standing.map(({ id, made: { at } }) => (
              <li key={id}>
                <form method="post" action={to.calendarFeeds(head.id)}>
                  Made {instant(at)}{" "}
                  <button type="submit" name="take_back" value={id}>
                    Take it back
                  </button>
                </form>
              </li>
            ))}
          </ul>
          <form method="post" action={to.calendarFeeds(head.id)}>
            <div class="actions">
              <button type="submit" name="make" value="1" class="first">
                Make an address
              </button>
              <a class="action" href={to.tank(head.id, "almanac")}>
                Back to the almanac
              </a>
            </div>
          </form>
        </section>
        {gone.length === 0 ? null : (
          <section>
            <h2>Taken back</h2>
            <ul>
              {gone.map(({ id, made: { at }, takenBack }) => (
                <li key={id}>
                  Made {instant(at)}, taken back {takenBack === null ? "" : instant(takenBack.at)}
                </li>
              ))}
            </ul>
          </section>
        )}
      </>
    ),
  };
}

const instant = (at: string): string => `${dateWords(at.slice(0, 10))}, ${at.slice(11, 16)} UTC`;
