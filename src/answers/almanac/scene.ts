/** What dated care is worked out from: the record and all that was said of it, plan and larder, and the list of advice. */
import type { HeadsOutput } from "../../contract/output/heads.ts";
import type { LarderOutput } from "../../contract/output/larder.ts";
import type { FlowsOutput, TrendsOutput } from "../../contract/output/trends.ts";
import type { WavesOutput } from "../../contract/output/waves.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import type { ShownIn } from "../../contract/tank-file/shown-in.ts";
import type { Figure, Working, WorkingInput } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { spreadText } from "../../engine/types/link.ts";
import type { Advice } from "../advice.ts";
import type { RecordScene } from "../record-scene.ts";
import type { Sentence } from "../sentence.ts";
import type { CareDate } from "./care-date.ts";

export interface AlmanacScene extends RecordScene {
  readonly trends: TrendsOutput;
  readonly heads: HeadsOutput;
  readonly larder: LarderOutput;
  readonly waves: WavesOutput;
  /** Where they were worked out. */
  readonly flows: FlowsOutput | null;
  /** What the bench stands by, declined advice left out. */
  readonly advice: readonly Advice[];
  readonly shown: ShownIn;
}

/** Care that has no date, and what is missing or settled. */
export interface Undated {
  readonly id: string;
  readonly what: string;
  readonly why: Sentence;
  readonly figures: readonly Figure[];
}

export interface Dated {
  readonly dates: readonly CareDate[];
  readonly undated: readonly Undated[];
}

export const dated = (...dates: readonly CareDate[]): Dated => ({ dates, undated: [] });
export const undated = (id: string, what: string, why: Sentence, figures: readonly Figure[] = []): Dated => ({
  dates: [],
  undated: [{ id, what, why, figures }],
});

/** A duty of the almanac's own: once, at any time of its day, unless said. */
export const duty = (
  given: Pick<CareDate, "id" | "kind" | "on" | "do" | "why" | "byWhen" | "wouldChange" | "restsOn"> &
    Partial<CareDate>,
): CareDate => ({
  ...{ at: null, every: null, until: null, gate: null, figures: [], done: null, leads: null },
  ...given,
});

/** The day that is so many days after it was last done; today where that is past or it was never done. */
export const dueAfter = (last: string | null, days: number, today: string): string =>
  later(last === null ? today : addDays(last, days), today);

export const later = (a: string, b: string): string => (a > b ? a : b);

export const almanacFigure = (
  name: string,
  given: Pick<Figure, "label" | "spread" | "unit"> &
    Omit<Working, "confidence" | "animals" | "parameters"> &
    Partial<Working>,
): Figure => {
  const { label, spread, unit, ...working } = given;
  return {
    ...{ id: figureId.care("almanac", name), label, spread, unit },
    working: { animals: [], parameters: [], confidence: "computed", ...working },
  };
};

/** A figure of another part, of which an output tells value and id alone. */
export const shownFigure = ({
  id,
  label,
  spread,
  unit,
}: Pick<Figure, "id" | "label" | "spread" | "unit">): WorkingInput => ({
  ...{ label, value: spreadText(spread, unit), origin: "figure", figure: id },
});
