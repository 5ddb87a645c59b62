/**
 * The what-if beside today: larder, plan and weeks ahead in tables of two columns, the change in words above them, and
 * from how many runs it was worked out. Drawn by the server and, while a keeper types, by the browser.
 */
import type { ComponentChildren } from "preact";
import { Quantity } from "../../parts/quantity.tsx";
import { Table } from "../../parts/table.tsx";
import { unitText } from "../../parts/text.ts";
import type { BesideView, Pair, Shown } from "./beside.ts";

/** From this many runs on, the answer is called refined. */
const REFINED = 200;

const runsWords = (members: number): string =>
  members >= REFINED
    ? "Refined with two hundred runs."
    : members === 20
      ? "From twenty runs."
      : `From ${members} runs.`;

export function Beside({
  view,
  more,
}: {
  readonly view: BesideView;
  /** After the line of the runs: a way to refine it. */
  readonly more?: ComponentChildren;
}) {
  const { members, changes, shelves, differs, kinds, levels, lastDay, chances, starving } = view;
  return (
    <>
      <h2>{`With ${changes.join("; ")}`}</h2>
      <p class="note">
        {runsWords(members)} {more}
      </p>
      <h3>Larder: what the tank would make as food</h3>
      <Pairs caption="Rations a day" rows={shelves} first="Shelf" />
      <h3>Plan: whom to add in all</h3>
      <p>{planWords(kinds.length, differs)}</p>
      {kinds.length === 0 ? null : (
        <Pairs caption="Heads to add, over all waves" rows={kinds} first="Animal" />
      )}
      <h3>Weeks ahead: how it could go</h3>
      <Pairs
        caption={`Middle of the runs on ${lastDay}, and the range of 18 of 20`}
        rows={levels}
        first="In the water"
      />
      <Pairs caption={`Above a limit on some day until ${lastDay}`} rows={chances} first="Limit" />
      {starving.length === 0 ? null : (
        <Pairs
          caption="Half or more of a kind starve, beyond what age takes"
          rows={starving}
          first="Animal"
        />
      )}
    </>
  );
}

function planWords(kinds: number, differs: readonly string[]): string {
  if (kinds === 0) return "Nobody is to be added, today or with the change.";
  if (differs.length === 0) return "The same kinds and numbers as in today's plan.";
  return `Other numbers than in today's plan: ${differs.join(", ")}.`;
}

function Pairs({ caption, rows, first }: { caption: string; rows: readonly Pair[]; first: string }) {
  return (
    <Table
      caption={caption}
      columns={[{ name: first }, { name: "Today" }, { name: "With the change" }]}
      rows={rows.map(({ name, today, changed }) => [
        name,
        <Cell key="today" of={today} />,
        <Cell key="changed" of={changed} differs={today.text !== changed.text} />,
      ])}
    />
  );
}

function Cell({ of, differs = false }: { readonly of: Shown; readonly differs?: boolean }) {
  const text = unitText(of.text);
  const words = differs ? <strong>{text}</strong> : text;
  return of.figure === null ? words : <Quantity figure={of.figure}>{words}</Quantity>;
}
