/**
 * Where a member of the ensemble stands on the day of the plan: run up to it from its own start, or from sixty days
 * before with settled filters, then set to what was read and seen. docs/model/ahead.md, "Start".
 */
import type { TankEvent } from "../balance/events.ts";
import { NO3, PO4 } from "../balance/pools.ts";
import { ENSEMBLE_STEPS, run } from "../balance/run.ts";
import { latestReading, type Member } from "../larder/members.ts";
import type { TankFacts } from "../types/tank.ts";
import { careEvents } from "./care.ts";
import { type CrewKind, type Standing, worldOf } from "./crew.ts";
import {
  atFilling,
  LAMP_DAY,
  LONGEST_RUN_UP_DAYS,
  RESIDENT_RESERVE,
  setToKnown,
  settled,
  startUpEvents,
} from "./run-up.ts";
import { standingLearned } from "./window.ts";

export { type CrewKind, crewKind, type Standing, unionisedShareOn, worldOf } from "./crew.ts";

export function standingOf(member: Member, kinds: readonly CrewKind[], facts: TankFacts): Standing {
  if (member.learned !== undefined) return standingLearned(member, kinds, facts);
  const age = Math.max(0, Math.round(member.ageDays));
  const days = Math.min(LONGEST_RUN_UP_DAYS, age);
  const fromFilling = days === age;
  const world = worldOf(member, kinds, facts.phScale, "expected");
  const first = fromFilling ? atFilling(world, member, facts) : settled(world, member);
  const events: TankEvent[] = fromFilling ? startUpEvents(world, member, facts, days) : [];
  kinds.forEach(({ species, residents }) => {
    if (residents === 0) return;
    const t = fromFilling ? Math.max(0, days - 21) : 0;
    events.push({
      t,
      kind: "addAnimals",
      species: species.id,
      count: residents,
      condition: RESIDENT_RESERVE,
    });
  });
  events.push(...careEvents(facts, days, LAMP_DAY.dry));
  events.sort((a, b) => a.t - b.t);
  const { state } = run(world, first, events, { days, steps: ENSEMBLE_STEPS });
  setToKnown(state, member, kinds, facts);
  return { member: holding(member, kinds, state, facts), state };
}

/** Days over which a settled tank's gain of nitrate and phosphate is taken. */
const HOLD_DAYS = 14;
/** From this age on a tank that is cared for as usual is taken to hold its nitrate and phosphate. Judgement. */
const HOLDS_FROM_DAYS = 120;

/**
 * A tank long settled holds what its keeper reads: if the member would gain, it has an export that nobody has told
 * of. What the next two weeks would gain leaves from now on: nitrogen as denitrification, phosphorus onto a sink without end.
 */
function holding(member: Member, kinds: readonly CrewKind[], state: Float64Array, facts: TankFacts): Member {
  const readsNitrate = latestReading(facts.readings, "no3_mg_n_per_l") !== null;
  const readsPhosphate = latestReading(facts.readings, "po4_mg_p_per_l") !== null;
  if (member.ageDays < HOLDS_FROM_DAYS || !(readsNitrate || readsPhosphate)) return member;
  const { inputs, nutrients, parameters } = member;
  const world = worldOf(member, kinds, facts.phScale, "expected");
  const before = state;
  const { state: after } = run(world, state, careEvents(facts, HOLD_DAYS), {
    days: HOLD_DAYS,
    steps: ENSEMBLE_STEPS,
  });
  const gain = (pool: number): number => Math.max(0, (after[pool]! - before[pool]!) / HOLD_DAYS);
  const changed: Partial<Record<"dRock" | "dSand" | "kSorb" | "capSorb", number>> = {};
  if (readsNitrate) {
    const c = Math.max(nutrients.no3MgNPerL, 0.05);
    const warm = parameters.q10dec ** ((inputs.T - 25) / 10);
    const perUnit = (warm * c) / (parameters.Kdn + c);
    if (inputs.rockKg > 0) changed.dRock = parameters.dRock + gain(NO3) / (perUnit * inputs.rockKg);
    else if (inputs.As > 0) changed.dSand = parameters.dSand + gain(NO3) / (perUnit * inputs.As);
  }
  if (readsPhosphate) {
    // Beside a sorbent of the keeper's, not instead of it.
    changed.kSorb = parameters.kSorb + gain(PO4) / (Math.max(nutrients.po4MgPPerL, 0.002) * inputs.V);
    changed.capSorb = ENDLESS_MG_P;
  }
  return { ...member, parameters: { ...parameters, ...changed } };
}
const ENDLESS_MG_P = 1e9;
