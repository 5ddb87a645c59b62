/** What a page shows of itself, so that what is shown in one form alone (wide, folded) is found out. */
import type { Page } from "playwright-core";

/** Remembers in the page what it shows now. */
export const rememberShown = (page: Page): Promise<void> =>
  page.evaluate(() => {
    (window as unknown as { shown: Set<Element> }).shown = new Set(
      [...document.querySelectorAll("*")].filter((element) => element.checkVisibility()),
    );
  });

export interface Shown {
  /** How many things are shown now and were not when it was remembered. */
  readonly more: number;
  /** Of those that stand in no other of them: tags and attributes without words, numbers and addresses. */
  readonly shapes: readonly string[];
  /** How many were shown, and are not. */
  readonly fewer: number;
}

export const shownSince = (page: Page): Promise<Shown> =>
  page.evaluate(() => {
    const { shown } = window as unknown as { shown: Set<Element> };
    const now = [...document.querySelectorAll("*")].filter((element) => element.checkVisibility());
    const more = new Set(now.filter((element) => !shown.has(element)));
    const outermost = [...more].filter(
      ({ parentElement }) => parentElement === null || !more.has(parentElement),
    );
    const shapes = outermost.map(({ outerHTML }) =>
      outerHTML
        .replaceAll(/>[^<]+</g, "><")
        .replaceAll(/ (?:href|id|for|aria-(?:controls|labelledby|describedby)|data-[\w-]+)="[^"]*"/g, "")
        .replaceAll(/\d+/g, "0"),
    );
    return { more: more.size, shapes, fewer: shown.size - (now.length - more.size) };
  });
