/** The integer programme against every crew there is, on tanks small enough to try them all. */
import { beforeAll, describe, expect, test } from "vitest";
import { animals } from "../../src/catalogue/index.ts";
import type { Solve } from "../../src/engine/stocking/linear-model.ts";
import { PRICES } from "../../src/engine/stocking/prices.ts";
import { type Candidate, Programme, type ProgrammeInput } from "../../src/engine/stocking/programme.ts";
import { SHELVES, type ShelfId } from "../../src/engine/types/shelf.ts";
import { loadSolver } from "../../src/solver/highs.ts";
import { Chance } from "../kit/chance.ts";
import { cheapestCrew, costOf } from "./brute-force.ts";

const CASES = 80;
const MOST_HEADS = 4;

let solve: Solve;
beforeAll(async () => {
  solve = await loadSolver();
});

/** Two or three kinds of the crew and what the shelves they like might give. */
function invented(seed: number): ProgrammeInput {
  const chance = new Chance(seed, 2);
  const buyable = animals.filter(
    ({ role, group }) => (role === "crew" || role === "crew_with_caution") && group !== "pod",
  );
  const kinds = new Set(Array.from({ length: chance.whole(2, 3) }, () => chance.pick(buyable)));
  const candidates = [...kinds].map((animal): Candidate => {
    const groupMin = chance.is(0.3) ? 2 : 1;
    const already = chance.is(0.25) ? chance.whole(1, 3) : 0;
    const cap = chance.whole(Math.max(groupMin, already), MOST_HEADS);
    const wished = chance.is(0.15) ? groupMin : 0;
    const byHand = wished > 0 ? "as_wished" : already > 0 ? "if_need_be" : "no";
    return { animal, already, cap, groupMin, wished, byHand };
  });
  const needs = (shelf: ShelfId): number =>
    candidates.reduce((sum, { animal }) => sum + animal.breakEvenIntakeMgCPerDay * animal.diet[shelf], 0);
  const supply = (of: (shelf: ShelfId) => number) =>
    Object.fromEntries(SHELVES.map((shelf) => [shelf, of(shelf)])) as Record<ShelfId, number>;
  const central = supply((shelf) => (chance.is(0.15) ? 0 : needs(shelf) * chance.between(0, 6)));
  return {
    candidates,
    supply: { central, pessimistic: supply((shelf) => central[shelf] * chance.between(0.2, 0.9)) },
    prices: PRICES,
    warmth: chance.between(0.7, 1.3),
    handFedMost: chance.pick([0, 5, 1e6]),
  };
}

const paidAlready = ({ candidates, prices }: ProgrammeInput): number =>
  candidates.reduce(
    (sum, { animal, already }) => sum + already * (prices.perHead + prices.perPriceBand * animal.priceBand),
    0,
  );

describe("the programme's crew costs what the cheapest of all crews costs", () => {
  test.each(Array.from({ length: CASES }, (_, seed) => seed))("case %d", (seed) => {
    const input = invented(seed);
    const programme = new Programme(input);
    const answer = programme.read(solve(programme.model));
    const best = cheapestCrew(input);
    if (best === null) {
      expect(answer).toBeNull();
      return;
    }
    expect(answer).not.toBeNull();
    const heads = input.candidates.map(({ animal }) => answer!.heads.get(animal.id)!);
    // The crew itself may be another of the same cost; its cost by our own reckoning may not differ.
    expect(answer!.objective - paidAlready(input)).toBeCloseTo(best.cost, 5);
    expect(costOf(heads, input)).toBeCloseTo(best.cost, 5);
  });

  test("the cases are worth trying: crews of some and of none, and programmes without an answer", () => {
    const best = Array.from({ length: CASES }, (_, seed) => cheapestCrew(invented(seed)));
    const bought = best.filter((crew) => crew?.heads.some((n) => n > 0)).length;
    expect(bought).toBeGreaterThan(CASES / 4);
    expect(best.filter((crew) => crew?.heads.every((n) => n === 0)).length).toBeGreaterThan(0);
    expect(best.filter((crew) => crew === null).length).toBeGreaterThan(0);
  });
});
