/**
 * Logging an entry and being interrupted at a random moment, before or after "Keep": the tab dies or is closed, the
 * network is cut, the server is stopped without a word. Then the keeper comes back, keeps what still stands in the form,
 * and waits for the outbox. Every entry has a text of its own; the daybook must hold each of them once.
 */
import type { BrowserContext, Page } from "playwright-core";
import type { Stoppable } from "./stoppable.ts";

const CUTS = ["crash", "close", "network", "server"] as const;
type Cut = (typeof CUTS)[number];
const MOMENTS = ["typing", "keeping", "waiting"] as const;
type Moment = (typeof MOMENTS)[number];

/** A form, and how a text that is this entry's alone is typed into it. */
export interface Surface {
  readonly name: string;
  readonly path: string;
  readonly field: string;
  readonly type: (page: Page, mark: string) => Promise<void>;
  readonly keep: (page: Page) => Promise<void>;
  readonly markOf: (i: number, chance: () => number) => string;
}

export interface Logged {
  readonly mark: string;
  readonly surface: string;
  readonly cut: Cut;
  readonly moment: Moment;
  /** Found on return: in the form, or gone on its way to the daybook. */
  readonly foundInForm: boolean;
}

export interface Interrupted {
  readonly logged: readonly Logged[];
  /** Half-typed texts that were not found again. */
  readonly lostWhileTyping: readonly Logged[];
}

function chanceFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

const LONGEST_WAIT_MS = 120;
const CRASHES_IN_MS = 3000;
const ANSWERS_IN_MS = 5000;
const SENT_IN_MS = 250_000;

async function cutOff(how: Cut, page: Page, program: Stoppable<unknown>): Promise<void> {
  if (how === "crash") {
    // A page that was just turning dies in the process it leaves: then it is closed like any other.
    const gone = page.waitForEvent("crash", { timeout: CRASHES_IN_MS }).catch(() => {});
    // Nothing of it answers: the process that would is gone.
    void page
      .context()
      .newCDPSession(page)
      .then((session) => session.send("Page.crash"))
      .catch(() => {});
    await gone;
    await within(CRASHES_IN_MS, page.close());
  } else if (how === "close") await within(CRASHES_IN_MS, page.close({ runBeforeUnload: false }));
  else if (how === "network") await page.context().setOffline(true);
  else await program.stop();
}

/** Whatever is asked of a page that dies may never be answered: false then, or where it fails. */
async function within(ms: number, asked: Promise<unknown>): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<boolean>((resolve) => {
    timer = setTimeout(() => resolve(false), ms);
  });
  const done = asked.then(
    () => true,
    () => false,
  );
  const first = await Promise.race([done, late]);
  clearTimeout(timer);
  return first;
}

async function restored(how: Cut, context: BrowserContext, program: Stoppable<unknown>): Promise<void> {
  if (how === "network") await context.setOffline(false);
  if (how === "server") await program.start();
}

/** Whether nothing waits in the outbox, and nothing is on its way. */
async function sent(page: Page): Promise<boolean> {
  return await page.evaluate(async () => {
    if (document.querySelector("form[aria-busy=true]") !== null) return false;
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const request = indexedDB.open("grazewell", 1);
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    if (!database.objectStoreNames.contains("outbox")) return true;
    const count = database.transaction("outbox").objectStore("outbox").count();
    return await new Promise<boolean>((resolve, reject) => {
      count.onsuccess = () => resolve(count.result === 0);
      count.onerror = () => reject(count.error);
    });
  });
}

async function untilSent(page: Page): Promise<void> {
  const late = Date.now() + SENT_IN_MS;
  while (Date.now() < late) {
    // A page that turns while it is asked is asked again.
    let all = false;
    const asked = sent(page).then((answer) => {
      all = answer;
    });
    if ((await within(ANSWERS_IN_MS, asked)) && all) return;
    await page.waitForTimeout(50);
  }
  throw new Error(`the outbox was not sent in ${SENT_IN_MS / 1000} s: ${page.url()}`);
}

export async function interruptLogging(
  context: BrowserContext,
  program: Stoppable<unknown>,
  surfaces: readonly Surface[],
  times: number,
  seed: number,
): Promise<Interrupted> {
  const chance = chanceFrom(seed);
  const pick = <T>(from: readonly T[]): T => from[Math.floor(chance() * from.length)]!;
  const logged: Logged[] = [];
  const lostWhileTyping: Logged[] = [];
  for (let i = 0; i < times; i += 1) {
    const surface = pick(surfaces);
    const [cut, moment] = [pick(CUTS), pick(MOMENTS)];
    const mark = surface.markOf(i, chance);
    const wait = Math.floor(chance() * LONGEST_WAIT_MS);
    const page = await context.newPage();
    await page.goto(program.address + surface.path);
    await surface.type(page, mark);
    if (moment === "keeping") {
      const kept = surface.keep(page).catch(() => {});
      await cutOff(cut, page, program);
      await within(CRASHES_IN_MS, kept);
    } else {
      if (moment === "waiting") {
        await within(CRASHES_IN_MS, surface.keep(page));
        await page.waitForTimeout(wait);
      }
      await cutOff(cut, page, program);
    }
    // The page that is still open finds out by itself; its keeper looks again later.
    if (!page.isClosed()) {
      await page.waitForTimeout(wait);
      await within(CRASHES_IN_MS, page.close());
    }
    await restored(cut, context, program);
    const back = await context.newPage();
    await back.goto(program.address + surface.path);
    await untilSent(back);
    const field = back.locator(surface.field).first();
    const foundInForm = (await field.inputValue()) === mark;
    const one = { mark, surface: surface.name, cut, moment, foundInForm };
    logged.push(one);
    if (moment === "typing" && !foundInForm) lostWhileTyping.push(one);
    if (foundInForm) {
      await surface.keep(back);
      await untilSent(back);
    }
    await within(CRASHES_IN_MS, back.close());
  }
  return { logged, lostWhileTyping };
}
