/**
 * On paper: the sheet is one page of A4 and of Letter for every tank, nothing of it left out. That every page prints
 * without what only a screen can use, dark on light, is tried where all of them are opened: pages.test.ts (U10, stack.md
 * trap 16).
 * `GRAZEWELL_SHOTS=folder` keeps the sheets, to be looked at.
 */
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { SUMS } from "../../src/answers/sums/table.ts";
import { to } from "../../src/web/page.ts";
import { addressOf, open, type Watched, watched } from "./kit/browser.ts";
import { printed } from "./kit/paper.ts";

const SHOTS = process.env["GRAZEWELL_SHOTS"];
const cast = inject("cast");

let seen: Watched;
beforeAll(async () => {
  // The screen is dark: paper is not.
  seen = await watched({ colorScheme: "dark" });
});
afterAll(() => seen.close());

/**
 * Words of letters and digits, in no order: a printer may break and lay out lines as it likes. Without Han characters:
 * a machine that has no type for them prints boxes, which no program reads back.
 */
const words = (text: string) =>
  new Set(
    text
      .replaceAll(/\p{Script=Han}+/gu, " ")
      .toLowerCase()
      .match(/[\p{L}\p{N}]+/gu) ?? [],
  );

const TANKS = [
  ["demonstration tank", cast.demo],
  ["first question alone", cast.first],
  ["nothing yet", cast.nothingYet],
  ["dangerous reading", cast.danger],
  ["long names", cast.longNames],
] as const;

describe.each([
  ["sheet", "A4"],
  ["sheet", "Letter"],
  ["weeks", "A4"],
  ["weeks", "Letter"],
  ["errands", "A4"],
  ["errands", "Letter"],
] as const)("the page of %s on %s", (page, format) => {
  test.each(
    // A name of two hundred letters and a plan of four waves take errands to a second side.
    page === "errands" ? TANKS.filter(([name]) => name !== "long names") : TANKS,
  )("%s: one page, every word of it, its address and day in the foot", async (name, tank) => {
    await open(seen.page, to.tank(tank, page));
    await seen.page.emulateMedia({ media: "print" });
    // biome-ignore lint/performance/useDomNodeTextContent: only what paper shows
    const shown = await seen.page.locator("main").innerText();
    await seen.page.emulateMedia({ media: null });
    const keep =
      SHOTS === undefined ? null : join(SHOTS, `${page}-${name.replaceAll(" ", "-")}-${format}.pdf`);
    const { pages, text } = await printed(seen.page, format, keep);
    expect(pages).toBe(1);
    const onPaper = words(text);
    expect([...words(shown)].filter((word) => !onPaper.has(word))).toEqual([]);
    expect(text.replaceAll(/\s/g, "")).toContain(new URL(addressOf(to.tank(tank, page))).host);
    expect(text).toContain("15 Jun 2026");
    expect(text).not.toContain("Skip to");
  });
});

describe.each(["A4", "Letter"] as const)("the page for a sitter on %s", (format) => {
  test.each([
    ["two weeks", cast.demo, "from=2026-07-01&to=2026-07-15&every=2"],
    ["six weeks, daily", cast.longNames, "from=2026-07-01&to=2026-08-12&every=1"],
  ])("%s: one side, every word of the sheet and nothing of the screen", async (name, tank, query) => {
    await open(seen.page, to.holiday(tank, query));
    await seen.page.emulateMedia({ media: "print" });
    // biome-ignore lint/performance/useDomNodeTextContent: only what paper shows
    const shown = await seen.page.locator("main").innerText();
    await seen.page.emulateMedia({ media: null });
    const keep =
      SHOTS === undefined ? null : join(SHOTS, `sitter-${name.replaceAll(/[ ,]+/g, "-")}-${format}.pdf`);
    const { pages, text } = await printed(seen.page, format, keep);
    expect(pages).toBe(1);
    const onPaper = words(text);
    expect([...words(shown)].filter((word) => !onPaper.has(word))).toEqual([]);
    expect(text).toContain("switch off at the fuse box");
    expect(text).toContain("Aquatic vet:");
    expect(text).not.toContain("Work it out");
    expect(text).not.toContain("What would happen");
  });
});

/** The longest of the sums, and numbers behind the lists of a bad day that have tables. */
describe.each(["A4", "Letter"] as const)("on %s one page holds", (format) => {
  const sumOf = (id: string) => {
    const [example] = SUMS.find((sum) => sum.id === id)!.examples;
    return to.sum(cast.demo, id, new URLSearchParams(example).toString());
  };
  test.each([
    { what: "acclimation", path: sumOf("acclimation") },
    { what: "the sheet for a new tank", path: sumOf("new-tank") },
    ...["power-cut", "dead", "missing", "ammonia"].map((list) => ({
      ...{ what: `numbers of ${list}`, path: to.wrongNumbers(cast.demo, list) },
    })),
  ])("$what", async ({ path }) => {
    await open(seen.page, path);
    expect((await printed(seen.page, format)).pages).toBe(1);
  });
});
