/**
 * Ammonia put in to feed filters that are starting: kept as a treatment, "ammonia 1 mg/L", and no medicine. An amount
 * without a form is taken as ammonia (NH3), as most kits read it: 18 % less nitrogen than if it were meant as nitrogen.
 */
import { readAmmonia } from "../quantity/ammonia.ts";
import { isKept } from "../quantity/outcome.ts";
import { NO_PREFERENCES } from "../quantity/preferences.ts";

export interface AmmoniaDose {
  /** Null where no amount was told, or none that can be read. */
  readonly mgNPerL: number | null;
}

const NAME = /^\s*(?:pure |liquid )?(?:ammonia|ammonium(?:[ -]chloride)?|nh4cl|nh3|nh4\+?)(?![\w-])/i;
const NOT_FOOD = /remov|bind|detox|neutrali|reduc|absorb|adsorb/i;
const FILLER = /^[\s,;:]*(?:(?:dosed?|to|of|at|about|up)\b[\s,;:]*)*/i;

/** Null for any other substance. */
export function ammoniaDoseIn(substance: string): AmmoniaDose | null {
  const named = NAME.exec(substance);
  if (named === null || NOT_FOOD.test(substance)) return null;
  const amount = substance.slice(named[0].length).replace(FILLER, "").trim();
  if (amount === "") return { mgNPerL: null };
  const context = { preferences: NO_PREFERENCES, unit: null, form: "total", stocked: false } as const;
  for (const text of [amount, `${amount} as NH3`, `${amount} NH3`]) {
    const outcome = readAmmonia(text, context);
    if (isKept(outcome)) return { mgNPerL: outcome.value.central };
  }
  return { mgNPerL: null };
}
