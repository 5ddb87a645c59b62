/** What was asked of a shop and has not come, by kind: heads of orders less heads that came since, dead or alive. */
import type { Ordered, TankRecord } from "../../engine/types/record.ts";

export interface OnOrder {
  readonly animal: string;
  readonly heads: number;
  /** Day of the first order that is still open, ISO date. */
  readonly since: string;
  /** Latest day that any of them should come; null where nobody said. */
  readonly expectedOn: string | null;
  readonly entries: readonly string[];
}

type Open = { -readonly [Name in keyof Ordered]: Ordered[Name] };

export function onOrder({ orders = [] }: TankRecord): readonly OnOrder[] {
  const open: Open[] = [];
  // Oldest first, as the record has them; what came is taken off the oldest order of that kind.
  for (const order of orders) {
    if (order.step === "placed") {
      open.push({ ...order });
      continue;
    }
    let came = order.heads;
    for (const one of open.filter(({ animal }) => animal === order.animal)) {
      const taken = Math.min(one.heads, came);
      one.heads -= taken;
      came -= taken;
    }
  }
  const kinds = [...new Set(open.filter(({ heads }) => heads > 0).map(({ animal }) => animal))];
  return kinds.map((animal) => {
    const mine = open.filter((one) => one.animal === animal && one.heads > 0);
    const days = mine.flatMap(({ expectedOn }) => (expectedOn === null ? [] : [expectedOn])).toSorted();
    return {
      animal,
      heads: mine.reduce((sum, { heads }) => sum + heads, 0),
      since: mine[0]?.on ?? "",
      expectedOn: days.at(-1) ?? null,
      entries: mine.map(({ entry }) => entry),
    };
  });
}
