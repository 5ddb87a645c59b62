/** In how many of 20 runs a limit is crossed, a kind starves; how well fed the living are. */

import type { KindLife, LimitChance } from "../../answers/ahead/outlook.ts";
import { chance, counted } from "../../answers/words.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { grid } from "./grid.ts";
import type { Page } from "./page.ts";

const MARK = " *";

export function chancesText({ outlooks, courses, lastWeek, dateOf, say, io }: Page): string {
  const [{ chances }, whatIf] = outlooks;
  const name = ({ limit, missing }: LimitChance) => `${limit.short}${missing === null ? "" : MARK}`;
  const rows = chances.map((now, i) =>
    whatIf === undefined
      ? [name(now), chance(now.of20), firstWords(now)]
      : [name(now), chance(now.of20), chance(whatIf.chances[i]!.of20)],
  );
  const head = whatIf === undefined ? ["", ...courses, "first about"] : ["", ...courses];
  return [
    say(`${io.bold("Above a limit")} on some day until ${dateOf(lastWeek)} (units as above)`),
    grid(head, rows, io.width),
    ...missingLines(chances).map((text) => say(text, "  * ", "    ")),
  ].join("\n");

  function firstWords({ of20, alreadyOf20, firstWeek }: LimitChance): string {
    if (alreadyOf20 >= of20 && of20 > 0) return "today";
    return firstWeek === null ? "" : dateOf(firstWeek.central);
  }
}

/** One line for all that nobody told. */
function missingLines(chances: readonly LimitChance[]): string[] {
  const reasons = new Set(chances.flatMap(({ missing }) => (missing === null ? [] : [missing])));
  if (reasons.size === 0) return [];
  return [`not enough data: a typical tank's chance, not yet yours. It takes ${[...reasons].join("; ")}.`];
}

export function kindsText({ outlooks, courses, say, io, dateOf }: Page): string {
  const [asItIs, whatIf] = outlooks;
  const listed = whatIf?.kinds ?? asItIs.kinds;
  if (listed.length === 0)
    return say(
      "Nobody lives off the larder here, so nobody can starve. With --plan the runs hold the crew that grazewell waves plans.",
    );
  const today = new Map(asItIs.kinds.map((kind) => [kind.animal.id, kind]));
  const pairs = listed.map((kind) => (whatIf === undefined ? [kind] : [today.get(kind.animal.id), kind]));
  const name = ({ heads, animal }: KindLife) => counted(heads, animal.commonName);
  const rowsOf = (cell: (kind: KindLife | undefined) => string) =>
    pairs.map((pair, i) => [name(listed[i]!), ...pair.map(cell)]);
  const starves = rowsOf((kind) => (kind === undefined ? "none there" : chance(kind.starvesOf20)));
  const reserves = rowsOf((kind) =>
    kind === undefined ? "" : kind.condition === null ? "too few alive" : reserveWords(kind.condition),
  );
  const days = Math.max(...listed.map((kind) => kind.days));
  const title = `${io.bold("Who may starve")} within ${days} days, the kind's half or more, beyond what age takes`;
  const reserve = `${io.bold("How well fed")} the living are on ${dateOf(Math.max(...listed.map(({ week }) => week)))} or ${days} days after they came: reserve in per cent of full`;
  if (whatIf === undefined) {
    const both = starves.map((row, i) => [...row, reserves[i]![1]!]);
    return [
      say(`${title}; and how well fed the living are then, reserve in per cent of full`),
      grid(["", "starves", "reserve"], both, io.width),
      ...ageLines(listed).map((text) => say(text, "  ", "    ")),
    ].join("\n");
  }
  return [
    say(title),
    grid(["", ...courses], starves, io.width),
    ...ageLines(listed).map((text) => say(text, "  ", "    ")),
    say(reserve),
    grid(["", ...courses], reserves, io.width),
  ].join("\n");
}

/** Kinds so few that age alone often takes half of them. */
function ageLines(kinds: readonly KindLife[]): string[] {
  const frail = kinds.filter(({ agedOf20 }) => agedOf20 < 18);
  return frail.map(
    ({ heads, animal, agedOf20 }) =>
      `Age alone takes half or more of ${counted(heads, animal.commonName)} in ${20 - agedOf20} of 20: so few are soon gone by chance.`,
  );
}

/** "lean, 52 (20-80)" */
function reserveWords({ low, central, high }: Spread): string {
  const word = central >= WELL_FED ? "well fed" : central >= LEAN ? "lean" : "thin";
  const percent = (share: number) => Math.round(100 * share);
  return `${word}, ${percent(central)} (${percent(low)}-${percent(high)})`;
}
/** Reserve from which an animal is called well fed, and lean. Judgement. */
const WELL_FED = 0.7;
const LEAN = 0.4;
