/** What a page shows of itself, so that what is shown in one form alone (wide, folded) is found out. */
import type { Page } from "playwright-core";

/** Remembers in the page what it shows now. */
export const rememberShown = (page: Page): Promise<void> =>
  page.evaluate(() => {
    (window as unknown as { shown: Set<Element> }).shown = new Set(
      [...document.querySelectorAll("*")].filter((element) => element.checkVisibility()),
    );
  });

/** How many things are shown now and were not when it was remembered; how many were, and are not. */
export const shownSince = (page: Page): Promise<{ readonly more: number; readonly fewer: number }> =>
  page.evaluate(() => {
    const { shown } = window as unknown as { shown: Set<Element> };
    const now = [...document.querySelectorAll("*")].filter((element) => element.checkVisibility());
    const more = now.filter((element) => !shown.has(element)).length;
    return { more, fewer: shown.size - (now.length - more) };
  });
