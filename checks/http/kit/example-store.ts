/** The invented data that the API's examples speak of. */

import { readReading } from "../../../src/contract/daybook/read-reading.ts";
import { EXAMPLE, EXAMPLE_FACTS } from "../../../src/contract/http/examples.ts";
import { NO_PREFERENCES } from "../../../src/contract/quantity/preferences.ts";
import type { Json, Store } from "../../../src/store/store.ts";
import { JPEG, PNG } from "../../kit/pictures.ts";

const stamp = { at: "2026-06-10T08:00:00.000Z", by: "Ada (invented)" };

function nitrate(text: string): Json {
  const context = {
    preferences: NO_PREFERENCES,
    today: EXAMPLE.today,
    now: null,
    zone: null,
    stocked: true,
    notBefore: null,
  };
  const read = readReading(
    { quantity: "no3_mg_per_l", text, unit: "mg/L as NO3", observed: "2026-06-10" },
    context,
  );
  if (!read.ok) throw new Error(read.doubts[0]?.message.text);
  return read.body;
}

const lost: Json = {
  ...{ observed_text: "2026-06-10T07:30", observed_at: null, note: null },
  ...{ animal_text: "trochus snail", animal: "trochus-snail", count: 1 },
  ...{ certainty: "found", body_removed: true, cause: "unknown" },
};

const hair = (score: number): Json => ({
  observed_text: "2026-06-10",
  observed_at: null,
  note: null,
  growth: "hair_algae",
  score,
  score_text: String(score),
  traits: {},
});

export async function fillWithExamples(store: Store): Promise<void> {
  const { tank, goneTank, reading, goneReading, entry: growth, goneEntry } = EXAMPLE;
  await store.together(async (desk) => {
    const keeper = await desk.keeperNamed("Ada (invented)", "keeper-1", stamp);
    for (const id of [tank, goneTank]) {
      const facts = EXAMPLE_FACTS as unknown as Json;
      await desk.addTank({ id, keeperId: keeper.id, demonstration: true, facts }, stamp);
    }
    await desk.setKept(goneTank, 1, false, stamp);
    const entry = (id: string, text: string) => ({
      id,
      kind: "reading",
      on: "2026-06-10",
      body: nitrate(text),
    });
    await desk.addEntries(tank, [entry(reading, "10"), entry(goneReading, "11")], stamp);
    const { on, body } = entry(goneReading, "11");
    await desk.correctEntry(goneReading, 1, { on, body, kept: false }, stamp);
    const seen = (id: string, score: number) => ({ id, kind: "growth", on: "2026-06-10", body: hair(score) });
    await desk.addEntries(tank, [seen(growth, 2), seen(goneEntry, 1)], stamp);
    await desk.addEntries(tank, [{ id: EXAMPLE.loss, kind: "loss", on: "2026-06-10", body: lost }], stamp);
    for (const [id, image] of [[EXAMPLE.picture, PNG] as const, [EXAMPLE.gonePicture, JPEG] as const]) {
      const type = image === PNG ? "image/png" : "image/jpeg";
      const size = { widthPx: 24, heightPx: 16, shows: "" };
      await desk.addPicture({ id, entryId: EXAMPLE.loss, type, ...size, image }, 4, stamp);
    }
    await desk.keepPicture(EXAMPLE.gonePicture, false, 4, stamp);
    const about = {
      file: "may.csv",
      rows: 0,
      added: 0,
      changed: 0,
      brought_back: 0,
      already_here: 0,
      left_out: 0,
    };
    await desk.addAct({ id: EXAMPLE.act, tankId: tank, kind: "bring_in", about }, [], stamp);
    await desk.correctEntry(goneEntry, 1, { on, body: hair(1), kept: false }, stamp);
  });
}
