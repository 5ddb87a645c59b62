/** How we know a thing, in words that stand on their own: evidence of a parameter, how far a work was opened, and so on. */
import type { Source } from "../../catalogue/index.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { tellingApart } from "../../engine/types/link.ts";
import type { Evidence } from "../../engine/types/parameter.ts";
import { unitText } from "../parts/text.ts";

export const EVIDENCE_WORDS: Readonly<Record<Evidence, string>> = {
  read: "read in a source",
  computed: "worked out by us from other figures",
  memory: "from memory, no source opened",
  judgement: "our judgement",
  backfitted: "set so that the model comes out as tanks do",
};

export const OPENED_WORDS: Readonly<Record<Source["opened"], string>> = {
  whole: "read whole",
  abstract: "abstract read",
  passage: "a passage read",
  page: "page read",
  "source-code": "read in a program's source",
  "not-opened": "not opened, known from others who cite it",
  none: "no work stands behind it",
};

export const ORIGIN_WORDS = {
  stated: "you said",
  derived: "worked out",
  assumed: "assumed, as nobody said",
  figure: "a figure of its own",
} as const;

export const CONFIDENCE_WORDS: Readonly<Record<string, string>> = {
  measured: "measured in this tank",
  read: "as sure as the sources it was read in",
  computed: "worked out from figures that were read or typed",
  judgement: "rests on our judgement in at least one part: take its range in earnest",
};

/** "0.13 (0.06 to 0.27) mg C/d"; a bare ratio without its unit. */
export function spreadWords(spread: Spread, unit: string): string {
  const { low, central, high } = tellingApart(spread);
  const unitWords = unit === "1" || unit === "" ? "" : ` ${unit}`;
  const middle = `${central}${unitWords}`;
  return unitText(spread.low === spread.high ? middle : `${middle} (${low} to ${high})`);
}
