/**
 * Without JavaScript: every page can be read, and the forms that are one page do their work: a new tank, an answer, a
 * reading kept, a reading that can't be read told beside its field with what was typed still there (U8).
 */
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { to } from "../../src/web/page.ts";
import { addressOf, turn, type Watched, watched } from "./kit/browser.ts";
import { statesOf } from "./kit/states.ts";

const cast = inject("cast");

let seen: Watched;
beforeAll(async () => {
  seen = await watched({ javaScriptEnabled: false, viewport: { width: 360, height: 640 } });
});
afterAll(() => seen.close());

const READ = statesOf(cast).filter(
  ({ name, status, path }) =>
    // A panel that a script opens within a page is not another page without it.
    /^(start|new|wrong|guide|sources|demo-.*)$/.test(name) && status === 200 && !path.includes("#"),
);

test.each(READ)("$name can be read", async ({ path }) => {
  const { page } = seen;
  expect((await page.goto(addressOf(path)))?.status()).toBe(200);
  expect(await page.locator("h1").count()).toBe(1);
  expect((await page.locator("main").textContent())?.length).toBeGreaterThan(100);
  // Nothing waits for a script without a way round it.
  for (const slot of await page.locator("[data-await], [data-plan-part^='/']").all()) {
    expect(await slot.locator("a[href]").count(), path).toBeGreaterThan(0);
  }
});

test("a new tank, an answer, a reading kept and one refused", async () => {
  const { page } = seen;
  await page.goto(addressOf(to.newTank()));
  await page.locator("#water").fill("150");
  await turn(page, () => page.getByRole("button", { name: "Keep and go on" }).click());
  expect(new URL(page.url()).pathname).toMatch(/\/questions\/2$/);
  await page.locator("#first_seawater").fill("in the year of the fox");
  await turn(page, () => page.getByRole("button", { name: "Keep and go on" }).click());
  expect(await page.title()).toMatch(/^Error: /);
  expect(await page.locator("#first_seawater").inputValue()).toBe("in the year of the fox");
  expect(await page.locator("#first_seawater-error").textContent()).toContain("fox");
  const tank = /\/tanks\/([^/]+)/.exec(page.url())?.[1] ?? "";
  await page.goto(addressOf(`${to.tank(tank, "readings")}?quantity=temperature_c`));
  await page.locator("main form input[name=text]").fill("25.5");
  await turn(page, () => page.getByRole("button", { name: "Keep this reading" }).click());
  expect(await page.locator("main").textContent()).toMatch(/25\.5/);
});
