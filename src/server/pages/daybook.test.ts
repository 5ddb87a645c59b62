/**
 * The daybook's pages without a browser: an entry is added once however often and by whichever way it comes, "today" is
 * the day of typing, a correction shows what it was corrected from, and a kept entry fills its form with what it says.
 */
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type FormApp, formApp } from "../../../checks/kit/form-app.ts";
import { ENTRY_KINDS, entryOfRow } from "../../contract/daybook/kinds.ts";
import { addDemonstration } from "../demonstration/add.ts";
import { valuesOfEntry } from "./entry-of.ts";

const TODAY = "2026-06-15";
const HOST = "127.0.0.1:8420";
const NOW = "2026-06-15T12:00:00.000Z";
const KEY = (last: number) => `3f2504e0-4f89-41d3-9a0c-0305e82c${String(last).padStart(4, "0")}`;

let app: FormApp["app"];
let store: FormApp["store"];
let close: FormApp["close"];
let tank: string;
let now = NOW;
let sends = 0;

beforeAll(async () => {
  ({ app, store, close } = await formApp(() => now));
  const stamp = { at: NOW, by: "Tester" };
  const keeper = await store.keeperNamed("Tester", "keeper-tester", stamp);
  const facts = { grazewell_tank: 1, name: "Kitchen", water_l: "200 L", first_seawater_on: "2026-01-10" };
  tank = (await store.addTank({ id: "tank-1", keeperId: keeper.id, demonstration: false, facts }, stamp)).id;
});
afterAll(() => close());

type Fields = Readonly<Record<string, string>>;

async function send(path: string, fields: Fields) {
  sends += 1;
  return await app.inject({
    method: "POST",
    url: `/tanks/${tank}${path}`,
    headers: { host: HOST, origin: `http://${HOST}`, "content-type": "application/x-www-form-urlencoded" },
    remoteAddress: `127.0.1.${(sends % 250) + 1}`,
    payload: new URLSearchParams(fields).toString(),
  });
}
const look = async (path: string) =>
  await app.inject({ method: "GET", url: `/tanks/${tank}${path}`, headers: { host: HOST } });
const outbox = async (fields: Fields) => (await send("/daybook/outbox", fields)).json();
const notes = async (kind: string) =>
  (await store.entries(tank, { kind, limit: 100 })).map(({ body }) => String(body["note"]));

describe("the outbox", () => {
  const entry = { kind: "treatment", substance: "praziquantel", step: "started" };

  test("adds one entry a key, however often it is sent, also long after and by the plain form", async () => {
    const fields = { ...entry, note: "once", once: KEY(1), typed_at: "2026-06-15T13:00:00+01:00" };
    const first = await outbox(fields);
    expect(first).toMatchObject({ kind: "kept", version: 1, danger: null });
    now = "2026-06-15T20:00:00.000Z";
    expect(await outbox(fields)).toMatchObject({ kind: "kept", id: first.id });
    const { kind: _, typed_at: __, ...form } = fields;
    const plain = await send("/daybook/new/treatment", form);
    expect(plain.headers.location).toContain(`kept=${first.id}`);
    expect((await notes("treatment")).filter((note) => note === "once")).toHaveLength(1);
    now = NOW;
  });

  test("says that a key is another entry's where the words differ, and adds nothing", async () => {
    await outbox({ ...entry, note: "mine", once: KEY(2) });
    expect(await outbox({ ...entry, note: "yours", once: KEY(2) })).toEqual({ kind: "other" });
    expect(await notes("treatment")).not.toContain("yours");
  });

  test("takes today for the day of typing, where the keeper was", async () => {
    now = "2026-06-17T09:00:00.000Z";
    const { id } = await outbox({ ...entry, once: KEY(3), typed_at: "2026-06-15T23:30:00-05:00" });
    // It is the 17th there too: two days since.
    expect((await store.entry(id))?.on).toBe("2026-06-15");
    const ahead = await outbox({ ...entry, once: KEY(4), typed_at: "2027-01-01T00:00:00Z" });
    expect((await store.entry(ahead.id))?.on).toBe("2026-06-17");
    now = NOW;
  });

  test("gives every doubt, and keeps nothing under the key: mended, it is kept", async () => {
    const doubtful = { kind: "outage", of: "pumps", hours: "long", once: KEY(5) };
    const refused = await outbox(doubtful);
    expect(refused).toMatchObject({ kind: "refused", doubts: [expect.stringContaining("long")] });
    expect(await outbox({ ...doubtful, hours: "6 h" })).toMatchObject({ kind: "kept" });
    expect(await outbox({ kind: "mood", once: KEY(6) })).toMatchObject({ kind: "refused" });
    expect(await outbox({ ...entry, once: "too-short" })).toMatchObject({ kind: "refused" });
  });
});

