/**
 * Pages whole: what lies out of sight is laid out only when it comes near (style/nearby.css), and a check that measures a
 * page or looks for what is cut off must have all of it. Where a browser knows nothing of that, pages are so anyway.
 */
import type { Page } from "playwright-core";
import { open } from "./browser.ts";

/** Opens a path, waits for its parts, and has everything laid out; the answer's status. */
export async function openWhole(page: Page, path: string): Promise<number> {
  const status = await open(page, path);
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync("* { content-visibility: visible !important; }");
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  });
  return status;
}
