/**
 * Our optimum against an independent solver's: glpsol (Debian's glpk-utils; another code, another method) on the very
 * models that planning builds, exported as LP text. Nothing is recorded: both solve afresh, each time.
 */
import { expect, test } from "vitest";
import { loadSolver } from "../../src/solver/highs.ts";
import { glpsol } from "./glpsol.ts";
import { type Asked, programmesOf } from "./programmes.ts";
import { stockingForm } from "./stocking-form.ts";

const solve = await loadSolver();
const TANKS = 60;
const RELATIVE = 1e-6;

/** The largest programme of a tank that buys somebody: most whole numbers that are free. */
function hardest(asked: readonly Asked[]): Asked | undefined {
  const free = ({ model }: Asked) =>
    model.columns.filter(({ integer, lower, upper }) => integer && upper > lower).length;
  return asked.toSorted((a, b) => free(b) - free(a))[0];
}

test(`equal optimum on the programmes of ${TANKS} invented tanks`, () => {
  let compared = 0;
  let bought = 0;
  for (let seed = 1; compared < TANKS && seed < 1000; seed += 1) {
    const one = hardest(programmesOf(seed, solve));
    if (one === undefined || !one.model.columns.some(({ integer, lower, upper }) => integer && upper > lower))
      continue;
    const second = glpsol(one.model);
    expect(one.answer.status, `seed ${seed}`).toBe(second.status);
    if (one.answer.status !== "optimal" || second.status !== "optimal") continue;
    const scale = Math.max(1, Math.abs(second.objective));
    expect(Math.abs(one.answer.objective - second.objective) / scale, `seed ${seed}`).toBeLessThan(RELATIVE);
    compared += 1;
    const { values } = one.answer;
    if (one.model.columns.some(({ name }, i) => name.startsWith("b:") && values[i]! > 0.5)) bought += 1;
  }
  expect(compared).toBe(TANKS);
  expect(bought).toBeGreaterThan(TANKS / 2);
});

/** The same form, from a few kinds to half the catalogue at once; one in twenty or so has no plan. */
const SIZES = [
  { kinds: 16, shelves: 7, cap: 8, presence: false },
  { kinds: 16, shelves: 7, cap: 8, presence: true },
  { kinds: 40, shelves: 9, cap: 8, presence: false },
  { kinds: 40, shelves: 9, cap: 8, presence: true },
];
const SEEDS_A_SIZE = 20;

test.each(SIZES)(
  "equal optimum on invented programmes: $kinds kinds, $shelves shelves, presence $presence",
  (size) => {
    let proven = 0;
    for (let seed = 1; seed <= SEEDS_A_SIZE; seed += 1) {
      const model = stockingForm(seed, size);
      const ours = solve(model);
      const second = glpsol(model);
      expect(ours.status, `seed ${seed}`).toBe(second.status);
      if (ours.status !== "optimal" || second.status !== "optimal") continue;
      const scale = Math.max(1, Math.abs(second.objective));
      expect(Math.abs(ours.objective - second.objective) / scale, `seed ${seed}`).toBeLessThan(RELATIVE);
      proven += 1;
    }
    expect(proven).toBeGreaterThan(SEEDS_A_SIZE / 2);
  },
);
