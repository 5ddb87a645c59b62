/**
 * The engine for the server: one thread that works out a tank at a time, and a store of what it said by facts.
 * The same question asked while it is being worked out is not asked again. A tank somebody waits for goes before those
 * that are worked out ahead of need. Limits: what is kept is lost when the program ends.
 */
import { createHash } from "node:crypto";
import { Worker } from "node:worker_threads";
import { teachingPart } from "../answers/learned/teaching-part.ts";
import { DEFAULT_ENSEMBLE } from "../answers/plan/plan-tank.ts";
import { Refusal } from "../answers/refusal.ts";
import type { TankAnswers } from "../answers/tank-answers.ts";
import type { WhatIfFlags } from "../answers/what-if.ts";
import type { TankRecord } from "../engine/types/record.ts";
import type { TankFacts } from "../engine/types/tank.ts";
import { LIMITS } from "./limits.ts";
import { Recent } from "./recent.ts";
import type { AnswerChoice, AnswerSource } from "./route.ts";

export interface Job {
  readonly id: number;
  readonly facts: TankFacts;
  readonly choice: AnswerChoice;
  readonly change: WhatIfFlags | null;
  /** The daybook that the ensemble is to learn from first; null where there is none. */
  readonly record: TankRecord | null;
}

export type Outcome =
  | { readonly id: number; readonly kind: "answers"; readonly answers: TankAnswers }
  | { readonly id: number; readonly kind: "refused"; readonly lines: readonly string[] }
  | { readonly id: number; readonly kind: "failed"; readonly why: string };

/** Not worked out, through no fault of who asked: too many wait, it took too long, or too few runs were made for it. */
export class NoAnswer extends Error {
  readonly reason: "busy" | "late" | "stopped" | "few";
  constructor(reason: NoAnswer["reason"], message: string) {
    super(message);
    this.reason = reason;
  }
}

interface Waiting {
  readonly key: string;
  readonly job: Job;
  readonly promise: Promise<TankAnswers>;
  readonly settle: {
    readonly resolve: (answers: TankAnswers) => void;
    readonly reject: (why: Error) => void;
  };
  awaited: boolean;
}

export interface AnswersOptions {
  readonly timeLimitMs?: number;
  /** A file that takes Job messages and posts Outcome ones. */
  readonly worker?: URL;
}

const besideThis = import.meta.url.endsWith(".ts") ? "./answers-worker.ts" : "./answers-worker.js";

export class Answers implements AnswerSource {
  readonly #known = new Recent<TankAnswers>(LIMITS.answersKept);
  readonly #waiting = new Map<string, Waiting>();
  readonly #timeLimitMs: number;
  readonly #workerFile: URL;
  #worker: Worker | null = null;
  #current: Waiting | null = null;
  #timer: NodeJS.Timeout | null = null;
  #nextId = 1;
  #closed = false;

  constructor(options: AnswersOptions = {}) {
    this.#timeLimitMs = options.timeLimitMs ?? LIMITS.answerMs;
    this.#workerFile = options.worker ?? new URL(besideThis, import.meta.url);
  }

  of(
    facts: TankFacts,
    choice: AnswerChoice = DEFAULT_ENSEMBLE,
    change?: WhatIfFlags,
    daybook?: TankRecord,
  ): Promise<TankAnswers> {
    const asked = { facts, choice, change: change ?? null, record: teaching(daybook) };
    const key = keyOf(asked);
    const known = this.#known.get(key);
    if (known !== undefined) return Promise.resolve(known);
    const waiting = this.#ask(key, asked);
    if (waiting === null) {
      const words = "Many tanks are being worked out just now. Ask again in a minute; nothing is lost.";
      return Promise.reject(new NoAnswer("busy", words));
    }
    waiting.awaited = true;
    return waiting.promise;
  }

  ready(facts: TankFacts, choice: AnswerChoice = DEFAULT_ENSEMBLE, daybook?: TankRecord): TankAnswers | null {
    const asked = { facts, choice, change: null, record: teaching(daybook) };
    const key = keyOf(asked);
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    // Nobody waits for this one: what becomes of it is told to who asks next.
    this.#ask(key, asked)?.promise.catch(() => {});
    return null;
  }

