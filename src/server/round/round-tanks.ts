/**
 * All tanks of a store as the round judges them. What a tank asks for is worked out once and held until its answers or
 * its daybook change, or the day does; which have changed is one question to the store. So a dangerous reading moves its
 * tank up at the next look, whichever program kept it. Work is done in turns, so that others are answered meanwhile.
 * What takes longer, trends and heads, is read after the answer was given: closer-look.ts.
 */
import { setImmediate as otherTurn } from "node:timers/promises";
import { type RoundSummary, type RoundTank, summaryOf } from "../../answers/round/round.ts";
import { findAnimal } from "../../catalogue/index.ts";
import { readTankData } from "../../contract/tank-file/read.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import type { EntryRow, Store, TankRow } from "../../store/store.ts";
import { nameOf } from "../name-of.ts";
import { closerAdvice, endCloserLooks, lookCloser } from "./closer-look.ts";
import { keptAdvice } from "./kept-advice.ts";
import { knownFrom, presentWith, RECENT } from "./known-tank.ts";

interface Held {
  readonly state: string;
  readonly summary: RoundSummary;
}
const heldFor = new WeakMap<Store, Map<string, Held>>();

/** Tanks that are read between two turns: each takes about a millisecond. */
const TANKS_A_TURN = 8;

/** One look at a time: a second one finds done what the first did. */
const looking = new WeakMap<Store, Promise<unknown>>();

export function roundTanks(
  store: Store,
  today: string,
  isOver: () => boolean = () => false,
): Promise<readonly RoundTank[]> {
  const mine = (looking.get(store) ?? Promise.resolve()).then(() => look(store, today, isOver));
  looking.set(
    store,
    mine.catch(() => {}),
  );
  return mine;
}

/** Reads trends, heads and growths of the tanks that have changed since they were last read, the neediest given first. */
export async function readCloser(store: Store, ids: readonly string[], today: string): Promise<void> {
  const rows = new Map((await store.tanks()).map((row) => [row.id, row]));
  const marks = await store.entryMarks(ids);
  const marked = ids.flatMap((id) => {
    const row = rows.get(id);
    return row === undefined ? [] : [{ id, state: stateIn(row, marks, today) }];
  });
  await lookCloser(store, marked, today);
}

const stateIn = ({ id, version }: TankRow, marks: ReadonlyMap<string, number>, today: string): string =>
  `${version} ${marks.get(id) ?? 0} ${today}`;

async function look(store: Store, today: string, isOver: () => boolean): Promise<readonly RoundTank[]> {
  const rows = await store.tanks();
  const marks = await store.entryMarks(rows.map(({ id }) => id));
  const held = heldFor.get(store) ?? new Map<string, Held>();
  heldFor.set(store, held);
  const stateOf = (row: TankRow) => stateIn(row, marks, today);
  const changed = rows.filter((row) => held.get(row.id)?.state !== stateOf(row));
  for (let start = 0; start < changed.length && !isOver(); start += TANKS_A_TURN) {
    const some = changed.slice(start, start + TANKS_A_TURN);
    const entries = await entriesOf(store, some);
    for (const row of some) {
      held.set(row.id, { state: stateOf(row), summary: summarise(row, entries.get(row.id) ?? [], today) });
    }
    await otherTurn();
  }
  const there = new Set(rows.map(({ id }) => id));
  for (const id of held.keys()) if (!there.has(id)) held.delete(id);
  return rows.flatMap((row): RoundTank[] => {
    const summary = held.get(row.id)?.summary;
    if (summary === undefined) return [];
    const { id, keeper, demonstration } = row;
    const closer = closerAdvice(store, { id, state: stateOf(row) });
    const engine = [...keptAdvice(store, id, today), ...closer.advice];
    const stillReading = !closer.current;
    return [{ ...summary, id, name: nameOf(row), keeper: keeper.name, demonstration, engine, stillReading }];
  });
}

/**
 * Looks the tanks over ahead of the first round, so that nobody waits for it: a second for 400 tanks, in turns.
 * To be stopped before the store is closed.
 */
export function lookAhead(store: Store, today: string): { readonly stop: () => Promise<void> } {
  let over = false;
  // What goes wrong here goes wrong again for who asks, and is told there.
  const looked = roundTanks(store, today, () => over)
    .then((tanks) =>
      readCloser(
        store,
        tanks.map(({ id }) => id),
        today,
      ),
    )
    .catch(() => {});
  return {
    stop: async () => {
      over = true;
      await endCloserLooks(store);
      await looked;
    },
  };
}

async function entriesOf(
  store: Store,
  rows: readonly TankRow[],
): Promise<ReadonlyMap<string, readonly EntryRow[]>> {
  const entries = await store.recentEntries(
    rows.map(({ id }) => id),
    RECENT,
  );
  const byTank = new Map<string, EntryRow[]>();
  for (const entry of entries) {
    const some = byTank.get(entry.tankId);
    if (some === undefined) byTank.set(entry.tankId, [entry]);
    else some.push(entry);
  }
  return byTank;
}

function summarise(row: TankRow, entries: readonly EntryRow[], today: string): RoundSummary {
  const document = row.facts as unknown as TankFile;
  const read = readTankData(document, { today, findAnimal });
  // Kept by another program, and no longer to be read: nobody can say how it is.
  if (!read.ok) return { quick: [UNREAD], declines: [], lastOn: entries.at(-1)?.on ?? null };
  const { facts, notices } = read;
  const known = knownFrom(row, { facts, document, notices }, entries, today);
  const present = presentWith(facts.present, known.record, known.answeredOn ?? today);
  return summaryOf({ ...known, facts: { ...facts, present } });
}

const UNREAD: RoundSummary["quick"][number] = {
  id: "unread",
  urgency: "this_week",
  weight: 89,
  about: "missing",
  do: ["Open it: its answers can't be read as they are kept."],
  why: [["What was kept of it can't be read by this program, so nothing can be said of it."]],
  byWhen: ["This week."],
  by: null,
  wouldChange: ["Answers that can be read again."],
  act: { words: "Open it", leads: "questions" },
  wait: { words: "Wait", leads: "daybook" },
};
