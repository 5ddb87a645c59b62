/** A settled middling tank with a small crew: the stage for tests that need a smooth course rather than any. */
import type { Inputs } from "../inputs.ts";
import type { ParameterValues } from "../parameters.ts";
import { headsAt, POOL_INDEX, type Pool, reserveAt } from "../pools.ts";
import { World } from "../world.ts";
import type { InventedTank } from "./invented-world.ts";
import { TYPICAL_CREW, TYPICAL_INPUTS, TYPICAL_PARAMETERS, typicalUnionisedShare } from "./typical.ts";

const SETTLED: Readonly<Partial<Record<Pool, number>>> = {
  ...{ TAN: 5, NO2: 2, NO3: 60, PO4: 5, XA: 60, XN: 60, FG: 150, FR: 200, FS: 60, FF: 50, MA: 500 },
  ...{ WC: 8, WN: 1.5, WP: 0.2, KC: 2, KN: 0.5, KP: 0.05, SC: 10, SN: 1.2, SP: 0.1 },
  ...{ DC: 80, DN: 10, DP: 1, QC: 300, QN: 36, QP: 3.6, RC: 400, RN: 48, RP: 4, MC: 50, MN: 6, MP: 0.5 },
  ...{ OC: 60, ON: 8, OP: 0.4, PSB: 10, PRK: 40 },
};

export function typicalTank(changes: {
  readonly inputs?: Partial<Inputs>;
  readonly parameters?: Partial<ParameterValues>;
  readonly state?: Partial<Record<Pool, number>>;
  /** Heads of each kind; none for a tank without crew. */
  readonly heads?: number;
}): InventedTank {
  const heads = changes.heads ?? 3;
  const species = heads > 0 ? TYPICAL_CREW : [];
  const world = new World({
    inputs: { ...TYPICAL_INPUTS, ...changes.inputs },
    parameters: { ...TYPICAL_PARAMETERS, ...changes.parameters },
    species,
    unionisedShare: typicalUnionisedShare,
  });
  const start = new Float64Array(world.size);
  for (const [pool, mg] of Object.entries({ ...SETTLED, ...changes.state }))
    start[POOL_INDEX[pool as Pool]] = mg;
  species.forEach(({ eFull }, s) => {
    start[headsAt(s)] = heads;
    start[reserveAt(s, species.length)] = heads * eFull * 0.6;
  });
  return { world, start };
}
