/**
 * What every answer carries, tried over the whole table of routes, those of failures and of unchanged copies too; who is
 * not answered; and that looking changes nothing.
 */
import { connect } from "node:net";
import type { FastifyInstance } from "fastify";
import { describe, expect, test } from "vitest";
import { EXAMPLE } from "../../src/contract/http/examples.ts";
import { listen } from "../../src/server/listen.ts";
import { lookCloser } from "../../src/server/round/closer-look.ts";
import { CONTENT_POLICY, SECURITY_HEADERS } from "../../src/server/security.ts";
import type { Store } from "../../src/store/store.ts";
import { to } from "../../src/web/page.ts";
import { appUnderTest, ask, HOST, quickAnswers } from "./kit/app.ts";
import { fillWithExamples } from "./kit/example-store.ts";

const PARTS: Readonly<Record<string, string>> = {
  tank: EXAMPLE.tank,
  reading: EXAMPLE.reading,
  entry: EXAMPLE.reading,
  animal: "trochus-snail",
  figure: "larder.film_glass.supply",
  number: "1",
  parameter: "kapFilm",
};

/** An address for a pattern, of things that are there where we know of some. */
const addressFor = (pattern: string): string =>
  pattern.replace(/:(\w+)/g, (_, name: string) => PARTS[name] ?? "1").replace("*", "nothing.js");

function addresses(app: FastifyInstance): string[] {
  const patterns = [...app.routeTable.keys()];
  expect(patterns.length).toBeGreaterThan(20);
  return patterns.map(addressFor);
}

type Answer = Awaited<ReturnType<typeof ask>>;

function expectHeaders(answer: Answer, place: string): void {
  for (const [name, value] of Object.entries(SECURITY_HEADERS))
    expect(answer.headers[name], `${name} of ${place}`).toBe(value);
  expect(answer.headers["cache-control"], place).toBeDefined();
  expect(answer.headers["x-powered-by"], place).toBeUndefined();
  expect(answer.statusCode, place).not.toBe(500);
}

test("the policy lets nothing in but the program's own files", () => {
  const rules = new Map(CONTENT_POLICY.split("; ").map((rule) => [rule.split(" ")[0], rule]));
  expect(rules.get("default-src")).toBe("default-src 'none'");
  expect(CONTENT_POLICY).not.toMatch(/unsafe-inline|'unsafe-eval'|https?:|\*/);
});

describe("every route", () => {
  test("carries them, found or not, changed or not, whatever the method", async () => {
    const { app, store } = await appUnderTest(quickAnswers);
    await fillWithExamples(store);
    // The round looks closer behind its first answer: the same again is had once it has.
    await ask(app, "GET", to.round());
    await lookCloser(store, [], "");
    for (const address of addresses(app)) {
      const answer = await ask(app, "GET", address);
      expectHeaders(answer, `GET ${address}`);
      const tag = answer.headers.etag;
      if (answer.statusCode === 200 && tag !== undefined) {
        const again = await ask(app, "GET", address, { headers: { "if-none-match": tag } });
        expect([again.statusCode, again.body], address).toEqual([304, ""]);
        expectHeaders(again, `GET again ${address}`);
      }
      expectHeaders(await ask(app, "HEAD", address), `HEAD ${address}`);
      for (const method of ["PATCH", "PUT", "OPTIONS"]) {
        const other = await ask(app, method, address, { body: {} });
        expectHeaders(other, `${method} ${address}`);
        expect(other.statusCode, `${method} ${address}`).toBeGreaterThanOrEqual(400);
      }
    }
  });

  test("of another machine's name is not answered, and says so", async () => {
    const { app } = await appUnderTest(quickAnswers);
    for (const address of addresses(app)) {
      const answer = await ask(app, "GET", address, { headers: { host: "grazewell.invented:8420" } });
      expect(answer.statusCode, address).toBe(421);
      expectHeaders(answer, address);
    }
  });

  test("does not answer another site's page", async () => {
    const { app, store } = await appUnderTest(quickAnswers);
    await fillWithExamples(store);
    const from = [
      { origin: "http://evil.invented" },
      { origin: "null" },
      { origin: "http://127.0.0.1:9999" },
      { "sec-fetch-site": "cross-site" },
      { "sec-fetch-site": "same-site" },
    ];
    for (const headers of from) {
      for (const [pattern, methods] of app.routeTable) {
        for (const method of methods) {
          const answer = await ask(app, method, addressFor(pattern), { headers });
          expect(answer.statusCode, `${method} ${pattern} from ${JSON.stringify(headers)}`).toBe(403);
        }
      }
    }
  });
});

