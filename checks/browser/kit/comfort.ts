/** What a reader may set for themselves: larger text, wider spacing, forced colours; and what they then still need. */
import type { Page } from "playwright-core";

/** Text at 200 %, as a browser's own setting does it: the root's size, whatever the page makes of it, doubles. */
export async function doubleText(page: Page): Promise<void> {
  await page.evaluate(() => {
    const root = document.documentElement;
    root.style.fontSize = `${2 * Number.parseFloat(getComputedStyle(root).fontSize)}px`;
  });
}

/** Spacing of WCAG 1.4.12, laid over the page's own style. */
export async function spaceText(page: Page): Promise<void> {
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(
      `* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
       p { margin-block-end: 2em !important; }`,
    );
    document.adoptedStyleSheets.push(sheet);
  });
}

/** Size in px of the smallest seen text, so that a page that ignores the reader's size is found out. */
export function smallestText(page: Page): Promise<number> {
  return page.evaluate(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    let least = Number.POSITIVE_INFINITY;
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const parent = node.parentElement;
      if (parent === null || (node.textContent ?? "").trim() === "" || !parent.checkVisibility()) continue;
      // A drawing's words grow with the drawing.
      if (parent instanceof SVGElement || parent.matches("script, style")) continue;
      least = Math.min(least, Number.parseFloat(getComputedStyle(parent).fontSize));
    }
    return least;
  });
}

/** Animations and transitions that run for longer than a blink. */
export function motions(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const running = document
      .getAnimations()
      .map((animation) => String((animation as CSSAnimation).animationName));
    const moving = [...document.querySelectorAll("*")].filter((element) => {
      const { transitionDuration, animationName, animationDuration, scrollBehavior } =
        getComputedStyle(element);
      const longest = Math.max(
        ...`${transitionDuration},${animationName === "none" ? "0s" : animationDuration}`
          .split(",")
          .map(Number.parseFloat),
      );
      return longest > 0.05 || scrollBehavior === "smooth";
    });
    return [
      ...running,
      ...moving.slice(0, 5).map((element) => `${element.localName}.${element.getAttribute("class")}`),
    ];
  });
}
