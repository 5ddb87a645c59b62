/**
 * Whose tank? Kept tanks with their keeper and one line each, those in danger first; the invented ones apart. What to
 * do first is "New tank". Also says so where nothing is kept yet.
 */
import { type Page, to } from "../page.ts";
import { Urgency } from "../parts/urgency.tsx";

export interface TankLine {
  readonly id: string;
  readonly name: string;
  readonly keeper: string;
  /** "55 US gal, first seawater 1 May 2026. Last reading 12 days ago." */
  readonly line: string;
  /** What can't wait; null where nothing is known to. */
  readonly danger: string | null;
}

export interface StartView {
  readonly own: readonly TankLine[];
  readonly invented: readonly TankLine[];
}

export function startPage({ own, invented }: StartView): Page {
  return {
    title: "Whose tank?",
    tank: null,
    here: null,
    body: (
      <>
        <h1>Whose tank?</h1>
        <p class="lead">
          Grazewell works out which clean-up crew a marine reef tank can feed, and when. It starts with one
          question.
        </p>
        <p>
          <a class="action first" href={to.newTank()}>
            New tank
          </a>
        </p>
        <h2>Kept here</h2>
        <p>
          <a href={to.round()}>Round: who needs me?</a> All tanks, the neediest first.
        </p>
        {own.length === 0 ? (
          <p>No tank is kept here yet. A new one takes one answer, and can be taken away again.</p>
        ) : (
          <TankList tanks={own} />
        )}
        {invented.length === 0 ? null : (
          <section class="invented-tanks" aria-labelledby="invented">
            <h2 id="invented">Invented, for trying out</h2>
            <p>Nobody keeps these. Change them as you like.</p>
            <TankList tanks={invented} />
          </section>
        )}
      </>
    ),
  };
}

function TankList({ tanks }: { readonly tanks: readonly TankLine[] }) {
  return (
    <ul class="tank-list">
      {tanks.map(({ id, name, keeper, line, danger }) => (
        <li key={id}>
          <p>
            <a href={to.tank(id)}>{name}</a>, kept by {keeper}
          </p>
          {danger === null ? null : (
            <p>
              <Urgency level="today" />: {danger}
            </p>
          )}
          <p class="note">{line}</p>
        </li>
      ))}
    </ul>
  );
}
