/** A top or bottom in words: until when it rose and that it falls since, in the trend's first sentence or in one of its own. */
import type { QuantityTrend } from "../../contract/output/trends.ts";
import { type Sentence, told } from "../sentence.ts";
import { chance, dateWords, lowered } from "../words.ts";
import { two, withUnit } from "./amounts.ts";
import type { Untold } from "./words.ts";

type Turned = NonNullable<QuantityTrend["turn"]>;

const VERBS = {
  peak: { before: "rose", after: "fell", since: "fallen" },
  trough: { before: "fell", after: "rose", since: "risen" },
} as const;

const dayOf = ({ on, figure }: Turned) => told(dateWords(on), figure);

/**
 * The first sentence where the line begins at the turn; null where it does not.
 * @param line the line by itself, told of "it" from the day on which it came to rest
 */
export function turned(
  trend: Untold,
  line: (trend: Untold, settledOn: string | null) => Sentence,
): Sentence | null {
  const { turn, window, way, per_week: slope, rising_of_20: rising, figures, unit, label } = trend;
  if (turn === null || window.why !== "turn" || slope === null || rising === null) return null;
  const { before, after, since } = VERBS[turn.shape];
  const begun: Sentence = [`${label} ${before} until about `, dayOf(turn)];
  const falls = turn.shape === "peak";
  if (turn.settled_on === null && way === (falls ? "falling" : "rising")) {
    const [least, most] = falls ? [-slope.high, -slope.low] : [slope.low, slope.high];
    const speed = `${withUnit(two(Math.abs(slope.central)), unit)} a week (${two(least)} to ${two(most)})`;
    return [
      ...begun,
      ` and has ${since} since, by about `,
      told(speed, figures.slope ?? ""),
      ": ",
      told(chance(falls ? 20 - rising : rising), figures.rising ?? ""),
      ".",
    ];
  }
  const [rest, ...others] = line({ ...trend, label: "it" }, turn.settled_on);
  return [...begun, ` and ${after} after; ${typeof rest === "string" ? rest : ""}`, ...others];
}

/** A turn that something has changed since. */
export function turnedBefore({ turn, window, label }: Untold): Sentence[] {
  if (turn === null || window.why === "turn") return [];
  const { before, after } = VERBS[turn.shape];
  return [[`Earlier ${lowered(label)} ${before} until about `, dayOf(turn), ` and ${after} after.`]];
}
