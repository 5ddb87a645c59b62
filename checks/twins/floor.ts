/**
 * How near a forecast could come at best: the truth's own parameters and the tank as it stands on the day of asking, run
 * ahead with deaths drawn anew. What is left is chance, which no daybook can teach.
 */
import { worldOf } from "../../src/engine/ahead/start.ts";
import { headsAt } from "../../src/engine/balance/pools.ts";
import { ENSEMBLE_STEPS, run } from "../../src/engine/balance/run.ts";
import { RandomStream } from "../../src/engine/numeric/random.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";
import { type Ahead, heldBy, MEASURED, type Measured } from "./measures.ts";
import { DAYBOOK_DAYS } from "./tank.ts";
import { dayOf, FUTURE_DAYS, type Truth } from "./truth.ts";

const WEEKS = FUTURE_DAYS / 7 + 1;

export function floorOf(truth: Truth, facts: TankFacts, seed: number, runs = 40): ReturnType<typeof heldBy> {
  const { kinds, today, later } = truth;
  const sheaf = () => ({ weeks: WEEKS, values: new Float32Array(runs * WEEKS) });
  const quantities = Object.fromEntries(MEASURED.map((id) => [id, sheaf()])) as Record<
    Measured,
    ReturnType<typeof sheaf>
  >;
  const heads = kinds.map(() => ({ heads: sheaf() }));
  const events = later.map((event) => ({ ...event, t: event.t - DAYBOOK_DAYS })).sort((a, b) => a.t - b.t);
  for (let m = 0; m < runs; m += 1) {
    const world = worldOf(today.member, kinds, facts.phScale, "drawn");
    run(world, Float64Array.from(today.state), events, {
      ...{ days: FUTURE_DAYS, steps: ENSEMBLE_STEPS, random: new RandomStream(500_000 + seed, m) },
      ...{ rowEvery: 7 },
      onRow: (day, y) => {
        const at = m * WEEKS + day / 7;
        const seen = dayOf(y, today.member, kinds);
        for (const id of MEASURED) quantities[id].values[at] = seen[id];
        heads.forEach((of, s) => {
          of.heads.values[at] = y[headsAt(s)]!;
        });
      },
    });
  }
  return heldBy({ quantities, kinds: heads } satisfies Ahead, truth);
}
