/** Rows of the inputs catalogue that an entry can carry, at the API's door, with the real catalogue and a kept record. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { API_ROOT } from "../../src/contract/http/openapi.ts";
import { problem } from "../../src/contract/http/parts.ts";
import type { Json } from "../../src/store/store.ts";
import { appUnderTest, ask } from "./kit/app.ts";

interface Row {
  readonly id: string;
  readonly input: string;
  readonly verdict: string;
  readonly kind: string | null;
}
const rows = JSON.parse(
  readFileSync(join(import.meta.dirname, "../inputs/rows.json"), "utf8"),
) as readonly Row[];

interface Scene {
  readonly litres?: number;
  /** Trochus snails on record. */
  readonly snails?: number;
  readonly since?: string;
}
type Body = (input: string) => Json;
const count: Body = (seen) => ({ kind: "head_count", animal: "trochus-snail", seen });
const named: Body = (animal) => ({ kind: "addition", animal, count: 2 });
const cover: Body = (score) => ({ kind: "growth", growth: "film_glass", score });
const feed: Body = (to) => ({ kind: "change", changed: "feed", to });

const carried: Readonly<Record<string, readonly [Body, Scene?]>> = {
  "I-075": [count, { snails: 12 }],
  "I-076": [count],
  "I-077": [count],
  "I-078": [count],
  "I-079": [count, { litres: 20, snails: 5000 }],
  "I-080": [count],
  "I-081": [count, { snails: 8 }],
  "I-082": [count],
  "I-083": [count, { snails: 12 }],
  "I-084": [named],
  "I-085": [named],
  "I-086": [named],
  "I-087": [named],
  "I-088": [named],
  "I-089": [(observed) => ({ ...named("trochus-snail"), observed }), { since: "2026-06-01" }],
  "I-090": [
    (lost) => ({ kind: "loss", animal: "trochus-snail", count: lost, certainty: "found" }),
    { snails: 3 },
  ],
  "I-091": [
    (words) => ({ kind: "move", animal: "trochus-snail", count: 3, to: words.replace("3 snails to ", "") }),
  ],
  "I-092": [cover],
  "I-093": [cover],
  "I-094": [cover],
  "I-095": [cover],
  "I-099": [feed],
  "I-100": [feed],
  "I-101": [feed],
  "I-102": [feed, { litres: 100 }],
  "I-103": [feed],
};

async function addressOf(scene: Scene) {
  const { litres = 200, snails = 5, since = "2026-01-10" } = scene;
  const under = await appUnderTest();
  const stamp = { at: "2026-05-01T09:00:00.000Z", by: "test" };
  const { id: keeperId } = await under.store.keeperNamed("Ada (invented)", "ada", stamp);
  const facts = {
    grazewell_tank: 1,
    water_l: `${litres} L`,
    first_seawater_on: since,
    preferences: { locale: "en-GB" },
    animals_present: [{ animal: "trochus-snail", count: `${snails} (checked)` }],
  };
  await under.store.addTank({ id: "kitchen", keeperId, demonstration: false, facts }, stamp);
  return { under, address: `${API_ROOT}/tanks/kitchen/entries` };
}

test.each(Object.entries(carried))("%s", async (id, [body, scene = {}]) => {
  const row = rows.find((one) => one.id === id)!;
  const { under, address } = await addressOf(scene);
  const send = (sent: Json) => ask(under.app, "POST", address, { body: sent });
  const answer = await send(body(row.input));
  const keeps = ["accept", "convert", "flag"].includes(row.verdict);
  expect(answer.statusCode, answer.body).toBe(keeps ? 201 : 422);
  if (keeps) {
    const said = answer.json().said as readonly { kind: string }[];
    if (row.kind !== null) expect(said.map(({ kind }) => kind)).toContain(row.kind);
    return;
  }
  const { errors = [] } = problem.parse(answer.json());
  expect(errors.map(({ kind }) => kind)).toContain(row.kind);
  expect(await under.store.entries("kitchen", { limit: 10 })).toEqual([]);
  // A choice, put in the place of what was typed, is kept.
  const offered = errors.flatMap(({ pointer, choices }) =>
    choices.flatMap(({ text }) => (text === null ? [] : [{ field: pointer.slice(1), text }])),
  );
  if (row.verdict === "ask") expect(offered).not.toEqual([]);
  for (const { field, text } of offered) {
    expect((await send({ ...body(row.input), [field]: text })).statusCode, `${id}: ${text}`).toBe(201);
  }
});

test("I-091: a tank that was taken away, one that never was and one of another store answer in the same words", async () => {
  const { under, address } = await addressOf({});
  const facts = { grazewell_tank: 1, name: "Hallway", water_l: "100 L" };
  const stamp = { at: "2026-05-01T09:00:00.000Z", by: "test" };
  await under.store.addTank({ id: "gone-1", keeperId: "ada", demonstration: false, facts }, stamp);
  await under.store.setKept("gone-1", 1, false, stamp);
  const said = await Promise.all(
    ["gone-1", "never1", "Hallway"].map(async (to) => {
      const body = { kind: "move", animal: "trochus-snail", count: 3, to };
      const answer = await ask(under.app, "POST", address, { body });
      expect(answer.statusCode).toBe(422);
      return answer.body.replaceAll(to, "_");
    }),
  );
  expect(new Set(said).size).toBe(1);
});
