/** How figures came about, as `working --json` prints it: parameters and animals with their sources. */
import { animalById, sources } from "../catalogue/index.ts";
import type { WorkingOutput } from "../contract/output/working.ts";
import type { Figure } from "../engine/types/figure.ts";
import { animalFact } from "./figures/confidence.ts";
import { TABLE } from "./figures/table.ts";
import type { TankAnswers } from "./tank-answers.ts";
import { ENGINE_VERSION } from "./version.ts";

export function sourcesOf(keys: readonly string[]) {
  return keys.flatMap((key) => {
    const source = sources.get(key);
    return source === undefined ? [] : [{ key, title: source.title ?? source.about, opened: source.opened }];
  });
}

/** A figure down to its sources. */
export type WorkingFigure = NonNullable<WorkingOutput["figure"]>;

/**
 * How a figure came about; null where the tank has none of that id. Facts of animals (`animal.ID.FACT`) belong to no
 * tank: they are worked out here when asked for, so that answers need not carry a thousand of them.
 */
export function workingOf(answers: Pick<TankAnswers, "workings"> | null, id: string): WorkingFigure | null {
  // Ids come from addresses: "constructor" names no figure.
  if (answers !== null && Object.hasOwn(answers.workings, id)) return answers.workings[id] ?? null;
  const figure = animalFact(id);
  return figure === null ? null : workingOutputOf(figure, []).figure;
}

export function workingOutputOf(figure: Figure | null, figures: readonly Figure[]): WorkingOutput {
  return {
    schema: "grazewell.working/1",
    engine: ENGINE_VERSION,
    figure:
      figure === null
        ? null
        : {
            id: figure.id,
            label: figure.label,
            value: { low: figure.spread.low, central: figure.spread.central, high: figure.spread.high },
            unit: figure.unit,
            formula: figure.working.formula,
            formula_at: `docs/model/${figure.working.formulaKey}`,
            inputs: figure.working.inputs.map((input) => ({
              label: input.label,
              value: input.value,
              origin: input.origin,
              figure: input.figure ?? null,
            })),
            parameters: figure.working.parameters.map(({ symbol }) => parameterRow(symbol)),
            animals: figure.working.animals.flatMap((id) => animalRow(id) ?? []),
            references: [...(figure.working.references ?? [])],
            confidence: figure.working.confidence,
            would_change: [...figure.working.wouldChange],
          },
    figures: figures.map(({ id, label }) => ({ id, label })),
  };
}

type Rows<Key extends "parameters" | "animals"> = WorkingFigure[Key][number];

/** One object for each parameter and animal, however many workings have it: a message to another thread holds it once. */
const parameterRow = onceEach((id): Rows<"parameters"> => {
  const parameter = TABLE.get(id);
  if (parameter === undefined) throw new RangeError(`Cannot show a working: no parameter "${id}"`);
  const { meaning, spread, unit, evidence, note } = parameter;
  return {
    ...{ id, meaning, value: { ...spread }, unit, evidence, note: note ?? null },
    sources: sourcesOf(parameter.sources),
  };
});
const animalRow = onceEach((id): Rows<"animals"> | undefined => {
  const animal = animalById.get(id);
  return animal === undefined
    ? undefined
    : { id, name: animal.commonName, basis: { ...animal.basis }, sources: sourcesOf(animal.sources) };
});

function onceEach<Value>(make: (id: string) => Value): (id: string) => Value {
  const made = new Map<string, Value>();
  return (id) => {
    if (!made.has(id)) made.set(id, make(id));
    return made.get(id) as Value;
  };
}
