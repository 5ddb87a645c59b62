/**
 * The engine in a worker of the browser: loads the solver when told where it is, answers asks one after another.
 * An ask can't be stopped from within, since the work is one long turn: its page ends the worker and starts another,
 * with the solver that this one compiled. Learning from a daybook goes in short turns and can be stopped.
 */
import { type EngineReply, wordToEngine } from "../../contract/worker/messages.ts";
import type { Solve } from "../../engine/stocking/linear-model.ts";
import { loadSolver } from "../../solver/highs.ts";
import { answerTo } from "./engine-answer.ts";
import { learnedTo } from "./engine-learning.ts";

/** The part of a dedicated worker's scope that is used: the DOM's types know a window alone. */
interface Scope {
  onmessage: ((event: MessageEvent<unknown>) => void) | null;
  postMessage(reply: EngineReply): void;
}
const scope = globalThis as unknown as Scope;

/** Resolves to null where it could not be loaded: the page has been told, and asks the server instead. */
let solver: Promise<Solve | null> | null = null;

/** Learnings that are to leave off. */
const stopped = new Set<number>();

scope.onmessage = async ({ data }) => {
  const word = wordToEngine(data);
  if (word === null) return;
  if (word.kind === "start") {
    solver ??= start(word.solver);
    return;
  }
  if (word.kind === "stop") {
    stopped.add(word.id);
    return;
  }
  if (word.kind === "learn") {
    const reply = await learnedTo(
      word,
      (told) => scope.postMessage(told),
      () => stopped.delete(word.id),
    );
    if (reply !== null) scope.postMessage(reply);
    return;
  }
  const solve = await solver;
  if (solve === null) scope.postMessage({ kind: "failed", id: word.id, why: "the solver is not loaded" });
  else scope.postMessage(answerTo(word, solve, (reply) => scope.postMessage(reply)));
};

async function start(from: string | WebAssembly.Module): Promise<Solve | null> {
  try {
    const compiled = typeof from === "string" ? await WebAssembly.compileStreaming(fetch(from)) : from;
    const solve = await loadSolver({ compiled });
    scope.postMessage({ kind: "ready", solver: compiled });
    return solve;
  } catch (error) {
    scope.postMessage({
      kind: "failed",
      id: null,
      why: error instanceof Error ? error.message : String(error),
    });
    return null;
  }
}
