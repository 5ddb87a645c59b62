/**
 * The daybook in a browser, with script and without: an entry of every kind is kept from its form, told in a sentence,
 * undone by one press, found by its kind; what can't be read keeps what was typed; two who correct one entry both see it.
 */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import type { EntryKind } from "../../src/contract/daybook/kinds.ts";
import { to } from "../../src/web/page.ts";
import { addressOf, turn, type Watched, watched } from "./kit/browser.ts";

const { demo, danger } = inject("cast");

interface Told {
  readonly kind: EntryKind;
  readonly query?: string;
  readonly type?: Readonly<Record<string, string>>;
  readonly choose?: Readonly<Record<string, string>>;
  /** In the sentence that tells it. */
  readonly sentence: RegExp;
}

const EVERY_KIND: readonly Told[] = [
  { kind: "reading", query: "?quantity=ph", type: { text: "8.15" }, sentence: /pH 8\.15/ },
  { kind: "growth", query: "?growth=hair_algae", choose: { score: "3" }, sentence: /Hair algae 3 of 4/ },
  {
    kind: "sign",
    type: { animal: "trochus snail", count: "2" },
    choose: { sign: "waterline_snails" },
    sentence: /Snails at the waterline: 2, banded trochus snail/,
  },
  {
    kind: "head_count",
    type: { animal: "trochus snail", seen: "3", hours_from_lights_out: "2" },
    choose: { torch: "yes" },
    sentence: /3 banded trochus snails seen, 2 hours after the lamps went out, by torch/,
  },
  {
    kind: "addition",
    type: { animal: "trochus snail", count: "2", sold_as: "turbo" },
    sentence: /2 banded trochus snails added, sold as turbo/,
  },
  {
    kind: "loss",
    query: "?animal=trochus%20snail&certainty=found",
    type: { count: "1" },
    choose: { body_removed: "yes", cause: "fell" },
    sentence: /1 banded trochus snail found dead, body taken out, thought to have fallen/,
  },
  {
    kind: "departure",
    type: { animal: "trochus snail", count: "1", to: "a friend's tank" },
    sentence: /1 banded trochus snail moved out, to a friend's tank/,
  },
  {
    kind: "identification",
    type: { was: "trochus snail", animal: "tectus snail", count: "1" },
    sentence: /What was called trochus snail is tent top snail, 1 of them/,
  },
  {
    kind: "chore",
    type: { amount: "10 %" },
    choose: { chore: "water_change" },
    sentence: /Water changed, 10 %/,
  },
  {
    kind: "change",
    type: { to: "8 h" },
    choose: { changed: "light_hours" },
    sentence: /from this day on: 8 h/,
  },
  {
    kind: "treatment",
    type: { substance: "praziquantel" },
    choose: { step: "started" },
    sentence: /Praziquantel put in/,
  },
  { kind: "outage", type: { hours: "6 h" }, choose: { of: "pumps" }, sentence: /Pumps off for 6 hours/ },
  { kind: "relocation", type: { to: "the hall" }, sentence: /The tank was moved to the hall/ },
  {
    kind: "absence",
    type: { from: "2026-03-01", to: "2026-03-09" },
    choose: { fed_by: "nobody" },
    sentence: /Away from home from 1 Mar 2026 to 9 Mar 2026, nobody comes/,
  },
  {
    kind: "decline",
    query: "?advice=danger.tan_mg_n_per_l",
    type: { reason: "away for two weeks" },
    sentence: /Advice declined: away for two weeks/,
  },
];

/** The line of the entry kept just now: other checks log in the same daybook meanwhile. */
const keptEntry = (page: Page, address = page.url()) =>
  page.locator(`.entry-lines a[href*="${new URL(address).searchParams.get("kept")}"]`).first();

