/** The program to measure: started on a store of its own, its invented tank worked out beforehand. */
import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { to } from "../../src/web/page.ts";

export interface Measured {
  /** Without a slash at the end. */
  readonly address: string;
  readonly tank: string;
  readonly stop: () => Promise<void>;
}

export async function startForMeasuring(given: string | undefined): Promise<Measured> {
  const { address, stop } = given === undefined ? await start() : { address: given, stop: async () => {} };
  const html = await (await fetch(`${address}${to.start()}`)).text();
  const tank = /\/tanks\/([0-9a-f-]{36})/.exec(html)?.[1];
  if (tank === undefined) throw new Error(`Cannot measure: no tank on ${address}`);
  // What is measured is the page, not the engine behind it.
  await fetch(`${address}${to.tank(tank, "larder")}?wait=1`);
  await fetch(`${address}/tanks/${tank}/parts/plan?members=20&part=1`);
  return { address, tank, stop };
}

async function start(): Promise<{ address: string; stop: () => Promise<void> }> {
  const root = resolve(import.meta.dirname, "../..");
  const folder = mkdtempSync(join(tmpdir(), "grazewell-budget-"));
  const child = spawn(
    join(root, "grazewell"),
    ["serve", "--port", "0", "--store", join(folder, "store.db")],
    {
      cwd: root,
      stdio: ["ignore", "pipe", "inherit"],
    },
  );
  const ended = new Promise<void>((done) => child.once("exit", () => done()));
  const address = await new Promise<string>((found, failed) => {
    let said = "";
    child.once("exit", (code) => failed(new Error(`the program ended with ${code}: ${said}`)));
    child.stdout.on("data", (chunk: Buffer) => {
      said += chunk.toString("utf8");
      const match = /http:\/\/[\w.[\]:]+\d/.exec(said)?.[0];
      if (match !== undefined) found(match);
    });
  });
  return {
    address,
    stop: async () => {
      child.kill("SIGINT");
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
