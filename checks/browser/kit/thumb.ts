/**
 * A stand-in for a keeper with one wet thumb: taps once a second and reads what is shown from the top down to what it
 * taps, at 200 words a minute. Counts taps and seconds. It is a stand-in: no person was timed.
 */
import type { Locator, Page } from "playwright-core";

const WORDS_A_SECOND = 200 / 60;
const LEAST_TARGET_PX = 48;

export class Thumb {
  readonly page: Page;
  taps = 0;
  words = 0;
  /** Targets that are smaller than a thumb needs. */
  readonly small: string[] = [];

  constructor(page: Page) {
    this.page = page;
  }

  /** The heading of a page that was just opened. */
  async look(): Promise<void> {
    const heading = (await this.page.locator("h1").textContent()) ?? "";
    this.words += heading.trim().split(/\s+/).length;
  }

  get seconds(): number {
    return this.taps + this.words / WORDS_A_SECOND;
  }

  /** Reads down to the target, then taps it. `reads`: false where the eyes are on the keys already. */
  async tap(target: Locator, reads = true): Promise<void> {
    if (reads) this.words += await wordsDownTo(target);
    const box = await target.boundingBox();
    const name = ((await target.textContent()) ?? "").trim();
    if (box === null || box.height < LEAST_TARGET_PX || box.width < LEAST_TARGET_PX) {
      this.small.push(`${name}: ${box?.width} x ${box?.height}`);
    }
    this.taps += 1;
    await target.tap();
  }
}

/** Words of the shown panel, from its top to the end of the target. */
async function wordsDownTo(target: Locator): Promise<number> {
  return await target.evaluate((element) => {
    const panel = element.closest("[data-wet-panel]") ?? document.body;
    let words = 0;
    const walker = document.createTreeWalker(panel, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const parent = node.parentElement;
      const after =
        (element.compareDocumentPosition(node) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0 &&
        !element.contains(node);
      if (after) break;
      // What stands on the page's own keys is known without reading, and a panel's heading is what was just tapped.
      if (parent === null || !parent.checkVisibility() || parent.closest(".wet-keys, option, h2") !== null)
        continue;
      words += (node.textContent ?? "").split(/\s+/).filter((word) => word !== "").length;
    }
    return words;
  });
}
