/**
 * Invented tanks whose truth is known, for checks: heads that come, die, are found and are counted, each by draws of its
 * own. It shares with the filter the chance that a kind is seen at all; what it may do otherwise is in `Twist`.
 */
import { exp } from "../../numeric/elementary.ts";
import { normalQuantile } from "../../numeric/normal.ts";
import { RandomStream } from "../../numeric/random.ts";
import { addDays } from "../../stocking/suitability.ts";
import type { Animal } from "../../types/animal.ts";
import type { HeadsChanged, HeadsSeen, TankRecord } from "../../types/record.ts";
import type { TankFacts } from "../../types/tank.ts";
import { lossPerDayAt } from "../follow.ts";
import type { HeadRates } from "../rates.ts";
import { chanceAt, seenOf } from "../seen.ts";

export interface Twist {
  readonly days: number;
  /** Days between counts; null: never counted. */
  readonly countEvery: number | null;
  /** Scores in their bands of loss and of being seen; null: drawn anew for each kind. */
  readonly lossScore: number | null;
  readonly seenScore: number | null;
  /** A kind that dies faster: at so much more a day, for 45 days from a day drawn between the 30th and the 90th. */
  readonly troublePerDay: number | null;
}

export interface InventedKind {
  readonly animal: Animal;
  readonly facts: TankFacts;
  readonly record: TankRecord;
  /** Truth on the last day. */
  readonly alive: number;
}

const START = "2026-01-05";
const KINDS = 6;

export function inventedTank(
  animals: readonly Animal[],
  rates: HeadRates,
  seed: number,
  twist: Twist,
): InventedKind[] {
  const random = new RandomStream(20261127, seed);
  const rest = [...animals];
  const writes = random.uniform() < 0.5;
  return Array.from({ length: KINDS }, (_, place) => {
    const [animal] = rest.splice(Math.floor(random.uniform() * rest.length), 1) as [Animal];
    return inventedKind(
      animal,
      rates,
      random,
      { ...twist, troublePerDay: place === 0 ? twist.troublePerDay : null },
      writes,
    );
  });
}

function inventedKind(
  animal: Animal,
  rates: HeadRates,
  random: RandomStream,
  twist: Twist,
  writes: boolean,
): InventedKind {
  const score = () => normalQuantile(0.001 + 0.998 * random.uniform());
  const came = 2 + Math.floor(random.uniform() * 7);
  const loss = lossPerDayAt(animal, twist.lossScore ?? score());
  const seenScore = twist.seenScore ?? score();
  const found = rates.found.central * (writes ? 1 : 0.05);
  const badBag = random.uniform() < rates.badBagShare.central;
  let doomed = random.binomial(came, badBag ? rates.badBagLoss.central : rates.arrivalUsual.central);
  let settled = came - doomed;
  let listed = came;
  const troubleFrom = 30 + Math.floor(60 * random.uniform());
  const change = (kind: HeadsChanged["kind"], count: number, on: string): HeadsChanged => ({
    ...{ kind, animal: animal.id, count, on, entry: `${kind} ${on}` },
    ...{ condition: null, bodyRemoved: null, wave: null },
  });
  const happenings = [change("added", came, START)];
  const observations: HeadsSeen[] = [];
  for (let day = 1; day <= twist.days; day += 1) {
    const on = addDays(START, day);
    const journey = day > 3 ? 0 : day === 3 ? doomed : random.binomial(doomed, 1 / (4 - day));
    doomed -= journey;
    const inTrouble = day >= troubleFrom && day < troubleFrom + 45 ? (twist.troublePerDay ?? 0) : 0;
    const own = random.binomial(settled, 1 - exp(-loss - inTrouble));
    settled -= own;
    const bodies = random.binomial(own + journey, found);
    if (bodies > 0) happenings.push(change("lost_found", bodies, on));
    listed -= bodies;
    if (twist.countEvery !== null && day % twist.countEvery === 0) {
      const night = random.uniform() < 0.7;
      const how = {
        ...{ hoursFromLightsOut: night ? 2 : -4, torch: night, foodOffered: null, lightHours: 9 },
      };
      const seenBy = seenOf(animal, how, rates);
      const chance = seenBy.kind === "chance" ? chanceAt(seenBy.chance, seenScore) : 0.2;
      observations.push({
        ...{ kind: "heads", animal: animal.id, on, entry: `count ${on}`, about: false },
        seen: random.binomial(settled + doomed, ofOneCount(random, chance, rates.seenAlike.central)),
        ...{ hoursFromLightsOut: how.hoursFromLightsOut, torch: how.torch, foodOffered: null },
      });
    }
  }
  const facts = {
    present: listed > 0 ? [{ id: animal.id, count: listed, on: START }] : [],
    lightHours: { low: 9, central: 9, high: 9, origin: "stated", how: "" },
  } as unknown as TankFacts;
  const record = { observations, happenings, declined: [], asOf: addDays(START, twist.days) };
  return { animal, facts, record, alive: settled + doomed };
}

/** The chance of one count: a beta draw about the kind's own, as an order statistic of whole shape. */
function ofOneCount(random: RandomStream, mean: number, strength: number): number {
  const all = Math.round(strength);
  const below = Math.min(all - 1, Math.max(1, Math.round(mean * all)));
  const draws = Array.from({ length: all - 1 }, () => random.uniform()).sort((a, b) => a - b);
  return draws[below - 1]!;
}
