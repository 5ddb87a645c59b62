/**
 * What if, as a keeper meets it: typed and sent without script; stepped with it, twenty runs first and two hundred
 * after; every number a door; a field that can't be read says so with its likely fix. Nothing is kept.
 */
import { expect, inject, test } from "vitest";
import { to } from "../../src/web/page.ts";
import { addressOf, newContext, open, turn, watched } from "./kit/browser.ts";

/** Two hundred runs of two courses, on a machine that has more to do. */
const PATIENCE_MS = 600_000;
const page = () => to.tank(inject("cast").demo, "what-if");

test("without script: a change is sent, answered and can be refined", { timeout: PATIENCE_MS }, async () => {
  const context = await newContext({ javaScriptEnabled: false });
  const tab = await context.newPage();
  await tab.goto(addressOf(page()));
  expect(await tab.locator(".step").first().isVisible()).toBe(false);
  await tab.getByLabel("Feed a day").fill("+20 %");
  await turn(tab, () => tab.getByLabel("Feed a day").press("Enter"));
  const beside = tab.locator(".what-if-beside");
  await beside.waitFor({ timeout: PATIENCE_MS });
  expect(await beside.textContent()).toContain("From twenty runs.");
  expect(await beside.locator("table").count()).toBeGreaterThanOrEqual(4);
  expect(await tab.getByRole("link", { name: "Refine it with two hundred" }).count()).toBe(1);
  const [working] = await beside
    .locator("a[data-figure]")
    .evaluateAll((links) => links.map((link) => (link as HTMLAnchorElement).href));
  expect((await tab.goto(working ?? ""))?.status()).toBe(200);
  expect(await tab.locator("article[data-working]").count()).toBe(1);
  await context.close();
});

test("without script: each field hears of its own fault, and the fix is one press", async () => {
  const context = await newContext({ javaScriptEnabled: false });
  const tab = await context.newPage();
  const answer = await tab.goto(`${addressOf(page())}?light=200+h&other=trochus&other-count=%2B2`);
  expect(answer?.status()).toBe(422);
  expect(await tab.title()).toMatch(/^Error: /);
  expect(await tab.locator("#light").getAttribute("aria-invalid")).toBe("true");
  expect(await tab.locator("#light-error").textContent()).toContain("0 to 24 h");
  expect(await tab.locator("#other-error button").count()).toBe(2);
  expect(await tab.locator(".error-summary li").count()).toBe(2);
  await context.close();
});

test("with script: steps answer from twenty runs, then refined", { timeout: PATIENCE_MS }, async () => {
  const { page: tab, faults, close } = await watched();
  await open(tab, page());
  await tab.getByRole("button", { name: "More feed" }).click();
  await tab.getByRole("button", { name: "More feed" }).click();
  expect(await tab.locator("#feed").inputValue()).toBe("+20 %");
  const note = tab.locator(".what-if-beside .note");
  await note.filter({ hasText: "From twenty runs." }).waitFor({ timeout: PATIENCE_MS });
  expect(new URL(tab.url()).searchParams.get("feed")).toBe("+20 %");
  await note.filter({ hasText: "Refined with two hundred runs." }).waitFor({ timeout: PATIENCE_MS });
  const figure = tab.locator(".what-if-beside a[data-figure]").first();
  const name = await figure.getAttribute("data-figure");
  await figure.press("Enter");
  await tab.locator("dialog.over [data-working]").waitFor({ timeout: PATIENCE_MS });
  expect(await tab.locator("dialog.over [data-working]").getAttribute("data-working")).toBe(name);
  await tab.keyboard.press("Escape");
  expect(await tab.evaluate(() => document.activeElement?.getAttribute("data-figure"))).toBe(name);

  await tab.locator("#light").fill("200 h");
  await tab.locator("#light").press("Enter");
  await tab.locator("#light-error").waitFor({ timeout: PATIENCE_MS });
  expect(await tab.locator("#light-error").textContent()).toContain("0 to 24 h");
  expect(faults).toEqual([]);
  await close();
});
