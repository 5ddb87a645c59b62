/**
 * Ten years of daily readings, 36,500 entries: how long the server takes for the pages of trends, how large they are, what
 * the browser's main thread does with them, and while its worker learns from them; as measured and under a processor four
 * times slower. An empty page beside them shows what any page costs. Run after a build, on a quiet machine:
 *   node benchmarks/ten-years.ts [openings of each page]
 */
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { chromium, type Page } from "playwright-core";
import { EXECUTABLE } from "../checks/browser/kit/executable.ts";
import { startProgram } from "../checks/browser/kit/program.ts";
import { makeTenYears, TEN_YEARS } from "../checks/browser/kit/ten-years.ts";
import { to } from "../src/web/page.ts";

const SLOWER = 4;
const STEPS = 30;
const LONG_MS = 50;
/** The quickest of so many openings stands: what it took beyond that, the machine did for others. */
const OPENINGS = Number(process.argv[2] ?? 5);

const began = performance.now();
const program = await startProgram(makeTenYears);
console.log(`store made and served after ${((performance.now() - began) / 1000).toFixed(1)} s`);
const browser = await chromium.launch({
  executablePath: EXECUTABLE,
  args: ["--no-sandbox", "--disable-dev-shm-usage"],
});
const empty = createServer((_, reply) => {
  reply.setHeader("content-type", "text/html; charset=utf-8");
  reply.end("<!doctype html><html lang=en><title>Empty</title><p>Nothing.</p></html>");
});
await new Promise<void>((listening) => empty.listen(0, "127.0.0.1", listening));
const emptyAddress = `http://127.0.0.1:${(empty.address() as AddressInfo).port}/`;
const tank = TEN_YEARS.tank;
const PAGES = [
  // To compare with: a page without a drawing.
  to.sources(),
  to.tank(tank),
  to.tank(tank, "daybook"),
  to.tank(tank, "trends"),
  to.trend(tank, "no3_mg_per_l"),
  `${to.trend(tank, "no3_mg_per_l")}?span=all`,
  `${to.trend(tank, "temperature_c")}?span=all`,
  to.csv(tank, "trend-no3_mg_per_l"),
];
try {
  // What a browser does once is no page's.
  await browse(emptyAddress);
  console.log(`an empty page${await browse(emptyAddress)}`);
  for (const path of PAGES) {
    const times: number[] = [];
    let bytes = 0;
    let packed = 0;
    for (let turn = 0; turn < 4; turn += 1) {
      const at = performance.now();
      const reply = await ask(path, { "accept-encoding": "identity" });
      bytes = (await reply.arrayBuffer()).byteLength;
      times.push(performance.now() - at);
    }
    const small = await ask(path);
    packed = Number(small.headers.get("content-length") ?? 0);
    await small.arrayBuffer();
    const browsed = path.endsWith(".csv") ? "" : await browse(program.address + path);
    const [first, ...again] = times.map((time) => Math.round(time));
    console.log(
      `${path}\n  server ${first} ms, then ${again.join(", ")} ms; ${bytes} bytes, packed ${packed}${browsed}`,
    );
  }
  console.log(`learning again in the page${await learn(program.address + to.learned(tank))}`);
} finally {
  empty.close();
  await browser.close();
  await program.stop();
}

/** On a line of its own: the server ends those that were silent while the browser was at work. */
function ask(path: string, headers: Readonly<Record<string, string>> = {}): Promise<Response> {
  return fetch(program.address + path, { headers: { ...headers, connection: "close" } });
}

/**
 * Tasks of the page's main thread by their own processor time, once and four times over: what a processor four times slower
 * takes. Wall time would tell of whatever else the machine does.
 */
async function browse(address: string): Promise<string> {
  const openings: number[][] = [];
  let stepping: number[] | null = null;
  let elements = 0;
  for (let turn = 0; turn < OPENINGS; turn += 1) {
    const page = await browser.newPage({ viewport: { width: 360, height: 740 } });
    openings.push(
      await traced(page, async () => {
        await page.goto(address, { waitUntil: "load", timeout: 120_000 });
        await page.waitForTimeout(1500);
      }),
    );
    const next = page.locator("[data-step-by='1']").first();
    if (turn === OPENINGS - 1 && (await next.count()) > 0) {
      await next.focus();
      stepping = await traced(page, async () => {
        for (let step = 0; step < STEPS; step += 1) await page.keyboard.press("ArrowRight");
        await page.waitForTimeout(300);
      });
    }
    elements = await page.evaluate(() => document.querySelectorAll("*").length);
    await page.close();
  }
  const opening = openings.toSorted((a, b) => (a[0] ?? 0) - (b[0] ?? 0))[0] ?? [];
  return `\n  ${elements} elements; opening ${said(opening)}${stepping === null ? "" : `; ${STEPS} steps ${said(stepping)}`}`;
}

/** The worker learns at full speed: only the main thread is told of. */
async function learn(address: string): Promise<string> {
  const page = await browser.newPage({ viewport: { width: 360, height: 740 } });
  await page.goto(address, { waitUntil: "load", timeout: 120_000 });
  const section = page.locator("[data-learn-again]");
  const button = section.getByRole("button", { name: "Learn again" });
  // The server learns first, and the slot is filled with the page.
  await button.waitFor({ timeout: 120_000 });
  const pressed = performance.now();
  const tasks = await traced(page, async () => {
    await button.click();
    await section.locator("[data-learn-told] h3").waitFor({ timeout: 120_000 });
  });
  const seconds = ((performance.now() - pressed) / 1000).toFixed(1);
  await button.click();
  await section.getByRole("status").filter({ hasText: "% of the runs" }).waitFor();
  const stopping = performance.now();
  await section.getByRole("button", { name: "Stop" }).click();
  await section.getByRole("status").filter({ hasText: "Stopped" }).waitFor();
  const stopped = Math.round(performance.now() - stopping);
  await page.close();
  return `\n  ${seconds} s in the worker; meanwhile the main thread ${said(tasks)}; stopped in ${stopped} ms`;
}

async function traced(page: Page, work: () => Promise<void>): Promise<number[]> {
  await browser.startTracing(page, { categories: ["toplevel", "devtools.timeline"] });
  await work();
  return longTasks(await browser.stopTracing());
}

function said(tasks: readonly number[]): string {
  const long = tasks.filter((ms) => ms * SLOWER > LONG_MS).length;
  const three = (times: number) =>
    tasks
      .slice(0, 3)
      .map((ms) => Math.round(ms * times))
      .join(", ");
  return `longest tasks ${three(1)} ms, processor x${SLOWER} ${three(SLOWER)} ms (${long} over ${LONG_MS})`;
}

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  /** Processor time of the thread, microseconds. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** Longest first, ms of this processor. */
function longTasks(trace: Buffer): number[] {
  const { traceEvents } = JSON.parse(trace.toString("utf8")) as { traceEvents: TraceEvent[] };
  const main = new Set(
    traceEvents
      .filter(({ name, args }) => name === "thread_name" && args?.name === "CrRendererMain")
      .map(({ pid, tid }) => `${pid} ${tid}`),
  );
  return traceEvents
    .filter(
      ({ name, pid, tid, tdur }) => /RunTask$/.test(name) && tdur !== undefined && main.has(`${pid} ${tid}`),
    )
    .map(({ tdur = 0 }) => tdur / 1000)
    .sort((a, b) => b - a);
}
