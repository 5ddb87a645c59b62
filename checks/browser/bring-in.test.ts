/**
 * A file brought in as a keeper does it (without script: checks/http/bring-in.test.ts): asked about, looked at, mended, added, undone. Each page on the
 * way is held to what every page is held to. `GRAZEWELL_SHOTS=folder` also takes the pictures.
 */
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { to } from "../../src/web/page.ts";
import { axeFaults } from "./kit/axe.ts";
import { addressOf, turn, type Watched, watched } from "./kit/browser.ts";
import { borderFaults } from "./kit/contrast.ts";
import { bonesFaults, cutFaults, sidewaysFaults, targetFaults } from "./kit/geometry.ts";
import { wordsOf } from "./kit/page-text.ts";
import { wordFaults } from "./kit/text-lint.ts";

const SHOTS = process.env["GRAZEWELL_SHOTS"];

let seen: Watched;
beforeAll(async () => {
  seen = await watched();
});
afterAll(() => seen.close());

/** Held to what pages.test.ts holds every page to. */
async function sound(page: Page, name: string): Promise<void> {
  // The summary of what is wrong stands before the heading, on every page that has one.
  const summed = (await page.locator(".error-summary").count()) > 0;
  const faults: string[] = summed ? [] : [...(await bonesFaults(page))];
  for (const [width, height] of [
    [1280, 800],
    [360, 640],
  ] as const) {
    await page.setViewportSize({ width, height });
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      if (SHOTS !== undefined)
        await page.screenshot({
          path: join(SHOTS, `bring-in-${name}-${width}-${colorScheme}.png`),
          fullPage: true,
        });
      faults.push(...(await axeFaults(page)), ...(await borderFaults(page)));
    }
    await page.emulateMedia({ colorScheme: "light" });
    faults.push(...(await sidewaysFaults(page)), ...(await targetFaults(page)), ...(await cutFaults(page)));
  }
  faults.push(...wordFaults(await wordsOf(page)).map(({ rule, sentence }) => `words, ${rule}: ${sentence}`));
  expect(faults, name).toEqual([]);
}

const SHEET = [
  "date;NO3 (mg/l);ph;note",
  "01.06.2026;10,5;8,1;after the water change",
  "02.06.2026;trace;8,2;",
  "03.06.2026;12;8,1;=1+1",
  "2026-06-04;77;81;",
  "05.06.2026;12;8,1;;too;many",
].join("\n");

test("from a sheet to the daybook, and back", { timeout: 400_000 }, async () => {
  const { page } = seen;
  await page.goto(addressOf(to.newTank()));
  await page.locator("#water").fill("150");
  await turn(page, () => page.getByRole("button", { name: "Keep and go on" }).click());
  const tank = /\/tanks\/([^/]+)/.exec(page.url())?.[1] ?? "";
  const send = async (text: string, name: string) => {
    await page.goto(addressOf(to.bringIn(tank)));
    await page.locator("#file").setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(text) });
    await turn(page, () => page.getByRole("button", { name: "Look at it first" }).click());
  };

  await page.goto(addressOf(to.bringIn(tank)));
  await turn(page, () => page.getByRole("button", { name: "Look at it first" }).click());
  expect(await page.locator("main").textContent()).toContain("Choose a file, or paste a table");
  await sound(page, "nothing");

  await send(SHEET, "readings.csv");
  await sound(page, "asked");
  await page.locator("select[name='column.2']").selectOption("reading:no3_mg_per_l:mg/L as NO3");
  await turn(page, () => page.getByRole("button", { name: "Go on" }).click());
  await sound(page, "mend");
  await page.locator("input[name='cell.3.2']").fill("<2");
  // A likely fix is one press.
  await turn(page, () => page.getByRole("button", { name: /8\.1/ }).first().click());
  expect(await page.locator("main").textContent()).toContain("1 row to mend");
  await turn(page, () => page.getByRole("button", { name: /^Add the \d+ now/ }).click());
  expect(await page.locator(".notice").first().textContent()).toMatch(/8 entries added.*1 row left out/);
  await sound(page, "done");

  // Again, changed: at odds; and one that was deleted meanwhile.
  await page.goto(addressOf(to.tank(tank, "daybook")));
  await send("date,nitrate,ph\n2026-06-01,20,8.1\n2026-06-03,12,8.3\n2026-05-01,5,", "again.csv");
  await sound(page, "at-odds");
  await page.locator("input[name=clash][value=file]").check();
  await turn(page, () => page.getByRole("button", { name: "Look again" }).first().click());
  expect(await page.locator("main").textContent()).toContain("Add the 1 and change the 2 now");
  await turn(page, () => page.getByRole("button", { name: "Add the 1 and change the 2 now" }).click());
  await turn(page, () => page.getByRole("button", { name: /Undo readings\.csv/ }).click());
  await sound(page, "undo");
  await turn(page, () => page.getByRole("button", { name: "Undo, and keep those as they are" }).click());
  expect(await page.locator(".notice").first().textContent()).toMatch(
    /2 entries that were changed since stayed/,
  );
  await sound(page, "undone");
  await page.goto(addressOf(to.takeOut(tank)));
  await sound(page, "take-out");
  expect(seen.faults).toEqual([]);
});
