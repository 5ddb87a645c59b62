/**
 * Wet hand on a phone of 360 px, by a stand-in with one thumb (kit/thumb.ts): a reading and a sighting in at most four
 * taps and ten seconds, targets of 48 px; each is in the daybook then, and one press takes it back (U6).
 */
import { expect, inject, test } from "vitest";
import { to } from "../../src/web/page.ts";
import { addressOf, type Watched, watched } from "./kit/browser.ts";
import { Thumb } from "./kit/thumb.ts";

const MOST_TAPS = 4;
const MOST_SECONDS = 10;
const PHONE = { viewport: { width: 360, height: 640 }, hasTouch: true, isMobile: true };

const { demo } = inject("cast");

async function withThumb(work: (thumb: Thumb, seen: Watched) => Promise<void>): Promise<Thumb> {
  const seen = await watched(PHONE);
  try {
    await seen.page.goto(addressOf(to.wetHand(demo)));
    const thumb = new Thumb(seen.page);
    await thumb.look();
    await work(thumb, seen);
    expect(thumb.small).toEqual([]);
    expect(seen.faults).toEqual([]);
    return thumb;
  } finally {
    await seen.close();
  }
}

const panel = (thumb: Thumb) => thumb.page.locator("[data-wet-panel]:not([hidden])");

async function said(thumb: Thumb, words: RegExp): Promise<void> {
  const line = thumb.page.locator("[data-wet-said] p");
  await line.waitFor();
  expect(await line.textContent()).toMatch(words);
}

/** `most`: seconds; what is no reading and no sighting has none. */
function report(what: string, thumb: Thumb, most = MOST_SECONDS): void {
  console.log(`${what}: ${thumb.taps} taps, ${thumb.seconds.toFixed(1)} s (stand-in)`);
  expect(thumb.taps).toBeLessThanOrEqual(MOST_TAPS);
  expect(thumb.seconds).toBeLessThanOrEqual(most);
}

test("a reading of the quantity used last, near the last value, and it is taken back by one press", async () => {
  const thumb = await withThumb(async (hand) => {
    await hand.tap(panel(hand).locator(".wet-row").first());
    const near = panel(hand).locator(".wet-near button").nth(3);
    const value = (await near.textContent()) ?? "";
    await hand.tap(near);
    await hand.tap(panel(hand).getByRole("button", { name: "Keep" }));
    await said(hand, new RegExp(`^Kept: .*${value.replace(".", "\\.")}`));
    await hand.page.getByRole("button", { name: "Undo" }).tap();
    await hand.page.waitForURL(/[?&]kept=/);
    expect(await hand.page.locator(".notice-title").textContent()).toBe("Taken away");
  });
  report("reading, last quantity", thumb);
});

test("a reading of another quantity, by its keys", async () => {
  const thumb = await withThumb(async (hand) => {
    await hand.tap(panel(hand).getByRole("link", { name: "Other readings" }));
    await hand.tap(panel(hand).getByRole("link", { name: "Nitrate" }));
    await hand.tap(panel(hand).locator("[data-wet-key='8']"), false);
    await hand.tap(panel(hand).getByRole("button", { name: "Keep" }), false);
    await said(hand, /^Kept: Nitrate 8 /);
  });
  report("reading, another quantity, one digit", thumb);
});

test("a sighting of the growth seen last", async () => {
  const thumb = await withThumb(async (hand) => {
    await hand.tap(panel(hand).locator("[data-wet-go^=growth-]").first());
    await hand.tap(panel(hand).locator(".wet-scores button").nth(2));
    await said(hand, /^Kept: .* 2 of 4/);
  });
  report("sighting, last growth", thumb);
});

test("a sighting of another growth", async () => {
  const thumb = await withThumb(async (hand) => {
    await hand.tap(panel(hand).getByRole("link", { name: "Other growths" }));
    await hand.tap(panel(hand).locator("[data-wet-go^=growth-]").nth(2));
    await hand.tap(panel(hand).locator(".wet-scores button").nth(1));
    await said(hand, /^Kept: .* 1 of 4/);
  });
  report("sighting, another growth", thumb);
});

test("heads and a chore", async () => {
  const heads = await withThumb(async (hand) => {
    await hand.tap(panel(hand).getByRole("link", { name: "Head count" }));
    await hand.tap(panel(hand).locator("[data-wet-go^=heads-]").first());
    await hand.tap(panel(hand).locator("[data-wet-key='2']"), false);
    await hand.tap(panel(hand).getByRole("button", { name: "Keep" }), false);
    await said(hand, /^Kept: 2 .* seen/);
  });
  report("heads", heads, Number.POSITIVE_INFINITY);
  const chore = await withThumb(async (hand) => {
    await hand.tap(panel(hand).getByRole("link", { name: "Chore done" }));
    await hand.tap(panel(hand).getByRole("button", { name: "Glass wiped" }));
    await said(hand, /^Kept: Glass wiped/);
  });
  report("chore", chore, Number.POSITIVE_INFINITY);
});

test("what was typed and not kept stands in its panel on return", async () => {
  const seen = await watched(PHONE);
  const { page } = seen;
  await page.goto(addressOf(`${to.wetHand(demo)}#reading-calcium_mg_per_l`));
  for (const key of ["4", "1"])
    await page.locator(`[data-wet-panel=reading-calcium_mg_per_l] [data-wet-key='${key}']`).tap();
  await page.goto(addressOf(to.wetHand(demo)));
  const field = page.locator("[data-wet-panel]:not([hidden]) input[name=text]");
  expect(await field.inputValue()).toBe("41");
  await field.fill("");
  expect(seen.faults).toEqual([]);
  await seen.close();
});

test("without script every row leads to a page", async () => {
  const seen = await watched({ ...PHONE, javaScriptEnabled: false });
  await seen.page.goto(addressOf(to.wetHand(demo)));
  const addresses = await seen.page
    .locator("[data-wet-panel=home] a")
    .evaluateAll((links) => links.map((link) => (link as HTMLAnchorElement).href));
  expect(addresses.length).toBeGreaterThanOrEqual(6);
  for (const address of addresses) expect((await seen.page.goto(address))?.status()).toBe(200);
  await seen.close();
});
