/** What the readers of a what-if share: a change, and what becomes of text that can't be one. */
import { isKept, type Outcome } from "../../contract/quantity/outcome.ts";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import type { MeasureContext, MeasureRule } from "../../contract/quantity/rule.ts";
import { shown } from "../../contract/quantity/show.ts";
import type { TankEvent } from "../../engine/balance/events.ts";
import type { Estimate, Spread } from "../../engine/types/estimate.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { Refusal } from "../refusal.ts";

export interface Change {
  readonly facts: TankFacts;
  readonly events: readonly TankEvent[];
  readonly words: string;
  readonly notes: readonly string[];
}

export const as = (flag: string, unit: string | null): MeasureContext => ({
  preferences: NO_PREFERENCES,
  label: flag,
  unit,
});

/**
 * The value of an outcome that was kept, its message among `notes`.
 * @param around puts a choice back into the whole text of the flag: choices are offered as they can be typed
 * @throws Refusal for one that was asked about or refused, with every choice
 */
export function taken<T>(
  flag: string,
  outcome: Outcome<T>,
  notes: string[],
  around: (choice: string) => string = (choice) => choice,
): T {
  if (isKept(outcome)) {
    if (outcome.message !== null) notes.push(outcome.message.text);
    return outcome.value;
  }
  const typed = outcome.choices.flatMap(({ text, label }) => (text === null ? [] : [{ text, label }]));
  throw new Refusal([
    outcome.message.text,
    ...(typed.length > 0 ? ["Write it as it is meant:"] : []),
    ...typed.map(({ text, label }) => `  ${flag} "${around(text)}"   ${label}`),
  ]);
}

/** What a flag's text fits no form of. */
export const unread = (flag: string, text: string, words: string): Refusal =>
  new Refusal([`${flag} "${shown(text)}": ${words}`]);

/** A share or a multiple, which may go above the whole: the readers of a tank file have no need of it. */
export const factorRule = (unit: "%" | "times", most: number): MeasureRule<MeasureContext> => ({
  label: "Change",
  unit,
  example: unit === "%" ? "50" : "2",
  spellings: { "%": ["%"], percent: ["%"], times: ["times"] },
  toCanonical: (value) => value,
  plain: [unit],
  offered: [unit],
  hard: { min: 0, max: most },
});

export const setTo = ({ low, central, high }: Spread): Estimate => ({
  ...{ low, central, high, origin: "stated" },
  how: "what if",
});

export const times = ({ low, central, high, origin, how }: Estimate, factor: number): Estimate => ({
  ...{ low: low * factor, central: central * factor, high: high * factor, origin },
  how: `what if; ${how}`,
});

/** Facts with some changed: what is said is no longer assumed. */
export function changed(facts: TankFacts, changes: Partial<TankFacts>, said: readonly string[]): TankFacts {
  return { ...facts, ...changes, assumed: facts.assumed.filter((field) => !said.includes(field)) };
}
