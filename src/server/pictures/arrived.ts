/** What an order was followed by, and what came dead lately, each with its pictures. */
import { arrivalsOf, deadOnArrival, type Of } from "../../answers/arrivals/evidence.ts";
import type { DaybookEntry } from "../../contract/daybook/kinds.ts";
import type { Desk } from "../../store/store.ts";
import type { Arrived } from "../../web/pages/arrived.tsx";
import { entrySentence } from "../../web/pages/daybook-words.ts";
import { picturesBeside } from "./view.ts";

/** Of an order: its arrivals. Null for other kinds. */
export const arrivedPictures = async (
  entry: DaybookEntry,
  entries: readonly DaybookEntry[],
  store: Desk,
): Promise<readonly Arrived[] | null> =>
  entry.kind === "order" ? await withPictures(arrivalsOf(entry, entries), store) : null;

/** `from`: ISO date. */
export const deadLately = (
  entries: readonly DaybookEntry[],
  from: string,
  store: Desk,
): Promise<readonly Arrived[]> => withPictures(deadOnArrival(entries, from).slice(0, MOST_SHOWN), store);

const MOST_SHOWN = 10;

async function withPictures(arrivals: readonly Of<"addition">[], store: Desk): Promise<readonly Arrived[]> {
  const pictures = await picturesBeside(arrivals, store);
  return arrivals.map((one) => ({
    ...{ id: one.id, on: one.on, sentence: entrySentence(one), dead: one.body.dead_on_arrival },
    pictures: pictures.get(one.id) ?? [],
  }));
}
