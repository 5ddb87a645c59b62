/**
 * The page's hand on its engine: starts the worker when the page has been painted, asks it one thing at a time, and
 * drops an older question for a newer one by ending the worker (its work is one long turn that hears nothing). Learning
 * needs no solver, goes in short turns and is stopped by a word.
 * Limits: until `ready`, `ask` does nothing; the caller goes to the server instead.
 */
import {
  type AnswerParts,
  type AskWord,
  type EngineReply,
  type LearnWord,
  replyOfEngine,
} from "../../contract/worker/messages.ts";
import { scriptAddress } from "./script-address.ts";

export type Question = Omit<AskWord, "kind" | "id">;

export interface Heard {
  readonly progress?: (doing: string, share: number) => void;
  readonly answers: (answers: Partial<AnswerParts>, rows: object | null) => void;
  readonly refused: (lines: readonly string[]) => void;
  readonly failed: (why: string) => void;
}

export interface LearningHeard {
  /** Share of the runs that are done. */
  readonly progress: (share: number) => void;
  /** What pages/learned/seen.ts makes of it. */
  readonly learned: (seen: object) => void;
  readonly failed: (why: string) => void;
}

export interface EngineAddresses {
  readonly worker: string;
  readonly solver: string;
}

export class Engine {
  readonly #addresses: EngineAddresses;
  readonly #onReady: () => void;
  #worker: Worker | null = null;
  #solver: WebAssembly.Module | null = null;
  #current: { readonly id: number; readonly heard: Heard } | null = null;
  #learning: { readonly id: number; readonly heard: LearningHeard } | null = null;
  /** Whether the worker was told where the solver is. */
  #started = false;
  #nextId = 1;

  constructor(addresses: EngineAddresses, onReady: () => void = () => {}) {
    this.#addresses = addresses;
    this.#onReady = onReady;
  }

  /** Once a worker has loaded the solver, later ones take its compiled one and can be asked at once. */
  get ready(): boolean {
    return this.#solver !== null;
  }

  start(): void {
    const worker = this.#begun();
    if (this.#started) return;
    this.#started = true;
    worker.postMessage({ kind: "start", solver: this.#solver ?? this.#addresses.solver });
  }

  /** A question that is still being worked on is dropped: its listener hears nothing more. */
  ask(question: Question, heard: Heard): void {
    if (!this.ready) return;
    this.drop();
    this.start();
    const id = this.#nextId++;
    this.#current = { id, heard };
    this.#worker?.postMessage({ kind: "ask", id, ...question });
  }

  /** Whether there was a question to drop. */
  drop(): boolean {
    if (this.#current === null) return false;
    this.#current = null;
    this.#end();
    return true;
  }

  /** One at a time: an older learning is stopped. */
  learn(asked: Pick<LearnWord, "facts" | "record">, heard: LearningHeard): void {
    this.stopLearning();
    const id = this.#nextId++;
    this.#learning = { id, heard };
    this.#begun().postMessage({ kind: "learn", id, ...asked });
  }

  /** Its listener hears nothing more; the worker leaves off at its next turn. */
  stopLearning(): void {
    if (this.#learning === null) return;
    this.#worker?.postMessage({ kind: "stop", id: this.#learning.id });
    this.#learning = null;
  }

  #begun(): Worker {
    this.#worker ??= this.#begin();
    return this.#worker;
  }

  #end(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#started = false;
  }

  #begin(): Worker {
    const worker = new Worker(scriptAddress(this.#addresses.worker), { type: "module", name: "engine" });
    worker.onmessage = ({ data }: MessageEvent<unknown>) => {
      if (worker === this.#worker) this.#hear(data);
    };
    worker.onerror = () => {
      if (worker === this.#worker) this.#fail("the engine stopped");
    };
    return worker;
  }

  #hear(data: unknown): void {
    const reply = replyOfEngine(data);
    if (reply === null) return;
    if (reply.kind === "ready") {
      const first = this.#solver === null;
      this.#solver = reply.solver;
      if (first) this.#onReady();
      return;
    }
    if (reply.kind === "failed" && reply.id === null) {
      this.#fail(reply.why);
      return;
    }
    if (this.#learning !== null && reply.id === this.#learning.id) {
      this.#hearLearning(reply, this.#learning.heard);
      return;
    }
    if (reply.id !== this.#current?.id || reply.kind === "learned") return;
    const { heard } = this.#current;
    if (reply.kind === "progress") {
      heard.progress?.(reply.doing, reply.share);
      return;
    }
    this.#current = null;
    if (reply.kind === "answers") heard.answers(reply.answers, reply.rows ?? null);
    else if (reply.kind === "refused") heard.refused(reply.lines);
    else heard.failed(reply.why);
  }

  #hearLearning(reply: EngineReply, heard: LearningHeard): void {
    if (reply.kind === "progress") {
      heard.progress(reply.share);
      return;
    }
    this.#learning = null;
    if (reply.kind === "learned") heard.learned(reply.seen);
    else if (reply.kind === "failed") heard.failed(reply.why);
  }

  #fail(why: string): void {
    const listeners = [this.#current?.heard, this.#learning?.heard];
    this.#current = null;
    this.#learning = null;
    this.#end();
    this.#solver = null;
    for (const heard of listeners) heard?.failed(why);
  }
}
