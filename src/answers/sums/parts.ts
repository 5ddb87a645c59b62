/** What the sums of chemistry and dosing put their answers together from: figures, rows, inputs, doubts of tests. */
import type { Amount } from "../../contract/quantity/outcome.ts";
import { SEAWATER_SOURCES, type SeawaterSource } from "../../engine/seawater/sources.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure, WorkingInput } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { linkTo, spreadText } from "../../engine/types/link.ts";
import { type Told, told } from "../sentence.ts";
import type { SumRefusal, SumRow } from "./sum.ts";

interface FigureParts {
  readonly name: string;
  readonly label: string;
  readonly spread: Spread;
  readonly unit: string;
  /** Heading in the document of these figures. */
  readonly at: string;
  readonly formula: string;
  readonly inputs: readonly WorkingInput[];
  readonly sources?: readonly SeawaterSource[];
  /** Works that have no key among the sources of seawater. */
  readonly references?: readonly string[];
  readonly wouldChange?: readonly string[];
  readonly judged?: boolean;
}

/** Figures of one sum. @param document below docs/model that explains their formulas */
export const figuresOf =
  (sum: string, document = "seawater.md") =>
  ({
    name,
    label,
    spread,
    unit,
    at,
    formula,
    inputs,
    sources = [],
    references = [],
    wouldChange = [],
    judged,
  }: FigureParts): Figure => ({
    id: figureId.sum(sum, name),
    ...{ label, spread, unit: unit === "" ? "1" : unit },
    working: {
      ...{ formulaKey: `${document}#${at}`, formula, inputs, parameters: [], animals: [] },
      references: [...sources.map((key) => SEAWATER_SOURCES[key]), ...references],
      confidence: judged ? "judgement" : "computed",
      wouldChange,
    },
  });

/** The number of a figure, linked: "8.06 (7.96 to 8.16)". */
export const number = ({ id, spread, unit }: Figure): Told => told(spreadText(spread, unit), id);

/** The same without its range, for sentences: the range stands in the row. */
export const middle = ({ id, spread, unit }: Figure): Told => {
  const text = spreadText({ low: spread.central, central: spread.central, high: spread.central }, unit);
  return told(text, id);
};

export const row = (figure: Figure, label = figure.label): SumRow => ({
  ...{ label: capital(label), value: [number(figure)] },
});

/** A label at the start of a line; pH stays pH. */
const capital = (text: string): string =>
  text.startsWith("pH") ? text : text.charAt(0).toUpperCase() + text.slice(1);

export const refusal = (
  because: SumRefusal["because"],
  field: string | null,
  figures: readonly Figure[] = [],
): SumRefusal => ({ kind: "none", because, field, cautions: [], figures });

/** A typed amount with what a test of its kind may be off by; a range that was typed is the keeper's own doubt. */
export function doubted(amount: Amount, by: number, least = Number.NEGATIVE_INFINITY): Amount {
  if (amount.low !== amount.high || amount.censored !== null) return amount;
  return { ...amount, low: Math.max(least, amount.low - by), high: amount.high + by };
}

export { linkTo };

/** A typed amount as a line of a working, in a unit of our choice. */
export const stated = (label: string, spread: Spread, unit: string): WorkingInput => ({
  ...{ label, value: spreadText(spread, unit === "" ? "1" : unit), origin: "stated" },
});

export const times = ({ low, central, high }: Spread, factor: number): Spread =>
  factor >= 0
    ? { low: low * factor, central: central * factor, high: high * factor }
    : { low: high * factor, central: central * factor, high: low * factor };
