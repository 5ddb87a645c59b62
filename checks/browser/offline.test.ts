/**
 * Opened once, opened again without a connection: the last bench and the crisis page, each with the line that says when
 * it was seen; a page never seen says so. What was typed is no part of this: interruptions.test.ts.
 */
import type { BrowserContext, Page } from "playwright-core";
import { expect, inject, test } from "vitest";
import { to } from "../../src/web/page.ts";
import { addressOf, newContext, open } from "./kit/browser.ts";
import { inStore, tookOver, until } from "./kit/took-over.ts";

async function offline(work: (page: Page, context: BrowserContext) => Promise<void>): Promise<void> {
  const context = await newContext();
  const page = await context.newPage();
  try {
    await work(page, context);
  } finally {
    await context.close();
  }
}

const SEEN = /^Seen on \d{1,2} \w+ \d{4}, \d\d:\d\d; not connected now\.$/;

test("the bench seen last and the crisis page open without a connection", async () => {
  const bench = to.tank(inject("cast").demo);
  await offline(async (page, context) => {
    await open(page, bench);
    await tookOver(page);
    await until(() => inStore(page, bench), page);
    // Seen with its answers, as a keeper sees it who comes back.
    await open(page, bench);
    const heading = await page.locator("main h1").first().textContent();
    expect(await page.locator(".seen-line").count()).toBe(0);

    await context.setOffline(true);
    await page.reload();
    expect(await page.locator(".seen-line").textContent()).toMatch(SEEN);
    expect(await page.locator("main h1").first().textContent()).toBe(heading);
    // With its style: the sheet came from the store too.
    expect(await page.evaluate(() => document.styleSheets.length)).toBe(1);
    await page.goto(addressOf(to.wrong()));
    expect(await page.locator(".seen-line").textContent()).toMatch(SEEN);
    expect(await page.locator("main h1").count()).toBe(1);

    await page.goto(addressOf(to.tank(inject("cast").first, "waves")));
    expect(await page.locator("h1").textContent()).toBe("Not connected, and not seen before");

    await context.setOffline(false);
    await page.goto(addressOf(bench));
    expect(await page.locator(".seen-line").count()).toBe(0);
  });
});

test("connected, a page comes fresh and what changes is never kept", async () => {
  const { demo } = inject("cast");
  await offline(async (page) => {
    await open(page, to.tank(demo));
    await tookOver(page);
    const kept = await page.evaluate(async () => {
      await fetch("/api/v1/openapi.json").catch(() => undefined);
      const names = await caches.keys();
      const all = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
      return all.flat().map(({ method, url }) => `${method} ${new URL(url).pathname}`);
    });
    expect(kept.filter((one) => one.startsWith("GET /api/") || !one.startsWith("GET "))).toEqual([]);
    expect(kept).toContain(`GET ${to.wrong()}`);
  });
});
