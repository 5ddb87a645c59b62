/** Heads of one tank: who lives here, how sure, what would settle it; what is missing, who is too many. */

import { counted, dateWords } from "../../answers/words.ts";
import type { HeadsOutput, KindOutput } from "../../contract/output/heads.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { capital } from "../parts/text.ts";
import { HeadsChart } from "./heads-chart.tsx";
import { HeadsKind } from "./heads-kind.tsx";
import { HeadsLosses } from "./heads-losses.tsx";
import { Orders, WayDown } from "./heads-orders.tsx";

export interface HeadsView {
  readonly head: TankHead;
  readonly output: HeadsOutput;
}

export function headsPage({ head, output }: HeadsView): Page {
  const { kinds, not_followed: others } = output;
  const finding = headsFinding(kinds);
  const asked = kinds.flatMap((kind) => (kind.question === null ? [] : [{ kind, question: kind.question }]));
  return {
    title: `Heads: ${finding}`,
    tank: head,
    here: "heads",
    body: (
      <>
        <h1>{capital(finding)}</h1>
        <p class="gloss">
          Heads: living animals, kind by kind, on {dateWords(output.tank.as_of)}, from what was added, found,
          missed and counted. A head not seen is not a head dead.
        </p>
        {kinds.length === 0 ? (
          <p>
            <a class="action" href={to.newEntry(head.id, "addition")}>
              Log an addition
            </a>
          </p>
        ) : (
          <HeadsChart kinds={kinds} title={chartTitle(kinds)} />
        )}
        {asked.map(({ kind, question }) => (
          <HeadsLosses key={kind.id} kind={kind} question={question} />
        ))}
        {kinds.length === 0 ? null : (
          <>
            <Orders output={output} />
            <WayDown output={output} />
            <h2>Kind by kind</h2>
            {kinds.map((kind) => (
              <HeadsKind key={kind.id} tank={head.id} kind={kind} />
            ))}
          </>
        )}
        {others.length === 0 ? null : (
          <section>
            <h2>Not counted by the head</h2>
            <ul>
              {others.map(({ id, name, why }) => (
                <li key={id}>
                  {capital(name)}: {why}
                </li>
              ))}
            </ul>
          </section>
        )}
      </>
    ),
  };
}

/** Heads that a band may be wide before a count is worth its evening. */
const WIDE = 2;
const isWide = ({ living }: KindOutput): boolean => living.high - living.low >= WIDE;

export function headsFinding(kinds: readonly KindOutput[]): string {
  if (kinds.length === 0) return "nobody is on record yet";
  const asked = kinds.filter(({ question }) => question !== null);
  const [first] = asked;
  if (first !== undefined) {
    const more = asked.length - 1;
    return `more ${counted(2, first.name).slice(2)} are missing than usual${more === 0 ? "" : `, and ${counted(more, "further kind")}`}`;
  }
  const wide = kinds.filter(isWide);
  if (wide.length === 0) {
    return kinds.length === 1
      ? "the one kind is known to about a head"
      : `all ${kinds.length} kinds are known to about a head`;
  }
  return `${wide.length} of ${counted(kinds.length, "kind")} ${wide.length === 1 ? "wants" : "want"} a count to be sure`;
}

/** Another finding than the page's. */
function chartTitle(kinds: readonly KindOutput[]): string {
  const came = kinds.reduce((sum, one) => sum + one.came, 0);
  const likely = kinds.reduce((sum, { living }) => sum + living.likely, 0);
  return `Of ${counted(came, "head")} that came, most likely ${likely} live`;
}
