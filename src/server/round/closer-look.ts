/**
 * What trends, heads, growths and the start-up ask for in each tank, for the round: a few hundredths of a second a tank,
 * so it is read behind the round's back, one tank a turn, and held until answers, daybook or day change. Until a changed
 * tank is read again what it asked for before stands, and the round says that it is still reading.
 */
import { setImmediate as otherTurn } from "node:timers/promises";
import type { Advice } from "../../answers/advice.ts";
import { recordAnswersInSteps } from "../../answers/record-answers.ts";
import { shownIn } from "../../answers/units-shown.ts";
import type { Store } from "../../store/store.ts";
import { inTurn } from "../bring-in/in-turn.ts";
import { loadTank, TankUnread } from "../load-tank.ts";

/** A tank and what it is like: its versions and the day. */
export interface Marked {
  readonly id: string;
  readonly state: string;
}

interface Held {
  readonly state: string;
  readonly advice: readonly Advice[];
}
const heldFor = new WeakMap<Store, Map<string, Held>>();
const reading = new WeakMap<Store, Promise<void>>();
const over = new WeakSet<Store>();

const heldBy = (store: Store): Map<string, Held> => {
  const held = heldFor.get(store) ?? new Map<string, Held>();
  heldFor.set(store, held);
  return held;
};

export function closerAdvice(
  store: Store,
  { id, state }: Marked,
): { readonly advice: readonly Advice[]; readonly current: boolean } {
  const known = heldBy(store).get(id);
  return { advice: known?.advice ?? [], current: known?.state === state };
}

/** Reads those that have changed; one look at a time, so a second one finds done what the first did. */
export function lookCloser(store: Store, tanks: readonly Marked[], today: string): Promise<void> {
  const mine = (reading.get(store) ?? Promise.resolve()).then(() => look(store, tanks, today));
  // What goes wrong here goes wrong again on the tank's own bench, and is told there.
  const quiet = mine.catch(() => {});
  reading.set(store, quiet);
  return quiet;
}

/** Before the store is closed. */
export function endCloserLooks(store: Store): Promise<void> {
  over.add(store);
  return reading.get(store) ?? Promise.resolve();
}

async function look(store: Store, tanks: readonly Marked[], today: string): Promise<void> {
  const held = heldBy(store);
  for (const { id, state } of tanks) {
    if (over.has(store)) return;
    if (held.get(id)?.state === state) continue;
    held.set(id, { state, advice: await listsOf(store, id, today) });
    await otherTurn();
  }
}

/** None of a tank that can't be read: the round says that of it by itself. */
async function listsOf(store: Store, id: string, today: string): Promise<readonly Advice[]> {
  try {
    const tank = await loadTank(store, id, today);
    if (tank === null) return [];
    const { facts, record, document } = tank;
    return (await inTurn(recordAnswersInSteps({ facts, record, today }, shownIn(document.preferences))))
      .advice;
  } catch (error) {
    if (error instanceof TankUnread) return [];
    throw error;
  }
}
