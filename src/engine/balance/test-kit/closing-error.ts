/** How far the ledger is from explaining what a run changed. */
import type { Ledger } from "../ledger.ts";
import { inventory, netFromOutside } from "../ledger.ts";
import type { Element } from "../pools.ts";
import type { World } from "../world.ts";

/** |inventory change - ledger's net from outside| over all that moved or was there. */
export function closingError(
  world: World,
  start: Float64Array,
  end: Float64Array,
  ledger: Ledger,
  element: Element,
): number {
  const rows = ledger.rows();
  const before = inventory(world, start, element);
  const after = inventory(world, end, element);
  const moved = rows.filter((row) => row.element === element).reduce((sum, { mg }) => sum + Math.abs(mg), 0);
  return Math.abs(after - before - netFromOutside(rows, element)) / (before + moved + 1e-9);
}
