/**
 * "Learn again from the daybook": a form that asks the server, and what client/learn-again makes of it where script
 * runs: the browser's own engine learns, told how far, stopped at a press, and what moved stands below.
 */
import { dateWords } from "../../../answers/words.ts";
import { bandWords, SEEN_WORDS } from "../../charts/learned-words.ts";
import { to } from "../../page.ts";
import { Quantity } from "../../parts/quantity.tsx";
import { Table } from "../../parts/table.tsx";
import { capital } from "../../parts/text.ts";
import { type LearnedSeen, type Moved, movedBetween } from "./seen.ts";

interface AgainProps {
  readonly tank: string;
  /** What this page shows; null where nothing has been learned yet. */
  readonly was: LearnedSeen | null;
  /** A sentence of what came since; null where the page is of today's daybook. */
  readonly since: string | null;
}

/**
 * What the client module finds (`[data-learn-again]`): `data-daybook` (address of what is learned from), a form, a line
 * for progress `[data-learn-says]`, a place for the rest `[data-learn-told]`, JSON of LearnedSeen `[data-learned-was]`.
 */
export function LearnAgain({ tank, was, since }: AgainProps) {
  return (
    <section class="learn-again" data-learn-again={tank} data-daybook={to.learnPart(tank)}>
      <h2>{since === null ? "Learn again" : "The daybook has gone on"}</h2>
      <p>
        {since === null ? "" : `${since} `}
        Two hundred versions of the tank are run through its days anew, which takes some seconds. Nothing is
        changed by it: it shows what moved.
      </p>
      <form method="get" action={to.learned(tank)}>
        <input type="hidden" name="wait" value="1" />
        <button type="submit">Learn again from the daybook</button>
      </form>
      <p role="status" data-learn-says />
      <div data-learn-told />
      <script
        type="application/json"
        data-learned-was
        // `<` would end the block.
        dangerouslySetInnerHTML={{ __html: JSON.stringify(was).replaceAll("<", "\\u003c") }}
      />
    </section>
  );
}

interface LearnedAgainProps {
  readonly tank: string;
  readonly was: LearnedSeen | null;
  readonly now: LearnedSeen;
}

/** What learning came to. */
export function LearnedAgain({ tank, was, now }: LearnedAgainProps) {
  const { taught, observations, least } = now;
  if (taught === null)
    return (
      <p>
        Not enough to learn from: {observations} observed in the last four months, and from {least} on it
        begins.
      </p>
    );
  const moved = movedBetween(was?.taught ?? null, taught.quantities);
  return (
    <>
      <h3>{movedSentence(moved.length, taught.quantities.length)}</h3>
      <p>
        Learned in this browser from {dateWords(taught.from)} to {dateWords(taught.to)}, from {observations}{" "}
        observed. The server learns the same by itself; larder, plan and weeks ahead follow it.{" "}
        <a href={`${to.learned(tank)}?wait=1`}>Show the whole page with it</a>
      </p>
      {moved.length === 0 ? null : <MovedTable moved={moved} known={(was?.taught ?? null) !== null} />}
    </>
  );
}

const movedSentence = (moved: number, all: number): string =>
  moved === 0
    ? `Nothing moved: all ${all} quantities are held as before`
    : `${moved} of ${all} quantities moved`;

function MovedTable({ moved, known }: { readonly moved: readonly Moved[]; readonly known: boolean }) {
  return (
    <Table
      caption={
        known
          ? "What moved, the furthest first, against what this page shows"
          : "What moved, the furthest first, against what is common in such tanks"
      }
      columns={[
        { name: "quantity" },
        { name: "was", numeric: true },
        { name: "now", numeric: true },
        { name: "seen" },
      ]}
      rows={moved.map(({ was, now: { label, unit, after, seen, figure } }) => [
        capital(label),
        <Quantity key="was" figure={figure}>
          {bandWords(was, unit)}
        </Quantity>,
        <Quantity key="now" figure={figure}>
          {bandWords(after, unit)}
        </Quantity>,
        SEEN_WORDS[seen],
      ])}
    />
  );
}
