/** The words of a page as they are told: what is seen, and what is told in place of drawings. */
import type { Page } from "playwright-core";

/** Words of the page itself, not of form entries. */
export function wordsOf(page: Page): Promise<string> {
  return page.evaluate(() => {
    // Everything that can be unfolded is read too.
    for (const details of document.querySelectorAll("details")) details.open = true;
    const told = [...document.querySelectorAll("[aria-label], svg title, svg desc, [alt]")].map(
      (element) =>
        element.getAttribute("aria-label") ?? element.getAttribute("alt") ?? element.textContent ?? "",
    );
    // biome-ignore lint/performance/useDomNodeTextContent: only the words that are seen
    return [document.title, document.body.innerText, ...told].join("\n");
  });
}

/**
 * Figures in the page's main part that open no working: not within a quantity, a form's entry or a date. The sentence
 * around each is given, to be looked at: a count of grains in a legend may stand bare, a figure of the engine may not.
 */
export function bareNumbers(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const walker = document.createTreeWalker(
      document.querySelector("main") ?? document.body,
      NodeFilter.SHOW_TEXT,
    );
    const found: string[] = [];
    const months = "Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec";
    const dates = new RegExp(
      `\\b\\d{1,2} (?:${months})[a-z]*(?: \\d{4})?\\b|\\b\\d{4}-\\d\\d-\\d\\d\\b|\\b20\\d\\d\\b`,
      "g",
    );
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const parent = node.parentElement;
      if (
        parent === null ||
        parent.closest("[data-figure], select, textarea, button, label, time, code, script") !== null
      ) {
        continue;
      }
      const text = (node.textContent ?? "").replaceAll(dates, "");
      if (!/\d/.test(text) || !parent.checkVisibility()) continue;
      const around = (
        parent.closest("p, li, td, th, dd, dt, h1, h2, h3, figcaption, caption, text") ?? parent
      ).textContent;
      found.push(`${text.trim()} ← ${(around ?? "").replaceAll(/\s+/g, " ").trim().slice(0, 140)}`);
    }
    return found;
  });
}
