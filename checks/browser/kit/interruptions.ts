/**
 * Typing into a form and being interrupted, again and again: the tab dies, is closed, goes elsewhere, or is closed in
 * the middle of a word. Tells what was lost. Used by the check (20) and by tools/interruptions.ts (200).
 */
import type { BrowserContext, Page } from "playwright-core";

const INTERRUPTIONS = ["crash", "close", "leave", "half"] as const;
export type Interruption = (typeof INTERRUPTIONS)[number];

export interface Loss {
  readonly interruption: Interruption;
  readonly field: string;
  readonly typed: string;
  readonly found: string | null;
}

/** Fields of text that are kept as they are typed. */
const FIELDS =
  "form[data-draft] :is(input[type=text], textarea), :is(input[type=text], textarea)[data-draft]";

/** Small, seeded, the same in every run. */
function chanceFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

async function interrupt(page: Page, how: Interruption, elsewhere: string): Promise<void> {
  if (how === "crash") {
    const gone = page.waitForEvent("crash");
    const session = await page.context().newCDPSession(page);
    // It never answers: the process that would is gone.
    session.send("Page.crash").catch(() => {});
    await gone;
    await page.close();
  } else if (how === "leave") {
    await page.goto(elsewhere);
    await page.close();
  } else {
    await page.close({ runBeforeUnload: false });
  }
}

export async function interruptTyping(
  context: BrowserContext,
  addresses: readonly string[],
  times: number,
  seed: number,
): Promise<{ readonly tried: number; readonly lost: readonly Loss[] }> {
  const chance = chanceFrom(seed);
  const pick = <T>(from: readonly T[]): T => from[Math.floor(chance() * from.length)]!;
  const lost: Loss[] = [];
  for (let i = 0; i < times; i += 1) {
    const address = pick(addresses);
    const interruption = pick(INTERRUPTIONS);
    const page = await context.newPage();
    await page.goto(address);
    const fields = page.locator(FIELDS).filter({ visible: true });
    const at = Math.floor(chance() * (await fields.count()));
    const field = fields.nth(at);
    const name = (await field.getAttribute("name")) ?? "";
    const whole = `${i} typed ${Math.floor(chance() * 1e6)}`;
    const typed = interruption === "half" ? whole.slice(0, Math.ceil(whole.length / 2)) : whole;
    await field.fill("");
    await field.pressSequentially(typed);
    await interrupt(page, interruption, new URL("/", address).href);
    const back = await context.newPage();
    await back.goto(address);
    const found = await back.locator(FIELDS).filter({ visible: true }).nth(at).inputValue();
    if (found !== typed)
      lost.push({ interruption, field: `${new URL(address).pathname} ${name}`, typed, found });
    await back.close();
  }
  return { tried: times, lost };
}
