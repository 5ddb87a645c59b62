/**
 * Puts the invented tanks into a store that has never held a tank: for trying out, beside "new tank". Once only: who
 * takes them away does not meet them again.
 */
import { readReading } from "../../contract/daybook/read-reading.ts";
import type { Desk, Json, NewEntry, Stamp, Store } from "../../store/store.ts";
import { readDocument } from "../load-tank.ts";
import { newId } from "../new-id.ts";
import { readingContextOf } from "../reading-context.ts";
import { inventedReadings } from "./readings.ts";
import { type Demonstration, demonstrations } from "./tanks.ts";

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
  { keeper, document, readings }: Demonstration,
  today: string,
  stamp: Stamp,
) {
  const id = newId();
  const { id: keeperId } = await desk.keeperNamed(keeper, newId(), stamp);
  await desk.addTank({ id, keeperId, demonstration: true, facts: document as unknown as Json }, stamp);
  if (readings === "two months") await desk.addEntries(id, entriesOf(document, today, stamp.at), stamp);
}

function entriesOf(document: Demonstration["document"], today: string, now: string): NewEntry[] {
  const read = readDocument(document, today);
  if (!read.ok) throw new Error(`An invented tank can't be read: ${read.findings[0]?.message.text}`);
  const context = readingContextOf({ document, facts: read.facts }, { today, now });
  return inventedReadings(today).map((typed) => {
    const reading = readReading(typed, context);
    if (!reading.ok) throw new Error(`An invented reading can't be read: ${reading.doubts[0]?.message.text}`);
    return { id: newId(), kind: "reading", on: reading.on, body: reading.body };
  });
}
