/**
 * An ask answered: the what-if made, the tank worked out, the parts asked for picked. The same in a browser's worker
 * and in Node; no message passing here.
 */
import { Refusal } from "../../answers/refusal.ts";
import { answersOf } from "../../answers/tank-answers.ts";
import { whatIf } from "../../answers/what-if.ts";
import type { AskWord, EngineReply } from "../../contract/worker/messages.ts";
import type { Solve } from "../../engine/stocking/linear-model.ts";
import { besideView } from "../pages/what-if/beside.ts";

export function answerTo(ask: AskWord, solve: Solve, tell: (reply: EngineReply) => void): EngineReply {
  const { id, facts, choice, change, parts, rows } = ask;
  try {
    const progress = (doing: string, share: number) => tell({ kind: "progress", id, doing, share });
    const answers = answersOf(
      facts,
      choice,
      { solve, progress },
      change === null ? null : whatIf(change, facts),
    );
    return {
      kind: "answers",
      id,
      answers: Object.fromEntries(parts.map((part) => [part, answers[part]])),
      ...(rows === true && change !== null ? { rows: besideView(answers) } : {}),
    };
  } catch (error) {
    if (error instanceof Refusal) return { kind: "refused", id, lines: error.lines };
    return { kind: "failed", id, why: error instanceof Error ? error.message : String(error) };
  }
}
