/**
 * The crisis page on a phone: each list has at most seven lines, is seen whole without scrolling at 360 by 640, says
 * when to stop and ends with whom to call. Found from every page at one press.
 */
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { to } from "../../src/web/page.ts";
import { open, type Watched, watched } from "./kit/browser.ts";

const MOST_LINES = 7;
const SCREEN = { width: 360, height: 640 };

let seen: Watched;
beforeAll(async () => {
  seen = await watched({ viewport: SCREEN });
});
afterAll(() => seen.close());

test("lists of at most seven lines, each on one screen, with an end", async () => {
  await open(seen.page, to.wrong());
  const lists = await seen.page.locator("main ol").evaluateAll((all) =>
    all.map((list) => ({
      lines: [...list.children].map((line) => line.textContent ?? ""),
      height: list.getBoundingClientRect().height,
      heading: list.closest("section")?.querySelector("h2, h3")?.textContent ?? "",
    })),
  );
  expect(lists.length).toBeGreaterThan(4);
  for (const { lines, height, heading } of lists) {
    expect(lines.length, heading).toBeLessThanOrEqual(MOST_LINES);
    expect(height, heading).toBeLessThanOrEqual(SCREEN.height);
    expect(lines.at(-1), heading).toMatch(/^Call /);
    expect(
      lines.some((line) => /^Stop (when|if|at|with|once) /.test(line)),
      heading,
    ).toBe(true);
  }
});

test("is one link away on every kind of page", async () => {
  const { demo } = inject("cast");
  for (const path of [
    to.start(),
    to.newTank(),
    to.tank(demo),
    to.question(demo, 3),
    to.sources(),
    "/no-such-page",
  ]) {
    await open(seen.page, path);
    const link = seen.page.getByRole("link", { name: "Something is wrong" }).first();
    expect(await link.isVisible(), path).toBe(true);
  }
});
