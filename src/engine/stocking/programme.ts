/**
 * One wave as an integer programme: how many of each kind, so that nobody starves at the pessimistic supply and the
 * shelves are eaten down at the central one. Minimised: purchases, food left uneaten, services missing.
 * Equations: docs/model/stocking.md. Solved by whatever solver is passed in.
 */
import type { Animal } from "../types/animal.ts";
import { SHELVES, type ShelfId } from "../types/shelf.ts";
import { wouldEat } from "./enemies.ts";
import { type LinearModel, ModelBuilder, type Solution } from "./linear-model.ts";
import type { Prices } from "./prices.ts";

/** A kind that may be bought or is there already. */
export interface Candidate {
  readonly animal: Animal;
  /** Heads there before this wave: residents and earlier waves. */
  readonly already: number;
  /** Most heads in all that room, company and earlier findings allow; at least `already`. */
  readonly cap: number;
  /** Least heads to have in all, if any is bought. */
  readonly groupMin: number;
  /** Least heads to have in all whatever it costs: a wish. */
  readonly wished: number;
  /** Whether it may be kept alive by hand: what the keeper wishes for, and before others; those there, if need be. */
  readonly byHand: "no" | "if_need_be" | "as_wished";
}

/** Supply of every shelf in mg C a day, what fish take first already taken off. */
export interface ShelfSupply {
  readonly pessimistic: Readonly<Record<ShelfId, number>>;
  readonly central: Readonly<Record<ShelfId, number>>;
}

export interface ProgrammeInput {
  readonly candidates: readonly Candidate[];
  readonly supply: ShelfSupply;
  readonly prices: Prices;
  /** Warmth: how much faster animals burn than at 25 °C. */
  readonly warmth: number;
  /** Most mg C a day that may be fed by hand in all. */
  readonly handFedMost: number;
  /** Most heads to buy of all kinds together; left out: as many as pay. */
  readonly mostBought?: number | undefined;
}

/**
 * Food by hand for those that nobody wished for is reckoned a little dearer, so that where hungry mouths share a shelf
 * the hand feeds the wish that made it short.
 */
const UNASKED_DEARER = 1.02;
/** Share of the central supply of a shelf that the crew is asked to eat. */
const COVERAGE = 0.9;
/** How far an animal's diet may lean towards what is on offer: its share times this. */
const DIET_LEAN = 1.4;
/** A shelf yielding more than this, mg C/d, is asked to carry at least two kinds. */
const SHELF_WORTH_TWO = 3;
/** Share of the diet from which a kind counts as one that eats from a shelf. */
const EATS_FROM = 0.15;
/** Share of carrion in the diet from which an animal is a finder of carrion. */
const FINDS_CARRION = 0.3;

export const breakEven = (animal: Animal, warmth: number): number => animal.breakEvenIntakeMgCPerDay * warmth;
const mostIntake = (animal: Animal, warmth: number): number =>
  Math.max(animal.intakeMgCPerDay.high, 1.05 * animal.breakEvenIntakeMgCPerDay) * warmth;
const findsCarrion = (animal: Animal): boolean => animal.diet.carrion >= FINDS_CARRION;
export const eatsFrom = (animal: Animal, shelf: ShelfId): boolean => animal.diet[shelf] >= EATS_FROM;

/** What so many heads of one kind could take from a supply if nothing else ate there, mg C/d: up to their need. */
export function takenAlone(
  animal: Animal,
  heads: number,
  supply: Readonly<Record<ShelfId, number>>,
  warmth: number,
): number {
  const need = heads * breakEven(animal, warmth);
  return SHELVES.reduce(
    (sum, shelf) => sum + Math.min(supply[shelf], need * Math.min(1, DIET_LEAN * animal.diet[shelf])),
    0,
  );
}

/**
 * Most heads of a kind that a supply could keep alive if nothing else ate from it, whole animals: what each shelf
 * gives is bounded by the supply and by how far the animal's diet leans.
 */
