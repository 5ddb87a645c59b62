/** How an animal fits a tank, in sentences; and the whole list by what becomes of each. */

import type { Fit } from "../../answers/animals/fit.ts";
import { chance, counted, dateWords, rationsADay, withDates } from "../../answers/words.ts";
import type { Reason } from "../../engine/stocking/suitability.ts";
import type { Animal } from "../../engine/types/animal.ts";

export const reasonText = ({ text, until }: Reason): string =>
  withDates(until === null ? text : `${text} That passes ${until}.`);

/** The first sentence: the verdict. */
export function verdict(animal: Animal, fit: Fit): string {
  const untils = fit.reasons.flatMap(({ code, until }) => (until === null ? [] : [{ code, until }]));
  // A date, where there is one, is what a keeper asks for.
  const dated = untils.find(({ code }) => code === "age");
  const when = dated === undefined ? untils[0]?.until : `at the earliest ${dated.until}`;
  const here = counted(fit.headsHere, animal.commonName);
  switch (fit.status) {
    case "lives_here":
      return `${here} ${fit.headsHere === 1 ? "lives" : "live"} here${plannedWords(fit, ", and the plan adds ")}.`;
    case "in_plan":
      return `It fits: the plan brings ${plannedWords(fit, "")}.`;
    case "fits":
      return `It fits and is not in the plan. ${capital(fit.notNeeded ?? "others eat what it would")}.`;
    case "not_yet":
      return withDates(`Not yet${when === undefined ? "" : `: ${when}`}.`);
    case "never":
      return "Never in this tank.";
  }
}

function plannedWords({ planned }: Fit, start: string): string {
  if (planned.length === 0) return "";
  const told = planned.map(({ wave, from, to, count }) => {
    return `${count} in wave ${wave} (${dateWords(from)} to ${dateWords(to)})`;
  });
  return `${start}${told.join(", ")}`;
}

export function fitSentences(animal: Animal, fit: Fit): string[] {
  const against = fit.status === "lives_here" ? "Against it here: " : "";
  return [
    verdict(animal, fit),
    ...fit.reasons.map((reason) => `${against}${reasonText(reason)}`),
    ...(fit.binding === null ? [] : [`No more of them because of ${fit.binding.text}.`]),
    ...(fit.aliveOf20 === null ? [] : [`Half or more alive after 90 days: ${chance(fit.aliveOf20)}.`]),
    ...(fit.shortMgC === 0
      ? []
      : [
          `Together they go short by ${rationsADay(fit.shortMgC)} in the leaner runs: feed by hand, or give some away.`,
        ]),
  ];
}

/** The reason that decides: of those that last for ever the first, else the first. */
export const deciding = ({ status, reasons }: Fit): Reason | undefined =>
  (status === "never" ? reasons.find(({ until }) => until === null) : undefined) ?? reasons[0];

const capital = (text: string): string => text[0]!.toUpperCase() + text.slice(1);
