/**
 * The keeper of a twin's tank: sparse, noisy, rounded readings, scores by eye, counts by torch; the chores as done.
 * Noise is that of shared kits and eyes (docs/model/calibration.md): nitrate 20 %, phosphate 0.02 mg/L or 10 %, ammonia
 * 0.05 mg/L or 10 %, scores half a step; what a kit or an eye always adds is drawn as calibration allows for it. How many
 * of the living a keeper sees is drawn as the head count allows for it (docs/model/heads.md, "Chance of being seen").
 */
import { TABLE } from "../../src/answers/figures/table.ts";
import { headRates } from "../../src/engine/heads/rates.ts";
import { chanceAt, seenOf } from "../../src/engine/heads/seen.ts";
import type { Animal } from "../../src/engine/types/animal.ts";
import type {
  GrowthSeen,
  Happening,
  HeadsSeen,
  Observation,
  ReadingSeen,
  TankRecord,
} from "../../src/engine/types/record.ts";
import { nitrateToN, phosphateToP } from "../../src/engine/units/nutrients.ts";
import { Chance } from "../kit/chance.ts";
import { type Habits, USUAL } from "./habits.ts";
import type { Departure } from "./other-truths.ts";
import { DAYBOOK_DAYS, isoBefore, TODAY } from "./tank.ts";
import type { Truth } from "./truth.ts";

/** Kits as the keeper reads them, in mg/L: smallest step, and scatter, absolute and as a share. */
const KITS = {
  no3: { quantity: "no3_mg_n_per_l", step: 2, absolute: 0, relative: 0.2, toN: nitrateToN },
  po4: { quantity: "po4_mg_p_per_l", step: 0.03, absolute: 0.02, relative: 0.1, toN: phosphateToP },
  tan: { quantity: "tan_mg_n_per_l", step: 0.2, absolute: 0.05, relative: 0.1, toN: (x: number) => x },
} as const;
/** Days from one round to the next, least and most; share of the rounds with what is done only now and then. */
const ROUND_DAYS = [5, 9] as const;
const NOW_AND_THEN = 0.5;
/** What one kit always adds, as a logarithm; one eye to a score; one eye to a score of detritus. */
const BIAS = { kit: 0.1, eye: 0.3, dust: 0.6 } as const;
const SCORE_SCATTER = 0.5;
const RATES = headRates(TABLE);
const ALIKE = RATES.seenAlike.central;
/** How every count is made: by torch, two hours after lights-out. */
const COUNT = { hoursFromLightsOut: 2, torch: true, foodOffered: false } as const;

export const dayOn = (day: number): string => isoBefore(TODAY, DAYBOOK_DAYS - day);

/** 0 to 4 for a crop of film, mg C/m2. @source shared/science/model.md 12 */
const scoreOf = (crop: number): number => (4 * crop ** 0.8) / (crop ** 0.8 + 300 ** 0.8);

