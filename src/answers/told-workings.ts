/** Sentences of an answer as data, and the workings of every number that they tell. */
import type { NumbersPartOutput, SentenceOutput } from "../contract/output/sentence.ts";
import type { Figure } from "../engine/types/figure.ts";
import { withConfidence } from "./figures/confidence.ts";
import type { NumbersPart } from "./numbers-part.ts";
import type { Sentence } from "./sentence.ts";
import { type WorkingFigure, workingOf, workingOutputOf } from "./working.ts";

export const sentenceData = (sentence: Sentence): SentenceOutput =>
  sentence.map((part) => (typeof part === "string" ? part : { ...part }));

export const partData = ({ title, rows, tables, notes }: NumbersPart): NumbersPartOutput => ({
  title,
  rows: rows.map(({ label, value }) => ({ label, value: sentenceData(value) })),
  tables: tables.map(({ title: name, columns, rows: lines }) => ({
    ...{ title: name, columns: [...columns] },
    rows: lines.map((line) => line.map(sentenceData)),
  })),
  notes: [...notes],
});

export const sentencesOf = (parts: readonly NumbersPart[]): Sentence[] =>
  parts.flatMap(({ rows, tables }) => [
    ...rows.map(({ value }) => value),
    ...tables.flatMap((table) => table.rows.flat()),
  ]);

type Workings = Readonly<Record<string, WorkingFigure>>;

export const workingsById = (figures: readonly Figure[]): Workings =>
  Object.fromEntries(
    withConfidence(figures).map((figure) => [figure.id, workingOutputOf(figure, []).figure!]),
  );

/** Every figure that is told, and those it was worked out from, each once, in the order in which they come. */
export function toldWorkings(sentences: readonly Sentence[], workings: Workings): WorkingFigure[] {
  const found = new Map<string, WorkingFigure>();
  const gather = (id: string): void => {
    const figure = found.has(id) ? null : workingOf({ workings }, id);
    if (figure === null) return;
    found.set(id, figure);
    for (const input of figure.inputs) if (input.figure !== null) gather(input.figure);
  };
  for (const part of sentences.flat()) if (typeof part !== "string") gather(part.figure);
  return [...found.values()];
}
