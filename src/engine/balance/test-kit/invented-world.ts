/** Invented tanks: inputs, parameters around their typical values, none to eight kinds of animal, any state. */
import { INPUT_SYMBOLS, type Inputs } from "../inputs.ts";
import { PARAMETER_SYMBOLS, type ParameterValues } from "../parameters.ts";
import { headsAt, MA, NICHES, POOL_COUNT, PSB, reserveAt } from "../pools.ts";
import type { CrewSpecies } from "../species.ts";
import { type Mortality, World } from "../world.ts";
import { acrossScales, chance, type Draw } from "./draw.ts";
import { TYPICAL_INPUTS, TYPICAL_PARAMETERS, typicalUnionisedShare } from "./typical.ts";

/** Parameters that are shares of one whole, drawn below the half so that any two of them leave a rest. */
const SHARES: ReadonlySet<string> = new Set([
  ...["domW", "crumbW", "domK", "crumbK", "domD", "refD", "shD", "faecD", "u0", "phi0"],
  ...["fN", "fP", "fC", "gN", "gP", "gC", "oN", "oC"],
]);

export function inventParameters(draw: Draw): ParameterValues {
  const values = PARAMETER_SYMBOLS.map((symbol) => {
    if (SHARES.has(symbol)) return [symbol, draw.between(0, 0.49)] as const;
    return [symbol, TYPICAL_PARAMETERS[symbol] * acrossScales(draw, 0.5, 2)] as const;
  });
  const parameters = Object.fromEntries(values) as Record<(typeof PARAMETER_SYMBOLS)[number], number>;
  if (chance(draw, 0.5)) parameters.capSorb = 0;
  return parameters;
}

export function inventInputs(draw: Draw): Inputs {
  const scale = acrossScales(draw, 0.1, 10);
  const values = INPUT_SYMBOLS.map(
    (symbol) => [symbol, TYPICAL_INPUTS[symbol] * acrossScales(draw, 0.5, 2)] as const,
  );
  const inputs = Object.fromEntries(values) as Inputs;
  for (const extent of ["V", "Ag", "Ar", "As", "Ac", "rockKg", "feed", "fish", "macMax"] as const) {
    inputs[extent] *= scale;
  }
  inputs.light = chance(draw, 0.2) ? 0 : draw.between(0.1, 1);
  inputs.T = draw.between(20, 30);
  inputs.pH = draw.between(7.7, 8.5);
  inputs.filterOn = draw.whole(0, 1);
  inputs.skimOn = draw.whole(0, 1);
  inputs.macLight = chance(draw, 0.5) ? 0 : draw.between(0, 1);
  if (chance(draw, 0.2)) inputs.As = 0;
  if (chance(draw, 0.2)) inputs.feed = 0;
  if (chance(draw, 0.2)) inputs.fish = 0;
  return inputs;
}

function inventSpecies(draw: Draw, id: string): CrewSpecies {
  const eaten = NICHES.filter(() => chance(draw, 0.4));
  const diet = Object.fromEntries(
    (eaten.length === 0 ? [NICHES[0]] : eaten).map((niche) => [niche, draw.between(0.05, 0.5)]),
  );
  const R = acrossScales(draw, 0.1, 10);
  const eta = draw.between(0.3, 0.7);
  const beta = draw.between(0.1, 0.9);
  const bC = R * draw.between(10, 40);
  const bN = bC / draw.between(2, 6);
  return {
    ...{ id, diet, R, eta, beta, Imax: R / eta / beta, a: draw.between(eta, 0.95) },
    ...{ eFull: R * draw.between(5, 30), m0: draw.between(1e-4, 1e-2), bC, bN, bP: bN / 9 },
  };
}

/** Any amounts at all, many of them nought: a tank as no keeper would keep it. */
function inventState(draw: Draw, world: World, wholeHeads: boolean): Float64Array {
  const y = new Float64Array(world.size);
  const { V } = world.inputs;
  for (let pool = 0; pool < POOL_COUNT; pool += 1) {
    y[pool] = chance(draw, 0.2) ? 0 : V * acrossScales(draw, 1e-4, 10);
  }
  if (chance(draw, 0.5)) y[MA] = 0;
  else y[MA] = world.inputs.macMax * draw.between(0, 0.8);
  y[PSB] = world.parameters.capSorb * draw.between(0, 0.9);
  world.species.forEach(({ eFull }, s) => {
    const heads = wholeHeads ? draw.whole(0, 12) : draw.between(0, 12);
    y[headsAt(s)] = heads;
    y[reserveAt(s, world.species.length)] = heads * eFull * draw.between(0, 1);
  });
  return y;
}

export interface InventedTank {
  readonly world: World;
  readonly start: Float64Array;
}

export function inventTank(draw: Draw, mortality: Mortality = "expected"): InventedTank {
  const kinds = draw.whole(0, 8);
  const world = new World({
    inputs: inventInputs(draw),
    parameters: inventParameters(draw),
    species: Array.from({ length: kinds }, (_, s) => inventSpecies(draw, `kind-${s}`)),
    unionisedShare: typicalUnionisedShare,
    mortality,
  });
  return { world, start: inventState(draw, world, mortality === "drawn") };
}

/** The same tank once more, to run again: a world's inputs end as its events left them. */
export function again({ world, start }: InventedTank): InventedTank {
  const { inputs, parameters, species, unionisedShare, mortality } = world;
  return {
    world: new World({ inputs, parameters, species, unionisedShare, mortality }),
    start: Float64Array.from(start),
  };
}
