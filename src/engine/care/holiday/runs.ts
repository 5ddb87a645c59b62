/**
 * A tank while nobody is at home, in three ways of feeding: nothing, a sitter's packed portions, an automatic feeder. Every
 * version of the tank is run to the day of return from where it stands today; usual care goes on until the day of leaving and
 * stops then: no glass is wiped, no water changed, no filter cleaned. docs/model/feeding.md, "Leaving home".
 * Limits: fish are neither hungrier nor thinner here; water that evaporates is taken as topped up.
 */
import { fedOn, type Way } from "../../ahead/away.ts";
import { careEvents } from "../../ahead/care.ts";
import { type CrewKind, standingOf, worldOf } from "../../ahead/start.ts";
import type { TankEvent } from "../../balance/events.ts";
import { FG, headsAt, NO3, PO4, reserveAt, TAN } from "../../balance/pools.ts";
import { ENSEMBLE_STEPS, run } from "../../balance/run.ts";
import type { Member } from "../../larder/members.ts";
import { RandomStream } from "../../numeric/random.ts";
import type { TankFacts } from "../../types/tank.ts";
import { nToAmmonia, nToNitrate, pToPhosphate } from "../../units/nutrients.ts";

export const WAYS = ["nothing", "sitter", "feeder"] as const satisfies readonly Way[];

/** Days from today. */
interface Away {
  readonly leave: number;
  readonly back: number;
  /** The sitter feeds on every so many days. */
  readonly sitterEvery: number;
}

/** One version of the tank on the day of return. */
export interface HomeAgain {
  readonly nitrateMgPerL: number;
  readonly phosphateMgPerL: number;
  /** Greatest midnight value while away, mg NH3/L. */
  readonly worstAmmoniaMgPerL: number;
  readonly filmMgCPerM2: number;
  /** Heads of the crew that died while away, of age or hunger. */
  readonly lost: number;
  /** Least reserve of any kind on the day of return, 0 to 1; not a number where nobody lives there. */
  readonly leastReserve: number;
}

interface HolidayPlan extends Away {
  readonly facts: TankFacts;
  readonly members: readonly Member[];
  readonly kinds: readonly CrewKind[];
  readonly seed: number;
}

export function holidayRuns(plan: HolidayPlan): Readonly<Record<Way, readonly HomeAgain[]>> {
  const runs: Record<Way, HomeAgain[]> = { nothing: [], sitter: [], feeder: [] };
  plan.members.forEach((drawn, m) => {
    const { member, state } = standingOf(drawn, plan.kinds, plan.facts);
    for (const way of WAYS) runs[way].push(runOf(plan, way, member, state, m));
  });
  return runs;
}

function runOf(plan: HolidayPlan, way: Way, member: Member, start: Float64Array, m: number): HomeAgain {
  const { facts, kinds, leave, back, sitterEvery, seed } = plan;
  const world = worldOf(member, kinds, facts.phScale, "drawn");
  const usual = member.inputs.feed;
  const away: TankEvent[] = Array.from({ length: back - leave }, (_, d) => ({
    ...{ t: leave + d, kind: "set", feed: usual * fedOn(way, d, sitterEvery) },
  }));
  const share = world.unionisedShare(world.inputs.T, world.inputs.S, world.inputs.pH);
  const headsIn = (y: Float64Array) => kinds.reduce((sum, _, s) => sum + y[headsAt(s)]!, 0);
  let worst = 0;
  let left = headsIn(start);
  const { state } = run(world, start, [...careEvents(facts, leave), ...away], {
    ...{ days: back, steps: ENSEMBLE_STEPS, rowEvery: 1, random: new RandomStream(seed, m) },
    onRow: (day, y) => {
      if (day === leave) left = headsIn(y);
      if (day >= leave) worst = Math.max(worst, y[TAN]! / world.inputs.V);
    },
  });
  const perL = 1 / world.inputs.V;
  const reserves = kinds.flatMap(({ species }, s) => {
    const heads = state[headsAt(s)]!;
    return heads > 0 ? [state[reserveAt(s, kinds.length)]! / (heads * species.eFull)] : [];
  });
  return {
    nitrateMgPerL: nToNitrate(state[NO3]! * perL),
    phosphateMgPerL: pToPhosphate(state[PO4]! * perL),
    worstAmmoniaMgPerL: nToAmmonia(worst * share),
    filmMgCPerM2: state[FG]! / Math.max(member.inputs.Ag, 1e-6),
    lost: Math.max(0, left - headsIn(state)),
    leastReserve: reserves.length === 0 ? Number.NaN : Math.min(...reserves),
  };
}
