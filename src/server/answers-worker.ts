/**
 * The thread in which the engine works: facts in, answers out. Runs at a lower priority than the server's own thread,
 * so that a page of readings does not wait for somebody's plan.
 */
import { setPriority } from "node:os";
import { parentPort } from "node:worker_threads";
import { withHoliday } from "../answers/holiday/with-holiday.ts";
import type { Learning } from "../answers/learned/learned.ts";
import { taughtAnswers } from "../answers/learned/taught-answers.ts";
import { DEFAULT_ENSEMBLE } from "../answers/plan/plan-tank.ts";
import { Refusal } from "../answers/refusal.ts";
import { withStartUp } from "../answers/start-up/with-start-up.ts";
import { answersOf, type TankAnswers } from "../answers/tank-answers.ts";
import { withFlows } from "../answers/trends/with-flows.ts";
import { whatIf } from "../answers/what-if.ts";
import { loadSolver } from "../solver/highs.ts";
import type { Job, Outcome } from "./answers.ts";
import { Recent } from "./recent.ts";

/**
 * A third of the server's weight: its own thread, which mostly sleeps, is served first all the same, and beside other
 * work of the machine (weights: man 7 sched) a tank is still worked out in its time; 10 is a ninth.
 */
const LOWER_PRIORITY = 5;

const port = parentPort;
if (port === null) throw new Error("answers-worker runs as a worker thread only");
try {
  // On Linux this is the thread's own; elsewhere it would be the whole program's.
  if (process.platform === "linux") setPriority(0, LOWER_PRIORITY);
} catch {
  // Not allowed here: it works all the same.
}

/** What was learned lately, by facts and record: a tank is asked of with several counts of runs and changes. */
const LEARNED_KEPT = 20;
const learned = new Recent<Learning>(LEARNED_KEPT);

const solver = loadSolver();
const say = (outcome: Outcome) => port.postMessage(outcome);

port.on("message", async ({ id, facts, choice, change, record }: Job) => {
  try {
    // Flows are shown of a tank as it is, beside all its runs; a quick look of a few runs does not wait for them.
    const holiday = change?.holiday;
    const whole = (answers: TankAnswers) => {
      if (holiday !== undefined) return withHoliday(answers, facts, choice, holiday);
      return change === null && choice.members >= DEFAULT_ENSEMBLE.members
        ? withStartUp(withFlows(answers, facts), facts, record)
        : answers;
    };
    const means = { solve: await solver, progress: () => {} };
    if (record === null) {
      const changed = change === null ? null : whatIf(change, facts);
      say({ id, kind: "answers", answers: whole(answersOf(facts, choice, means, changed)) });
      return;
    }
    const key = JSON.stringify([facts, record]);
    const answers = taughtAnswers({ facts, record, choice, change }, means, (learn) => {
      const known = learned.get(key) ?? learn();
      learned.set(key, known);
      return known;
    });
    say({ id, kind: "answers", answers: whole(answers) });
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