describe("who is answered", () => {
  test.each(["127.0.0.1", "localhost:8420", "LOCALHOST", "[::1]:8420"])("%s", async (host) => {
    const { app } = await appUnderTest(quickAnswers);
    expect((await ask(app, "GET", "/api/v1/", { headers: { host } })).statusCode).toBe(200);
  });

  test.each(["127.0.0.1.evil.invented", "localhost.evil.invented", "0.0.0.0", "127.0.0.1:8420@evil", "a b"])(
    "not %s",
    async (host) => {
      const { app } = await appUnderTest(quickAnswers);
      expect((await ask(app, "GET", "/api/v1/", { headers: { host } })).statusCode).toBe(421);
    },
  );

  test("this page's own form, and a program that is no browser", async () => {
    const { app } = await appUnderTest(quickAnswers);
    const own = { origin: `http://${HOST}`, "sec-fetch-site": "same-origin" };
    const body = { grazewell_tank: 1, water_l: "200 L" };
    for (const headers of [own, {}])
      expect((await ask(app, "POST", "/api/v1/check", { headers, body })).statusCode).toBe(200);
  });

  test("a link from elsewhere opens a page, and nothing more", async () => {
    const { app } = await appUnderTest(quickAnswers);
    const link = {
      "sec-fetch-site": "cross-site",
      "sec-fetch-mode": "navigate",
      "sec-fetch-dest": "document",
    };
    expect((await ask(app, "GET", "/sources", { headers: link })).statusCode).toBe(200);
    const framed = { ...link, "sec-fetch-dest": "iframe" };
    expect((await ask(app, "GET", "/sources", { headers: framed })).statusCode).toBe(403);
    expect((await ask(app, "POST", "/api/v1/check", { headers: link, body: {} })).statusCode).toBe(403);
  });
});

/** All there is in a store, as text. */
async function everything(store: Store): Promise<string> {
  const tanks = await store.tanks();
  const histories = await Promise.all([EXAMPLE.tank, EXAMPLE.goneTank].map((id) => store.tankHistory(id)));
  const entries = await store.entries(EXAMPLE.tank, { limit: 1000, withRemoved: true });
  const versions = await Promise.all(entries.map(({ id }) => store.entryHistory(id)));
  return JSON.stringify([tanks, histories, entries, versions, await store.keepers()]);
}

test("looking changes nothing", async () => {
  const { app, store } = await appUnderTest(quickAnswers);
  await fillWithExamples(store);
  const before = await everything(store);
  for (const address of addresses(app)) {
    await ask(app, "GET", address);
    await ask(app, "GET", `${address}?name=Kitchen+(invented)&kept=no&note=x&delete=yes`);
  }
  expect(await everything(store)).toBe(before);
});

describe("failures", () => {
  test.each([
    ["GET", "/nothing/here", undefined, 404],
    ["GET", "/%", undefined, 400],
    ["GET", "/%00", undefined, 404],
    ["GET", `/tanks/${"x".repeat(500)}`, undefined, 414],
    ["POST", "/api/v1/check", "not JSON", 400],
    ["POST", "/api/v1/check", "x".repeat(1024 * 1024 + 1), 413],
  ])("%s %s", async (method, address, body, status) => {
    const { app } = await appUnderTest(quickAnswers);
    const answer = await ask(app, method, address, body === undefined ? {} : { body });
    expect(answer.statusCode).toBe(status);
    expectHeaders(answer, address);
  });

  test("a body of another kind", async () => {
    const { app } = await appUnderTest(quickAnswers);
    const headers = { "content-type": "text/xml" };
    const answer = await ask(app, "POST", "/api/v1/check", { body: "<a/>", headers });
    expect(answer.statusCode).toBe(415);
    expectHeaders(answer, "xml");
  });

  test("a fault of ours says so, tells nothing of how it is made, and is told on standard error", async () => {
    const { app, store, told } = await appUnderTest(quickAnswers);
    store.tanks = () => Promise.reject(new Error("SELECT secret FROM invented"));
    const answer = await ask(app, "GET", "/api/v1/tanks");
    expect(answer.statusCode).toBe(500);
    expect(answer.headers["content-security-policy"]).toBe(CONTENT_POLICY);
    expect(answer.body).not.toMatch(/SELECT|secret|\.ts|\bat \w+ \(/);
    const mark = /mark (\w+)/.exec(answer.json().detail)?.[1] ?? "none";
    expect(told.join("\n")).toContain(mark);
    expect(told.join("\n")).toContain("SELECT secret");
  });
});

describe("on a real connection", () => {
  /** Sends bytes and gives all that comes back. */
  async function raw(bytes: string): Promise<string> {
    const { app } = await appUnderTest(quickAnswers);
    const { port } = new URL(await listen(app, [0]));
    return await new Promise((resolve, reject) => {
      const socket = connect(Number(port), "127.0.0.1", () => socket.write(bytes));
      let heard = "";
      socket.on("data", (data) => {
        heard += data;
      });
      socket.on("close", () => resolve(heard));
      socket.on("error", reject);
    });
  }
  const policy = `content-security-policy: ${CONTENT_POLICY}`;

  test("what is no HTTP", async () => {
    const heard = await raw("hello\r\n\r\n");
    expect(heard).toMatch(/^HTTP\/1\.1 400 /);
    expect(heard).toContain(policy);
  });

  test("a head of 16 KiB and more", async () => {
    const head = (letters: number) =>
      `GET /api/v1/ HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\nX: ${"x".repeat(letters)}\r\n\r\n`;
    const below = await raw(head(16 * 1024 - 200));
    expect(below).toMatch(/^HTTP\/1\.1 200 /);
    const above = await raw(head(16 * 1024));
    expect(above).toMatch(/^HTTP\/1\.1 431 /);
    expect(above).toContain(policy);
    expect(above).toContain("16 KiB");
  });
});
