/**
 * The thread in which the engine works: facts in, answers out. Runs at a lower priority than the server's own thread,
 * so that a page of readings does not wait for somebody's plan.
 */
import { setPriority } from "node:os";
import { parentPort } from "node:worker_threads";
import { Refusal } from "../answers/refusal.ts";
import { answersOf } from "../answers/tank-answers.ts";
import { whatIf } from "../answers/what-if.ts";
import { loadSolver } from "../solver/highs.ts";
import type { Job, Outcome } from "./answers.ts";

const LOWER_PRIORITY = 10;

const port = parentPort;
if (port === null) throw new Error("answers-worker runs as a worker thread only");
try {
  // On Linux this is the thread's own; elsewhere it would be the whole program's.
  if (process.platform === "linux") setPriority(0, LOWER_PRIORITY);
} catch {
  // Not allowed here: it works all the same.
}

const solver = loadSolver();
const say = (outcome: Outcome) => port.postMessage(outcome);

port.on("message", async ({ id, facts, choice, change }: Job) => {
  try {
    const solve = await solver;
    const changed = change === null ? null : whatIf(change, facts);
    say({
      id,
      kind: "answers",
      answers: answersOf(facts, choice, { solve, progress: () => {} }, changed),
    });
  } catch (error) {
    if (error instanceof Refusal) say({ id, kind: "refused", lines: error.lines });
    else
      say({
        id,
        kind: "failed",
        why: error instanceof Error ? (error.stack ?? error.message) : String(error),
      });
  }
});
