/**
 * Why not more, and what each limit costs: for every kind what binds it, and the plan again with one limit at a time
 * set aside.
 */

import type { Animal } from "../types/animal.ts";
import { figureId } from "../types/figure-id.ts";
import { SHELF_NAME, SHELVES, type ShelfId } from "../types/shelf.ts";
import type { TankFacts } from "../types/tank.ts";
import { wouldEat } from "./enemies.ts";
import type { Solve } from "./linear-model.ts";
import type { Prices } from "./prices.ts";
import { breakEven, type Candidate, Programme, takenAlone } from "./programme.ts";
import { ALL_LIMITS, draftWaves, type Limits, type PlanningTools, type WaveDraft } from "./waves.ts";

export type Binding = (
  | { readonly kind: "food"; readonly shelves: readonly ShelfId[] }
  | { readonly kind: "room" | "company" | "first_wave" | "forecast" | "worth" }
) & {
  readonly text: string;
  /** What the text rests on; null where that is no figure. */
  readonly figure: string | null;
};

/** What keeps a kind of the plan from one head more, given all the others. */
export function bindingOf(
  id: string,
  draft: WaveDraft,
  facts: TankFacts,
  limits: Limits,
  solve: Solve,
): Binding {
  const { programme, answer } = draft;
  const candidate = programme.input.candidates.find(({ animal }) => animal.id === id);
  if (candidate === undefined)
    return {
      kind: "company",
      text: enemyText(id, draft) ?? "it is no candidate of this plan",
      figure: null,
    };
  const { animal } = candidate;
  const heads = answer.heads.get(id) ?? 0;
  const mended = limits.mended.get(id);
  if (mended !== undefined && heads >= mended) {
    return {
      kind: "forecast",
      text: "the forecast: more of them are not alive at 90 days in 15 of 20 runs",
      figure: figureId.mend(id),
    };
  }
  if (animal.maxPerTank !== null && heads >= animal.maxPerTank) {
    return {
      kind: "company",
      text: `company: no more than ${animal.maxPerTank} ${animal.maxPerTank === 1 ? "does well" : "get on"} in one tank`,
      figure: figureId.animal(id, "max_per_tank"),
    };
  }
  const room = Math.floor(facts.displayL.central / animal.spacingLitresPerAnimal.central);
  if (heads >= room) {
    return {
      kind: "room",
      text: `room: one for each ${animal.spacingLitresPerAnimal.central} L (habit, not measured)`,
      figure: figureId.animal(id, "spacing"),
    };
  }
  const { mostBought } = programme.input;
  if (mostBought !== undefined && total(draft.bought.values()) >= mostBought) {
    return {
      kind: "first_wave",
      text: `first wave: no more than ${mostBought} in all at once; more can follow once these have been watched`,
      figure: figureId.tank("displayL"),
    };
  }
  const next = Math.max(heads + 1, heads === 0 ? candidate.groupMin : 0);
  if (!feasibleWith(draft, id, next, solve)) {
    const shelves = tightShelves(candidate, draft);
    return {
      kind: "food",
      shelves,
      text: `food: at the pessimistic supply there is none left for another on ${shelves.map((s) => SHELF_NAME[s]).join(", ")}`,
      figure: shelves[0] === undefined ? null : figureId.pessimistic(shelves[0]),
    };
  }
  return {
    kind: "worth",
    text: "little need: others have most of its food already",
    figure: null,
  };
}

/** Why a kind that suits the tank stays out whatever it eats: something chosen would eat it or be eaten; or null. */
export function enemyText(id: string, { programme, answer, suitability }: WaveDraft): string | null {
  const animal = suitability.get(id)?.animal;
  const enemy = programme.input.candidates.find(
    (one) =>
      animal !== undefined && (answer.heads.get(one.animal.id) ?? 0) > 0 && wouldEat(animal, one.animal),
  );
  return enemy === undefined
    ? null
    : `company: it and the ${enemy.animal.commonName} of this plan would not both live`;
}

/** Whether the wave could feed `heads` of one kind with every other kind as planned. */
function feasibleWith(draft: WaveDraft, id: string, heads: number, solve: Solve): boolean {
  const { programme, answer } = draft;
  const fixed = programme.input.candidates.map((candidate): Candidate => {
    const planned = candidate.animal.id === id ? heads : (answer.heads.get(candidate.animal.id) ?? 0);
    return { ...candidate, already: planned, cap: planned, wished: 0 };
  });
  const handFedMost = [...answer.handFed.values()].reduce((sum, fed) => sum + fed, 0) + 1e-6;
  return (
    solve(new Programme({ ...programme.input, candidates: fixed, handFedMost }).model).status === "optimal"
  );
}

