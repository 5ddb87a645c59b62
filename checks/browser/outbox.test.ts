/**
 * With the network gone an entry waits in this browser, its count is seen on every page, and it is sent once, in order,
 * when the network is back: by the page or the next one opened. What the server can't read comes back with its doubts.
 */
import type { BrowserContext, Page } from "playwright-core";
import { expect, inject, test } from "vitest";
import { to } from "../../src/web/page.ts";
import { addressOf, newContext } from "./kit/browser.ts";

const { danger } = inject("cast");
const WET = to.wetHand(danger);

async function withPhone(work: (page: Page, context: BrowserContext) => Promise<void>): Promise<void> {
  const context = await newContext({
    viewport: { width: 360, height: 640 },
    hasTouch: true,
    isMobile: true,
  });
  try {
    await work(await context.newPage(), context);
  } finally {
    await context.close();
  }
}

/** The worker is there, and has the wet hand in its store. */
async function readyForOffline(page: Page, path: string): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  for (let i = 0; i < 2000; i += 1) {
    if (await page.evaluate(async (address) => (await caches.match(address)) !== undefined, path)) return;
    await page.waitForTimeout(100);
  }
  throw new Error(`${path} was not kept for offline`);
}

async function logReading(page: Page, quantity: string, keys: string): Promise<void> {
  await page.goto(addressOf(`${WET}#reading-${quantity}`));
  const panel = page.locator(`[data-wet-panel=reading-${quantity}]`);
  for (const key of keys) await panel.locator(`[data-wet-key='${key}']`).tap();
  await panel.getByRole("button", { name: "Keep" }).tap();
  await page.locator("[data-wet-said] p").waitFor();
}

const count = (page: Page) => page.locator(".outbox-count");

/** Sentences of the daybook, newest first. */
async function sentences(page: Page, kind: string): Promise<string[]> {
  await page.goto(addressOf(`${to.tank(danger, "daybook")}?kind=${kind}`));
  return await page.locator(".entry-lines a").allTextContents();
}

test("kept without a network, counted, sent once and in order when it is back", async () => {
  await withPhone(async (page, context) => {
    // The wet hand is kept ahead by a look at any page of the tank.
    await page.goto(addressOf(to.tank(danger, "daybook")));
    await readyForOffline(page, WET);
    await context.setOffline(true);
    await page.goto(addressOf(WET));
    expect(await page.locator(".seen-line").count()).toBe(1);
    await logReading(page, "calcium_mg_per_l", "411");
    expect(await page.locator("[data-wet-said] p").textContent()).toContain("Kept on this device");
    await logReading(page, "calcium_mg_per_l", "412");
    // What was said of the first entry stands until the second is kept.
    await expect.poll(() => count(page).textContent()).toBe("2 entries wait to be sent");
    expect(await page.locator(".outbox-lines > li").allTextContents()).toEqual([
      expect.stringContaining("Calcium: 411"),
      expect.stringContaining("Calcium: 412"),
    ]);
    // Still there after the tab was closed.
    await page.close();
    const again = await context.newPage();
    await again.goto(addressOf(WET));
    await count(again).waitFor();
    await context.setOffline(false);
    await again.evaluate(() => dispatchEvent(new Event("online")));
    await count(again).waitFor({ state: "detached" });
    const calcium = (await sentences(again, "reading")).filter((one) => /Calcium 41[12] /.test(one));
    expect(calcium).toEqual(["Calcium 412 mg/L.", "Calcium 411 mg/L."]);
  });
});

test("an answer that was lost on its way is no second entry", async () => {
  await withPhone(async (page, context) => {
    let lost = 0;
    // Of the whole context: the service worker may be who sends it.
    await context.route("**/daybook/outbox", async (route) => {
      if (lost > 0) return await route.continue();
      lost += 1;
      await route.fetch();
      await route.abort();
    });
    await logReading(page, "magnesium_mg_per_l", "1311");
    // The worker asks again as soon as it may; nobody has to. What was said to wait is then said to be sent.
    await page.locator("[data-wet-said]").getByText("Sent, and in the daybook").waitFor();
    await count(page).waitFor({ state: "detached" });
    const told = (await sentences(page, "reading")).filter((one) => one.includes("1311"));
    expect(told).toEqual(["Magnesium 1311 mg/L."]);
    expect(lost).toBe(1);
  });
});

test("a form filled in without a network waits too, and its fields are empty again", async () => {
  await withPhone(async (page, context) => {
    await page.goto(addressOf(to.newEntry(danger, "treatment")));
    await context.setOffline(true);
    await page.locator("#substance").fill("invented salt");
    await page.locator("input[name=step][value=started]").check();
    await page.getByRole("button", { name: "Keep it" }).tap();
    await page.locator(".outbox-said").waitFor();
    expect(await page.locator("#substance").inputValue()).toBe("");
    expect(await count(page).textContent()).toBe("1 entry waits to be sent");
    await context.setOffline(false);
    await page.goto(addressOf(to.newEntry(danger, "treatment")));
    expect(await page.locator("#substance").inputValue()).toBe("");
    await count(page).waitFor({ state: "detached" });
    expect((await sentences(page, "treatment")).filter((one) => /invented salt/i.test(one))).toHaveLength(1);
  });
});

test("what can't be read comes back with its doubts, is mended and then kept once", async () => {
  await withPhone(async (page, context) => {
    await page.goto(addressOf(`${WET}#reading-temperature_c`));
    await context.setOffline(true);
    const panel = page.locator("[data-wet-panel=reading-temperature_c]");
    // No unit was chosen wrong: 77 is a temperature, but not one of a reef in °C.
    await panel.locator("select[name=unit]").selectOption("C");
    for (const key of "77") await panel.locator(`[data-wet-key='${key}']`).tap();
    await panel.getByRole("button", { name: "Keep" }).tap();
    await page.locator("[data-wet-said] p").waitFor();
    await context.setOffline(false);
    await page.goto(addressOf(to.tank(danger)));
    await page.getByRole("link", { name: "1 entry could not be read yet" }).tap();
    await page.waitForURL(/wet-hand/);
    const line = page.locator(".outbox-lines > li");
    await line.waitFor();
    expect(await line.textContent()).toMatch(/Temperature.*77/);
    await line.getByRole("button", { name: /^Mend it/ }).tap();
    await page.locator(".error-summary").waitFor();
    expect(await page.locator("#text").inputValue()).toBe("77");
    const kept = page.waitForURL(/kept=/);
    await page.locator("#text-error button.fix").first().tap();
    await kept;
    await count(page).waitFor({ state: "detached" });
    expect((await sentences(page, "reading")).filter((one) => one.startsWith("Temperature 77"))).toHaveLength(
      1,
    );
  });
});

test("taken out of the outbox, it is sent nowhere", async () => {
  await withPhone(async (page, context) => {
    await page.goto(addressOf(`${WET}#reading-ph`));
    await context.setOffline(true);
    const panel = page.locator("[data-wet-panel=reading-ph]");
    for (const key of "7.77") await panel.locator(`[data-wet-key='${key}']`).tap();
    await panel.getByRole("button", { name: "Keep" }).tap();
    await page.locator("[data-wet-said] p").waitFor();
    await page.locator("[data-wet-said] button").tap();
    await count(page).waitFor({ state: "detached" });
    await context.setOffline(false);
    expect((await sentences(page, "reading")).filter((one) => one.includes("7.77"))).toEqual([]);
  });
});
