/**
 * Asks the eight questions, one at a time: why, an example, and "not sure". What can't be read is asked again with
 * what is allowed and the readings to choose from; nothing else has to be typed twice.
 */

import type { AnswerContext, Entries } from "../../answers/questions/answer.ts";
import { check } from "../../answers/questions/check.ts";
import { QUESTIONS, type Question, UNSURE_WATER } from "../../answers/questions/questions.ts";
import type { Choice } from "../../contract/quantity/outcome.ts";
import { wrapped } from "../check/print.ts";
import type { Io } from "../io.ts";

/** A line from the person; null when there are no more. */
export type Ask = (prompt: string) => Promise<string | null>;

const NOT_SURE = /^(?:\?|not sure|i'?m not sure|don'?t know|unknown|skip)?$/i;
export const isNotSure = (text: string): boolean => NOT_SURE.test(text.trim());

export interface Doubt {
  readonly typed: string | null;
  readonly message: string;
  readonly choices: readonly Choice[];
}

/** One answer read: its entries and what to echo, or why it must be given again. */
export function readAnswer(
  question: Question,
  text: string,
  before: Entries,
  context: AnswerContext,
): { readonly entries: Entries; readonly echo: readonly string[] } | { readonly doubts: readonly Doubt[] } {
  const answer = question.parse(text.trim(), context);
  if (answer.kind === "again") return { doubts: [answer] };
  const { findings, notices } = check(before, answer.entries, context);
  if (findings.length === 0)
    return { entries: answer.entries, echo: [...answer.echo, ...notices.map((notice) => notice.text)] };
  return {
    doubts: findings.map(({ typed, message, choices }) => ({ typed, message: message.text, choices })),
  };
}

export async function interview(
  ask: Ask,
  io: Io,
  given: Readonly<Record<string, string>>,
  context: AnswerContext,
): Promise<Entries> {
  const say = (text: string, indent = "") => {
    for (const line of wrapped(text, io.width - indent.length)) io.talk(`${indent}${line}`);
  };
  let all: Entries = {};
  say("Eight questions. Enter alone means 'not sure'; every answer can be left out.");
  for (const [i, question] of QUESTIONS.entries()) {
    const first = given[question.flag];
    io.talk("");
    say(io.bold(`${i + 1} of ${QUESTIONS.length}  ${question.title}`));
    if (first === undefined) {
      say(question.typing === undefined ? question.why : `${question.why} ${question.typing}`, "  ");
      for (const line of question.offer ?? []) io.talk(`    ${line}`);
      say(`Such as: ${question.example}`, "  ");
    } else io.talk(`  > ${first}`);
    const answered = await settle(question, first ?? (await ask("  > ")), all);
    if (answered === null) return all;
    all = { ...all, ...answered };
  }
  return all;

  /** Keeps on until the answer is read or the person is not sure; null at the end of input. */
  async function settle(question: Question, typed: string | null, before: Entries): Promise<Entries | null> {
    let text = typed;
    for (;;) {
      if (text === null) return null;
      if (isNotSure(text)) {
        say(`Not sure: ${question.notSure}.`, "  ");
        return question.flag === "water" ? UNSURE_WATER : {};
      }
      const read = readAnswer(question, text, before, context);
      if ("entries" in read) {
        for (const line of read.echo) say(line, "  ");
        return read.entries;
      }
      // One doubt at a time: settling the first often settles the rest.
      const [doubt] = read.doubts;
      text = doubt === undefined ? "" : await settleDoubt(doubt, text);
    }
  }

  async function settleDoubt({ typed, message, choices }: Doubt, text: string): Promise<string | null> {
    say(message, "  ");
    for (const [i, { label }] of choices.entries()) say(`${i + 1}  ${label}`, "    ");
    const hint = choices.length === 0 ? "Again" : "Number of a reading, or the answer again";
    const reply = await ask(`  ${hint}: `);
    const picked = reply === null ? undefined : choices[Number(reply.trim()) - 1];
    if (picked === undefined) return reply;
    if (picked.text === null) return ask("  Again: ");
    return typed !== null && text.includes(typed)
      ? text.replace(typed, () => picked.text ?? "")
      : picked.text;
  }
}
