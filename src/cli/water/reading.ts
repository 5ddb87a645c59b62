/** What the readers of `grazewell water` share: a reading, and what becomes of one that cannot be kept. */

import { type Amount, isKept, type Outcome } from "../../contract/quantity/outcome.ts";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import type { MeasureContext } from "../../contract/quantity/rule.ts";
import type { PhScale } from "../../engine/seawater/ph-scale.ts";
import type { GravityScaleName } from "../../engine/seawater/specific-gravity.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { CliError, EXIT } from "../io.ts";

export interface WaterFlags {
  readonly salinity?: string;
  readonly specificGravity?: string;
  readonly sgReference?: GravityScaleName;
  readonly hydrometer?: true;
  readonly conductivity?: string;
  readonly conductivityAt?: "25" | "sample";
  readonly temperature?: string;
  readonly ph?: string;
  readonly phScale?: PhScale;
  readonly tan?: string;
  readonly altitude?: string;
}

export interface Reading extends Spread {
  readonly field: string;
  readonly text: string;
  readonly unit: string;
}

/** Keeps what was read, or refuses with the choices. */
export type Take = (field: string, text: string, outcome: Outcome<Amount>) => Reading;

/** The amount of a reading that was kept; else an end, with every choice as it can be typed. */
export function amountOf(
  field: string,
  outcome: Outcome<Amount>,
): Amount & { readonly message: string | null } {
  if (isKept(outcome)) return { ...outcome.value, message: outcome.message?.text ?? null };
  const typed = outcome.choices.filter(({ text }) => text !== null);
  const width = Math.max(...typed.map(({ text }) => text?.length ?? 0));
  throw new CliError(EXIT.badData, [
    outcome.message.text,
    ...(typed.length > 0 ? ["Write it as it is meant:"] : []),
    ...typed.map(({ text, label }) => `  ${field} ${`"${text}"`.padEnd(width + 2)}   ${label}`),
  ]);
}

/** What a flag is read under: its own name, and the unit it has where none is typed. */
export const as = (label: string, unit: string | null): MeasureContext => ({
  preferences: NO_PREFERENCES,
  label,
  unit,
});

export const usage = (words: string): CliError =>
  new CliError(EXIT.usage, [words, "grazewell water --help shows examples."]);

export const missing = (what: string, example: string): CliError =>
  usage(`Say ${what}, for example ${example}.`);
