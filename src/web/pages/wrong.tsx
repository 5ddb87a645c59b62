/**
 * Something is wrong: the entry, and one page a trouble. Static, plain words, for somebody under stress: no metaphor, no
 * script, no engine. Each list stands whole on a small phone; numbers of a tank are a page of their own behind it.
 */
import { CRISIS_IDS, type CrisisId } from "../../answers/wrong/list-ids.ts";
import { AFTERWARDS, BEFORE, CRISIS_GROUPS, CRISIS_LISTS } from "../../answers/wrong/lists.ts";
import { type Page, to } from "../page.ts";

/** The tank that the reader came from; null where nobody said, or it can't be read. */
export type FromTank = { readonly id: string; readonly name: string } | null;

interface EntryView {
  readonly tank: FromTank;
  /** A list was asked for that there is not. */
  readonly noSuchList?: boolean;
}

export function wrongPage({ tank, noSuchList = false }: EntryView): Page {
  const groups = Object.keys(CRISIS_GROUPS) as (keyof typeof CRISIS_GROUPS)[];
  return {
    title: "Something is wrong",
    tank: null,
    here: null,
    body: (
      <div class="crisis">
        <h1>Something is wrong</h1>
        {noSuchList ? <p>There is no list of that name. These are all of them.</p> : null}
        <p class="crisis-before">
          <strong>{BEFORE}</strong> What do you see?
        </p>
        {groups.map((group) => (
          <section key={group} class="crisis-group" aria-labelledby={`about-${group}`}>
            <h2 id={`about-${group}`}>{CRISIS_GROUPS[group]}</h2>
            <ul>
              {CRISIS_IDS.filter((id) => CRISIS_LISTS[id].about === group).map((id) => (
                // Named as the lists were when they stood on this page: an old link still lands on its door.
                <li key={id} id={id}>
                  <a href={to.wrongList(id, tank?.id)}>{CRISIS_LISTS[id].see}</a>
                </li>
              ))}
            </ul>
          </section>
        ))}
        <h2>Afterwards</h2>
        <p>{AFTERWARDS}</p>
        <BackTo tank={tank} />
      </div>
    ),
  };
}

interface ListView {
  readonly list: CrisisId;
  readonly tank: FromTank;
  /** Numbers of a tank stand behind this list. */
  readonly hasNumbers: boolean;
}

export function wrongListPage({ list, tank, hasNumbers }: ListView): Page {
  const { see, lines } = CRISIS_LISTS[list];
  return {
    title: `${see}: what to do first`,
    tank: null,
    here: null,
    body: (
      <div class="crisis">
        <h1>{see}</h1>
        <ol>
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ol>
        <p>
          <a class="action" href={to.wrong(tank?.id)}>
            Something else
          </a>
        </p>
        {hasNumbers ? <Numbers list={list} tank={tank} /> : null}
        <h2>Afterwards</h2>
        <p>{AFTERWARDS}</p>
        <BackTo tank={tank} />
      </div>
    ),
  };
}

function Numbers({ list, tank }: { readonly list: CrisisId; readonly tank: FromTank }) {
  if (tank === null)
    return (
      <p>
        Numbers for your own tank stand behind this list: open it from a page of that tank, or{" "}
        <a href={to.start()}>choose a tank</a>.
      </p>
    );
  return (
    <p>
      <a href={to.wrongNumbers(tank.id, list)}>The numbers behind this, for {tank.name}</a>
    </p>
  );
}

function BackTo({ tank }: { readonly tank: FromTank }) {
  return tank === null ? null : (
    <p>
      <a href={to.tank(tank.id)}>Back to {tank.name}</a>
    </p>
  );
}
