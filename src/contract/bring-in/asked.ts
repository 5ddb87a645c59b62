/** What a file asks of its keeper once for the whole of it, what was said to it, and what it says of itself. */
import type { Message, MessageKind } from "../quantity/outcome.ts";

/**
 * Everything that was said to a file, by name: `dates`, `column.3`, `cell.14.2`, `clash`, `clash.14`. The same names at
 * every door. A name that nothing asks for is passed over.
 */
export type Answers = Readonly<Record<string, string>>;

export interface AnswerChoice {
  readonly label: string;
  readonly value: string;
}

export interface FileQuestion {
  /** Under which name it is answered. */
  readonly name: string;
  readonly kind: MessageKind;
  readonly text: string;
  readonly choices: readonly AnswerChoice[];
}

export interface Refused {
  readonly kind: "refused";
  readonly message: Message;
}

/** A step of reading: done, or ended by what can't be taken or must be asked first. */
export type Step<T> =
  | { readonly kind: "done"; readonly value: T }
  | Refused
  | { readonly kind: "asked"; readonly questions: readonly FileQuestion[] };

export const done = <T>(value: T): Step<T> => ({ kind: "done", value });
export const refuse = (kind: MessageKind, text: string): Refused => ({
  kind: "refused",
  message: { kind, text },
});
export const ask = (...questions: readonly FileQuestion[]): Step<never> => ({ kind: "asked", questions });

/** The answer, where it is one of those on offer. */
export function answered(answers: Answers, question: FileQuestion): string | null {
  const given = Object.hasOwn(answers, question.name) ? answers[question.name] : undefined;
  return question.choices.find(({ value }) => value === given)?.value ?? null;
}