describe("forms and pages", () => {
  test("a form that came back from the outbox with doubts keeps its key; another gets one of its state", async () => {
    const back = await send("/daybook/new/outage", { of: "pumps", hours: "long", once: KEY(7) });
    expect(back.statusCode).toBe(422);
    expect(back.body).toContain(`name="once" value="${KEY(7)}"`);
    expect(back.body).toContain("data-key");
    expect((await look("/daybook/new/outage")).body).not.toContain("data-key");
  });

  test("other words under a key that was used are another entry: no form's words are dropped", async () => {
    const fields = { kind: "outage", of: "lamp", hours: "2 h", note: "first", once: KEY(10) };
    await outbox(fields);
    const { kind: _, ...form } = fields;
    const again = await send("/daybook/new/outage", { ...form, note: "second" });
    expect(again.headers.location).toMatch(/kept=./);
    expect(await notes("outage")).toEqual(expect.arrayContaining(["first", "second"]));
  });

  test("a correction names what it was made from: the second of two is shown both", async () => {
    const { id } = await outbox({ kind: "relocation", to: "the hall", once: KEY(8) });
    const path = `/daybook/entries/${id}`;
    expect((await send(path, { version: "1", go: "correct", to: "the attic" })).statusCode).toBe(303);
    const clash = await send(path, { version: "1", go: "correct", to: "the porch" });
    expect(clash.statusCode).toBe(409);
    expect(clash.body).toContain("the attic");
    expect(clash.body).toContain('value="the porch"');
    expect((await look(path)).body).toContain("The tank was moved to the hall.");
  });

  test("taking away twice is taking away once; bringing back gives it again", async () => {
    const { id } = await outbox({ kind: "relocation", to: "the shed", once: KEY(9) });
    const path = `/daybook/entries/${id}`;
    for (const go of ["take_away", "take_away"])
      expect((await send(path, { version: "1", go })).statusCode).toBe(303);
    expect(await store.entry(id)).toMatchObject({ kept: false, version: 2 });
    expect((await look("/daybook")).body).not.toContain("the shed");
    expect((await look("/daybook?removed=1")).body).toContain("the shed");
    await send(path, { version: "2", go: "bring_back" });
    expect(await store.entry(id)).toMatchObject({ kept: true, version: 3 });
  });

  test("a tank's pages know no other tank's entries", async () => {
    const other = await look("/daybook/entries/none");
    expect(other.statusCode).toBe(404);
    expect((await look("/daybook/new/mood")).statusCode).toBe(404);
  });
});

test("every invented entry fills its form with what it says: sent back unchanged, nothing is written", async () => {
  const { app: invented, store: own, close: closeOwn } = await formApp(() => NOW);
  await addDemonstration(own, TODAY, NOW);
  const seen = new Set<string>();
  for (const { id } of await own.tanks()) {
    // The latest few of each kind: each correction reads its tank anew.
    const rows = (await Promise.all(ENTRY_KINDS.map((kind) => own.entries(id, { kind, limit: 4 })))).flat();
    for (const row of rows) {
      const entry = entryOfRow(row);
      if (entry === null) throw new Error(`no entry: ${row.kind}`);
      sends += 1;
      const answer = await invented.inject({
        method: "POST",
        url: `/tanks/${id}/daybook/entries/${row.id}`,
        headers: {
          host: HOST,
          origin: `http://${HOST}`,
          "content-type": "application/x-www-form-urlencoded",
        },
        remoteAddress: `127.0.2.${(sends % 250) + 1}`,
        payload: new URLSearchParams({ ...valuesOfEntry(entry), version: "1", go: "correct" }).toString(),
      });
      expect(answer.statusCode, `${row.kind} ${JSON.stringify(row.body)}`).toBe(303);
      const { body } = (await own.entry(row.id))!;
      // The day is written out, as "yesterday" would be another one; all else is as it was.
      const { observed_text: _, ...rest } = body;
      const { observed_text: __, ...before } = row.body;
      expect(rest).toEqual(before);
      seen.add(row.kind);
    }
  }
  expect(seen.size).toBeGreaterThanOrEqual(6);
  await closeOwn();
});
