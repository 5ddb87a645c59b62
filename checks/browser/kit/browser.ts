/** The shared browser from inside a test file, and contexts that tell of everything that went wrong in them. */
import { setTimeout } from "node:timers/promises";
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
} from "playwright-core";
import { inject } from "vitest";

/** Below the limit of a test, so that what was waited for is named. */
const NO_HURRY_MS = 280_000;

let connected: Promise<Browser> | null = null;

const browser = (): Promise<Browser> => {
  connected ??= chromium.connect(inject("browser"));
  return connected;
};

export const addressOf = (path: string): string => `${inject("address")}${path}`;

/** A context under watch: `faults` grows with every error, breach of policy and request that leaves the machine. */
export interface Watched {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly faults: string[];
  readonly close: () => Promise<void>;
}

/**
 * Refusals that a check provoked are told in the page; the browser's own note of the status is no fault. Nor is that of
 * an engine with too much to do (503): who waits for a part asks again, and a part that never comes fails by itself.
 */
const NOTE_OF_STATUS = /Failed to load resource: the server responded with a status of (404|409|412|422|503)/;

/** A context that waits as long as a test may: slow is no fault, the test's own limit ends what hangs. */
export async function newContext(options: BrowserContextOptions = {}): Promise<BrowserContext> {
  const context = await (await browser()).newContext(options);
  context.setDefaultTimeout(NO_HURRY_MS);
  return context;
}

export async function watched(options: BrowserContextOptions = {}): Promise<Watched> {
  const context = await newContext({ viewport: { width: 1280, height: 800 }, ...options });
  const faults: string[] = [];
  watch(context, faults);
  const page = await context.newPage();
  return { context, page, faults, close: () => context.close() };
}

function watch(context: BrowserContext, faults: string[]): void {
  const here = new URL(inject("address")).host;
  context.on("request", (request) => {
    const { protocol, host } = new URL(request.url());
    if (protocol.startsWith("http") && host !== here) faults.push(`leaves the machine: ${request.url()}`);
  });
  context.on("console", (message) => {
    // Breaches of the content policy come as errors too.
    if (message.type() !== "error" && message.type() !== "warning") return;
    if (!NOTE_OF_STATUS.test(message.text())) {
      faults.push(`console ${message.type()}: ${message.text()} (${message.location().url})`);
    }
  });
  context.on("weberror", (error) => faults.push(`uncaught: ${error.error().message}`));
  context.on("requestfailed", (request) => {
    const why = request.failure()?.errorText ?? "";
    // A page left while something was still loading.
    if (why !== "net::ERR_ABORTED") faults.push(`not loaded: ${request.url()} (${why})`);
  });
}

/** Parts that come when the engine has worked them out. */
const COMING = "[data-await], [data-plan-part^='/'], [aria-busy=true]";
const COMING_SECONDS = 250;
const ASK_AGAIN_MS = 3_000;
const MOST_ASKED = 40;

/** A plain request, made again where the engine had too much to do to answer; the last answer as it is. */
export async function answered(path: string): Promise<Response> {
  for (let asked = 1; ; asked += 1) {
    const answer = await fetch(addressOf(path));
    if (answer.status !== 503 || asked === MOST_ASKED) return answer;
    await answer.body?.cancel();
    await setTimeout(ASK_AGAIN_MS);
  }
}

/** Opens a path and waits for its parts, not for the solver that comes later; the answer's status. */
export async function open(page: Page, path: string): Promise<number> {
  const answer = await page.goto(addressOf(path), { waitUntil: "load" });
  await settled(page);
  return answer?.status() ?? 0;
}

/**
 * Does what leads to another page, and waits until that has loaded. A press by itself is done as soon as the next page
 * has begun to come, and what is read of it then may be its first lines.
 */
export async function turn(page: Page, deed: () => Promise<unknown>): Promise<void> {
  await Promise.all([page.waitForEvent("load"), deed()]);
}

/** Waits for the parts; one that the engine had too much to do for is asked for again, by the page's own button. */
export async function settled(page: Page): Promise<void> {
  const late = Date.now() + COMING_SECONDS * 1000;
  const again = page.locator("[data-await], [data-plan-part]").getByRole("button", { name: "Ask again" });
  let asked = 0;
  while ((await page.locator(COMING).count()) > 0) {
    if (Date.now() > late) throw new Error(`parts of ${page.url()} did not come in ${COMING_SECONDS} s`);
    const left = (await again.count()) > 0;
    if (left && asked === MOST_ASKED) {
      throw new Error(`parts of ${page.url()} did not come, asked for ${MOST_ASKED} times more`);
    }
    await page.waitForTimeout(left ? ASK_AGAIN_MS : 50);
    if (!left) continue;
    asked += 1;
    await again.first().click();
  }
}
