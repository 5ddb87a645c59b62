/** The application over a new store, asked without a port: the clock and the day are the test's. */
import type { FastifyInstance } from "fastify";
import { afterAll, onTestFinished } from "vitest";
import { Answers } from "../../../src/server/answers.ts";
import { buildApp } from "../../../src/server/app.ts";
import { readBuiltFiles } from "../../../src/server/assets.ts";
import type { AnswerChoice, AnswerSource } from "../../../src/server/route.ts";
import type { Store } from "../../../src/store/store.ts";
import { temporaryStore } from "../../kit/store.ts";

export const TODAY = "2026-06-15";
const NOW = "2026-06-15T12:00:00.000Z";
export const HOST = "127.0.0.1:8420";

export interface Under {
  readonly app: FastifyInstance;
  readonly store: Store;
  /** What was told on standard error. */
  readonly told: readonly string[];
  /** Sets the clock on. */
  readonly wait: (seconds: number) => void;
}

/** One thread for all tests of a file: starting it takes longer than most of them. */
const answers = new Answers();
const built = readBuiltFiles();
afterAll(() => answers.close());

const FEW = 20;

/** The same thread, asked for few runs: for checks of what is around an answer, not of the answer. */
export const quickAnswers: AnswerSource = {
  of: (facts, choice, ...rest) => answers.of(facts, few(choice), ...rest),
  ready: (facts, choice, ...rest) => answers.ready(facts, few(choice), ...rest),
};
const few = (choice: AnswerChoice | undefined): AnswerChoice => ({ seed: 1, ...choice, members: FEW });

/** `source` where a check has no need of the real engine. */
export async function appUnderTest(source: AnswerSource = answers): Promise<Under> {
  const store = await temporaryStore();
  let now = Date.parse(NOW);
  const told: string[] = [];
  const app = buildApp({
    store,
    answers: source,
    built,
    now: () => new Date(now),
    today: () => TODAY,
    tell: (line) => told.push(line),
  });
  onTestFinished(() => app.close());
  return {
    app,
    store,
    told,
    wait: (seconds) => {
      now += seconds * 1000;
    },
  };
}

interface Sent {
  readonly query?: Readonly<Record<string, string | readonly string[]>> | undefined;
  readonly headers?: Readonly<Record<string, string>> | undefined;
  /** Made into JSON; text is sent as it is. */
  readonly body?: unknown;
}

/** Asks as a program on this machine does. */
export async function ask(app: FastifyInstance, method: string, path: string, sent: Sent = {}) {
  const query = Object.entries(sent.query ?? {}).flatMap(([name, values]) =>
    [values].flat().map((value) => [name, String(value)]),
  );
  const search = query.length === 0 ? "" : `?${new URLSearchParams(query)}`;
  return await app.inject({
    method: method as "GET",
    url: `${path}${search}`,
    headers: {
      host: HOST,
      ...(sent.body === undefined ? {} : { "content-type": "application/json" }),
      ...sent.headers,
    },
    ...(sent.body === undefined
      ? {}
      : { payload: typeof sent.body === "string" ? sent.body : JSON.stringify(sent.body) }),
  });
}