/** Shelves of the animal's diet, the scarcest first: those whose pessimistic supply is eaten up. */
function tightShelves({ animal }: Candidate, { supply, answer }: WaveDraft): ShelfId[] {
  const eaten = SHELVES.filter((shelf) => animal.diet[shelf] > 0).map((shelf) => ({
    shelf,
    left: supply.pessimistic[shelf] - answer.eatenPessimistic[shelf],
  }));
  return eaten
    .sort((a, b) => a.left - b.left)
    .slice(0, 2)
    .map(({ shelf }) => shelf);
}

/** Least food a kind needs to come at all, and what it could take of its shelves if nothing else ate there, mg C/d. */
export function aloneOf(animal: Animal, groupMin: number, draft: WaveDraft, warmth: number) {
  const needMgC = groupMin * breakEven(animal, warmth);
  const takesMgC = takenAlone(animal, groupMin, draft.supply.pessimistic, warmth);
  return { needMgC, takesMgC, enough: takesMgC >= needMgC - 1e-9 };
}

export interface LimitCost {
  readonly limit: string;
  readonly text: string;
  /** Heads in all with and without it. */
  readonly heads: number;
  readonly headsWithout: number;
  /** Food left uneaten, mg C/d at the central supply, with and without it. */
  readonly uneaten: number;
  readonly uneatenWithout: number;
  /** Kinds that differ: `+2 nerite-snail`, `-1 astraea-snail`. */
  readonly changes: readonly string[];
}

/** The plan's waves again, with one limit set aside at a time; compared after the last. */
export function limitCosts(
  facts: TankFacts,
  tools: PlanningTools,
  base: WaveDraft,
  limits: Limits,
): LimitCost[] {
  const again = (changed: Limits, prices: Prices = tools.prices): WaveDraft | null =>
    draftWaves(facts, { ...tools, prices }, changed).at(-1) ?? null;
  const cases: { limit: string; text: string; draft: WaveDraft | null }[] = [
    {
      limit: "spacing",
      text: "without room by litres an animal (habit)",
      draft: again({ ...limits, spacing: false }),
    },
    {
      limit: "planned_share",
      text: "without planning on a share of the supply while the tank is young",
      draft: again({ ...limits, plannedShare: false }),
    },
    {
      limit: "price_halved",
      text: "with prices of heads and kinds halved",
      draft: again(limits, scaledPrices(tools.prices, 0.5)),
    },
    {
      limit: "price_doubled",
      text: "with prices of heads and kinds doubled",
      draft: again(limits, scaledPrices(tools.prices, 2)),
    },
  ];
  if (facts.exclusions.length > 0 || facts.stockList !== null || facts.priceBandMax < 4) {
    cases.push({
      limit: "shop",
      text: "without your stock list, price band and exclusions",
      draft: again({ ...limits, shop: false }),
    });
  }
  if (facts.wishes.length > 0)
    cases.push({ limit: "wishes", text: "without your wishes", draft: again({ ...limits, wishes: false }) });
  if (limits.mended.size > 0) {
    cases.push({
      limit: "forecast",
      text: "without numbers cut because the forecast starved them",
      draft: again({ ...limits, mended: ALL_LIMITS.mended }),
    });
  }
  return cases.flatMap(({ limit, text, draft }) =>
    draft === null ? [] : [costOf(limit, text, base, draft)],
  );
}

function costOf(limit: string, text: string, base: WaveDraft, without: WaveDraft): LimitCost {
  const ids = new Set([...base.answer.heads.keys(), ...without.answer.heads.keys()]);
  const changes = [...ids].flatMap((id) => {
    const change = (without.answer.heads.get(id) ?? 0) - (base.answer.heads.get(id) ?? 0);
    return change === 0 ? [] : [`${change > 0 ? "+" : ""}${change} ${id}`];
  });
  return {
    limit,
    text,
    heads: total(base.answer.heads.values()),
    headsWithout: total(without.answer.heads.values()),
    uneaten: total(Object.values(base.answer.uneaten)),
    uneatenWithout: total(Object.values(without.answer.uneaten)),
    changes,
  };
}

/** Purchase prices times a factor; the worth of food and services as it is. */
function scaledPrices(prices: Prices, factor: number): Prices {
  return {
    ...prices,
    perHead: prices.perHead * factor,
    perPriceBand: prices.perPriceBand * factor,
    perKind: prices.perKind * factor,
  };
}

const total = (values: Iterable<number>): number => {
  let sum = 0;
  for (const value of values) sum += value;
  return sum;
};
