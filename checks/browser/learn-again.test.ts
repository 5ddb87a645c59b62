/**
 * Learning again from the daybook, as a keeper meets it: without script the server does it; with script the browser's own
 * engine does, in a worker, tells how far it is, stops at a press, and says what moved. Nothing is kept.
 */
import { expect, inject, test } from "vitest";
import { to } from "../../src/web/page.ts";
import { addressOf, newContext, open, turn, watched } from "./kit/browser.ts";

const path = () => to.learned(inject("cast").demo);
const BUTTON = "Learn again from the daybook";

test("without script: the form asks the server, which waits for it", async () => {
  const context = await newContext({ javaScriptEnabled: false });
  const tab = await context.newPage();
  await tab.goto(`${addressOf(path())}?wait=1`);
  await turn(tab, () => tab.getByRole("button", { name: BUTTON }).click());
  expect(new URL(tab.url()).searchParams.get("wait")).toBe("1");
  expect(await tab.getByRole("heading", { name: "Quantity by quantity" }).count()).toBe(1);
  await context.close();
});

test("with script: by keys alone, in a worker, told how far, stopped, and begun anew", async () => {
  const { page: tab, faults, close } = await watched();
  await open(tab, path());
  const section = tab.locator("[data-learn-again]");
  const says = section.getByRole("status");
  const focused = () => tab.evaluate(() => document.activeElement?.textContent);
  await section.getByRole("button", { name: BUTTON }).press("Enter");
  await says.filter({ hasText: "% of the runs are done" }).waitFor();
  expect(tab.workers()).toHaveLength(1);
  expect(await section.getByRole("progressbar").count()).toBe(1);
  expect(await section.getByRole("button", { name: BUTTON }).isVisible()).toBe(false);
  expect(await focused()).toBe("Stop");
  await tab.keyboard.press("Enter");
  expect(await says.textContent()).toBe("Stopped. Nothing was changed.");
  expect(await focused()).toBe(BUTTON);
  // Begun anew it comes to its end; what was stopped says nothing more.
  await tab.keyboard.press("Enter");
  const told = section.locator("[data-learn-told] h3");
  await told.waitFor();
  // Both engines give the same figures: what the page shows is what was learned again.
  expect(await told.textContent()).toMatch(/^Nothing moved: all \d+ quantities are held as before$/);
  expect(await says.textContent()).toBe("Learned.");
  expect(new URL(tab.url()).search).toBe("");
  expect(faults).toEqual([]);
  await close();
});

test("where the browser's engine can't be had, the server is offered", async () => {
  const { page: tab, context, close } = await watched();
  // Of the whole context: once the service worker has taken the page over, what the page asks for is asked by the worker.
  await context.route("**/parts/learn.json", (route) => route.abort());
  await open(tab, path());
  const section = tab.locator("[data-learn-again]");
  await section.getByRole("button", { name: BUTTON }).click();
  const link = section.getByRole("link", { name: "Let the server learn it" });
  await link.waitFor();
  expect(await section.getByRole("status").textContent()).toContain("Not learned in this browser: ");
  expect(await link.getAttribute("href")).toBe(`${path()}?wait=1`);
  await close();
});
