/** What a reader may set for themselves: larger text, wider spacing, forced colours; and what they then still need. */
import type { Page } from "playwright-core";

/**
 * The reader's own size of text at 200 %, as set in the browser: 32 px for 16. Holds for the page until what is
 * returned is called.
 */
export async function doubledText(page: Page): Promise<() => Promise<void>> {
  const session = await page.context().newCDPSession(page);
  await session.send("Page.setFontSizes", { fontSizes: { standard: 32, fixed: 26 } });
  return () => session.detach();
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
export function smallestText(page: Page): Promise<{ readonly px: number; readonly words: string }> {
  return page.evaluate(() => {
    let words = "";
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    let least = Number.POSITIVE_INFINITY;
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const parent = node.parentElement;
      if (parent === null || (node.textContent ?? "").trim() === "" || !parent.checkVisibility()) continue;
      // A drawing's words grow with the drawing.
      if (parent.closest("svg, script, style") !== null) continue;
      const px = Number.parseFloat(getComputedStyle(parent).fontSize);
      if (px < least) [least, words] = [px, (node.textContent ?? "").trim().slice(0, 40)];
    }
    return { px: least, words };
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
