/**
 * The keeper of a twin's tank: sparse, noisy, rounded readings, scores by eye, counts by torch; the chores as done.
 * Noise is that of shared kits and eyes (docs/model/calibration.md): nitrate 20 %, phosphate 0.02 mg/L, scores half a step.
 */
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
import type { Departure } from "./other-truths.ts";
import { DAYBOOK_DAYS, isoBefore, TODAY } from "./tank.ts";
import type { Truth } from "./truth.ts";

/** Smallest steps of the kits, in mg/L as the keeper reads them. */
const STEP = { no3: 2, po4: 0.03, tan: 0.2 } as const;
const CHANCE_SEEN = 0.75;

export const dayOn = (day: number): string => isoBefore(TODAY, DAYBOOK_DAYS - day);

/** 0 to 4 for a crop of film, mg C/m2. @source shared/science/model.md 12 */
const scoreOf = (crop: number): number => (4 * crop ** 0.8) / (crop ** 0.8 + 300 ** 0.8);

export function recordOfKeeper(
  { days, done, kinds }: Truth,
  seed: number,
  { kitTimes }: Departure,
): TankRecord {
  const chance = new Chance(seed, 14);
  const noise = () =>
    Math.sqrt(-2 * Math.log(chance.between(1e-9, 1))) * Math.cos(2 * Math.PI * chance.between(0, 1));
  // What this keeper's kits and eye always add, of the sizes that calibration allows for.
  const kits = { no3: Math.exp(0.1 * noise()), po4: Math.exp(0.1 * noise()), tan: Math.exp(0.1 * noise()) };
  const eye = 0.3 * noise();
  let made = 0;
  const entry = () => `twin-${made++}`;
  const observations: Observation[] = [];
  const reading = (
    day: number,
    quantity: ReadingSeen["quantity"],
    shown: number,
    step: number,
    toN: (x: number) => number,
  ) => {
    const rounded = Math.max(0, Math.round(shown / step) * step);
    const below = rounded === 0;
    const value = below
      ? { low: 0, central: toN(step / 2), high: toN(step) }
      : { low: toN(Math.max(0, rounded - step)), central: toN(rounded), high: toN(rounded + step) };
    observations.push({
      ...{ kind: "reading", entry: entry(), on: dayOn(day), quantity, value, step: toN(step), flag: null },
      censored: below ? "below" : null,
    });
  };
  const growth = (day: number, of: GrowthSeen["growth"], crop: number) => {
    const score = Math.min(4, Math.max(0, Math.round(scoreOf(crop) + eye + 0.5 * noise())));
    observations.push({ kind: "growth", entry: entry(), on: dayOn(day), growth: of, score, traits: {} });
  };
  for (let day = 3 + chance.whole(0, 3); day <= DAYBOOK_DAYS; day += chance.whole(5, 9)) {
    const then = days[day]!;
    reading(
      day,
      "no3_mg_n_per_l",
      then.no3 * (kitTimes?.no3 ?? kits.no3) * Math.exp(0.2 * noise()),
      STEP.no3,
      nitrateToN,
    );
    reading(
      day,
      "po4_mg_p_per_l",
      then.po4 * (kitTimes?.po4 ?? kits.po4) + 0.02 * noise(),
      STEP.po4,
      phosphateToP,
    );
    if (chance.is(0.5))
      reading(day, "tan_mg_n_per_l", then.tan * kits.tan + 0.05 * noise(), STEP.tan, (x) => x);
    growth(day, "film_glass", then.film_glass);
    growth(day, "film_rock", then.film_rock);
    if (chance.is(0.5)) growth(day, "hair_algae", then.hair_algae / 3);
    if (chance.is(0.5))
      kinds.forEach(({ animal }, s) => {
        let seen = 0;
        for (let head = 0; head < Math.round(then.heads[s]!); head += 1)
          if (chance.is(CHANCE_SEEN)) seen += 1;
        const counted: HeadsSeen = {
          ...{ kind: "heads", entry: entry(), on: dayOn(day), animal: animal.id, seen, about: false },
          ...{ hoursFromLightsOut: 2, torch: true, foodOffered: false },
        };
        observations.push(counted);
      });
  }
  const CHORE = {
    waterChange: "water_change",
    wipeGlass: "glass_wiped",
    changeFilter: "filter_changed",
    renewSorbent: "sorbent_renewed",
  } as const;
  const happenings = done.flatMap((event): Happening[] => {
    if (event.kind === "addAnimals") {
      const added = { entry: entry(), on: dayOn(event.t), animal: event.species, count: event.count };
      return [{ kind: "added", ...added, condition: "usual", bodyRemoved: null, wave: null }];
    }
    const chore = (CHORE as Readonly<Record<string, (typeof CHORE)[keyof typeof CHORE]>>)[event.kind];
    if (chore === undefined) return [];
    const share = event.kind === "waterChange" || event.kind === "wipeGlass" ? event.fraction : null;
    return [{ kind: "chore", entry: entry(), on: dayOn(event.t), chore, share }];
  });
  return { observations, happenings, declined: [], asOf: TODAY };
}
