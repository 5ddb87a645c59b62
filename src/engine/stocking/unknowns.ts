/**
 * What would change a plan most: of all that nobody has said or measured exactly, which fact moves the larder, and how
 * the crew would look at either end of it.
 */

import { larderOf } from "../larder/larder.ts";
import type { DrawnFact, Member } from "../larder/members.ts";
import type { SupplyScene } from "../larder/supply.ts";
import { SHELVES } from "../types/shelf.ts";
import type { TankFacts } from "../types/tank.ts";

export interface Unknown {
  readonly fact: DrawnFact | "no3_mg_n_per_l" | "po4_mg_p_per_l";
  readonly label: string;
  /** What to do to learn it. */
  readonly ask: string;
  /** Share of the larder's spread that goes with it, 0 to 1 (squared rank correlation). */
  readonly weight: number;
  /** Median of the whole larder in the lowest and the highest third of its values, mg C/d. */
  readonly larderIfLow: number;
  readonly larderIfHigh: number;
  readonly membersIfLow: readonly Member[];
  readonly membersIfHigh: readonly Member[];
}

interface Question {
  readonly fact: Unknown["fact"];
  readonly label: string;
  readonly ask: string;
  readonly of: (member: Member) => number;
}

const QUESTIONS: readonly Question[] = [
  {
    fact: "waterL",
    label: "the volume of water",
    ask: "measure the water when you next fill or change it",
    of: (m) => m.inputs.V,
  },
  {
    fact: "ageDays",
    label: "the tank's age",
    ask: "find the day it first held seawater",
    of: (m) => m.ageDays,
  },
  { fact: "glassM2", label: "the lit glass", ask: "measure the sides", of: (m) => m.inputs.Ag },
  {
    fact: "litRockM2",
    label: "the lit rock",
    ask: "weigh or estimate the rock, and how much of it is lit",
    of: (m) => m.inputs.Ar,
  },
  {
    fact: "sandM2",
    label: "the open sand",
    ask: "measure the open sand and its depth",
    of: (m) => m.inputs.As,
  },
  {
    fact: "parRock",
    label: "the light",
    ask: "have the light at the rock measured",
    of: (m) => m.inputs.parR,
  },
  { fact: "lightHours", label: "the hours of light", ask: "look at the timer", of: (m) => m.inputs.hours },
  { fact: "temperatureC", label: "the temperature", ask: "read a second thermometer", of: (m) => m.inputs.T },
  { fact: "feedGPerDay", label: "the feed", ask: "weigh a day's feed", of: (m) => m.inputs.feed },
  {
    fact: "uneatenShare",
    label: "what is left of the feed",
    ask: "look two minutes after feeding: none, some or a lot",
    of: (m) => m.parameters.u0,
  },
  {
    fact: "fishWetG",
    label: "the weight of the fish",
    ask: "list the fish with their lengths",
    of: (m) => m.inputs.fish,
  },
  { fact: "no3_mg_n_per_l", label: "nitrate", ask: "test nitrate", of: (m) => m.nutrients.no3MgNPerL },
  { fact: "po4_mg_p_per_l", label: "phosphate", ask: "test phosphate", of: (m) => m.nutrients.po4MgPPerL },
];

/** Not asked again: a volume without a range, and leftovers once told, of which nobody can tell more than the three words. */
const isOpen = (fact: Unknown["fact"], { waterL, assumed }: TankFacts): boolean =>
  fact === "waterL"
    ? waterL.low !== waterL.high
    : fact !== "uneatenShare" || assumed.includes("uneatenShare");

/** Facts that the larder hangs on, the heaviest first. Exact facts have no weight and are left out. */
export function unknownsOf(members: readonly Member[], scene: SupplyScene, facts: TankFacts): Unknown[] {
  const totals = larderOf(members, scene).parts.map(({ supply }) =>
    SHELVES.reduce((sum, id) => sum + supply[id], 0),
  );
  const totalRanks = ranks(totals);
  return QUESTIONS.filter(({ fact }) => isOpen(fact, facts))
    .flatMap(({ fact, label, ask, of }): Unknown[] => {
      const values = members.map(of);
      if (Math.min(...values) === Math.max(...values)) return [];
      const order = values.map((_, i) => i).sort((a, b) => values[a]! - values[b]!);
      const third = Math.max(1, Math.floor(order.length / 3));
      const low = order.slice(0, third);
      const high = order.slice(-third);
      const middle = (of_: readonly number[]) =>
        of_.map((i) => totals[i]!).sort((a, b) => a - b)[of_.length >> 1]!;
      return [
        {
          fact,
          label,
          ask,
          weight: correlation(ranks(values), totalRanks) ** 2,
          larderIfLow: middle(low),
          larderIfHigh: middle(high),
          membersIfLow: low.map((i) => members[i]!),
          membersIfHigh: high.map((i) => members[i]!),
        },
      ];
    })
    .sort((a, b) => b.weight - a.weight);
}

/** Above this share of a spread a fact stands out from chance: about two standard errors of no correlation. */
const standsOut = (members: number): number => Math.max(0.02, 4 / members);

/**
 * Names of the facts that go with most of a result's spread, the heaviest first: made for one ensemble, asked for many
 * results. Facts that do not stand out from chance are left out, so the answer may be empty.
 */
export function weigher(
  members: readonly Member[],
  facts: TankFacts,
): (results: ArrayLike<number>) => string[] {
  const settledVolume = facts.waterL.low === facts.waterL.high;
  const known = QUESTIONS.filter(({ fact }) => !(fact === "waterL" && settledVolume)).flatMap(
    ({ label, of }) => {
      const values = members.map(of);
      return Math.min(...values) === Math.max(...values) ? [] : [{ label, rank: ranks(values) }];
    },
  );
  return (results) => {
    const rank = ranks(Array.from(results));
    return known
      .map(({ label, rank: factRank }) => ({ label, weight: correlation(factRank, rank) ** 2 }))
      .filter(({ weight }) => weight >= standsOut(members.length))
      .sort((a, b) => b.weight - a.weight)
      .map(({ label }) => label);
  };
}

function ranks(values: readonly number[]): Float64Array {
  const order = values.map((_, i) => i).sort((a, b) => values[a]! - values[b]!);
  const rank = new Float64Array(values.length);
  order.forEach((at, position) => {
    rank[at] = position;
  });
  return rank;
}

function correlation(a: Float64Array, b: Float64Array): number {
  const mean = (a.length - 1) / 2;
  let ab = 0;
  let aa = 0;
  let bb = 0;
  for (let i = 0; i < a.length; i += 1) {
    ab += (a[i]! - mean) * (b[i]! - mean);
    aa += (a[i]! - mean) ** 2;
    bb += (b[i]! - mean) ** 2;
  }
  return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : 0;
}

/** What to do to learn a fact; null where nobody asks for it. */
export const askFor = (field: string): string | null =>
  QUESTIONS.find(({ fact }) => fact === field)?.ask ?? null;
