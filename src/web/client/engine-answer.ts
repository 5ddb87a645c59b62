/**
 * An ask answered: the tank's document read, the what-if made, the parts asked for worked out. The same in a browser's
 * worker and in Node; no message passing here.
 */
import { Refusal } from "../../answers/refusal.ts";
import { answersOf } from "../../answers/tank-answers.ts";
import { whatIf } from "../../answers/what-if.ts";
import { findAnimal } from "../../catalogue/index.ts";
import { readTankFile } from "../../contract/tank-file/read.ts";
import type { AskWord, EngineReply } from "../../contract/worker/messages.ts";
import type { Solve } from "../../engine/stocking/linear-model.ts";

export function answerTo(ask: AskWord, solve: Solve, tell: (reply: EngineReply) => void): EngineReply {
  const { id, document, today, choice, change, parts } = ask;
  try {
    const read = readTankFile(JSON.stringify(document), { today, findAnimal });
    if (!read.ok) {
      const [first] = read.findings;
      return { kind: "failed", id, why: first?.message.text ?? "the tank's facts could not be read" };
    }
    const progress = (doing: string, share: number) => tell({ kind: "progress", id, doing, share });
    const changed = change === null ? null : whatIf(change, read.facts);
    const answers = answersOf(read.facts, choice, { solve, progress }, changed);
    return { kind: "answers", id, answers: Object.fromEntries(parts.map((part) => [part, answers[part]])) };
  } catch (error) {
    if (error instanceof Refusal) return { kind: "refused", id, lines: error.lines };
    return { kind: "failed", id, why: error instanceof Error ? error.message : String(error) };
  }
}
