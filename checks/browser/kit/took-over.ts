/** When the service worker has a page in hand, and what it keeps without telling anybody. */
import type { Page } from "playwright-core";

/** The worker has fetched ahead and taken over the pages that are open. */
export async function tookOver(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    const worker = registration.active;
    if (worker !== null && worker.state !== "activated") {
      await new Promise<void>((resolve) => {
        worker.addEventListener("statechange", () => {
          if (worker.state === "activated") resolve();
        });
      });
    }
  });
}

export async function inStore(page: Page, path: string): Promise<boolean> {
  return await page.evaluate(async (address) => (await caches.match(address)) !== undefined, path);
}

export async function until(holds: () => Promise<boolean>, page: Page): Promise<void> {
  for (let i = 0; i < 2000 && !(await holds()); i += 1) await page.waitForTimeout(100);
}
