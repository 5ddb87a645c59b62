/**
 * "What if": a tank's facts with a change that the keeper thinks of, from flags that `ahead`, `waves` and `larder`
 * share. Pure: the text of the flags and the facts go in, changed facts and dated events come out.
 */
import type { TankEvent } from "../engine/balance/events.ts";
import type { TankFacts } from "../engine/types/tank.ts";
import type { HolidaySpan } from "./holiday/packing.ts";
import { changeCrew } from "./what-if/crew.ts";
import { leaveDead } from "./what-if/dead.ts";
import { keepFallow } from "./what-if/fallow.ts";
import { changeFeed } from "./what-if/feed.ts";
import { changeLight } from "./what-if/light.ts";
import type { Change } from "./what-if/read.ts";
import { changeWaterChange } from "./what-if/water-change.ts";

export interface WhatIfFlags {
  readonly feed?: string;
  readonly light?: string;
  readonly crew?: readonly string[];
  readonly waterChange?: string;
  readonly dead?: readonly string[];
  /** No fish and no feed for so many days: "76 d". */
  readonly fallow?: string;
  /** Nobody at home meanwhile: worked out beside the tank as it is, no change of it (answers/holiday). */
  readonly holiday?: HolidaySpan;
}

export interface WhatIf {
  /** The tank with every change made: what larder and waves are worked out from. */
  readonly facts: TankFacts;
  /** What happens to animals and lamps, by day: for a forecast, which starts from the tank as it is. */
  readonly events: readonly TankEvent[];
  /** Each change in words. */
  readonly changes: readonly string[];
  /** What the readers said about how they read it. */
  readonly notes: readonly string[];
  /** No wave of the plan comes in the runs, on either side. */
  readonly withoutWaves?: true;
}

/** @throws Refusal where a flag can't be read, or asks for what can't be */
export function whatIf(flags: WhatIfFlags, tank: TankFacts): WhatIf | null {
  const steps: ((facts: TankFacts) => Change)[] = [
    ...given(flags.feed, changeFeed),
    ...given(flags.light, changeLight),
    ...given(flags.waterChange, changeWaterChange),
    ...given(flags.fallow, keepFallow),
    ...(flags.crew ?? []).map((text) => (facts: TankFacts) => changeCrew(text, facts)),
    ...(flags.dead ?? []).map((text) => (facts: TankFacts) => leaveDead(text, facts)),
  ];
  if (steps.length === 0) return null;
  let facts = tank;
  const events: TankEvent[] = [];
  const changes: string[] = [];
  const notes: string[] = [];
  for (const step of steps) {
    const change = step(facts);
    facts = change.facts;
    events.push(...change.events);
    changes.push(change.words);
    notes.push(...change.notes);
  }
  return {
    ...{ facts, events, changes, notes },
    ...(flags.fallow === undefined ? {} : { withoutWaves: true }),
  };
}

const given = (text: string | undefined, change: (text: string, facts: TankFacts) => Change) =>
  text === undefined ? [] : [(facts: TankFacts) => change(text, facts)];
