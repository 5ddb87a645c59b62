/**
 * Uncertainty can be counted (U3): what is drawn as grains adds to twenty, is as many as its words say, and is as many
 * as the engine's own runs say, within one grain. The engine is asked through the API, apart from the charts' code.
 */
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import type { AheadOutput } from "../../src/contract/output/ahead.ts";
import type { LarderOutput } from "../../src/contract/output/larder.ts";
import { to } from "../../src/web/page.ts";
import { answered, open, type Watched, watched } from "./kit/browser.ts";

const { demo, danger, first } = inject("cast");
const RUNS = 20;

let seen: Watched;
beforeAll(async () => {
  seen = await watched();
});
afterAll(() => seen.close());

async function engine<T>(tank: string, part: string): Promise<T> {
  const answer = await answered(`/api/v1/tanks/${tank}/${part}`);
  expect(answer.status).toBe(200);
  return (await answer.json()) as T;
}

/** Outlines in one path: each begins with a move. */
const outlines = (d: string | null) => (d?.match(/M/g) ?? []).length;

describe.each([
  ["demonstration tank", demo],
  ["dangerous reading", danger],
  ["first question alone", first],
])("%s", (_, tank) => {
  // The one page that has grains beside its sentences.
  test("weeks ahead: grains beside a sentence add to twenty, and the words count the same", async () => {
    await open(seen.page, to.tank(tank, "ahead"));
    const rows = await seen.page.locator(".grains").evaluateAll((all) =>
      all.map((element) => ({
        yes: Number((element as HTMLElement).dataset["grainsYes"]),
        no: Number((element as HTMLElement).dataset["grainsNo"]),
        told: element.querySelector("svg")?.getAttribute("aria-label") ?? "",
        full: element.querySelector("path.sure")?.getAttribute("d") ?? "",
        empty: element.querySelector("path.possible")?.getAttribute("d") ?? "",
      })),
    );
    for (const { yes, no, told, full, empty } of rows) {
      expect(yes + no, told).toBe(RUNS);
      expect([outlines(full), outlines(empty)], told).toEqual([yes, no]);
      expect(told).toMatch(new RegExp(`^${yes} of 20\\b`));
    }
    expect(rows.length).toBeGreaterThan(3);
  });

  test("weeks ahead: grains on each side of a line are the engine's runs on that day", async () => {
    // Other checks log in the demonstration's daybooks meanwhile: what was drawn is what the engine says before and after.
    let ahead = await engine<AheadOutput>(tank, "ahead");
    for (let same = false; !same; ) {
      await open(seen.page, `${to.tank(tank, "ahead")}?of=all`);
      const after = await engine<AheadOutput>(tank, "ahead");
      same = JSON.stringify(after.as_it_is) === JSON.stringify(ahead.as_it_is);
      ahead = after;
    }
    const week = Number(await seen.page.locator("select#week").inputValue());
    const charts = await seen.page.locator("figure.chart").evaluateAll((all) =>
      all.map((figure) => ({
        id: figure.getAttribute("data-chart") ?? "",
        above: Number(figure.querySelector("path.grain.above")?.getAttribute("data-grains")),
        below: Number(figure.querySelector("path.grain.below")?.getAttribute("data-grains")),
        drawn: [...figure.querySelectorAll("path.grain")].map((path) => path.getAttribute("d") ?? ""),
      })),
    );
    expect(charts.length).toBeGreaterThan(2);
    expect(ahead.weeks[week]).toBeDefined();
    for (const { id, above, below, drawn } of charts) {
      expect(above + below, id).toBe(RUNS);
      const { quantities, chances } = ahead.as_it_is;
      const quantity = quantities.find((one) => id === `ahead-${one.id}`);
      const chance = chances.find((one) => one.quantity === quantity?.id);
      expect(quantity, id).toBeDefined();
      if (quantity === undefined || chance === undefined) continue;
      const told = quantity.runs.filter((run) => run[week]! > chance.limit).length;
      expect(above, id).toBe(told);
      expect(drawn.length).toBeGreaterThan(0);
    }
  });

  test("larder: sure, likely and possible grains are the engine's quantiles, within one", async () => {
    await open(seen.page, to.tank(tank, "larder"));
    const larder = await engine<LarderOutput>(tank, "larder");
    const pairs = seen.page.locator("figure.chart").filter({ hasText: "Upper row grown" });
    const grain = /One grain is ([\d.]+) rations? a day/.exec((await pairs.textContent()) ?? "")?.[1];
    const rows = await pairs.locator("g:has(> g.grains-drawn.kelp):visible").evaluateAll((all) =>
      all.map((row) => {
        const { sure, likely, possible } = (row.querySelector(".grains-drawn.kelp") as SVGGElement).dataset;
        return { name: row.textContent ?? "", drawn: [sure, likely, possible].map(Number) };
      }),
    );
    const told = larder.shelves.filter((shelf) => rows.some((row) => row.name.startsWith(shelf.name)));
    expect(told.length).toBeGreaterThan(4);
    for (const { name, runs_mg_c_per_day: runs } of told) {
      const each = Number(grain) * larder.ration_mg_c;
      /** Grains that at least so many runs have: a run has one when it reaches half of it. */
      const had = (by: number) =>
        Array.from({ length: 400 }, (_, n) => runs.filter((run) => run >= (n + 0.5) * each).length).filter(
          (count) => count >= by,
        ).length;
      const [sure = -9, likely = -9, possible = -9] =
        rows.find((row) => row.name.startsWith(name))?.drawn ?? [];
      expect(Math.abs(sure - had(18)), `${name}: sure`).toBeLessThanOrEqual(1);
      expect(Math.abs(sure + likely - had(10)), `${name}: likely`).toBeLessThanOrEqual(1);
      expect(Math.abs(sure + likely + possible - had(2)), `${name}: possible`).toBeLessThanOrEqual(1);
    }
  });
});
