/**
 * Learning from a daybook in short turns: between two of them whoever runs it hears messages, so that it can be stopped.
 * The same in a browser's worker and in Node; no message passing here.
 */
import { learning } from "../../answers/learned/learned.ts";
import type { EngineReply, LearnWord } from "../../contract/worker/messages.ts";
import { learnedSeen } from "../pages/learned/seen.ts";

/** Members run in one turn: some tens of milliseconds. */
const MEMBERS_A_TURN = 8;

/** The last reply; null where it was stopped. */
export async function learnedTo(
  { id, facts, record }: LearnWord,
  tell: (reply: EngineReply) => void,
  stopped: () => boolean,
): Promise<EngineReply | null> {
  try {
    const work = learning(facts, record);
    for (let count = 1; ; count += 1) {
      const step = work.next();
      if (step.done === true) return { kind: "learned", id, seen: learnedSeen(step.value.output) };
      if (count % MEMBERS_A_TURN > 0) continue;
      tell({
        kind: "progress",
        id,
        doing: "learning from the daybook",
        share: step.value.done / step.value.of,
      });
      await new Promise((resolve) => setTimeout(resolve));
      if (stopped()) return null;
    }
  } catch (error) {
    return { kind: "failed", id, why: error instanceof Error ? error.message : String(error) };
  }
}