export function mostAlone(
  animal: Animal,
  supply: Readonly<Record<ShelfId, number>>,
  warmth: number,
  most: number,
): number {
  const feeds = (heads: number): boolean =>
    takenAlone(animal, heads, supply, warmth) >= heads * breakEven(animal, warmth) - 1e-9;
  // What a head gets falls as heads are added, so the last that is fed can be found by halving.
  let low = 0;
  let high = most + 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (feeds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** What one head costs to buy. */
const headPrice = ({ priceBand }: Animal, prices: Prices): number =>
  prices.perHead + prices.perPriceBand * priceBand;

export class Programme {
  readonly input: ProgrammeInput;
  readonly model: LinearModel;
  private readonly builder = new ModelBuilder();

  constructor(input: ProgrammeInput) {
    this.input = input;
    for (const candidate of input.candidates) this.addKind(candidate);
    for (const shelf of SHELVES) this.addShelf(shelf);
    for (const shelf of SHELVES) this.addSecondKind(shelf);
    this.addCarrionFinder();
    this.addCompany();
    this.addMostBought();
    const fed = input.candidates.filter(({ byHand }) => byHand !== "no");
    if (fed.length > 0)
      this.builder.row(
        "fed_by_hand",
        fed.map(({ animal }) => [`h:${animal.id}`, 1]),
        { upper: input.handFedMost },
      );
    this.model = this.builder.build();
  }

  private addKind(candidate: Candidate): void {
    const { builder, input } = this;
    const { animal, already, cap, groupMin, wished, byHand } = candidate;
    const { id } = animal;
    const need = breakEven(animal, input.warmth);
    const most = mostIntake(animal, input.warmth);
    const n = `n:${id}`;
    const price = headPrice(animal, input.prices);
    builder.column(n, {
      lower: Math.max(already, wished),
      upper: Math.max(cap, already, wished),
      cost: price,
      integer: true,
    });
    if (cap > already) {
      builder.column(`b:${id}`, { upper: 1, cost: input.prices.perKind, integer: true });
      // bought only with its kind: n - already <= room * b; a group is bought whole
      builder.row(
        `kind:${id}`,
        [
          [n, 1],
          [`b:${id}`, -(Math.max(cap, wished) - already)],
        ],
        { upper: already },
      );
      // A kind that counts as bought has at least one head more, or its whole group: no credit for buying nobody.
      builder.row(
        `group:${id}`,
        [
          [n, 1],
          [`b:${id}`, -Math.max(1, groupMin - already)],
        ],
        { lower: already },
      );
    }
    if (byHand !== "no") {
      const factor = byHand === "as_wished" ? 1 : UNASKED_DEARER;
      builder.column(`h:${id}`, { cost: factor * input.prices.handFed });
    }
    const eaten: [string, number][] = [];
    const wanted: [string, number][] = [];
    for (const shelf of SHELVES) {
      const share = Math.min(1, DIET_LEAN * animal.diet[shelf]);
      if (share === 0) continue;
      if (this.input.supply.pessimistic[shelf] > 0) {
        builder.column(`p:${id}:${shelf}`);
        builder.row(
          `dietP:${id}:${shelf}`,
          [
            [`p:${id}:${shelf}`, 1],
            [n, -need * share],
          ],
          { upper: 0 },
        );
        eaten.push([`p:${id}:${shelf}`, 1]);
      }
      if (this.input.supply.central[shelf] > 0) {
        builder.column(`c:${id}:${shelf}`);
        builder.row(
          `dietC:${id}:${shelf}`,
          [
            [`c:${id}:${shelf}`, 1],
            [n, -most * share],
          ],
          { upper: 0 },
        );
        wanted.push([`c:${id}:${shelf}`, 1]);
      }
    }
    if (byHand !== "no") eaten.push([`h:${id}`, 1]);
    builder.row(`alive:${id}`, [...eaten, [n, -need]], { lower: 0 });
    builder.row(`appetite:${id}`, [...wanted, [n, -most]], { upper: 0 });
  }

  private addShelf(shelf: ShelfId): void {
    const { builder, input } = this;
    const { pessimistic, central } = input.supply;
    const eaters = input.candidates.filter(({ animal }) => animal.diet[shelf] > 0);
    const terms = (which: "p" | "c") =>
      eaters
        .map(({ animal }) => `${which}:${animal.id}:${shelf}`)
        .filter((name) => builder.has(name))
        .map((name): [string, number] => [name, 1]);
    if (central[shelf] <= 0) return;
    builder.row(`supplyP:${shelf}`, terms("p"), { upper: pessimistic[shelf] });
    builder.row(`supplyC:${shelf}`, terms("c"), { upper: central[shelf] });
    builder.column(`u:${shelf}`, { cost: input.prices.uneaten[shelf] });
    builder.row(`cover:${shelf}`, [...terms("c"), [`u:${shelf}`, 1]], { lower: COVERAGE * central[shelf] });
  }

  /** A shelf worth two kinds is asked to have them, where the tank allows two. */
  private addSecondKind(shelf: ShelfId): void {
    const { builder, input } = this;
    const { central } = input.supply;
    const able = input.candidates.filter(({ animal }) => eatsFrom(animal, shelf));
    if (central[shelf] <= SHELF_WORTH_TWO || able.length < 2) return;
    const there = able.filter(({ already }) => already > 0).length;
    if (there >= 2) return;
    builder.column(`r:${shelf}`, { upper: 2, cost: input.prices.lonelyShelf });
    const buyable = able.filter(({ already, cap }) => already === 0 && cap > 0);
    builder.row(
      `two:${shelf}`,
      [...buyable.map(({ animal }): [string, number] => [`b:${animal.id}`, 1]), [`r:${shelf}`, 1]],
      { lower: 2 - there },
    );
  }

  /** Every crew is asked for an animal that finds carrion. */
  private addCarrionFinder(): void {
    const finders = this.input.candidates.filter(({ animal }) => findsCarrion(animal));
    const buyable = finders.filter(({ animal }) => this.builder.has(`b:${animal.id}`));
    if (buyable.length === 0 || finders.some(({ already }) => already > 0)) return;
    this.builder.column("no_carrion_finder", { upper: 1, cost: this.input.prices.noCarrionFinder });
    this.builder.row(
      "carrion_finder",
      [...buyable.map(({ animal }): [string, number] => [`b:${animal.id}`, 1]), ["no_carrion_finder", 1]],
      { lower: 1 },
    );
  }

  /** Of two kinds where one would surely eat the other, at most one is bought. */
  private addCompany(): void {
    const buyable = this.input.candidates.filter(({ animal }) => this.builder.has(`b:${animal.id}`));
    buyable.forEach(({ animal: one }, i) => {
      for (const { animal: other } of buyable.slice(i + 1)) {
        if (!wouldEat(one, other)) continue;
        this.builder.row(
          `company:${one.id}:${other.id}`,
          [
            [`b:${one.id}`, 1],
            [`b:${other.id}`, 1],
          ],
          { upper: 1 },
        );
      }
    });
  }

  /** A first wave is kept to what a keeper can watch. */
  private addMostBought(): void {
    const { candidates, mostBought } = this.input;
    if (mostBought === undefined) return;
    const there = candidates.reduce((sum, { already }) => sum + already, 0);
    this.builder.row(
      "most_bought",
      candidates.map(({ animal }) => [`n:${animal.id}`, 1]),
      { upper: there + mostBought },
    );
  }

  read(solution: Solution): ProgrammeAnswer | null {
    if (solution.status !== "optimal" && solution.status !== "incumbent") return null;
    const value = (name: string) =>
      this.builder.has(name) ? this.builder.valueOf(solution.values, name) : 0;
    const heads = new Map<string, number>();
    const handFed = new Map<string, number>();
    for (const { animal, byHand } of this.input.candidates) {
      heads.set(animal.id, Math.round(value(`n:${animal.id}`)));
      if (byHand !== "no" && value(`h:${animal.id}`) > 1e-6) handFed.set(animal.id, value(`h:${animal.id}`));
    }
    const perShelf = (of: (shelf: ShelfId) => number) =>
      Object.fromEntries(SHELVES.map((shelf) => [shelf, of(shelf)])) as Record<ShelfId, number>;
    const eaten = (which: "p" | "c") =>
      perShelf((shelf) =>
        this.input.candidates.reduce((sum, { animal }) => sum + value(`${which}:${animal.id}:${shelf}`), 0),
      );
    return {
      heads,
      handFed,
      uneaten: perShelf((shelf) => value(`u:${shelf}`)),
      eatenPessimistic: eaten("p"),
      eatenCentral: eaten("c"),
      objective: solution.objective,
      proven: solution.status === "optimal",
    };
  }
}

export interface ProgrammeAnswer {
  /** Heads in all, by kind. */
  readonly heads: ReadonlyMap<string, number>;
  /** mg C a day that must be fed by hand, by kind. */
  readonly handFed: ReadonlyMap<string, number>;
  readonly uneaten: Readonly<Record<ShelfId, number>>;
  readonly eatenPessimistic: Readonly<Record<ShelfId, number>>;
  readonly eatenCentral: Readonly<Record<ShelfId, number>>;
  readonly objective: number;
  readonly proven: boolean;
}
