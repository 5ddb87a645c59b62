/**
 * The round with 400 invented tanks, in a store of its own: drawn without fault, wide and narrow, all of it and its first
 * rows; one page of paper; a tank opened from it; a dangerous reading moves its tank up at the next look.
 */
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openStore } from "../../src/store/open.ts";
import type { Json } from "../../src/store/store.ts";
import { to } from "../../src/web/page.ts";
import { fleet } from "../round/fleet.ts";
import { axeFaults } from "./kit/axe.ts";
import { newContext, turn } from "./kit/browser.ts";
import { TODAY } from "./kit/cast.ts";
import { bonesFaults, cutFaults, sidewaysFaults, targetFaults } from "./kit/geometry.ts";
import { printed } from "./kit/paper.ts";
import { type Program, startProgram } from "./kit/program.ts";

const TANKS = fleet(1, TODAY);

async function fill(place: string): Promise<void> {
  const store = await openStore(place);
  const stamp = { at: "2026-01-01T09:00:00.000Z", by: "checks" };
  for (const { id, keeper, document, entries } of TANKS) {
    await store.together(async (desk) => {
      const { id: keeperId } = await desk.keeperNamed(keeper, `keeper-${keeper}`, stamp);
      const facts = document as unknown as Json;
      await desk.addTank({ id, keeperId, demonstration: false, facts }, stamp);
      await desk.addEntries(id, entries, stamp);
    });
  }
  await store.close();
}

let program: Program;
beforeAll(async () => {
  program = await startProgram(fill, ["--no-demonstration"]);
});
afterAll(() => program.stop());

async function opened(path: string, width: number) {
  const context = await newContext({ viewport: { width, height: 800 } });
  const page = await context.newPage();
  await page.goto(`${program.address}${path}`, { waitUntil: "load" });
  return { page, close: () => context.close() };
}

describe.each([1280, 360])("at %i px", (width) => {
  test.each([to.round(), `${to.round()}?rows=all`, `${to.round()}?keeper=A.+Invented&sort=stale`])(
    "%s has no fault",
    async (path) => {
      const { page, close } = await opened(path, width);
      expect([
        ...(await bonesFaults(page)),
        ...(await sidewaysFaults(page)),
        ...(await targetFaults(page)),
        ...(await cutFaults(page)),
        ...(await axeFaults(page)),
      ]).toEqual([]);
      await close();
    },
  );
});

test.each(["A4", "Letter"] as const)("its first rows are one page of %s", async (format) => {
  const { page, close } = await opened(to.round(), 1280);
  const shown = await page.locator(".round-tank a").allTextContents();
  const { pages, text } = await printed(page, format);
  expect(pages).toBe(1);
  const onPaper = text.replaceAll(/\s+/g, "");
  for (const name of shown) expect(onPaper).toContain((name.split(",")[0] ?? "").replaceAll(/\s+/g, ""));
  await close();
});

test("a tank opens from its row, and a dangerous reading kept there moves it up", async () => {
  const { page, close } = await opened(`${to.round()}?sort=name`, 1280);
  const quiet = TANKS.find(({ id }) => id === "tank-399")!;
  await page.goto(`${program.address}${to.readingsOf(quiet.id, "temperature_c")}`);
  await page.fill("#text", "32");
  await turn(page, () => page.locator("#text").press("Enter"));
  expect(page.url()).toMatch(/kept=/);
  await page.goto(`${program.address}${to.round()}`);
  const first = page.locator(".round-list > li").filter({ hasText: String(quiet.document.name) });
  expect(await first.locator(".round-when").textContent()).toContain("Today");
  await turn(page, () => first.locator("a").first().click());
  expect(page.url()).toMatch(new RegExp(`${to.tank(quiet.id)}$`));
  await close();
});
