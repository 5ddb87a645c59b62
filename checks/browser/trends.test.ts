/** Trends with ten years of daily readings: the page opens, says what it gathers, steps by keys, hides no danger. */
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addDays } from "../../src/contract/quantity/calendar.ts";
import { to } from "../../src/web/page.ts";
import { watched } from "./kit/browser.ts";
import { TODAY } from "./kit/cast.ts";
import { type Program, startProgram } from "./kit/program.ts";
import { HOT_DAYS_AGO, makeTenYears, TEN_YEARS } from "./kit/ten-years.ts";

const { tank, days } = TEN_YEARS;
let program: Program;

beforeAll(async () => {
  program = await startProgram(makeTenYears);
});
afterAll(() => program.stop());

describe("ten years of daily readings of ten quantities", () => {
  test("every quantity is told, the whole page in little", async () => {
    const html = await (await fetch(`${program.address}${to.tank(tank, "trends")}`)).text();
    expect(html.match(/data-trend="/g)).toHaveLength(10);
    expect(html.match(/class="small-course"/g)).toHaveLength(10);
    expect(html.length).toBeLessThan(200_000);
  });

  test("all readings of one are gathered into strokes, and it says into how many", async () => {
    const html = await (await fetch(`${program.address}${to.trend(tank, "temperature_c")}?span=all`)).text();
    expect(html).toMatch(new RegExp(`${days} days with readings are gathered into (8\\d|90) strokes`));
    // The dangerous day of three years ago keeps a mark and a row of its own.
    expect(html).toContain("31.5 °C, dangerous");
    expect(html.length).toBeLessThan(200_000);
  });

  test("its file of numbers has every reading, oldest first, and the dangerous one said so", async () => {
    const csv = await (await fetch(`${program.address}${to.csv(tank, "trend-temperature_c")}`)).text();
    const lines = csv.trim().split("\r\n");
    expect(lines).toHaveLength(days + 1);
    expect(lines[0]).toBe("date,temperature (°C),bound,step of the test,danger");
    expect(lines[1]).toMatch(new RegExp(`^${addDays(TODAY, 1 - days)},`));
    expect(lines.slice(1).filter((line) => line.endsWith(",danger"))).toEqual([
      `${addDays(TODAY, -HOT_DAYS_AGO)},31.5,,0.1,danger`,
    ]);
  });

  test("the drawing is stepped through by keys, one mark shown at a time", async () => {
    const { page, faults, close } = await watched();
    await page.goto(`${program.address}${to.trend(tank, "no3_mg_per_l")}`);
    const next = page.locator("[data-step-by='1']");
    await next.focus();
    for (let step = 0; step < 3; step += 1) await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowLeft");
    const shown = page.locator("svg.wide [data-step-mark][visibility='visible']");
    expect(await shown.count()).toBe(1);
    expect(await shown.getAttribute("data-step-mark")).toBe("1");
    expect(await page.locator("[data-chart-says]").textContent()).toMatch(/^\d+ \w{3} 2026: \d+ mg\/L/);
    expect(faults.filter((fault) => !fault.startsWith("leaves the machine"))).toEqual([]);
    await close();
  });
});
