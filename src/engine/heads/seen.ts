/**
 * The chance that a living head is seen in a count: by where its kind lives, whether it is the kind's own hour, torch
 * and food. A count in hours when a nocturnal or buried kind is out of sight bears no chance: it says "at least so many",
 * and never that one is gone. docs/model/heads.md, "Chance of being seen".
 */
import { valueAt } from "../numeric/draws.ts";
import type { Animal } from "../types/animal.ts";
import type { Spread } from "../types/estimate.ts";
import type { HeadRates } from "./rates.ts";

/** Where a head is when it rests: what hides it. */
export type Hideout = "open" | "crevice" | "buried";

/** How a count was made. Hours: since the lamps went out; null where not said. */
export interface CountConditions {
  readonly hoursFromLightsOut: number | null;
  readonly torch: boolean | null;
  readonly foodOffered: boolean | null;
  readonly lightHours: number;
}

export type Seen =
  /** Each living head is seen with this chance. */
  | { readonly kind: "chance"; readonly chance: Spread; readonly parts: readonly (keyof HeadRates)[] }
  /** What was seen lives; what was not seen says nothing. */
  | { readonly kind: "at_least"; readonly why: "by_day" | "hour_not_said" | "buried" };

/** Share of leftovers and carrion in the diet from which on food calls an animal out. */
const SCAVENGER_SHARE = 0.3;

export function hideoutOf({ reach, group, needs }: Animal): Hideout {
  if (group === "fish") return "open";
  if (reach.insideSand === 2 || group === "conch") return "buried";
  return reach.crevices === 2 || needs.rockCaves ? "crevice" : "open";
}

export const comesForFood = ({ diet }: Animal): boolean =>
  diet.uneaten_feed + diet.carrion >= SCAVENGER_SHARE;

type Hour = "day" | "early_night" | "night" | "not_said";

export function hourOf({ hoursFromLightsOut: hours, lightHours }: CountConditions): Hour {
  if (hours === null) return "not_said";
  const since = ((hours % 24) + 24) % 24;
  if (since >= 24 - lightHours) return "day";
  return since < 1 ? "early_night" : "night";
}

export function seenOf(animal: Animal, conditions: CountConditions, rates: HeadRates): Seen {
  const hour = hourOf(conditions);
  const hideout = hideoutOf(animal);
  const night = hour === "night" || hour === "early_night";
  if (!night && (hideout === "buried" || animal.active === "night")) {
    const why = hour === "not_said" ? "hour_not_said" : hideout === "buried" ? "buried" : "by_day";
    return { kind: "at_least", why };
  }
  const base =
    hideout === "open" ? "seenOpen" : hideout === "crevice" ? "seenCrevice" : ("seenBuried" as const);
  const odds: (keyof HeadRates)[] = [];
  if (night && animal.active === "day") odds.push("offHoursOdds");
  else if (night && conditions.torch !== true) odds.push("noTorchOdds");
  if (hour === "early_night" && animal.active === "night") odds.push("earlyOdds");
  if (conditions.foodOffered === true && comesForFood(animal)) odds.push("foodOdds");
  return {
    kind: "chance",
    chance: shifted(
      rates[base],
      odds.map((rate) => rates[rate].central),
    ),
    parts: [base, ...odds],
  };
}

/** A chance whose odds are so many times as high; its band moves along. */
function shifted({ low, central, high }: Spread, factors: readonly number[]): Spread {
  const move = (chance: number) => toChance(factors.reduce((odds, factor) => odds * factor, toOdds(chance)));
  return { low: move(low), central: move(central), high: move(high) };
}

const toOdds = (chance: number): number => chance / (1 - chance);
const toChance = (odds: number): number => odds / (1 + odds);

/** The chance at a standard normal score of its band, taken on its odds. */
export const chanceAt = ({ low, central, high }: Spread, score: number): number =>
  toChance(valueAt({ low: toOdds(low), central: toOdds(central), high: toOdds(high) }, score));
