/** The built program as it is started: where it listens, how a second start and a word to stop are answered. */
import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, onTestFinished, test } from "vitest";

const main = join(import.meta.dirname, "../../dist/cli/main.js");

interface Started {
  readonly child: ChildProcess;
  /** The first line on standard output; empty where it ended before. */
  readonly address: string;
  readonly ended: Promise<{ readonly code: number | null; readonly said: string }>;
}

async function start(words: readonly string[]): Promise<Started> {
  const env = { ...process.env, DATABASE_URL: "" };
  const child = spawn(process.execPath, [main, "serve", ...words], {
    stdio: ["ignore", "pipe", "pipe"],
    env,
  });
  onTestFinished(() => void child.kill("SIGKILL"));
  let said = "";
  child.stderr.on("data", (data) => {
    said += data;
  });
  const ended = new Promise<{ code: number | null; said: string }>((resolve) => {
    child.once("close", (code) => resolve({ code, said }));
  });
  const first = new Promise<string>((resolve) => {
    child.stdout.once("data", (data: Buffer) => resolve(data.toString().trim()));
  });
  return { child, address: await Promise.race([first, ended.then(() => "")]), ended };
}

function storeFile(): string {
  const folder = mkdtempSync(join(tmpdir(), "grazewell-serve-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return join(folder, "store.db");
}

test("listens on this machine alone, prints its address, and a word to stop ends it with 0", async () => {
  const store = storeFile();
  const { child, address, ended } = await start(["--port", "0", "--store", store]);
  expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
  const { tanks } = (await (await fetch(`${address}api/v1/tanks`)).json()) as { tanks: readonly unknown[] };
  expect(tanks).toHaveLength(4);
  child.kill("SIGTERM");
  expect((await ended).code).toBe(0);
  expect(existsSync(`${store}.serving`)).toBe(false);
});

test("a second start on the same store names the first and ends with 75; after a kill the next one starts", async () => {
  const store = storeFile();
  const first = await start(["--port", "0", "--store", store]);
  const second = await (await start(["--port", "0", "--store", store])).ended;
  expect(second.code).toBe(75);
  expect(second.said).toContain(first.address);
  first.child.kill("SIGKILL");
  await first.ended;
  const third = await start(["--port", "0", "--store", store]);
  expect(third.address).toMatch(/^http/);
});

test("a taken port and another machine's address are told, and nothing starts", async () => {
  const { address } = await start(["--port", "0", "--store", storeFile()]);
  const taken = await (await start(["--port", new URL(address).port, "--store", storeFile()])).ended;
  expect([taken.code, taken.said]).toEqual([69, expect.stringContaining(new URL(address).port)]);
  for (const host of ["0.0.0.0", "::", "192.0.2.1", "example.invented"]) {
    const wide = await (await start(["--host", host, "--store", storeFile()])).ended;
    expect([wide.code, wide.said]).toEqual([2, expect.stringContaining("accounts")]);
  }
});

test("writes acknowledged before the word to stop are there after it", async () => {
  const store = storeFile();
  const first = await start(["--port", "0", "--store", store]);
  const list = `${first.address}api/v1/tanks`;
  const { tanks } = (await (await fetch(list)).json()) as { tanks: readonly { id: string }[] };
  const readings = (address: string) => `${address}api/v1/tanks/${tanks[0]?.id}/readings?limit=1000`;
  const count = async (address: string) =>
    ((await (await fetch(readings(address))).json()) as { readings: readonly unknown[] }).readings.length;
  const before = await count(first.address);
  const sends = Array.from({ length: 60 }, async () => {
    const sent = await fetch(readings(first.address).split("?")[0] ?? "", {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({ quantity: "ph", value: 8.1 }),
    });
    return sent.status === 201;
  });
  await Promise.any(sends);
  first.child.kill("SIGTERM");
  const acknowledged = (await Promise.allSettled(sends)).filter(
    (one) => one.status === "fulfilled" && one.value,
  );
  expect((await first.ended).code).toBe(0);
  const again = await start(["--port", "0", "--store", store]);
  expect((await count(again.address)) - before).toBeGreaterThanOrEqual(acknowledged.length);
  expect(acknowledged.length).toBeGreaterThan(0);
});
