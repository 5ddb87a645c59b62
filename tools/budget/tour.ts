/** A scripted tour through a tank: of each press or key, how long until the next paint, by the browser's own account. */
import type { Page } from "playwright-core";
import { to } from "../../src/web/page.ts";

export interface Interaction {
  readonly name: string;
  /** The slowest event of it; 0 where all were below the 16 ms that browsers report. */
  readonly ms: number;
}

interface Felt {
  worst: number;
}

async function listen(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const felt: Felt = { worst: 0 };
    (window as unknown as { felt: Felt }).felt = felt;
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) {
        if ((entry as PerformanceEntry & { interactionId: number }).interactionId > 0) {
          felt.worst = Math.max(felt.worst, entry.duration);
        }
      }
    }).observe({ type: "event", durationThreshold: 16, buffered: true } as PerformanceObserverInit);
  });
}

export async function tour(page: Page, address: string, tank: string): Promise<Interaction[]> {
  const found: Interaction[] = [];
  const step = async (name: string, act: () => Promise<void>) => {
    await page.evaluate(() => {
      (window as unknown as { felt: Felt }).felt.worst = 0;
    });
    await act();
    await page.waitForTimeout(400);
    const ms = await page.evaluate(() => (window as unknown as { felt: Felt }).felt.worst);
    found.push({ name, ms });
  };
  await listen(page);

  await page.goto(`${address}${to.tank(tank)}`);
  const figure = page.locator("main a[data-figure]").first();
  await step("bench: a figure opens its working", () => figure.click());
  await page.locator("dialog.over h1").waitFor();
  await step("bench: Escape closes it", () => page.keyboard.press("Escape"));

  await page.goto(`${address}${to.tank(tank, "larder")}`);
  await step("larder: step to the next value", () => page.locator("[data-step-by='1']").first().click());
  await step("larder: step by the right key", () => page.keyboard.press("ArrowRight"));
  await step("larder: last value", () => page.keyboard.press("End"));
  await step("larder: the table opens", () => page.locator("details.chart-table summary").first().click());

  await page.goto(`${address}${to.tank(tank, "ahead")}`);
  await step("weeks ahead: step to the next value", () => page.locator("[data-step-by='1']").first().click());

  await page.goto(`${address}${to.tank(tank, "what-if")}`);
  // The engine in the browser is loading or loaded: its worker must not be felt here.
  await page.waitForTimeout(6000);
  const more = page.getByRole("button", { name: "More feed" });
  await step("what if: one step more feed", () => more.click());
  await step("what if: another while the first is worked out", () => more.click());
  await step("what if: a field is pressed", () => page.locator("#light").click());
  await step("what if: typing", () => page.keyboard.type("10 h", { delay: 60 }));
  await step("what if: a field is left", () => page.keyboard.press("Tab"));
  const beside = page.locator(".what-if-beside");
  await beside.waitFor({ timeout: 300_000 });
  await step("what if: a step with answers in view", () => more.click());

  await page.goto(`${address}${to.singleForm(tank)}`);
  await step("single form: typing", () => page.locator("input[type=text]").first().pressSequentially("12"));
  return found;
}
