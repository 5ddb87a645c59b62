/** A kept reading in the engine's unit, with the smallest step of its kit in that unit. */
import { MEASURES } from "../../contract/daybook/read-reading.ts";
import type { Measured, ReadingBody } from "../../contract/daybook/reading.ts";
import { isKept } from "../../contract/quantity/outcome.ts";
import { parseAmount } from "../../contract/quantity/parse.ts";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { ReadingSeen } from "../../engine/types/record.ts";
import { toCanonical } from "../../engine/units/convert.ts";
import { nitrateToN, nitriteToN, phosphateToP } from "../../engine/units/nutrients.ts";

interface Named {
  readonly quantity: ReadingSeen["quantity"];
  readonly toEngine: (named: number) => number;
}

const same = (value: number): number => value;

const ENGINE: Readonly<Record<Measured, Named>> = {
  salinity_psu: { quantity: "salinity_psu", toEngine: same },
  temperature_c: { quantity: "temperature_c", toEngine: same },
  ph: { quantity: "ph", toEngine: same },
  alkalinity_dkh: {
    quantity: "alkalinity_meq_per_l",
    toEngine: (dkh) => toCanonical("alkalinity", dkh, "dKH"),
  },
  no3_mg_per_l: { quantity: "no3_mg_n_per_l", toEngine: nitrateToN },
  po4_mg_per_l: { quantity: "po4_mg_p_per_l", toEngine: phosphateToP },
  tan_mg_n_per_l: { quantity: "tan_mg_n_per_l", toEngine: same },
  no2_mg_per_l: { quantity: "no2_mg_n_per_l", toEngine: nitriteToN },
  calcium_mg_per_l: { quantity: "calcium_mg_per_l", toEngine: same },
  magnesium_mg_per_l: { quantity: "magnesium_mg_per_l", toEngine: same },
};

export function readingSeen(
  dated: { readonly entry: string; readonly on: string },
  body: ReadingBody,
): ReadingSeen {
  const { quantity, toEngine } = ENGINE[body.quantity];
  const { low, central, high } = body.value;
  const value: Spread = { low: toEngine(low), central: toEngine(central), high: toEngine(high) };
  const step = stepOf(body);
  return {
    ...dated,
    kind: "reading",
    quantity,
    value,
    censored: body.censored,
    step: step === null ? null : toEngine(step),
    flag: body.flag,
  };
}

/**
 * The step in the unit of the quantity's name. It was typed in the unit of the reading, and not all units begin at
 * nought (degrees Fahrenheit, specific gravity): it is what one step more would have made of the reading.
 */
function stepOf({ quantity, text, kit_step }: ReadingBody): number | null {
  if (kit_step === null) return null;
  const step = Number(kit_step);
  if (!Number.isFinite(step)) return null;
  // Of salinity a step is another at another value; of the rest it hangs on the unit alone.
  const unit = quantity === "salinity_psu" ? undefined : /^[\d.,]+ ([^(]+)$/.exec(text)?.[1];
  const key = unit === undefined ? null : JSON.stringify([quantity, unit, step]);
  const held = key === null ? undefined : steps.get(key);
  if (held !== undefined) return held;
  const read = stepAt(quantity, text, step);
  if (key !== null && steps.size < MOST_STEPS) steps.set(key, read);
  return read;
}

function stepAt(quantity: Measured, text: string, step: number): number {
  const parsed = parseAmount(text, ".");
  const from = parsed?.candidates[0]?.low;
  if (parsed?.unit == null || from === undefined) return step;
  const one = named(quantity, `${from} ${parsed.unit} (checked)`);
  const more = named(quantity, `${from + step} ${parsed.unit} (checked)`);
  // Beyond what the unit can tell, the reading itself was taken as it stood.
  return one === null || more === null ? step : Math.abs(more - one);
}

/** Thousands of readings share a handful of kits. */
const steps = new Map<string, number>();
const MOST_STEPS = 1000;

function named(quantity: Measured, text: string): number | null {
  const rule = MEASURES[quantity];
  const outcome = rule.read(text, { preferences: NO_PREFERENCES, stocked: false, label: rule.label });
  return isKept(outcome) ? (rule.toNamed ?? same)(outcome.value.central) : null;
}
