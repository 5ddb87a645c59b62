/** How sure a plan is: the forecast's verdict, the unknowns that would change it, what each limit costs. */

import { chance, counted, wrap } from "../../answers/words.ts";
import { explained, type Plan } from "../../engine/stocking/plan.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Io } from "../io.ts";

export function checkText({ check, mends, kinds, fedByHand }: Plan, io: Io): string {
  if (check === null) return "";
  const nameOf = (id: string) => kinds.find(({ animal }) => animal.id === id)?.animal.commonName ?? id;
  const lines = check.kinds.map((kind) => {
    const why = explained(kind, fedByHand);
    return wrap(
      `${counted(kind.heads, nameOf(kind.id))}: ${chance(kind.aliveOf20)}${why === null ? "" : `; ${why}`}.`,
      io.width,
      "  ",
      "    ",
    );
  });
  const cut = mends.map(({ name, from, to, fedOf20 }) =>
    wrap(
      `${to === 0 ? `${name} left out` : `${name} cut from ${from} to ${to}`}: ${from} found enough food for 90 days in only ${fedOf20} of 20 runs.`,
      io.width,
      "  ",
      "    ",
    ),
  );
  return [
    wrap("At least half still alive 90 days after the last of them came, if nobody helps:", io.width),
    ...lines,
    ...cut,
  ].join("\n");
}

export function changeText({ wouldChange }: Plan, facts: TankFacts, io: Io): string {
  if (wouldChange.length === 0) return "";
  const lines = wouldChange.map(({ unknown, headsIfLow, headsIfHigh }) => {
    return wrap(
      `${unknown.label}${crewAtEnds(headsIfLow, headsIfHigh)}: ${unknown.ask}.`,
      io.width,
      "  ",
      "    ",
    );
  });
  const assumed =
    facts.assumed.length > 0
      ? ` ${counted(facts.assumed.length, "fact")} ${facts.assumed.length === 1 ? "was" : "were"} assumed: grazewell check names ${facts.assumed.length === 1 ? "it" : "them"}.`
      : "";
  return [
    wrap(`${io.bold("What would change this plan most")}${assumed === "" ? "" : `.${assumed}`}`, io.width),
    ...lines,
  ].join("\n");
}

/** The crew in all, those that live there too, if an unknown lay at either end. */
function crewAtEnds(low: number | null, high: number | null): string {
  if (low === null || high === null) return "";
  if (low !== high) return ` (a crew of ${low} once it is known to lie low, of ${high} to lie high)`;
  return low === 0 ? " (nobody either way)" : ` (a crew of ${low} either way)`;
}

export function limitText({ limitCosts, drafts }: Plan, io: Io): string {
  if (limitCosts.length === 0) return "";
  const lines = limitCosts.map(({ text, heads, headsWithout, changes }) =>
    wrap(
      changes.length === 0
        ? `${text}: nothing changes.`
        : `${text}: a crew of ${headsWithout} instead of ${heads} (${changes.map((change) => named(change, drafts)).join(", ")}).`,
      io.width,
      "  ",
      "    ",
    ),
  );
  return [io.bold("What each limit costs"), ...lines].join("\n");
}

/** "+2 nerite snails" of "+2 nerite-snail". */
function named(change: string, drafts: Plan["drafts"]): string {
  const [, sign = "", count = "", id = ""] = /^([+-])(\d+) (.+)$/.exec(change) ?? [];
  const name = drafts[0]?.suitability.get(id)?.animal.commonName ?? id;
  return `${sign}${counted(Number(count), name)}`;
}