describe.each([true, false])("with script: %s", (javaScriptEnabled) => {
  let seen: Watched;
  beforeAll(async () => {
    seen = await watched({ javaScriptEnabled, viewport: { width: 360, height: 640 } });
  });
  afterAll(() => seen.close());

  test.each(EVERY_KIND)(
    "$kind is kept, told and undone",
    async ({ kind, query = "", type, choose, sentence }) => {
      const { page, faults } = seen;
      await page.goto(addressOf(`${to.newEntry(danger, kind)}${query}`));
      for (const [name, text] of Object.entries(type ?? {})) {
        await page.locator(`main form [name="${name}"]:not([type=hidden])`).fill(text);
      }
      for (const [name, value] of Object.entries(choose ?? {})) {
        await page.locator(`main form input[name="${name}"][value="${value}"]`).check();
      }
      await turn(page, () => page.locator("main form button.first").first().click());
      const kept = page.url();
      expect(await page.locator(".notice").first().textContent()).toMatch(sentence);
      await page.goto(addressOf(`${to.tank(danger, "daybook")}?kind=${kind}`));
      const line = keptEntry(page, kept);
      expect(await line.textContent()).toMatch(sentence);
      await turn(page, () => line.click());
      expect(await page.locator("h1").count()).toBe(1);
      expect(await page.locator("main .lead").textContent()).toMatch(sentence);
      await turn(page, () => page.locator("button[value=take_away]").click());
      expect(await page.locator(".notice-title").textContent()).toBe("Taken away");
      await turn(page, () => page.getByRole("button", { name: "Undo: bring it back" }).click());
      expect(await page.locator(".notice-title").textContent()).not.toBe("Taken away");
      await turn(page, () => page.getByRole("button", { name: "Undo: take it away" }).click());
      expect(faults).toEqual([]);
    },
  );

  test("what can't be read is told beside its field, and a likely reading is one press", async () => {
    const { page, faults } = seen;
    await page.goto(addressOf(to.newEntry(danger, "head_count")));
    await page.locator("#animal").fill("trocus snail");
    await page.locator("#seen").fill("three ish");
    await page.locator("#note").fill("behind the arch");
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.waitForFunction(() => document.title.startsWith("Error: "));
    expect(await page.locator("#seen").inputValue()).toBe("three ish");
    expect(await page.locator("#note").inputValue()).toBe("behind the arch");
    expect(await page.locator(".error-summary li").count()).toBe(2);
    await page.locator("#seen").fill("3");
    const [fix] = await page.locator("#animal-error button.fix").all();
    expect(fix).toBeDefined();
    const kept = page.waitForURL(/[?&]kept=/);
    await fix?.click();
    await kept;
    expect(await page.locator(".notice").first().textContent()).toMatch(
      /^Kept\s*3 banded trochus snails seen/,
    );
    // With script it had been in the outbox, and is there no more.
    expect(await page.locator(".outbox-count").count()).toBe(0);
    await page.getByRole("button", { name: "Undo: take it away" }).click();
    expect(faults).toEqual([]);
  });

  test("changed by another since: both are shown, and nothing is saved until one is chosen", async () => {
    const { page, context } = seen;
    await page.goto(addressOf(to.newEntry(danger, "relocation")));
    await page.locator("#to").fill("the attic");
    await turn(page, () => page.getByRole("button", { name: "Keep it" }).click());
    await turn(page, () => keptEntry(page).click());
    const other = await context.newPage();
    await other.goto(page.url());
    await other.locator("#to").fill("the cellar");
    await turn(other, () => other.getByRole("button", { name: "Keep the correction" }).click());
    expect(other.url()).toContain("kept=");
    await other.close();
    await page.locator("#to").fill("the porch");
    await turn(page, () => page.getByRole("button", { name: "Keep the correction" }).click());
    await page.waitForSelector(".notice.of-look");
    expect(await page.locator(".notice.of-look").textContent()).toContain("the cellar");
    expect(await page.locator("#to").inputValue()).toBe("the porch");
    await turn(page, () => page.getByRole("button", { name: "Save what I typed" }).click());
    await turn(page, () => keptEntry(page).click());
    const history = await page.locator("table tbody").textContent();
    for (const place of ["attic", "cellar", "porch"]) expect(history).toContain(place);
  });

  test("sixty a page, the older ones by a link, one kind by another", async () => {
    const { page, faults } = seen;
    await page.goto(addressOf(to.tank(demo, "daybook")));
    expect(await page.locator(".entry-lines > li").count()).toBe(60);
    const newest = await page.locator(".entry-lines a").first().getAttribute("href");
    await page.getByRole("link", { name: "Older ones" }).click();
    await page.waitForURL(/after=/);
    expect(await page.locator(".entry-lines > li").count()).toBeGreaterThan(0);
    expect(await page.locator(`.entry-lines a[href="${newest}"]`).count()).toBe(0);
    await page.getByRole("link", { name: "The newest" }).click();
    await page.waitForURL(/daybook$/);
    await page
      .getByRole("navigation", { name: "Kinds of entry" })
      .getByRole("link", { name: "Reading" })
      .click();
    await page.waitForURL(/kind=reading/);
    expect(await page.locator(".entry-lines > li").count()).toBe(60);
    expect(faults).toEqual([]);
  });
});
