/**
 * The server under load: 400 invented tanks with 1,000 readings each, four reads to one write, at a steady rate.
 * Run on the built program: node benchmarks/server.ts [seconds] [requests a second]. Says p50, p95, p99, errors, memory
 * of the program and, while a plan is being worked out, whether reads waited. Results: benchmarks/results.md.
 */
import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readReading } from "../src/contract/daybook/read-reading.ts";
import { NO_PREFERENCES } from "../src/contract/quantity/preferences.ts";
import { openStore } from "../src/store/open.ts";
import type { Json } from "../src/store/store.ts";
import { type Asked, load, type Took } from "./load.ts";

const [seconds = 60, rate = 300] = process.argv.slice(2).map(Number);
const TANKS = 400;
const READINGS = 1000;
const CLIENTS = 50;
const DAY_MS = 86_400_000;
const root = join(import.meta.dirname, "..");
const folder = mkdtempSync(join(tmpdir(), "grazewell-load-"));
const file = join(folder, "store.db");

const dayBefore = (days: number): string => new Date(Date.now() - days * DAY_MS).toISOString().slice(0, 10);

async function fill(): Promise<string[]> {
  const store = await openStore(file);
  const stamp = { at: new Date().toISOString(), by: "load (invented)" };
  const context = {
    ...{ preferences: NO_PREFERENCES, today: dayBefore(0), now: null, zone: null },
    ...{ stocked: true, notBefore: null },
  };
  const bodies = Array.from({ length: 25 }, (_, i) => {
    const read = readReading({ quantity: "no3_mg_per_l", text: String(4 + i), unit: "mg/L as NO3" }, context);
    if (!read.ok) throw new Error(read.doubts[0]?.message.text);
    return read.body;
  });
  const ids: string[] = [];
  for (let t = 0; t < TANKS; t += 1) {
    const id = `tank-${t}`;
    ids.push(id);
    await store.together(async (desk) => {
      const keeper = await desk.keeperNamed(`Keeper ${t % 40} (invented)`, `keeper-${t % 40}`, stamp);
      const facts = {
        grazewell_tank: 1,
        name: `Tank ${t} (invented)`,
        water_l: `${80 + t} L`,
        first_seawater_on: dayBefore(800),
        animals_present: [{ animal: "trochus-snail", count: 3 }],
      };
      await desk.addTank(
        { id, keeperId: keeper.id, demonstration: false, facts: facts as unknown as Json },
        stamp,
      );
      const entries = Array.from({ length: READINGS }, (_, i) => ({
        id: `reading-${t}-${i}`,
        kind: "reading",
        on: dayBefore(Math.floor((i * 730) / READINGS)),
        body: bodies[(t + i) % bodies.length] ?? {},
      }));
      await desk.addEntries(id, entries, stamp);
    });
  }
  await store.close();
  return ids;
}

function residentMib(pid: number): number {
  const kib = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1];
  return Number(kib) / 1024;
}

console.log(`filling ${TANKS} tanks x ${READINGS} readings ...`);
const began = performance.now();
const ids = await fill();
console.log(`filled in ${((performance.now() - began) / 1000).toFixed(0)} s`);
const server = spawn(
  process.execPath,
  [join(root, "dist/cli/main.js"), "serve", "--port", "0", "--store", file, "--no-demonstration"],
  { stdio: ["ignore", "pipe", "inherit"] },
);
process.once("exit", () => server.kill("SIGKILL"));
const pid = server.pid;
if (pid === undefined) throw new Error("The server did not start");
const address = await new Promise<string>((resolve, reject) => {
  server.stdout.once("data", (data: Buffer) => resolve(data.toString().trim()));
  server.once("exit", (code) => reject(new Error(`The server ended with ${code}`)));
});

const pick = (i: number): string => ids[(i * 7919) % ids.length] ?? "tank-0";
const read = (path: string): Asked => ({ method: "GET", path });
const write = (i: number): Asked => ({
  method: "POST",
  path: `/api/v1/tanks/${pick(i)}/readings`,
  headers: { "content-type": "application/json", "idempotency-key": `load-${process.pid}-${i}` },
  body: JSON.stringify({ quantity: "no3_mg_per_l", value: 4 + (i % 25), unit: "mg/L as NO3" }),
});
/** Of ten: eight reads, two writes. */
const KINDS: readonly ((i: number) => Asked)[] = [
  write,
  (i) => read(`/api/v1/tanks/${pick(i)}/readings?limit=60`),
  (i) => read(`/api/v1/tanks/${pick(i)}/readings?limit=60`),
  (i) => read(`/tanks/${pick(i)}/readings`),
  (i) => read(`/api/v1/tanks/${pick(i)}`),
  write,
  (i) => read(`/api/v1/tanks/${pick(i)}/readings?limit=60`),
  (i) => read(`/api/v1/tanks/${pick(i)}/readings?limit=60`),
  (i) => read(`/tanks/${pick(i)}/history`),
  (i) => read(`/api/v1/tanks/${pick(i)}`),
];

let first = 0;
async function mixed(name: string, duration: number): Promise<void> {
  const from = first;
  first += rate * duration;
  const ask = (i: number): Asked => (KINDS[(from + i) % KINDS.length] ?? write)(from + i);
  tell(
    name,
    await load({ address: new URL(address), perSecond: rate, seconds: duration, clients: CLIENTS, ask }),
  );
}

function tell(name: string, { count, ms, errors, byStatus }: Took): void {
  const times = Object.entries(ms).map(([which, value]) => `${which} ${value.toFixed(1)} ms`);
  console.log(
    `${name}: ${count} requests, ${times.join(", ")}; errors ${errors}; ${JSON.stringify(byStatus)}`,
  );
  console.log(`  memory ${residentMib(pid as number).toFixed(0)} MiB`);
}

await mixed("warm-up", Math.min(20, seconds));
const warm = residentMib(pid);
await mixed("mixed", seconds);
console.log(`memory: ${warm.toFixed(0)} MiB warm, ${residentMib(pid).toFixed(0)} MiB after`);
// Plans of tanks nobody asked about before, one after another, while the same load goes on.
const planning = (async () => {
  const until = performance.now() + Math.min(30, seconds) * 1000;
  for (let i = 0; performance.now() < until; i += 1)
    await fetch(`${address}api/v1/tanks/${pick(i)}/waves?members=20`).then((answer) => answer.text());
})();
await mixed("mixed, while plans are worked out", Math.min(30, seconds));
await planning;
const ended = new Promise((resolve) => server.once("exit", resolve));
server.kill("SIGTERM");
console.log(`ended with ${await ended}`);
rmSync(folder, { recursive: true });