export function recordOfKeeper(
  { days, done, kinds }: Truth,
  seed: number,
  { kitTimes, seesOf }: Departure,
  { testsBetween }: Habits = USUAL,
): TankRecord {
  const chance = new Chance(seed, 14);
  const between = new Chance(seed, 15);
  const kitBias = () => Math.exp(BIAS.kit * chance.normal());
  const adds = { no3: kitBias(), po4: kitBias(), tan: kitBias(), ...kitTimes };
  const eye = BIAS.eye * chance.normal();
  const dust = BIAS.dust * chance.normal();
  const counting = new Chance(seed, 16);
  const seesWell = counting.normal();
  let made = 0;
  const entry = () => `twin-${made++}`;
  const observations: Observation[] = [];
  const test = (day: number, of: keyof typeof KITS, from = chance): void => {
    const { quantity, step, absolute, relative, toN } = KITS[of];
    const there = days[day]![of];
    // A share of a large reading scatters to either side by the same factor.
    const shown =
      absolute > relative * there
        ? there * adds[of] + absolute * from.normal()
        : there * adds[of] * Math.exp(relative * from.normal());
    const rounded = Math.max(0, Math.round(shown / step) * step);
    const below = rounded === 0;
    // As the reader keeps them: a figure as it was typed, and of nothing that there is less than the kit's step.
    const value = below
      ? { low: 0, central: toN(step / 2), high: toN(step) }
      : { low: toN(rounded), central: toN(rounded), high: toN(rounded) };
    const reading: ReadingSeen = {
      ...{ kind: "reading", entry: entry(), on: dayOn(day), quantity, value, step: toN(step), flag: null },
      censored: below ? "below" : null,
    };
    observations.push(reading);
  };
  const look = (day: number, growth: GrowthSeen["growth"], crop: number, always = eye): void => {
    const seen = scoreOf(crop) + always + SCORE_SCATTER * chance.normal();
    const score = Math.min(4, Math.max(0, Math.round(seen)));
    observations.push({ kind: "growth", entry: entry(), on: dayOn(day), growth, score, traits: {} });
  };
  /** Share of the living that this keeper sees on an average night. */
  const seenShare = (animal: Animal): number => {
    if (seesOf !== undefined) return seesOf;
    const seen = seenOf(animal, { ...COUNT, lightHours: 9 }, RATES);
    return seen.kind === "chance" ? chanceAt(seen.chance, seesWell) : 0;
  };
  const count = (day: number): void =>
    kinds.forEach(({ animal }, s) => {
      const mean = seenShare(animal);
      let seen = 0;
      // No two nights are alike: each head seen makes the next one likelier (an urn that comes to the beta-binomial).
      for (let head = 0; head < Math.round(days[day]!.heads[s]!); head += 1)
        if (counting.is((mean * ALIKE + seen) / (ALIKE + head))) seen += 1;
      const counted: HeadsSeen = {
        ...{ kind: "heads", entry: entry(), on: dayOn(day), animal: animal.id, seen, about: false },
        ...COUNT,
      };
      observations.push(counted);
    });
  for (let day = 3 + chance.whole(0, 3); day <= DAYBOOK_DAYS; ) {
    const then = days[day]!;
    test(day, "no3");
    test(day, "po4");
    if (chance.is(NOW_AND_THEN)) test(day, "tan");
    look(day, "film_glass", then.film_glass);
    look(day, "film_rock", then.film_rock);
    if (chance.is(NOW_AND_THEN)) look(day, "hair_algae", then.hair_algae / 3);
    if (chance.is(NOW_AND_THEN)) {
      look(day, "film_sand", then.film_sand);
      look(day, "detritus_sand", then.detritus_sand / 2, dust);
    }
    if (chance.is(NOW_AND_THEN)) count(day);
    const gap = chance.whole(...ROUND_DAYS);
    const halfWay = day + Math.round(gap / 2);
    if (testsBetween && halfWay <= DAYBOOK_DAYS) {
      test(halfWay, "no3", between);
      test(halfWay, "po4", between);
    }
    day += gap;
  }
  return { observations, happenings: happeningsOf(done, entry), declined: [], asOf: TODAY };
}

const CHORE = {
  waterChange: "water_change",
  wipeGlass: "glass_wiped",
  changeFilter: "filter_changed",
  renewSorbent: "sorbent_renewed",
} as const;

/** What was done, as it is logged: chores and additions. */
export const happeningsOf = (done: Truth["done"], entry: () => string): Happening[] =>
  done.flatMap((event): Happening[] => {
    if (event.kind === "addAnimals") {
      const added = { entry: entry(), on: dayOn(event.t), animal: event.species, count: event.count };
      return [{ kind: "added", ...added, condition: "usual", bodyRemoved: null, wave: null }];
    }
    const chore = (CHORE as Readonly<Record<string, (typeof CHORE)[keyof typeof CHORE]>>)[event.kind];
    if (chore === undefined) return [];
    const share = event.kind === "waterChange" || event.kind === "wipeGlass" ? event.fraction : null;
    return [{ kind: "chore", entry: entry(), on: dayOn(event.t), chore, share }];
  });
