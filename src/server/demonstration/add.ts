/**
 * Puts the invented tanks into a store that has never held a tank: for trying out, beside "new tank". Once only: who
 * takes them away does not meet them again.
 */
import { entryContext } from "../../answers/record/entry-context.ts";
import type { DaybookEntry } from "../../contract/daybook/kinds.ts";
import { readEntry } from "../../contract/daybook/read-entry.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import type { Desk, Json, NewEntry, Stamp, Store } from "../../store/store.ts";
import { readDocument } from "../load-tank.ts";
import { newId } from "../new-id.ts";
import { type InventedEntry, inventedDaybook } from "./daybooks.ts";
import { before, type Demonstration, demonstrations } from "./tanks.ts";

const DONE = "demonstration";
const BY = "Grazewell (invented)";

export async function addDemonstration(store: Store, today: string, now: string): Promise<void> {
  const stamp = { at: now, by: BY };
  await store.together(async (desk) => {
    if ((await desk.setting(DONE)) !== null || (await desk.tanks()).length > 0) return;
    await desk.saveSetting(DONE, { added_on: today }, stamp);
    for (const one of demonstrations(today)) await addOne(desk, one, today, stamp);
  });
}

async function addOne(
  desk: Desk,
  { keeper, document, daybook, givenDaysAgo }: Demonstration,
  today: string,
  stamp: Stamp,
) {
  const id = newId();
  const { id: keeperId } = await desk.keeperNamed(keeper, newId(), stamp);
  const given = { ...stamp, at: `${before(today, givenDaysAgo)}T09:00:00.000Z` };
  await desk.addTank({ id, keeperId, demonstration: true, facts: document as unknown as Json }, given);
  await desk.addEntries(id, entriesOf(document, inventedDaybook(daybook, today), today, stamp.at), stamp);
}

function entriesOf(
  document: TankFile,
  invented: readonly InventedEntry[],
  today: string,
  now: string,
): readonly NewEntry[] {
  const read = readDocument(document, today);
  if (!read.ok) throw new Error(`An invented tank can't be read: ${read.findings[0]?.message.text}`);
  const { facts } = read;
  const entries: DaybookEntry[] = [];
  for (const { kind, typed } of invented) {
    const context = entryContext({ document, facts, entries, since: {} }, { today, now });
    const entry = readEntry(kind, typed, context);
    if (!entry.ok) throw new Error(`An invented entry can't be read: ${entry.doubts[0]?.message.text}`);
    entries.push({ id: newId(), kind, on: entry.on, body: entry.body } as DaybookEntry);
  }
  return entries;
}
