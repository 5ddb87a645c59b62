/**
 * When a start-up ends, over the ensemble: which versions of the tank end it at all in the time that published
 * start-ups take, on which day each, and twenty of them to be shown. docs/model/start-up.md, "The end".
 */
import type { Member } from "../../larder/members.ts";
import type { TankFacts } from "../../types/tank.ts";
import { START_UP } from "./judgement.ts";
import { doneOn, type StartUpPlan } from "./runs.ts";

export interface Progress {
  readonly done: number;
  readonly of: number;
}

export interface Ended {
  readonly member: Member;
  /** Days from today. */
  readonly day: number;
}

export interface Ends {
  /** Those that end in time, the earliest first. */
  readonly ended: readonly Ended[];
  /** How many versions were asked. */
  readonly drawn: number;
  /** Days from today within which an end counts. */
  readonly withinDays: number;
}

/** Days from today by which a start-up of this age has ended. */
const withinDaysOf = ({ ageDays, rockStart }: Pick<TankFacts, "ageDays" | "rockStart">): number =>
  Math.max(
    START_UP.moreDays,
    START_UP.endsWithinDays[rockStart.value] - Math.round(Math.max(0, ageDays.central)),
  );

/** Advances member by member, so that a caller can show progress and stop. */
export function* endsOf(plan: StartUpPlan, members: readonly Member[]): Generator<Progress, Ends> {
  const withinDays = withinDaysOf(plan.facts);
  const ended: Ended[] = [];
  for (const [m, member] of members.entries()) {
    const day = doneOn(member, plan, withinDays);
    if (day !== null) ended.push({ member, day });
    yield { done: m + 1, of: members.length };
  }
  // Equal days stay in the order of the draw.
  ended.sort((a, b) => a.day - b.day);
  return { ended, drawn: members.length, withinDays };
}

const TWENTY = 20;

/** Twenty that stand for all of them: the middle one of each twentieth. Fewer where fewer ended. */
export const twentyEnded = ({ ended }: Ends): readonly Ended[] =>
  ended.length <= TWENTY
    ? ended
    : Array.from({ length: TWENTY }, (_, i) => ended[Math.floor(((i + 0.5) * ended.length) / TWENTY)]!);
