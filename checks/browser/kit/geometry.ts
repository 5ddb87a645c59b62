/**
 * What can be measured of a page as it stands: sideways scroll, size of what is to be hit, the document's bones, text
 * that is cut off. Each function returns faults in lines, none where all is in order.
 */
import type { Page } from "playwright-core";

/** Elements that stick out to the right, where the page scrolls sideways. */
export function sidewaysFaults(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const root = document.documentElement;
    if (root.scrollWidth <= root.clientWidth) return [];
    const out = [...document.body.querySelectorAll("*")].filter((element) => {
      const { right, width } = element.getBoundingClientRect();
      return width > 0 && right > root.clientWidth + 1;
    });
    const names = out
      .slice(-3)
      .map((element) => `${element.localName}.${element.getAttribute("class") ?? ""}`);
    return [`scrolls sideways: ${root.scrollWidth} px in ${root.clientWidth} (${names.join(", ")})`];
  });
}

/** `leastControl`: for entries and buttons, px; other targets, and buttons that look like links, 24 px. */
export function targetFaults(page: Page, leastControl = 48): Promise<string[]> {
  return page.evaluate((least) => {
    const LEAST = 24;
    const targets = [
      ...document.querySelectorAll("a[href], button, input, select, textarea, summary"),
    ].filter(
      (element) =>
        element.checkVisibility({ visibilityProperty: true }) &&
        element.getClientRects().length > 0 &&
        // For the return key or the ear alone, clipped away from pointers.
        getComputedStyle(element).clipPath === "none",
    );
    const box = (element: Element) => element.getBoundingClientRect();
    /** A box or radio button is hit through its label as well. */
    const hitBox = (element: Element) => {
      const own = box(element);
      const small = element instanceof HTMLInputElement && ["radio", "checkbox"].includes(element.type);
      const labels = small ? [...(element.labels ?? [])].map(box) : [];
      const all = [own, ...labels];
      return {
        width: Math.max(...all.map((b) => b.right)) - Math.min(...all.map((b) => b.left)),
        height: Math.max(...all.map((b) => b.bottom)) - Math.min(...all.map((b) => b.top)),
      };
    };
    /** The exception of WCAG 2.5.8: a link among the words of a sentence, or in a drawing's own words. */
    const inline = (element: Element) => {
      if (element instanceof SVGElement) return true;
      if (getComputedStyle(element).display !== "inline") return false;
      let block = element.parentElement;
      while (block !== null && getComputedStyle(block).display === "inline") block = block.parentElement;
      const words = [...(block?.childNodes ?? [])].filter(
        (node) =>
          node instanceof Text ||
          (node instanceof Element && node.localName !== "a" && getComputedStyle(node).display === "inline"),
      );
      return words.some((node) =>
        /\w{2}/.test((node.textContent ?? "").replace(element.textContent ?? "", "")),
      );
    };
    /** Its other exception: no other target within the circle of 24 px. */
    const apart = (element: Element) => {
      const { left, right, top, bottom } = box(element);
      const [x, y] = [(left + right) / 2, (top + bottom) / 2];
      return targets.every((other) => {
        if (other === element || other.contains(element) || element.contains(other)) return true;
        const b = box(other);
        const dx = Math.max(b.left - x, 0, x - b.right);
        const dy = Math.max(b.top - y, 0, y - b.bottom);
        return Math.hypot(dx, dy) >= LEAST / 2;
      });
    };
    return targets.flatMap((element) => {
      const { width, height } = hitBox(element);
      const control = element.matches("button:not(.plain), input, select, textarea");
      const name = `${element.localName} "${(element.textContent ?? "").trim().slice(0, 40) || element.id}"`;
      const size = `${Math.round(width)} x ${Math.round(height)} px`;
      if (control) return Math.min(width, height) >= least - 0.5 ? [] : [`control of ${size}: ${name}`];
      if (Math.min(width, height) >= LEAST - 0.5 || inline(element) || apart(element)) return [];
      return [`target of ${size}: ${name}`];
    });
  }, leastControl);
}

/** Language, title, one h1, no level left out, landmarks, unique ids, an explained table. */
export function bonesFaults(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const faults: string[] = [];
    const count = (selector: string) => document.querySelectorAll(selector).length;
    if (document.documentElement.lang !== "en") faults.push("no language");
    if (!/\S.* – Grazewell$/.test(document.title)) faults.push(`title: "${document.title}"`);
    if (count("h1") !== 1) faults.push(`${count("h1")} h1`);
    if (count("main") !== 1) faults.push(`${count("main")} main`);
    if (count("body > header") !== 1) faults.push("no header");
    if (count("body > footer") !== 1) faults.push("no footer");
    let before = 0;
    for (const heading of document.querySelectorAll("h1, h2, h3, h4, h5, h6")) {
      const level = Number(heading.localName[1]);
      if (level > before + 1)
        faults.push(`h${before} is followed by ${heading.localName} "${heading.textContent}"`);
      before = level;
    }
    const ids = [...document.querySelectorAll("[id]")].map((element) => element.id);
    for (const id of new Set(ids.filter((id, i) => ids.indexOf(id) !== i))) faults.push(`id twice: ${id}`);
    for (const table of document.querySelectorAll("table")) {
      if (table.caption === null && !table.hasAttribute("aria-labelledby"))
        faults.push(`table without caption: ${table.textContent?.slice(0, 40)}`);
    }
    // A wheel or an arrow key changes a number field unseen.
    if (count("input[type=number]") > 0) faults.push("input of type number");
    for (const styled of document.querySelectorAll("[style]:not([style=''])")) {
      faults.push(`style attribute: ${styled.outerHTML.slice(0, 120)}`);
    }
    return faults;
  });
}

/** Text that its own box cuts off; words for the ear alone (clipped away on purpose) are none. */
export function cutFaults(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.body.querySelectorAll<HTMLElement>("*")].flatMap((element) => {
      if (!element.checkVisibility() || element.clientWidth <= 1 || (element.textContent ?? "").trim() === "")
        return [];
      const { overflowX, overflowY, clipPath } = getComputedStyle(element);
      if (clipPath !== "none") return [];
      const cuts = (overflow: string) => overflow === "hidden" || overflow === "clip";
      const cut =
        (cuts(overflowX) && element.scrollWidth > element.clientWidth + 1) ||
        (cuts(overflowY) && element.scrollHeight > element.clientHeight + 1);
      return cut
        ? [`cut off: ${element.localName}.${element.className} "${element.textContent?.slice(0, 40)}"`]
        : [];
    }),
  );
}

/** Words and grains of a drawing that stick out of it: an SVG clips what lies outside. */
export function drawingFaults(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll("svg[viewBox]")].flatMap((svg) => {
      if (!svg.checkVisibility() || svg.getClientRects().length === 0) return [];
      const frame = svg.getBoundingClientRect();
      return [...svg.querySelectorAll("text, .words > span, path.grain")].flatMap((mark) => {
        // Of a label its letters: the ground behind them is a little wider.
        const letters = document.createRange();
        letters.selectNodeContents(mark);
        const box = (mark instanceof HTMLElement ? letters : mark).getBoundingClientRect();
        // A hidden mark of the stepper has no size.
        if (box.width === 0 || getComputedStyle(mark).visibility === "hidden") return [];
        const over = Math.max(
          frame.left - box.left,
          box.right - frame.right,
          frame.top - box.top,
          box.bottom - frame.bottom,
        );
        if (over <= 1.5) return [];
        return [
          `sticks out of its drawing by ${Math.round(over)} px: ${mark.localName} "${mark.textContent?.slice(0, 30)}"`,
        ];
      });
    }),
  );
}
