/**
 * The best crew by trying every crew: for small programmes only, by a reading of docs/model/stocking.md of its own.
 * Whether a crew lives and what it leaves uneaten are greatest flows (checks/kit/transport.ts), not linear programmes.
 */
import type { Candidate, ProgrammeInput } from "../../src/engine/stocking/programme.ts";
import type { Animal } from "../../src/engine/types/animal.ts";
import { SHELVES } from "../../src/engine/types/shelf.ts";
import { type Eater, greatestFeed } from "../kit/transport.ts";

const LEAN = 1.4;
const TO_BE_EATEN = 0.9;
const WORTH_TWO_MG_C = 3;
const A_SHARE = 0.15;
const A_FINDER = 0.3;
const UNASKED_DEARER = 1.02;
const ROUNDING = 1e-7;

export interface Crew {
  /** Heads of each candidate, in the order given. */
  readonly heads: readonly number[];
  /** Purchases and penalties; what is there already costs nothing. */
  readonly cost: number;
}

/** The cheapest crew that lives, or null where none does. */
export function cheapestCrew(input: ProgrammeInput): Crew | null {
  let best: Crew | null = null;
  for (const heads of crews(input.candidates)) {
    const cost = costOf(heads, input);
    if (cost !== null && (best === null || cost < best.cost)) best = { heads, cost };
  }
  return best;
}

/** Cost of a crew, or null where it may not be or would not live. */
export function costOf(heads: readonly number[], input: ProgrammeInput): number | null {
  const { candidates, prices } = input;
  const bought = candidates.map(({ already }, i) => heads[i]! > already);
  const forbidden = candidates.some((one, i) =>
    candidates.some(
      (other, j) => bought[i]! && bought[j]! && i !== j && eatsSurely(one.animal, other.animal),
    ),
  );
  if (forbidden) return null;
  const feeding = handFeedingCost(heads, input);
  if (feeding === null) return null;
  const purchase = candidates.reduce(
    (sum, { animal, already }, i) =>
      sum +
      (heads[i]! - already) * (prices.perHead + prices.perPriceBand * animal.priceBand) +
      (bought[i]! ? prices.perKind : 0),
    0,
  );
  return purchase + feeding + uneatenCost(heads, input) + missingServices(bought, input);
}

function* crews(candidates: readonly Candidate[], at = 0): Generator<number[]> {
  const candidate = candidates[at];
  if (candidate === undefined) {
    yield [];
    return;
  }
  const { already, cap, groupMin, wished } = candidate;
  for (let n = Math.max(already, wished); n <= Math.max(cap, already, wished); n += 1) {
    if (n > already && n < groupMin) continue;
    for (const rest of crews(candidates, at + 1)) yield [n, ...rest];
  }
}

/**
 * Least cost of food by hand with which every animal keeps its weight at the pessimistic supply; null where none does.
 * Shelves go first to those that nobody may feed, then to those fed if need be, then to the wishes.
 */
function handFeedingCost(heads: readonly number[], input: ProgrammeInput): number | null {
  const { candidates, supply, warmth, handFedMost, prices } = input;
  const supplies = SHELVES.map((shelf) => supply.pessimistic[shelf]);
  const lackOf = (standings: readonly Candidate["byHand"][]): number => {
    const eaters = candidates.flatMap(({ animal, byHand }, i): Eater[] => {
      if (!standings.includes(byHand)) return [];
      const need = heads[i]! * animal.breakEvenIntakeMgCPerDay * warmth;
      return [{ need, most: SHELVES.map((shelf) => need * Math.min(1, LEAN * animal.diet[shelf])) }];
    });
    return eaters.reduce((sum, { need }) => sum + need, 0) - greatestFeed(supplies, eaters).fed;
  };
  if (lackOf(["no"]) > ROUNDING) return null;
  const unasked = lackOf(["no", "if_need_be"]);
  const all = lackOf(["no", "if_need_be", "as_wished"]);
  if (all > handFedMost + ROUNDING) return null;
  return prices.handFed * (UNASKED_DEARER * unasked + (all - unasked));
}

/** The dearest shelves are eaten down first: what a set of shelves can give together makes that greedy order best. */
function uneatenCost(
  heads: readonly number[],
  { candidates, supply, warmth, prices }: ProgrammeInput,
): number {
  const eaters = candidates.map(({ animal }, i): Eater => {
    const { intakeMgCPerDay, breakEvenIntakeMgCPerDay, diet } = animal;
    const need = heads[i]! * Math.max(intakeMgCPerDay.high, 1.05 * breakEvenIntakeMgCPerDay) * warmth;
    return { need, most: SHELVES.map((shelf) => need * Math.min(1, LEAN * diet[shelf])) };
  });
  const dearest = [...SHELVES].sort((a, b) => prices.uneaten[b] - prices.uneaten[a]);
  const open = new Set<string>();
  let eatenBefore = 0;
  let cost = 0;
  for (const shelf of dearest) {
    open.add(shelf);
    const supplies = SHELVES.map((one) => (open.has(one) ? TO_BE_EATEN * supply.central[one] : 0));
    const eaten = greatestFeed(supplies, eaters).fed;
    cost += prices.uneaten[shelf] * (TO_BE_EATEN * supply.central[shelf] - (eaten - eatenBefore));
    eatenBefore = eaten;
  }
  return cost;
}

function missingServices(bought: readonly boolean[], { candidates, supply, prices }: ProgrammeInput): number {
  let cost = 0;
  for (const shelf of SHELVES) {
    const able = candidates.map(({ animal }) => animal.diet[shelf] >= A_SHARE);
    if (supply.central[shelf] <= WORTH_TWO_MG_C || able.filter(Boolean).length < 2) continue;
    const have = candidates.filter(({ already }, i) => able[i]! && (already > 0 || bought[i]!)).length;
    cost += prices.lonelyShelf * Math.max(0, 2 - have);
  }
  const finders = candidates.map(({ animal }) => animal.diet.carrion >= A_FINDER);
  const toBeHad = candidates.some(({ already, cap }, i) => finders[i]! && cap > already);
  const had = candidates.some(({ already }, i) => finders[i]! && (already > 0 || bought[i]!));
  return toBeHad && !had ? cost + prices.noCarrionFinder : cost;
}

const eatsSurely = (eater: Animal, eaten: Animal): boolean =>
  eater.preysOn.some(({ id, likelihood }) => id === eaten.id && likelihood === "likely") ||
  eaten.predatorsOfIt.some(({ id, likelihood }) => id === eater.id && likelihood === "likely");
