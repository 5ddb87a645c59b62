/**
 * Answers to questions saved over a tank's facts. Two who answer different questions don't meet; who answers the same
 * one as somebody else since is shown both. Nothing is written where nothing changed.
 */
import { isDeepStrictEqual } from "node:util";
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import { type FormResult, readForm, unsure } from "../../answers/questions/form.ts";
import { type Values, valuesOf } from "../../answers/questions/prefill.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import type { Json } from "../../store/store.ts";
import { withReadings } from "../load-tank.ts";
import type { LoadedTank, PageContext } from "../route.ts";
import { toldToday } from "./told-today.ts";

export type SavedAnswers =
  | { readonly kind: "saved" }
  | { readonly kind: "doubts"; readonly doubts: readonly FieldDoubt[] }
  /** Somebody changed the same answers since the form was made: here they are. */
  | { readonly kind: "clash"; readonly current: LoadedTank }
  | { readonly kind: "gone" };

export interface Answers {
  readonly questions: readonly number[];
  readonly sent: Values;
  /** Version that the form was made from. */
  readonly version: number;
  /** "I'm not sure" instead of what was sent. */
  readonly unsure: boolean;
}

/** Another writer may come between reading and writing, again and again; past this it is told. */
const MOST_TRIES = 3;

export async function saveAnswers(
  tankId: string,
  answers: Answers,
  context: PageContext,
): Promise<SavedAnswers> {
  for (let tries = 1; ; tries += 1) {
    const tank = await context.loadTank(tankId);
    if (tank === null) return { kind: "gone" };
    if (tries > MOST_TRIES) return { kind: "clash", current: tank };
    const result = read(answers, tank, context.today);
    if (!result.ok) return { kind: "doubts", doubts: result.doubts };
    if (same(result.file, toldToday(tank, answers.questions))) return { kind: "saved" };
    if (await changedSince(answers, tank, context)) return { kind: "clash", current: tank };
    const stamp = { at: context.now, by: tank.row.keeper.name };
    const saved = await context.store.saveFacts(
      tankId,
      tank.row.version,
      result.file as unknown as Json,
      stamp,
    );
    if (saved.kind === "saved") return { kind: "saved" };
    if (saved.kind === "not_found") return { kind: "gone" };
  }
}

function read(answers: Answers, tank: LoadedTank, today: string): FormResult {
  const reading = { today, together: (file: TankFile) => withReadings(file, tank.readings) };
  const before = toldToday(tank, answers.questions);
  const [only] = answers.questions;
  return answers.unsure && only !== undefined
    ? unsure(only, before, reading)
    : readForm(answers.questions, answers.sent, before, reading);
}

/** Whether the same answers were changed by another since the form was made. */
async function changedSince(answers: Answers, tank: LoadedTank, { store }: PageContext): Promise<boolean> {
  if (answers.version === tank.row.version) return false;
  const history = await store.tankHistory(tank.row.id);
  const base = history.find(({ version }) => version === answers.version);
  if (base === undefined) return true;
  const before = base.facts as unknown as TankFile;
  return answers.questions.some(
    (question) => !same(valuesOf(question, before), valuesOf(question, tank.document)),
  );
}

/** Whatever the order of names: a part that the daybook moved stands where a form would not put it. */
const same = (a: unknown, b: unknown): boolean => isDeepStrictEqual(plain(a), plain(b));
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
