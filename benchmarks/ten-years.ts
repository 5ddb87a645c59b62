/**
 * Ten years of daily readings, 36,500 entries: how long the server takes for the pages of trends, how large they are, and
 * what the browser's main thread does with them under a processor four times slower. Run after a build:
 *   node benchmarks/ten-years.ts
 */
import { chromium } from "playwright-core";
import { startProgram } from "../checks/browser/kit/program.ts";
import { makeTenYears, TEN_YEARS } from "../checks/browser/kit/ten-years.ts";
import { to } from "../src/web/page.ts";

const SLOWER = 4;
const STEPS = 30;
const LONG_MS = 50;

const began = performance.now();
const program = await startProgram(makeTenYears);
console.log(`store made and served after ${((performance.now() - began) / 1000).toFixed(1)} s`);
const browser = await chromium.launch({
  executablePath: "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-dev-shm-usage"],
});
const tank = TEN_YEARS.tank;
const PAGES = [
  // To compare with: a page without a drawing.
  to.sources(),
  to.tank(tank, "trends"),
  to.trend(tank, "no3_mg_per_l"),
  `${to.trend(tank, "no3_mg_per_l")}?span=all`,
  `${to.trend(tank, "temperature_c")}?span=all`,
  to.csv(tank, "trend-no3_mg_per_l"),
];
try {
  for (const path of PAGES) {
    const times: number[] = [];
    let bytes = 0;
    let packed = 0;
    for (let turn = 0; turn < 4; turn += 1) {
      const at = performance.now();
      const reply = await fetch(program.address + path, { headers: { "accept-encoding": "identity" } });
      bytes = (await reply.arrayBuffer()).byteLength;
      times.push(performance.now() - at);
    }
    const small = await fetch(program.address + path);
    packed = Number(small.headers.get("content-length") ?? 0);
    await small.arrayBuffer();
    const browsed = path.endsWith(".csv") ? "" : await browse(program.address + path);
    const [first, ...again] = times.map((time) => Math.round(time));
    console.log(
      `${path}\n  server ${first} ms, then ${again.join(", ")} ms; ${bytes} bytes, packed ${packed}${browsed}`,
    );
  }
} finally {
  await browser.close();
  await program.stop();
}

/**
 * Tasks of the page's main thread by their own processor time, four times over: what a processor four times slower takes.
 * Wall time would tell of whatever else the machine does.
 */
async function browse(address: string): Promise<string> {
  const page = await browser.newPage({ viewport: { width: 360, height: 740 } });
  const traced = async (work: () => Promise<void>): Promise<number[]> => {
    await browser.startTracing(page, { categories: ["toplevel", "devtools.timeline"] });
    await work();
    return longTasks(await browser.stopTracing());
  };
  const opening = await traced(async () => {
    await page.goto(address, { waitUntil: "load" });
    await page.waitForTimeout(1500);
  });
  let stepping: number[] | null = null;
  const next = page.locator("[data-step-by='1']").first();
  if ((await next.count()) > 0) {
    await next.focus();
    stepping = await traced(async () => {
      for (let step = 0; step < STEPS; step += 1) await page.keyboard.press("ArrowRight");
      await page.waitForTimeout(300);
    });
  }
  const elements = await page.evaluate(() => document.querySelectorAll("*").length);
  await page.close();
  const said = (tasks: number[]) =>
    `${tasks.slice(0, 3).join(", ")} ms (${tasks.filter((ms) => ms > LONG_MS).length} over ${LONG_MS})`;
  return `\n  ${elements} elements; longest tasks, processor x${SLOWER}: opening ${said(opening)}${stepping === null ? "" : `; ${STEPS} steps ${said(stepping)}`}`;
}

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  /** Processor time of the thread, microseconds. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** Longest first, ms. */
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
    .map(({ tdur = 0 }) => Math.round((tdur * SLOWER) / 1000))
    .sort((a, b) => b - a);
}
