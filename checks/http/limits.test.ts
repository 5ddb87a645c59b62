/**
 * The bounds of docs/limits.md: one below is taken, one above is refused in words. Bounds that are a matter of time are
 * tried for being set; waiting for them would make the check slow, not better.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { EXAMPLE, EXAMPLE_FACTS } from "../../src/contract/http/examples.ts";
import * as SIZES from "../../src/contract/http/sizes.ts";
import { LIMITS } from "../../src/server/limits.ts";
import { appUnderTest, ask } from "./kit/app.ts";
import { fillWithExamples } from "./kit/example-store.ts";

const READINGS = `/api/v1/tanks/${EXAMPLE.tank}/readings`;

async function kitchen() {
  const under = await appUnderTest();
  await fillWithExamples(under.store);
  return under;
}

test("docs/limits.md tells every one of them, with its figure", () => {
  const doc = readFileSync(join(import.meta.dirname, "../../docs/limits.md"), "utf8");
  const told = new Map(
    [...doc.matchAll(/^\| `(\w+)` \| ([^|]+) \|/gm)].map(([, name, figure]) => [name, figure]),
  );
  const all = { ...LIMITS, ...SIZES };
  expect([...told.keys()].sort()).toEqual(Object.keys(all).sort());
  for (const [name, value] of Object.entries(all)) expect(told.get(name), name).toBe(words(name, value));
});

function words(name: string, value: number): string {
  const plain = (n: number) => n.toLocaleString("en");
  if (name.endsWith("Bytes"))
    return value >= 1024 * 1024 ? `${value / 1024 / 1024} MiB` : `${value / 1024} KiB`;
  if (name.endsWith("Mib")) return `${plain(value)} MiB`;
  if (name.endsWith("Ms")) return `${plain(value / 1000)} s`;
  if (/letters/i.test(name)) return `${plain(value)} letters`;
  return plain(value);
}

test("a body of 1 MiB is read, one byte more is not", async () => {
  const { app } = await appUnderTest();
  const body = (bytes: number) => {
    const start = '{"grazewell_tank":1,"water_l":"200 L","note":"';
    return `${start}${"x".repeat(bytes - start.length - 2)}"}`;
  };
  const at = await ask(app, "POST", "/api/v1/check", { body: body(LIMITS.bodyBytes) });
  expect(at.statusCode).toBe(200);
  const above = await ask(app, "POST", "/api/v1/check", { body: body(LIMITS.bodyBytes + 1) });
  expect([above.statusCode, above.json().kind]).toEqual([413, "TOOBIG"]);
  expect(above.json().detail).toContain("1 MiB");
});

test("JSON 20 deep is read, 21 deep is not", async () => {
  const { app } = await appUnderTest();
  const nested = (deep: number) => `{"wishes":${"[".repeat(deep - 1)}${"]".repeat(deep - 1)}}`;
  const at = await ask(app, "POST", "/api/v1/check", { body: nested(LIMITS.jsonDepth) });
  expect(at.statusCode).toBe(200);
  const above = await ask(app, "POST", "/api/v1/check", { body: nested(LIMITS.jsonDepth + 1) });
  expect([above.statusCode, above.json().kind]).toEqual([400, "TOOBIG"]);
});

test("a part of an address of 200 letters is looked for, one of 201 is too long", async () => {
  const { app } = await appUnderTest();
  const status = async (letters: number) =>
    (await ask(app, "GET", `/api/v1/tanks/${"x".repeat(letters)}`)).statusCode;
  expect(await status(LIMITS.addressPartLetters)).toBe(404);
  expect(await status(LIMITS.addressPartLetters + 1)).toBe(414);
});

test("bounds of connections and of time are set", async () => {
  const { app } = await appUnderTest();
  const { server } = app;
  expect(server.requestTimeout).toBe(LIMITS.requestMs);
  expect(server.headersTimeout).toBe(LIMITS.headMs);
  expect(server.keepAliveTimeout).toBe(LIMITS.keepAliveMs);
  expect(server.timeout).toBe(LIMITS.silenceMs);
  // Who waits for a tank to be worked out must not be cut off before it is.
  expect(LIMITS.silenceMs).toBeGreaterThan(LIMITS.answerMs);
});

test("a store takes so many tanks, and one more is told to wait for room", async () => {
  const { app, store } = await appUnderTest();
  const stamp = { at: "2026-06-15T08:00:00.000Z", by: "check" };
  await store.together(async (desk) => {
    const keeper = await desk.keeperNamed("Ada", "keeper-1", stamp);
    for (let i = 1; i < LIMITS.tanks; i += 1)
      await desk.addTank(
        { id: `t${i}`, keeperId: keeper.id, demonstration: false, facts: EXAMPLE_FACTS },
        stamp,
      );
  });
  const add = () => ask(app, "POST", "/api/v1/tanks", { body: { keeper: "Ada", facts: EXAMPLE_FACTS } });
  expect((await add()).statusCode).toBe(201);
  const above = await add();
  expect([above.statusCode, above.json().kind]).toEqual([422, "TOOBIG"]);
  expect(await store.tanks()).toHaveLength(LIMITS.tanks);
});

describe("sizes of the API", () => {
  test.each([
    [SIZES.MOST_LISTED, 200],
    [SIZES.MOST_LISTED + 1, 400],
    [1, 200],
    [0, 400],
  ])("%i readings in one answer: %i", async (limit, status) => {
    const { app } = await kitchen();
    expect((await ask(app, "GET", READINGS, { query: { limit: String(limit) } })).statusCode).toBe(status);
  });

  test.each([
    [SIZES.MOST_KEY_LETTERS, 201],
    [SIZES.MOST_KEY_LETTERS + 1, 400],
  ])("a key of %i letters: %i", async (letters, status) => {
    const { app } = await kitchen();
    const headers = { "idempotency-key": "k".repeat(letters) };
    const answer = await ask(app, "POST", READINGS, { headers, body: { quantity: "ph", value: 8.1 } });
    expect(answer.statusCode).toBe(status);
  });

  const larder = `/api/v1/tanks/${EXAMPLE.tank}/larder`;
  test.each([
    [SIZES.LEAST_MEMBERS - 1, 400],
    [SIZES.MOST_MEMBERS + 1, 400],
  ])("%i runs: %i", async (members, status) => {
    const { app } = await kitchen();
    const answer = await ask(app, "GET", larder, { query: { members: String(members) } });
    expect([answer.statusCode, answer.json().errors[0].pointer]).toEqual([status, "/members"]);
  });

  test("changes of a what-if: so many, so long", async () => {
    const { app } = await kitchen();
    const status = async (crew: readonly string[]) => {
      const answer = await ask(app, "GET", larder, { query: { crew, members: "20" } });
      return [answer.statusCode, answer.json().errors?.[0].kind];
    };
    // One below gets as far as being read, and is then no change that can be.
    expect(await status(Array.from({ length: SIZES.MOST_CHANGES }, () => "?"))).toEqual([422, undefined]);
    expect(await status(Array.from({ length: SIZES.MOST_CHANGES + 1 }, () => "?"))).toEqual([400, "TOOBIG"]);
    expect(await status(["?".repeat(SIZES.MOST_CHANGE_LETTERS)])).toEqual([422, undefined]);
    expect(await status(["?".repeat(SIZES.MOST_CHANGE_LETTERS + 1)])).toEqual([400, "TOOBIG"]);
  });
});
