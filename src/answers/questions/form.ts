/**
 * A sent form to the tank file it makes, or everything in it that can't be read yet, each beside its field. The file's
 * one reader judges; a field left as it was shown keeps its entry as it stands in the document.
 */
import { findAnimal } from "../../catalogue/index.ts";
import type { Notice } from "../../contract/tank-file/finding.ts";
import { readTankFile } from "../../contract/tank-file/read.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import { Answering } from "./answering.ts";
import { type FieldDoubt, placed } from "./doubts.ts";
import { withEntries } from "./paths.ts";
import { type Values, valuesOf } from "./prefill.ts";

export interface FormContext {
  /** ISO date. */
  readonly today: string;
  /** The document with what is kept beside it, as it is read later: readings of the daybook. */
  readonly together?: (file: TankFile) => TankFile;
}

export type FormResult =
  | { readonly ok: true; readonly file: TankFile; readonly notices: readonly Notice[] }
  | { readonly ok: false; readonly doubts: readonly FieldDoubt[] };

/** Reads the answers to `questions` (1 to 8) out of what was sent. */
export function readForm(
  questions: readonly number[],
  sent: Values,
  before: TankFile,
  context: FormContext,
): FormResult {
  const doubts: FieldDoubt[] = [];
  const changes = questions.flatMap((question) =>
    new Answering(question, sent, before, context.today, doubts).changes(),
  );
  if (doubts.length > 0) return { ok: false, doubts };
  const file = withEntries(before, changes);
  return judged(file, questions, sent, context);
}

/** "I'm not sure": the entries of a question taken out, and for the water the wide range in its place. */
export function unsure(question: number, before: TankFile, context: FormContext): FormResult {
  const names = Object.keys(valuesOf(question, before));
  const empty = Object.fromEntries(names.map((name) => [name, ""]));
  const sent: Values = question === 1 ? { ...empty, water_unsure: "yes" } : empty;
  return readForm([question], sent, before, context);
}

export function judged(
  file: TankFile,
  questions: readonly number[],
  sent: Values,
  { today, together = (one) => one }: FormContext,
): FormResult {
  const result = readTankFile(JSON.stringify(together(file)), { today, findAnimal });
  if (result.ok) return { ok: true, file, notices: result.notices };
  return { ok: false, doubts: placed(result.findings, questions, sent, file) };
}