  /** Whether an answer would have to be worked out. */
  knows(
    facts: TankFacts,
    choice: AnswerChoice = DEFAULT_ENSEMBLE,
    change?: WhatIfFlags,
    daybook?: TankRecord,
  ): boolean {
    return this.#known.has(keyOf({ facts, choice, change: change ?? null, record: teaching(daybook) }));
  }

  async close(): Promise<void> {
    this.#closed = true;
    const left = [...this.#waiting.values()];
    this.#waiting.clear();
    await this.#end();
    for (const { settle } of left) settle.reject(new NoAnswer("stopped", "Grazewell is being stopped."));
  }

  #ask(key: string, asked: Omit<Job, "id">): Waiting | null {
    const there = this.#waiting.get(key);
    if (there !== undefined) return there;
    if (this.#closed || this.#waiting.size >= LIMITS.answersWaiting) return null;
    let settle!: Waiting["settle"];
    const promise = new Promise<TankAnswers>((resolve, reject) => {
      settle = { resolve, reject };
    });
    const waiting: Waiting = { key, job: { id: this.#nextId++, ...asked }, promise, settle, awaited: false };
    this.#waiting.set(key, waiting);
    // After this turn, so that one who will wait has said so.
    setImmediate(() => this.#next());
    return waiting;
  }

  #next(): void {
    if (this.#current !== null || this.#closed) return;
    const all = [...this.#waiting.values()];
    const next = all.find(({ awaited }) => awaited) ?? all[0];
    if (next === undefined) return;
    this.#current = next;
    this.#timer = setTimeout(() => {
      const seconds = Math.round(this.#timeLimitMs / 1000);
      const words = `This tank took more than ${seconds} s to work out and was given up. Its facts are kept.`;
      this.#fail(new NoAnswer("late", words));
    }, this.#timeLimitMs);
    this.#worker ??= this.#start();
    this.#worker.postMessage(next.job);
  }

  #start(): Worker {
    const worker = new Worker(this.#workerFile, {
      resourceLimits: { maxOldGenerationSizeMb: LIMITS.answerHeapMib },
    });
    worker.unref();
    worker.on("message", (outcome: Outcome) => {
      if (worker !== this.#worker || outcome.id !== this.#current?.job.id) return;
      const done = this.#take();
      if (outcome.kind === "answers") {
        if (done !== null) this.#known.set(done.key, outcome.answers);
        done?.settle.resolve(outcome.answers);
      } else if (outcome.kind === "refused") done?.settle.reject(new Refusal(outcome.lines));
      else done?.settle.reject(new Error(outcome.why));
      this.#next();
    });
    // Out of memory, or broken: the next tank gets a new thread.
    worker.on("error", (error) => {
      if (worker === this.#worker) this.#fail(error instanceof Error ? error : new Error(String(error)));
    });
    return worker;
  }

  /** Ends the thread, and the question it had. */
  #fail(why: Error): void {
    const done = this.#take();
    void this.#end();
    done?.settle.reject(why);
    this.#next();
  }

  #take(): Waiting | null {
    const done = this.#current;
    this.#current = null;
    if (this.#timer !== null) clearTimeout(this.#timer);
    if (done !== null) this.#waiting.delete(done.key);
    return done;
  }

  async #end(): Promise<void> {
    const worker = this.#worker;
    this.#worker = null;
    this.#current = null;
    if (this.#timer !== null) clearTimeout(this.#timer);
    await worker?.terminate();
  }
}

function keyOf({ facts, choice: { members, seed }, change, record }: Omit<Job, "id">): string {
  return createHash("sha256")
    .update(JSON.stringify([facts, members, seed, change, record]))
    .digest("base64url");
}

/** What of a daybook teaches; null where nothing in it could. */
function teaching(daybook: TankRecord | undefined): TankRecord | null {
  const part = daybook === undefined ? null : teachingPart(daybook);
  return part === null || part.observations.length === 0 ? null : part;
}
