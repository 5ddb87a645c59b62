/**
 * Water sums with the network cut and the server stopped, after one visit of a tank's page: form and answer of every sum
 * and of each of its examples, and a working of each, are the server's to the character; a form is filled from the tank,
 * pressed, mended and answered, and the page says that it was worked out here.
 */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { SUMS } from "../../src/answers/sums/table.ts";
import { openStore } from "../../src/store/open.ts";
import { to } from "../../src/web/page.ts";
import { ENVIRONMENT } from "../journeys/command.ts";
import { newContext, turn } from "./kit/browser.ts";
import { type Stoppable, startStoppable } from "./kit/stoppable.ts";
import { inStore, tookOver, until } from "./kit/took-over.ts";

let program: Stoppable<null>;
let page: Page;
let tank: string;
const faults: string[] = [];
/** What the server said of each address before it was stopped. */
const said = new Map<string, string>();

/** Every sum without a tank, each of its examples, and filled from a tank. */
function formsAndAnswers(of: string): string[] {
  return SUMS.flatMap(({ id, examples }) => [
    to.sum(null, id),
    ...examples.map((example) => to.sum(null, id, new URLSearchParams({ ...example }).toString())),
    to.sum(of, id),
  ]);
}

const WORKING = /href="(\/sums\/[^"]+\/working\/[^"]+)"/;

beforeAll(async () => {
  // A browser's worker knows the real day alone: so does this server.
  program = await startStoppable(async () => null, { ...ENVIRONMENT, GRAZEWELL_TODAY: undefined });
  const store = await openStore(program.place, { use: "existing" });
  const row = (await store.tanks()).find(({ demonstration }) => demonstration);
  await store.close();
  if (row === undefined) throw new Error("no invented tank in a new store");
  tank = row.id;
  const context = await newContext({ viewport: { width: 360, height: 640 } });
  page = await context.newPage();
  page.on("console", (message) => {
    if (message.type() === "error" && !message.text().includes("status of 422")) faults.push(message.text());
  });
  page.on("pageerror", (error) => faults.push(error.message));
  await page.goto(`${program.address}${to.tank(tank, "readings")}`);
  await tookOver(page);
  await until(() => inStore(page, to.sumsKnown(tank)), page);
  const ask = async (path: string): Promise<void> => {
    const text = await (await fetch(`${program.address}${path}`)).text();
    said.set(path, text);
  };
  for (const path of [to.sums(null), to.sums(tank), ...formsAndAnswers(tank)]) await ask(path);
  for (const { id, examples } of SUMS) {
    const query = new URLSearchParams({ ...examples[0] }).toString();
    const door = WORKING.exec(said.get(to.sum(null, id, query)) ?? "")?.[1]?.replaceAll("&amp;", "&");
    if (door === undefined) throw new Error(`${id}: no door to a working`);
    await ask(`${door}&part=1`);
  }
  await program.stop();
  await context.setOffline(true);
});
afterAll(async () => {
  await page.context().close();
  await program.end();
});

test("every page of sums is the server's to the character", async () => {
  expect(said.size).toBeGreaterThan(4 * SUMS.length);
  const answered = [...said].filter(([, text]) => text.includes('id="answer"'));
  expect(answered.length).toBeGreaterThanOrEqual(SUMS.length);
  for (const [path, text] of said) {
    const here = await page.evaluate(async (address) => await (await fetch(address)).text(), path);
    expect(here === text, `${path}: ${firstDifference(text, here)}`).toBe(true);
  }
});

test("a sum that was never opened: opened, pressed, mended, answered, explained", async () => {
  await page.goto(`${program.address}${to.sums(tank)}`);
  await turn(page, () => page.locator(`main a[href="${to.sum(tank, "oxygen")}"]`).click());
  const line = page.locator(".seen-line");
  expect(await line.textContent()).toMatch(
    /^Not connected now: worked out on this device, with what the tank's page knew on \d{1,2} \w+ \d{4}, \d\d:\d\d\.$/,
  );
  expect(await page.locator("main .hint").first().textContent()).toMatch(/This tank: /);

  await page.goto(`${program.address}${to.sum(null, "oxygen")}`);
  expect(await line.textContent()).toBe("Not connected now: worked out on this device.");
  await page.locator("#salinity").fill("35");
  await page.locator("#temperature").fill("25 C");
  await turn(page, () => page.locator("main form button.first").click());
  expect(await page.locator(".sum-lead").textContent()).toMatch(/mg\/L/);
  await page.goto(`${program.address}${to.sum(null, "oxygen", "salinity=35&temperature=25+C")}`);
  // A number that could be two things is asked about, as by the server.
  const fix = page.locator("main form button[name^='fix.']").first();
  await turn(page, () => fix.click());
  expect(await page.locator("#answer").textContent()).toBe("Answer");
  expect(await page.locator(".sum-lead").textContent()).toMatch(/mg\/L/);
  await page.locator(".sum-lead a").first().click();
  await page.locator("dialog[open] h1, dialog[open] h2").first().waitFor();
  expect(await page.locator("dialog[open]").textContent()).toContain("Formula");
  expect(faults).toEqual([]);
});

test("what no sum is called, and a tank that was never looked at, are said to be so", async () => {
  await page.goto(`${program.address}${to.sum(null, "moonlight")}`);
  expect(await page.locator("h1").textContent()).toBe("Not found");
  await page.goto(`${program.address}${to.sum("no-such-tank", "oxygen")}`);
  expect(await page.locator("h1").textContent()).toBe("Not connected, and not seen before");
});

/** Where two texts part, for the report of a failure. */
function firstDifference(a: string, b: string): string {
  let at = 0;
  while (at < a.length && a[at] === b[at]) at += 1;
  return at === a.length && at === b.length
    ? "none"
    : `"${a.slice(at - 60, at + 60)}" / "${b.slice(at - 60, at + 60)}"`;
}
