/**
 * Topping up: who is missing, how many the larder bears, and by when; put into few orders, because a parcel of one snail
 * a week is hard on the snail and on the keeper. A kind that dies faster than usual is not ordered until its cause is known.
 */
import { addDays } from "../stocking/suitability.ts";
import type { Animal } from "../types/animal.ts";
import { SHELVES, type ShelfId } from "../types/shelf.ts";

export interface Missing {
  readonly animal: Animal;
  /** Heads likely there, now and in some weeks, as mean numbers. */
  readonly now: number;
  readonly later: readonly { readonly weeks: number; readonly heads: number }[];
  /** Heads that were brought on purpose and are to be had again. */
  readonly wanted: number;
  /** Least heads of its kind to keep, by its company. */
  readonly groupMin: number;
  /** Most that room, company and the keeper's own limits allow. */
  readonly most: number;
}

export interface TopUp {
  readonly animal: Animal;
  readonly count: number;
  readonly why: "group" | "growth" | "shelf";
  /** Of a shelf: that it is left with too few mouths. */
  readonly shelf: ShelfId | null;
  /** ISO date. */
  readonly latest: string;
}

export interface Order {
  readonly items: readonly TopUp[];
  readonly heads: number;
  /** ISO date by which it is to be there. */
  readonly latest: string;
  /** Whether it is worth sending now: else it waits for more, or for its day. */
  readonly worth: boolean;
}

/** A shelf has too few mouths when those there want less than this share of what those brought would. Judgement. */
const FEW_MOUTHS = 0.6;
/** A share of the diet that makes a kind an eater of a shelf. */
const EATER_SHARE = 0.15;
/** How far a diet leans towards what is there; as in the plan. */
const LEAN = 1.4;
/** Below the group's least: company within this time. */
const GROUP_DAYS = 42;
/** A growth that is back: its eaters within this time. */
const GROWTH_DAYS = 21;
const FAR_WEEKS = 26;
/** Heads that make an order worth its parcel, and how near its day may be. Judgement. */
const WORTH_HEADS = 5;
const WORTH_DAYS = 10;
/** Items whose days lie within this go together. */
const TOGETHER_DAYS = 56;

export interface ToppingUp {
  readonly items: readonly TopUp[];
  /** Missing, but the larder would not feed one more. */
  readonly unfed: readonly Animal[];
}

/**
 * @param spare what is left for newcomers at the pessimistic supply, mg C a day by shelf
 * @param back shelves on which a growth is thick again
 */
export function topUps(
  missing: readonly Missing[],
  spare: Readonly<Record<ShelfId, number>>,
  warmth: number,
  today: string,
  back: ReadonlySet<ShelfId> = new Set(),
): ToppingUp {
  const left: Record<ShelfId, number> = { ...spare };
  const first = missing
    .map((one) => ({ one, day: dayOf(one, missing, back) }))
    .filter(({ day }) => day !== null);
  const unfed: Animal[] = [];
  const items = first
    .toSorted((a, b) => a.day!.days - b.day!.days)
    .flatMap(({ one, day }): TopUp[] => {
      const { animal } = one;
      const asked = Math.min(one.wanted, one.most) - Math.round(one.now);
      const count = borne(animal, asked, left, warmth);
      if (count < 1) {
        if (asked > 0) unfed.push(animal);
        return [];
      }
      const { why, shelf, days } = day!;
      return [{ animal, count, why, shelf, latest: addDays(today, days) }];
    });
  return { items, unfed };
}

interface Day {
  readonly days: number;
  readonly why: TopUp["why"];
  readonly shelf: ShelfId | null;
}

/** When it has to be there: null where nothing asks for it within half a year. */
function dayOf(one: Missing, all: readonly Missing[], back: ReadonlySet<ShelfId>): Day | null {
  if (one.wanted <= Math.round(one.now) && one.later.every(({ heads }) => Math.round(heads) >= one.wanted))
    return null;
  if (Math.round(one.now) > 0 && Math.round(one.now) < Math.min(one.groupMin, one.wanted))
    return { days: GROUP_DAYS, why: "group", shelf: null };
  const own = SHELVES.filter((shelf) => one.animal.diet[shelf] >= EATER_SHARE);
  const returned = own.find((shelf) => back.has(shelf));
  if (returned !== undefined && Math.round(one.now) < one.wanted)
    return { days: GROWTH_DAYS, why: "growth", shelf: returned };
  const days = own.flatMap((shelf) => {
    const at = shortDay(shelf, all);
    return at === null ? [] : [{ days: at, why: "shelf" as const, shelf }];
  });
  return days.toSorted((a, b) => a.days - b.days)[0] ?? null;
}

/** Days until a shelf's mouths, as they dwindle, are too few; null where not within half a year. */
function shortDay(shelf: ShelfId, all: readonly Missing[]): number | null {
  const mouths = (headsOf: (one: Missing) => number): number =>
    all.reduce(
      (sum, one) => sum + headsOf(one) * one.animal.breakEvenIntakeMgCPerDay * one.animal.diet[shelf],
      0,
    );
  const full = mouths(({ wanted }) => wanted);
  if (full <= 0) return null;
  for (let week = 0; week <= FAR_WEEKS; week += 1) {
    if (mouths((one) => headsIn(one, week)) < FEW_MOUTHS * full) return 7 * week;
  }
  return null;
}

/** Straight between the weeks that are known. */
function headsIn({ now, later }: Missing, week: number): number {
  const points = [{ weeks: 0, heads: now }, ...later];
  const next = points.findIndex(({ weeks }) => weeks >= week);
  const b = points[next] ?? points.at(-1)!;
  const a = points[next - 1] ?? b;
  return b.weeks === a.weeks
    ? b.heads
    : a.heads + ((week - a.weeks) / (b.weeks - a.weeks)) * (b.heads - a.heads);
}

/** Most of these that the spare food keeps alive; what they would eat is taken off it. */
function borne(animal: Animal, asked: number, left: Record<ShelfId, number>, warmth: number): number {
  const share = 1 - animal.dietOther;
  for (let count = asked; count >= 1; count -= 1) {
    const need = count * animal.breakEvenIntakeMgCPerDay * warmth;
    const takes = SHELVES.map((shelf) =>
      Math.max(0, Math.min(left[shelf], need * Math.min(1, LEAN * animal.diet[shelf]))),
    );
    const found = takes.reduce((sum, take) => sum + take, 0);
    if (found < need * share) continue;
    SHELVES.forEach((shelf, i) => {
      left[shelf] -= (takes[i]! * need * share) / Math.max(found, 1e-9);
    });
    return count;
  }
  return 0;
}

/** Few orders: those whose days lie near each other go together, at the first one's day. */
export function ordersOf(items: readonly TopUp[], today: string): Order[] {
  const orders: Order[] = [];
  let rest = items.toSorted((a, b) => (a.latest < b.latest ? -1 : 1));
  while (rest.length > 0) {
    const { latest } = rest[0]!;
    const until = addDays(latest, TOGETHER_DAYS);
    const own = rest.filter((one) => one.latest <= until);
    const heads = own.reduce((sum, { count }) => sum + count, 0);
    orders.push({
      ...{ items: own, heads, latest },
      worth: heads >= WORTH_HEADS || latest <= addDays(today, WORTH_DAYS),
    });
    rest = rest.filter((one) => one.latest > until);
  }
  return orders;
}

export const WORTH = { heads: WORTH_HEADS, days: WORTH_DAYS } as const;
