/** What stands behind a list for one tank: rows and tables whose every number is a figure with its working. */
import type { Spread } from "../../../engine/types/estimate.ts";
import type { Confidence, Figure, WorkingInput } from "../../../engine/types/figure.ts";
import { figureId } from "../../../engine/types/figure-id.ts";
import { parametersOf, spreadText } from "../../../engine/types/link.ts";
import { TABLE } from "../../figures/table.ts";
import { type Told, told } from "../../sentence.ts";
import type { SumRow, SumTable } from "../../sums/sum.ts";

/** A part of what stands behind a list; several lists may share it. */
export interface NumbersPart {
  /** What it is about, as a heading. */
  readonly title: string;
  readonly rows: readonly SumRow[];
  readonly tables: readonly SumTable[];
  /** Limits of the arithmetic. */
  readonly notes: readonly string[];
  readonly figures: readonly Figure[];
}

interface Made {
  readonly label: string;
  readonly spread: Spread;
  readonly unit: string;
  /** Heading in docs/model/trouble.md. */
  readonly at: string;
  readonly formula: string;
  readonly inputs: readonly WorkingInput[];
  readonly parameters?: readonly string[];
  readonly references?: readonly string[];
  readonly confidence: Confidence;
  readonly wouldChange: readonly string[];
}

/** A figure of this part of care, `care.wrong.NAME`. */
export const troubleFigure = (
  name: string,
  { label, spread, unit, at, formula, inputs, parameters = [], references, confidence, wouldChange }: Made,
): Figure => ({
  ...{ id: figureId.care("wrong", name), label, spread, unit },
  working: {
    ...{ formulaKey: `trouble.md#${at}`, formula, inputs, confidence, wouldChange, animals: [] },
    parameters: parametersOf(parameters, TABLE),
    ...(references === undefined ? {} : { references }),
  },
});

/** Its value with unit and band, as a door to it. */
export const toldOf = ({ id, spread, unit }: Figure): Told => told(spreadText(spread, unit), id);

/** The same in two figures: these numbers are no better known. */
export const roughly = ({ id, spread, unit }: Figure): Told => told(spreadText(rough(spread), unit), id);

/** In two figures without a unit: for a cell of a table whose column names it. */
export const bare = ({ id, spread }: Figure): Told => told(spreadText(rough(spread), "1"), id);

const two = (value: number): number => Number(value.toPrecision(2));
const rough = ({ low, central, high }: Spread): Spread => ({
  low: two(low),
  central: two(central),
  high: two(high),
});

export const parameter = (id: string): Spread => {
  const found = TABLE.get(id);
  if (found === undefined) throw new RangeError(`Cannot tell the numbers of a trouble: no parameter "${id}"`);
  return found.spread;
};
