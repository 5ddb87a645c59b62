/** The integer programmes that planning an invented tank asks the solver, in order: what a second solver is given. */
import { animals, modelParameters } from "../../src/catalogue/index.ts";
import { drawMembers } from "../../src/engine/larder/members.ts";
import type { LinearModel, Solve } from "../../src/engine/stocking/linear-model.ts";
import { PRICES } from "../../src/engine/stocking/prices.ts";
import { draftWaves } from "../../src/engine/stocking/waves.ts";
import { randomTank } from "../kit/tanks.ts";

export interface Asked {
  readonly model: LinearModel;
  readonly answer: ReturnType<Solve>;
}

/** @param seed of checks/kit/tanks.ts */
export function programmesOf(seed: number, solve: Solve): Asked[] {
  const asked: Asked[] = [];
  const facts = randomTank(seed);
  const members = drawMembers(facts, modelParameters, { count: 40, seed });
  draftWaves(facts, {
    animals,
    members,
    prices: PRICES,
    solve: (model) => {
      const answer = solve(model);
      asked.push({ model, answer });
      return answer;
    },
  });
  return asked;
}
