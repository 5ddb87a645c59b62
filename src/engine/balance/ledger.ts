/**
 * The running ledger: how much of each element went from where to where, by the name of what happened.
 * Amounts are added with the integrator's own weights, so that the table and the pools agree to rounding.
 */
import {
  D,
  type Element,
  FG,
  K,
  M,
  NO2,
  NO3,
  O,
  OUTSIDE,
  PO4,
  POOL_COUNT,
  PRK,
  PSB,
  Q,
  R,
  S,
  TAN,
  W,
} from "./pools.ts";
import { type Place, placeName, type Transfer, transfersOf } from "./transfers.ts";
import { ALGA, ALGA_COUNT, type World } from "./world.ts";

export interface LedgerRow {
  readonly name: string;
  readonly element: Element;
  readonly from: string;
  readonly to: string;
  readonly mg: number;
  /** A flow between events, or what an event or a midnight moved at an instant. */
  readonly how: "flow" | "instant";
}

export class Ledger {
  private readonly world: World;
  private readonly amounts = new Map<string, number>();
  /** Rate integrals of the present stretch, not yet turned into transfers. */
  private readonly pending: Float64Array;
  private transfers: Transfer[];

  constructor(world: World, processCount: number) {
    this.world = world;
    this.pending = new Float64Array(processCount);
    this.transfers = transfersOf(world);
  }

  /** Adds a step: mean process rates over `h` days. */
  addStep(rates: Float64Array, h: number): void {
    const { pending } = this;
    for (let i = 0; i < pending.length; i += 1) pending[i] = pending[i]! + h * rates[i]!;
  }

  /** Adds one movement; by itself it is an event's. */
  add(
    name: string,
    element: Element,
    from: Place,
    to: Place,
    mg: number,
    how: LedgerRow["how"] = "instant",
  ): void {
    if (mg === 0) return;
    const key = [name, element, placeName(from, this.world), placeName(to, this.world), how].join("|");
    this.amounts.set(key, (this.amounts.get(key) ?? 0) + mg);
  }

  /** Turns the stretch so far into transfers; before an event may change their coefficients. */
  settle(): void {
    for (const { name, element, from, to, rate, per } of this.transfers) {
      this.add(name, element, from, to, per * this.pending[rate]!, "flow");
    }
    this.pending.fill(0);
  }

  /** After an event: coefficients anew. */
  refresh(): void {
    this.transfers = transfersOf(this.world);
  }

  rows(): LedgerRow[] {
    this.settle();
    return [...this.amounts].map(([key, mg]) => {
      const [name, element, from, to, how] = key.split("|") as [
        string,
        Element,
        string,
        string,
        LedgerRow["how"],
      ];
      return { name, element, from, to, mg, how };
    });
  }
}

/** What flowed to each outside place (from it: negative), by `place.element`, events not counted; mg. */
export function outsideFlows(rows: readonly LedgerRow[]): Record<string, number> {
  const sums: Record<string, number> = {};
  for (const { element, from, to, mg, how } of rows) {
    if (how !== "flow") continue;
    if (isOutside(to)) sums[`${to}.${element}`] = (sums[`${to}.${element}`] ?? 0) + mg;
    if (isOutside(from)) sums[`${from}.${element}`] = (sums[`${from}.${element}`] ?? 0) - mg;
  }
  return sums;
}

/** Net amount that came in from outside, mg of an element, over the rows. */
export function netFromOutside(rows: readonly LedgerRow[], element: Element): number {
  return rows
    .filter((row) => row.element === element && isOutside(row.from) !== isOutside(row.to))
    .reduce((sum, { from, mg }) => sum + (isOutside(from) ? mg : -mg), 0);
}

const isOutside = (place: string): boolean => (OUTSIDE as readonly string[]).includes(place);

/** Inventory of an element in the tank's pools and the crew's reserves, mg. Bodies of the crew are not counted. */
export function inventory(world: World, y: Float64Array, element: Element): number {
  const e = element === "C" ? 0 : element === "N" ? 1 : 2;
  let sum = 0;
  for (const first of [W, K, S, D, Q, R, M, O]) sum += y[first + e]!;
  for (let i = 0; i < ALGA_COUNT; i += 1) {
    const at = i * ALGA.stride;
    const held = e === 0 ? 1 : world.alga[at + (e === 1 ? ALGA.qN : ALGA.qP)]!;
    sum += held * y[FG + i]!;
  }
  if (element === "N") sum += y[TAN]! + y[NO2]! + y[NO3]!;
  if (element === "P") sum += y[PO4]! + y[PSB]! + y[PRK]!;
  if (element === "C") {
    const kinds = world.species.length;
    for (let s = 0; s < kinds; s += 1) sum += y[POOL_COUNT + kinds + s]!;
  }
  return sum;
}
