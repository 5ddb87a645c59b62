/**
 * What a first visit costs on a slow line, and how soon the page answers a hand: the built program, Chromium slowed to
 * 150 ms, 1.6 Mbit/s down, 750 kbit/s up and a quarter of the processor. Prints a table; exits 1 where a figure is over
 * the budget of shared/experience.md U9. `node tools/budget.ts [ADDRESS]`; without an address it starts the program.
 * Limits: says what this machine measured, busy or not; run it on a quiet one.
 */
import { type Browser, type BrowserContext, type CDPSession, chromium, type Page } from "playwright-core";
import { EXECUTABLE } from "../checks/browser/kit/executable.ts";
import { to } from "../src/web/page.ts";
import { type LoadFigures, loadFigures, watchLoad } from "./budget/load.ts";
import { startForMeasuring } from "./budget/program.ts";
import { tour } from "./budget/tour.ts";

const BUDGET = { lcpMs: 1000, cls: 0.02, blockedMs: 100, firstBytes: 120_000, inpMs: 100 } as const;
const LINE = { offline: false, latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 750e3 / 8 };
const SLOWER_PROCESSOR = 4;
const PHONE = { viewport: { width: 360, height: 640 }, deviceScaleFactor: 2 };

async function slowed(context: BrowserContext): Promise<{ page: Page; session: CDPSession }> {
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send("Network.enable");
  await session.send("Network.emulateNetworkConditions", LINE);
  await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWER_PROCESSOR });
  return { page, session };
}

/** A visit with nothing kept from before. */
async function firstVisit(browser: Browser, address: string): Promise<LoadFigures> {
  const context = await browser.newContext(PHONE);
  try {
    const { page, session } = await slowed(context);
    const watch = await watchLoad(page, session);
    await page.goto(address, { waitUntil: "load" });
    return await loadFigures(page, watch);
  } finally {
    await context.close();
  }
}

function overBudget(name: string, { lcpMs, cls, blockedMs, firstBytes }: LoadFigures): string[] {
  const found = { lcpMs, cls, blockedMs, firstBytes };
  return (Object.keys(found) as (keyof typeof found)[]).flatMap((key) =>
    found[key] > BUDGET[key] ? [`${name}: ${key} ${found[key]}, budget ${BUDGET[key]}`] : [],
  );
}

const program = await startForMeasuring(process.argv[2]);
const browser = await chromium.launch({ executablePath: EXECUTABLE, args: ["--no-sandbox"] });
const over: string[] = [];
try {
  const { tank } = program;
  const pages = [
    to.start(),
    to.newTank(),
    to.tank(tank),
    ...(["larder", "waves", "ahead", "animals", "readings", "what-if", "errands", "sheet"] as const).map(
      (page) => to.tank(tank, page),
    ),
    to.question(tank, 1),
    to.singleForm(tank),
    to.wrong(),
  ];
  console.log("LCP ms  CLS    blocked ms  first load B  later B  page");
  for (const path of pages) {
    const figures = await firstVisit(browser, `${program.address}${path}`);
    const { lcpMs, cls, blockedMs, firstBytes, laterBytes } = figures;
    const cells = [
      String(lcpMs).padStart(6),
      cls.toFixed(3).padStart(6),
      String(blockedMs).padStart(10),
      String(firstBytes).padStart(12),
      String(laterBytes).padStart(8),
    ];
    console.log(`${cells.join("  ")}  ${path.replace(tank, "TANK")}`);
    over.push(...overBudget(path.replace(tank, "TANK"), figures));
  }
  const context = await browser.newContext(PHONE);
  const { page } = await slowed(context);
  const interactions = await tour(page, program.address, tank);
  console.log("\nto next paint ms  interaction");
  for (const { name, ms } of interactions) {
    console.log(`${String(ms).padStart(16)}  ${name}`);
    if (ms > BUDGET.inpMs) over.push(`${name}: ${ms} ms to the next paint, budget ${BUDGET.inpMs}`);
  }
  await context.close();
} finally {
  await browser.close();
  await program.stop();
}
for (const line of over) console.error(`over budget: ${line}`);
process.exitCode = over.length === 0 ? 0 : 1;
