/** The program to measure: started on a store of its own, its invented tank worked out beforehand. */
import { startProgram } from "../../checks/browser/kit/program.ts";
import { to } from "../../src/web/page.ts";

export interface Measured {
  /** Without a slash at the end. */
  readonly address: string;
  readonly tank: string;
  readonly stop: () => Promise<void>;
}

export async function startForMeasuring(given: string | undefined): Promise<Measured> {
  const { address, stop } =
    given === undefined ? await startProgram(async () => {}) : { address: given, stop: async () => {} };
  const html = await (await fetch(`${address}${to.start()}`)).text();
  const tank = /\/tanks\/([0-9a-f-]{36})/.exec(html)?.[1];
  if (tank === undefined) throw new Error(`Cannot measure: no tank on ${address}`);
  // What is measured is the page, not the engine behind it.
  await fetch(`${address}${to.tank(tank, "larder")}?wait=1`);
  await fetch(`${address}${to.planPart(tank, 20)}&part=1`);
  return { address, tank, stop };
}
