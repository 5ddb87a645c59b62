/**
 * The engine says the same, to the last bit, in the browser's worker, in the server's thread and in Node itself: of
 * every example tank, and of what-ifs. Compared as JSON text, since that is what pages, files and clients see.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { findAnimal } from "../../src/catalogue/index.ts";
import { readTankFile } from "../../src/contract/tank-file/read.ts";
import {
  type AskWord,
  type ChangeTexts,
  type EngineReply,
  PARTS,
} from "../../src/contract/worker/messages.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";
import { Answers } from "../../src/server/answers.ts";
import { loadSolver } from "../../src/solver/highs.ts";
import { answerTo } from "../../src/web/client/engine-answer.ts";
import { ROOT } from "../journeys/command.ts";
import { open, type Watched, watched } from "./kit/browser.ts";
import { TODAY } from "./kit/cast.ts";

/** Runs of each: few, so that all tanks are asked three times; one what-if has the full two hundred. */
const FEW = 6;

/** Each tank is worked out three times, on a machine that may have more to do. */
const PATIENCE_MS = 600_000;

const examples = readdirSync(join(ROOT, "examples")).sort();

function factsOf(file: string): TankFacts {
  const read = readTankFile(readFileSync(join(ROOT, "examples", file), "utf8"), { today: TODAY, findAnimal });
  if (!read.ok) throw new Error(`${file}: ${read.findings[0]?.message.text}`);
  return read.facts;
}

/** Starts the built worker as the page's client does, through a policy of its own, and leaves it in `window`. */
async function startWorker(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const addresses = (await (await fetch("/assets/manifest.json")).json()) as Record<string, string>;
    const policies = (
      window as unknown as {
        trustedTypes: {
          createPolicy(name: string, rules: object): { createScriptURL(address: string): string };
        };
      }
    ).trustedTypes;
    const policy = policies.createPolicy("check", { createScriptURL: (address: string) => address });
    const address = addresses["client/engine-worker"];
    const solver = addresses["highs/highs.wasm"];
    if (address === undefined || solver === undefined) throw new Error("the build has no engine");
    const worker = new Worker(policy.createScriptURL(address), { type: "module" });
    await new Promise<void>((resolve, reject) => {
      worker.onmessage = ({ data }: MessageEvent<EngineReply>) => {
        if (data.kind === "ready") resolve();
        else if (data.kind === "failed") reject(new Error(data.why));
      };
      worker.onerror = () => reject(new Error("the worker could not be started"));
      worker.postMessage({ kind: "start", solver });
    });
    (window as unknown as { engine: Worker }).engine = worker;
  });
}

const inBrowser = (page: Page, ask: AskWord): Promise<string> =>
  page.evaluate(
    (word) =>
      new Promise<string>((resolve, reject) => {
        const { engine } = window as unknown as { engine: Worker };
        engine.onmessage = ({ data }: MessageEvent<EngineReply>) => {
          if (data.kind === "answers") resolve(JSON.stringify(data.answers));
          else if (data.kind !== "progress") reject(new Error(JSON.stringify(data)));
        };
        engine.postMessage(word);
      }),
    ask,
  );

describe("one answer, three places", () => {
  let tab: Watched;
  const thread = new Answers({ timeLimitMs: PATIENCE_MS });
  const solver = loadSolver();

  beforeAll(async () => {
    tab = await watched();
    await open(tab.page, "/");
    await startWorker(tab.page);
  });
  afterAll(async () => {
    await thread.close();
    expect(tab.faults).toEqual([]);
    await tab.close();
  });

  async function sameOf(file: string, members: number, change: ChangeTexts | null): Promise<void> {
    const facts = factsOf(file);
    const choice = { members, seed: 1 };
    const ask: AskWord = { kind: "ask", id: 1, facts, choice, change, parts: PARTS };
    const here = answerTo(ask, await solver, () => {});
    if (here.kind !== "answers") throw new Error(`${file}: ${JSON.stringify(here)}`);
    const [fromThread, fromBrowser] = await Promise.all([
      thread.of(facts, choice, change ?? undefined),
      inBrowser(tab.page, ask),
    ]);
    const expected = JSON.stringify(here.answers);
    for (const part of PARTS) {
      expect(JSON.stringify(fromThread[part]), `${part}, server's thread`).toBe(
        JSON.stringify(here.answers[part]),
      );
    }
    expect(fromBrowser === expected, `browser: ${firstDifference(expected, fromBrowser)}`).toBe(true);
  }

  test.each(examples)("%s", { timeout: PATIENCE_MS }, async (file) => {
    await sameOf(file, FEW, null);
  });

  test("a what-if of two hundred runs", { timeout: PATIENCE_MS }, async () => {
    await sameOf("first-reef.yaml", 200, { feed: "+50 %", light: "0 for 3 days" });
  });
});

/** Where two texts part, for the report of a failure. */
function firstDifference(a: string, b: string): string {
  let at = 0;
  while (at < a.length && a[at] === b[at]) at += 1;
  return at === a.length && at === b.length
    ? "none"
    : `"${a.slice(at - 60, at + 40)}" / "${b.slice(at - 60, at + 40)}"`;
}
