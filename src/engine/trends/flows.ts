/**
 * Where nitrogen and phosphorus come from and where they go, mg a day: every member of an ensemble run on for four weeks
 * of today's care with its ledger kept, and the ledger's rows summed by what a keeper can name. Each member's sums
 * close: what comes in is what leaves and what stays. docs/model/trends.md#flows
 * Limits: weeks such as today's, not the weeks that were; a way out that nobody has told of is counted as gas or rock.
 */
import { careEvents } from "../ahead/care.ts";
import { type CrewKind, worldOf } from "../ahead/crew.ts";
import { standingOf } from "../ahead/start.ts";
import { inventory, type LedgerRow } from "../balance/ledger.ts";
import { FF, FG, FR, FS, MA, NO2, NO3, OUTSIDE, PO4, PRK, PSB, TAN } from "../balance/pools.ts";
import { ENSEMBLE_STEPS, run } from "../balance/run.ts";
import { ALGA, type World } from "../balance/world.ts";
import type { Member } from "../larder/members.ts";
import type { TankFacts } from "../types/tank.ts";

/** Every chore of the usual care falls into them at least once or twice. */
export const FLOW_DAYS = 28;
export type FlowElement = "N" | "P";

/** What comes into the tank's round, net. */
export const WAYS_IN = ["feed", "fish", "new_water", "the_dead", "other"] as const;
/** What leaves it; sorbent and rock hold what they take out of the water. */
export const WAYS_OUT = ["gas", "rock", "sorbent", "skimmer", "filter", "water_change", "by_hand"] as const;
/** What is there afterwards that was not before. */
export const STAYS = ["algae", "waste", "water"] as const;
export type WayIn = (typeof WAYS_IN)[number];
export type WayOut = (typeof WAYS_OUT)[number];
export type Stay = (typeof STAYS)[number];

/** One member's flows of one element, mg a day. */
export interface MemberFlows {
  readonly in: Readonly<Record<WayIn, number>>;
  readonly out: Readonly<Record<WayOut, number>>;
  readonly stays: Readonly<Record<Stay, number>>;
  /** Freed into the water by excretion and decay; what algae breathe out is left out on both sides. */
  readonly freed: number;
  /** Taken out of the water by algae, less what they give back. */
  readonly algaeTake: number;
  /** Dissolved in all the water today, mg. */
  readonly dissolvedMg: number;
  readonly waterL: number;
}

export interface FlowsAsked {
  readonly facts: TankFacts;
  readonly members: readonly Member[];
  readonly kinds: readonly CrewKind[];
}

export function flowsOf({ facts, members, kinds }: FlowsAsked): Record<FlowElement, MemberFlows[]> {
  const flows: Record<FlowElement, MemberFlows[]> = { N: [], P: [] };
  for (const one of members) {
    const { member, state } = standingOf(one, kinds, facts);
    const world = worldOf(member, kinds, facts.phScale, "expected");
    const { state: after, ledger } = run(world, state, careEvents(facts, FLOW_DAYS), {
      days: FLOW_DAYS,
      steps: ENSEMBLE_STEPS,
      keepLedger: true,
    });
    const rows = ledger?.rows() ?? [];
    for (const element of ["N", "P"] as const) {
      const of = rows.filter((row) => row.element === element);
      flows[element].push(memberFlows(of, element, world, state, after));
    }
  }
  return flows;
}

const DISSOLVED: Readonly<Record<FlowElement, readonly number[]>> = { N: [TAN, NO2, NO3], P: [PO4] };
const DISSOLVED_NAMES: ReadonlySet<string> = new Set(["TAN", "NO2", "NO3", "PO4"]);
const CROPS = [FG, FR, FS, FF, MA] as const;
const CROP_NAMES: ReadonlySet<string> = new Set(["FG", "FR", "FS", "FF", "MA"]);
/** Places outside the round by what a keeper calls the way there; rock and sorbent hold what is out of the water's reach. */
const OUT_BY_PLACE: ReadonlyMap<string, WayOut> = new Map([
  ["n2", "gas"],
  ["PRK", "rock"],
  ["PSB", "sorbent"],
  ["skim", "skimmer"],
  ["filterWaste", "filter"],
  ["waterOut", "water_change"],
  ...(["harvest", "siphoned", "wiped", "removed"] as const).map((place) => [place, "by_hand"] as const),
]);
const IN_BY_PLACE: ReadonlyMap<string, WayIn> = new Map([
  ["feed", "feed"],
  ["fish", "fish"],
  ["waterIn", "new_water"],
  ["dead", "the_dead"],
]);
const BEYOND: ReadonlySet<string> = new Set([...OUTSIDE, ...OUT_BY_PLACE.keys()]);

function memberFlows(
  rows: readonly LedgerRow[],
  element: FlowElement,
  world: World,
  before: Float64Array,
  after: Float64Array,
): MemberFlows {
  const inflow: Record<WayIn, number> = { feed: 0, fish: 0, new_water: 0, the_dead: 0, other: 0 };
  const out: Record<WayOut, number> = {
    ...{ gas: 0, rock: 0, sorbent: 0, skimmer: 0, filter: 0, water_change: 0, by_hand: 0 },
  };
  const beyond = (place: string, mg: number): void => {
    const way = OUT_BY_PLACE.get(place);
    if (way === undefined) inflow[IN_BY_PLACE.get(place) ?? "other"] -= mg;
    else out[way] += mg;
  };
  let freed = 0;
  let algaeTake = 0;
  for (const { name, from, to, mg } of rows) {
    const aDay = mg / FLOW_DAYS;
    // What a renewed sorbent carries off was counted when it was bound.
    if (to !== "sorbentOut") {
      if (BEYOND.has(to)) beyond(to, aDay);
      if (BEYOND.has(from)) beyond(from, -aDay);
    }
    if (DISSOLVED_NAMES.has(from) && CROP_NAMES.has(to)) algaeTake += aDay;
    else if (name === "respiration") algaeTake -= aDay;
    else if (DISSOLVED_NAMES.has(to) && !DISSOLVED_NAMES.has(from) && !HELD.has(from)) freed += aDay;
  }
  const gain = (amount: (y: Float64Array) => number) => (amount(after) - amount(before)) / FLOW_DAYS;
  const dissolved = (y: Float64Array) => DISSOLVED[element].reduce((sum, pool) => sum + y[pool]!, 0);
  const content = element === "N" ? ALGA.qN : ALGA.qP;
  const crops = (y: Float64Array) =>
    CROPS.reduce((sum, pool, i) => sum + world.alga[i * ALGA.stride + content]! * y[pool]!, 0);
  const held = (y: Float64Array) => (element === "P" ? y[PSB]! + y[PRK]! : 0);
  const all = gain((y) => inventory(world, y, element) - held(y));
  const [algae, water] = [gain(crops), gain(dissolved)];
  return {
    ...{ in: inflow, out, freed, algaeTake },
    stays: { algae, water, waste: all - algae - water },
    dissolvedMg: dissolved(before),
    waterL: world.inputs.V,
  };
}

/** Given back by these, or brought in with new water, is not freed. */
const HELD: ReadonlySet<string> = new Set(["PRK", "PSB", "waterIn"]);
