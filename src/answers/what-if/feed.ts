/** `--feed`: a weight a day, or more or less of what goes in today. The kind of food stays. */
import { readFeedAmount } from "../../contract/quantity/feeding.ts";
import { readMeasure } from "../../contract/quantity/measure.ts";
import { tidy } from "../../contract/quantity/parse.ts";
import { figure } from "../../contract/quantity/show.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { as, type Change, changed, factorRule, setTo, taken, times } from "./read.ts";

const FLAG = "--feed";
const MOST_TIMES = 10;

export function changeFeed(text: string, facts: TankFacts): Change {
  const notes: string[] = [];
  const factor = factorOf(text, notes);
  const words = (grams: number) =>
    `feed ${figure(rounded(grams))} g a day instead of ${figure(rounded(facts.feedGPerDay.central))} g`;
  if (factor !== null) {
    const feedGPerDay = times(facts.feedGPerDay, factor);
    const changes = { feedGPerDay };
    return { facts: changed(facts, changes, []), events: [], words: words(feedGPerDay.central), notes };
  }
  const context = { ...as(FLAG, "g/day"), waterL: facts.waterL.central };
  const amount = taken(FLAG, readFeedAmount(text, context), notes);
  const changes = { feedGPerDay: setTo(amount) };
  return {
    facts: changed(facts, changes, ["feedGPerDay"]),
    events: [],
    words: words(amount.central),
    notes,
  };
}

/** "+50 %", "-20 %" and "x2" as what today's feed is multiplied by; null for anything else. */
function factorOf(text: string, notes: string[]): number | null {
  const more = /^([+-]) ?(.*%|.*per ?cent)$/i.exec(tidy(text));
  if (more !== null) {
    const [, sign = "+", share = ""] = more;
    const most = sign === "-" ? 100 : 100 * (MOST_TIMES - 1);
    const outcome = readMeasure(share, factorRule("%", most), as(FLAG, "%"));
    const { central } = taken(FLAG, outcome, notes, (choice) => `${sign}${choice}`);
    return 1 + (sign === "-" ? -1 : 1) * (central / 100);
  }
  const multiple = /^[x×] ?(.+)$/i.exec(tidy(text))?.[1];
  if (multiple === undefined) return null;
  const outcome = readMeasure(multiple, factorRule("times", MOST_TIMES), as(FLAG, "times"));
  return taken(FLAG, outcome, notes, (choice) => `x${choice}`).central;
}

const rounded = (grams: number): number => Number(grams.toPrecision(2));
