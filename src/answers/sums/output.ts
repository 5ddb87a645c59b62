/** Sums as data: the list of them, one asked and answered. */
import type { SumOutput, SumsOutput } from "../../contract/output/sum.ts";
import { STATEMENT } from "../statement.ts";
import { sentenceData } from "../told-workings.ts";
import { ENGINE_VERSION } from "../version.ts";
import { type WorkingFigure, workingOutputOf } from "../working.ts";
import type { AskedSum } from "./ask.ts";
import { isNeeded, usualOf } from "./given.ts";
import type { Sum, SumAnswer, SumField, SumRefusal } from "./sum.ts";

export const sumsOutputOf = (sums: readonly Sum[]): SumsOutput => ({
  ...{ schema: "grazewell.sums/1", engine: ENGINE_VERSION },
  sums: sums.map((sum) => ({
    ...headOf(sum),
    fields: sum.fields.map(fieldOf),
    examples: sum.examples.map((example) => ({ ...example })),
  })),
});

const headOf = ({ id, group, name, question }: Sum) => ({ id, group, name, question });

const fieldOf = (field: SumField): SumsOutput["sums"][number]["fields"][number] => {
  const { name, label, hint, input } = field;
  const usual = usualOf(field);
  return {
    ...{ name, label, hint, input },
    needed: isNeeded(field),
    empty: usual === null ? null : { text: usual.text, how: usual.how },
    example: field.input === "choice" ? (field.choices[0]?.text ?? "") : field.example,
    units: field.input === "amount" ? [...field.units] : [],
    choices: field.input === "choice" ? field.choices.map((choice) => ({ ...choice })) : [],
  };
};

type Answered = Extract<AskedSum, { ok: true }>;

export function sumOutputOf(sum: Sum, { answer, taken, said }: Answered, today: string): SumOutput {
  return {
    ...{ schema: "grazewell.sum/1", engine: ENGINE_VERSION, sum: headOf(sum), as_of: today },
    ...{ answered: answer.kind === "answer", cautions: [...answer.cautions] },
    ...partsOf(answer),
    taken: taken.map(({ field, label, text, how }) => ({ field, label, text, how })),
    said: said.map(({ text }) => text),
    figures: answer.figures.flatMap((figure) => workingOutputOf(figure, []).figure ?? []),
    statement: STATEMENT,
  };
}

function partsOf(answer: SumAnswer | SumRefusal) {
  if (answer.kind === "none") {
    const nothing = { rows: [], tables: [], notes: [], would_change: [] };
    return { lead: sentenceData(answer.because), field: answer.field, ...nothing };
  }
  const { lead, rows, tables, notes, wouldChange } = answer;
  return {
    ...{ lead: sentenceData(lead), field: null },
    rows: rows.map(({ label, value }) => ({ label, value: sentenceData(value) })),
    tables: tables.map(({ title, columns, rows: lines }) => ({
      ...{ title, columns: [...columns] },
      rows: lines.map((line) => line.map(sentenceData)),
    })),
    ...{ notes: [...notes], would_change: sentenceData(wouldChange) },
  };
}

/** A figure of an answer with its working, by id; null where the answer has none of that id. */
export function sumWorking({ figures }: SumAnswer | SumRefusal, id: string): WorkingFigure | null {
  const figure = figures.find((one) => one.id === id);
  return figure === undefined ? null : workingOutputOf(figure, []).figure;
}
