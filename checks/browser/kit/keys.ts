/**
 * A keeper without a mouse: presses keys, counts them, and looks at each stop whether the focus can be seen and goes
 * on in reading order. Digits typed into a field are not counted, all else is, letters too.
 */
import type { Page } from "playwright-core";

interface Stop {
  /** Element and its words. */
  readonly name: string;
  readonly left: number;
  readonly top: number;
  readonly ring: boolean;
  /** Nothing lies over its middle (WCAG 2.4.11). */
  readonly clear: boolean;
}

/**
 * Waits until a page stands as a keeper sees it who goes on by keys. A page that has loaded need not have been drawn yet,
 * and its field is given the focus as it is drawn: on a machine with more to do that comes later, and a key pressed in
 * between goes nowhere.
 */
async function drawn(page: Page): Promise<void> {
  if ((await page.locator("[autofocus]").count()) > 0)
    await page.locator(":focus").waitFor({ state: "attached" });
}

export class Keyboard {
  readonly #page: Page;
  #presses = 0;
  /** Stops where the focus could not be seen, or went back up the page. */
  readonly faults: string[] = [];
  #last: Stop | null = null;

  constructor(page: Page) {
    this.#page = page;
  }

  get presses(): number {
    return this.#presses;
  }

  async press(key: string): Promise<void> {
    await this.#page.keyboard.press(key);
    this.#presses += 1;
  }

  /** A new page: the order begins anew. */
  turned(): void {
    this.#last = null;
  }

  /** Presses Enter where the focus stands, and waits for the page that it leads to. */
  async enter(next: RegExp): Promise<void> {
    const turned = this.#page.waitForURL(next, { waitUntil: "load" });
    await this.press("Enter");
    await turned;
    await drawn(this.#page);
    this.turned();
  }

  async type(text: string): Promise<void> {
    await this.#page.keyboard.type(text);
    this.#presses += [...text].filter((letter) => !/\d/.test(letter)).length;
  }

  /** Tabs until the focus stands on something whose words or id match; at most `most` times. */
  async tabTo(wanted: RegExp, most = 40): Promise<void> {
    for (let i = 0; i <= most; i += 1) {
      const stop = await this.look();
      if (stop !== null && wanted.test(stop.name)) return;
      await this.press("Tab");
    }
    throw new Error(
      `${wanted} is not reached in ${most} presses of Tab from the start of ${this.#page.url()}`,
    );
  }

  /** Where the focus stands; null on the page itself. */
  async look(): Promise<Stop | null> {
    const stop = await this.#page.evaluate(() => {
      const element = document.activeElement;
      if (element === null || element === document.body) return null;
      const labels = element instanceof HTMLInputElement ? [...(element.labels ?? [])] : [];
      const words = [
        element.id,
        element.getAttribute("name"),
        element.textContent,
        ...labels.map((l) => l.textContent),
      ];
      const { left, top, width, height } = element.getBoundingClientRect();
      const over = document.elementFromPoint(left + width / 2, top + height / 2);
      const { outlineStyle, outlineWidth } = getComputedStyle(element);
      return {
        name: `${element.localName} ${words.map((word) => word?.trim()).join(" ")}`.replaceAll(/\s+/g, " "),
        left,
        top: top + scrollY,
        ring: outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 2 && width > 0 && height > 0,
        clear: over === null || element.contains(over) || over.contains(element),
      };
    });
    if (stop === null) return null;
    if (!stop.ring) this.faults.push(`focus can't be seen: ${stop.name}`);
    if (!stop.clear) this.faults.push(`focus lies under something: ${stop.name}`);
    // After the last stop comes the first again.
    if (/^a Skip to the page$/.test(stop.name)) this.turned();
    // A row reads left to right; the next stop may stand beside the last, not well above it unless in a next column.
    if (this.#last !== null && stop.top < this.#last.top - 60 && stop.left <= this.#last.left) {
      this.faults.push(`goes back up: from ${this.#last.name} to ${stop.name}`);
    }
    this.#last = stop;
    return stop;
  }
}
