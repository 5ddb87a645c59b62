/**
 * The round of 400 invented tanks (checks/round/fleet.ts), on the built program: how long the first look takes, a look
 * when nothing has changed, one after a dangerous reading was kept; and the largest paint in a browser on this machine.
 * Run: node benchmarks/round.ts [seed] [tanks]. Results: benchmarks/results.md.
 */
import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { EXECUTABLE } from "../checks/browser/kit/executable.ts";
import { fleet } from "../checks/round/fleet.ts";
import { openStore } from "../src/store/open.ts";
import type { Json } from "../src/store/store.ts";
import { loadFigures, watchLoad } from "../tools/budget/load.ts";

const [seed = 1, count = 400] = process.argv.slice(2).map(Number);
const root = join(import.meta.dirname, "..");
const folder = mkdtempSync(join(tmpdir(), "grazewell-round-"));
const file = join(folder, "store.db");
const today = new Date().toISOString().slice(0, 10);

async function fill(): Promise<readonly string[]> {
  const tanks = fleet(seed, today, count);
  const store = await openStore(file);
  const stamp = { at: new Date(Date.now() - 200 * 86_400_000).toISOString(), by: "round (invented)" };
  for (const { id, keeper, document, entries } of tanks) {
    await store.together(async (desk) => {
      const { id: keeperId } = await desk.keeperNamed(keeper, `keeper-${keeper}`, stamp);
      const facts = document as unknown as Json;
      await desk.addTank({ id, keeperId, demonstration: false, facts }, stamp);
      await desk.addEntries(id, entries, stamp);
    });
  }
  await store.close();
  console.log(
    `${tanks.length} tanks, ${tanks.reduce((sum, { entries }) => sum + entries.length, 0)} entries`,
  );
  return tanks.map(({ id }) => id);
}

const ids = await fill();
// As a keeper starts it: the launcher gives the program its memory and what was compiled before.
const server = spawn(
  join(root, "grazewell"),
  ["serve", "--port", "0", "--store", file, "--no-demonstration"],
  { stdio: ["ignore", "pipe", "inherit"] },
);
process.once("exit", () => {
  server.kill("SIGKILL");
  rmSync(folder, { recursive: true, force: true });
});
const address = await new Promise<string>((resolve, reject) => {
  server.stdout.once("data", (data: Buffer) => resolve(data.toString().trim()));
  server.once("exit", (code) => reject(new Error(`The server ended with ${code}`)));
});

async function took(what: string, path: string): Promise<string> {
  const began = performance.now();
  const text = await (await fetch(`${address}${path}`)).text();
  console.log(
    `${what}: ${(performance.now() - began).toFixed(0)} ms, ${Math.round(text.length / 1024)} KiB of page`,
  );
  return text;
}
const placeOf = (page: string, id: string): number =>
  [...page.matchAll(/class="round-tank"[\s\S]*?href="\/tanks\/([^"]+)"/g)].findIndex(
    (found) => found[1] === id,
  ) + 1;

if (process.env["WAIT"] !== undefined)
  await new Promise((done) => setTimeout(done, Number(process.env["WAIT"])));
await took("first look", "round");
for (let i = 0; i < 3; i += 1) await took("again", "round");
const all = await took("all rows", "round?rows=all");
const last = ids.find((id) => placeOf(all, id) === ids.length) ?? "";
const began = performance.now();
const kept = await fetch(`${address}api/v1/tanks/${last}/readings`, {
  method: "POST",
  headers: { "content-type": "application/json", "idempotency-key": `round-${process.pid}` },
  body: JSON.stringify({ quantity: "temperature_c", text: "32 C" }),
});
const after = await took(`the last tank was sent a dangerous reading (${kept.status})`, "round");
console.log(
  `from sending it to seeing it: ${(performance.now() - began).toFixed(0)} ms, now in row ${placeOf(after, last)} of ${ids.length}`,
);

const browser = await chromium.launch({ executablePath: EXECUTABLE, args: ["--no-sandbox"] });
for (const path of ["round", "round?rows=all"]) {
  const page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
  const session = await page.context().newCDPSession(page);
  await session.send("Network.enable");
  const watch = await watchLoad(page, session);
  await page.goto(`${address}${path}`, { waitUntil: "load" });
  const { lcpMs, cls, blockedMs, firstBytes } = await loadFigures(page, watch);
  console.log(
    `${path}: largest paint ${lcpMs} ms, shift ${cls}, blocked ${blockedMs} ms, ${(firstBytes / 1000).toFixed(0)} kB`,
  );
  await page.close();
}
await browser.close();
process.exit(0);
