/**
 * Something is wrong, on a phone: every list stands whole on a screen of 360 by 640 in large type and strong contrast,
 * with nothing to scroll; each is one press from the entry, and the entry one press from every page. Works with the
 * network cut and without script.
 */
import { mkdirSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { CRISIS_IDS } from "../../src/answers/wrong/list-ids.ts";
import { to } from "../../src/web/page.ts";
import { addressOf, open, turn, type Watched, watched } from "./kit/browser.ts";
import { contrastOf } from "./kit/contrast.ts";
import { statesOf } from "./kit/states.ts";

const MOST_LINES = 7;
const SCREEN = { width: 360, height: 640 };
/** A fifth larger than the body of other sites' usual 16 px. */
const LARGE_PX = 20;
const STRONG_CONTRAST = 7;

let seen: Watched;
beforeAll(async () => {
  seen = await watched({ viewport: SCREEN });
});
afterAll(() => seen.close());

/** Where pictures go to be looked at; none unless asked for. */
const PICTURES = process.env["GRAZEWELL_PICTURES"];

describe.each(["light", "dark"] as const)("in %s", (colorScheme) => {
  test.each(CRISIS_IDS)(
    "%s: seven lines at most, whole on one screen, large, strong, with an end",
    async (id) => {
      await seen.page.emulateMedia({ colorScheme });
      expect(await open(seen.page, to.wrongList(id))).toBe(200);
      const list = await seen.page.locator("main ol").evaluate((ol) => ({
        lines: [...ol.children].map((line) => line.textContent ?? ""),
        bottom: ol.getBoundingClientRect().bottom + window.scrollY,
        px: Number.parseFloat(getComputedStyle(ol).fontSize),
        scrolls: ol.scrollHeight > ol.clientHeight + 1 || ol.scrollWidth > ol.clientWidth + 1,
        wide: document.documentElement.scrollWidth,
      }));
      expect(list.lines.length).toBeGreaterThan(0);
      expect(list.lines.length).toBeLessThanOrEqual(MOST_LINES);
      expect(list.bottom).toBeLessThanOrEqual(SCREEN.height);
      expect(list.px).toBeGreaterThanOrEqual(LARGE_PX);
      expect(list.scrolls).toBe(false);
      expect(list.wide).toBeLessThanOrEqual(SCREEN.width);
      const contrast = await contrastOf(seen.page, "main ol li");
      expect(contrast?.ratio).toBeGreaterThanOrEqual(STRONG_CONTRAST);
      expect(list.lines.at(-1)).toMatch(/^Call /);
      expect(list.lines.at(-2)).toMatch(/^Stop /);
      if (PICTURES !== undefined) {
        mkdirSync(PICTURES, { recursive: true });
        await seen.page.screenshot({ path: `${PICTURES}/${id}-${colorScheme}.png` });
      }
    },
  );
});

test("the entry: every list one press away, doors of a thumb's size", async () => {
  await open(seen.page, to.wrong());
  if (PICTURES !== undefined) await seen.page.screenshot({ path: `${PICTURES}/entry.png`, fullPage: true });
  const doors = seen.page.locator("main .crisis-group a");
  const found = await doors.evaluateAll((all) =>
    all.map((door) => ({ path: door.getAttribute("href"), height: door.getBoundingClientRect().height })),
  );
  expect(found.map(({ path }) => path).sort()).toEqual(CRISIS_IDS.map((id) => to.wrongList(id)).sort());
  for (const { height, path } of found) expect(height, path ?? "").toBeGreaterThanOrEqual(48);
  await turn(seen.page, () => doors.first().click());
  expect(await seen.page.locator("main ol li").count()).toBeGreaterThan(0);
});

test("the entry is one press away in every state of every page, and keeps the tank", async () => {
  // Pages as they are sent: the way there needs neither script nor answers.
  const without: string[] = [];
  for (const { path, name } of statesOf(inject("cast"))) {
    const html = await (await fetch(addressOf(path))).text();
    const tank = /^\/tanks\/([^/?]+)/.exec(path)?.[1];
    const doors = [...html.matchAll(/class="wrong-link" href="([^"]*)"/g)].map(([, door]) => door);
    if (doors.length !== 1 || ![to.wrong(), to.wrong(tank)].includes(doors[0]!)) without.push(name);
  }
  expect(without).toEqual([]);
  const { demo } = inject("cast");
  await open(seen.page, to.tank(demo, "larder"));
  await turn(seen.page, () => seen.page.getByRole("link", { name: "Something is wrong" }).first().click());
  await turn(seen.page, () => seen.page.getByRole("link", { name: "Ammonia shows" }).click());
  expect(new URL(seen.page.url()).search).toBe(`?tank=${demo}`);
});

test("with the network cut: entry and every list open, from a tank that was left too", async () => {
  const { context, page, close } = await watched({ viewport: SCREEN });
  try {
    await open(page, to.start());
    await page.evaluate(async () => {
      const { active } = await navigator.serviceWorker.ready;
      while (active !== null && active.state !== "activated")
        await new Promise((wake) => setTimeout(wake, 20));
    });
    await context.setOffline(true);
    const { demo } = inject("cast");
    for (const tank of [undefined, demo]) {
      await page.goto(addressOf(to.wrong(tank)));
      expect(await page.locator("main .crisis-group a").count()).toBe(CRISIS_IDS.length);
      for (const id of CRISIS_IDS) {
        await page.goto(addressOf(to.wrongList(id, tank)));
        expect(await page.locator(".seen-line").count(), id).toBe(1);
        expect(await page.locator("main ol li").count(), id).toBeGreaterThan(0);
        // The line that tells of it must not push the list off the screen.
        const bottom = await page.locator("main ol").evaluate((ol) => ol.getBoundingClientRect().bottom);
        expect(bottom, id).toBeLessThanOrEqual(SCREEN.height);
      }
    }
    if (PICTURES !== undefined) await page.screenshot({ path: `${PICTURES}/offline.png` });
  } finally {
    await close();
  }
});

test("without script: the same lists", async () => {
  const { page, close } = await watched({ viewport: SCREEN, javaScriptEnabled: false });
  try {
    await page.goto(addressOf(to.wrong()));
    await turn(page, () => page.getByRole("link", { name: "Animals gasp" }).click());
    expect(await page.locator("main ol li").count()).toBeGreaterThan(0);
  } finally {
    await close();
  }
});
