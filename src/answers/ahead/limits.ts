/** Limits that the weeks ahead are held against: values of the catalogue, in the forecast's units. */
import { supplyParameters } from "../../catalogue/index.ts";
import { QUANTITIES, type QuantityId } from "../../engine/ahead/forecast.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { ammoniaToN, nToNitrate } from "../../engine/units/nutrients.ts";

export interface Limit {
  readonly id: string;
  readonly quantity: QuantityId;
  /** In the quantity's unit. */
  readonly value: number;
  /** What happens when it is crossed, without a full stop. */
  readonly words: string;
  /** Quantity and number, without the unit: for a column under a heading that has it. */
  readonly short: string;
  /** What the limit is. */
  readonly why: string;
  /** Id of the supply table, where it comes from there. */
  readonly parameter: string | null;
}

/** mg C/cm2 to mg C/m2. */
const PER_M2 = 1e4;
/** Hair algae that has won, mg C/m2 of lit rock: long tufts, which the grazers of the balance refuse. Judgement. */
const HAIR_WINS_MG_C_PER_M2 = 4000;

export const LIMITS: readonly Limit[] = [
  of("tan", "tox.TAN_PC95", ({ central }) => central, "a marine guideline that protects 95 % of species"),
  of("nh3", "tox.NH3_chronic", ({ central }) => ammoniaToN(central), "a criterion for longer exposure"),
  of("no2", "tox.NO2_caution", ({ central }) => central, "caution with invertebrates, judgement"),
  of("no3", "tox.NO3_marine_max", ({ central }) => nToNitrate(central), "borne by marine animals in general"),
  of("po4", "tox.PO4_reef_target", ({ high }) => high, "the upper end of what reef keepers aim for"),
  of("film_glass", "alg.film_nuisance_C", ({ central }) => central * PER_M2, "where most keepers wipe"),
  of("film_rock", "alg.film_nuisance_C", ({ central }) => central * PER_M2, "the same crop as on glass"),
  wins("hair_algae", HAIR_WINS_MG_C_PER_M2, null, "long tufts that grazers refuse, judgement"),
];

function of(quantity: QuantityId, parameter: string, take: (spread: Spread) => number, why: string): Limit {
  const found = supplyParameters.get(parameter);
  if (found === undefined) throw new RangeError(`Cannot set a limit: the catalogue has no "${parameter}"`);
  const value = take(found.spread);
  if (quantity.startsWith("film")) return wins(quantity, value, parameter, why);
  const { label, unit } = QUANTITIES[quantity];
  const words = `${label} goes above ${two(value)} ${unit}`;
  return {
    id: `${quantity}_above`,
    quantity,
    value,
    words,
    short: `${label} > ${two(value)}`,
    why,
    parameter,
  };
}

function wins(quantity: QuantityId, value: number, parameter: string | null, why: string): Limit {
  const { label } = QUANTITIES[quantity];
  const grams = two(value / 1000);
  const words = `${label} wins (above ${grams} g C/m2)`;
  return { id: `${quantity}_wins`, quantity, value, words, short: `${label} > ${grams}`, why, parameter };
}

function two(value: number): string {
  return String(Number(value.toPrecision(2)));
}
