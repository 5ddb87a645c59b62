/** What a what-if changes: today's plan and the changed one in a paragraph, before the plan itself. */

import { type Beside, toAdd } from "../../answers/plan/waves-output.ts";
import { counted, wrap } from "../../answers/words.ts";
import type { Plan } from "../../engine/stocking/plan.ts";
import type { Io } from "../io.ts";

export function besideText(plan: Plan, { changes, today }: Beside, io: Io): string {
  const now = new Map(toAdd(today).map((row) => [row.id, row]));
  const then = new Map(toAdd(plan).map((row) => [row.id, row]));
  const ids = [...new Set([...now.keys(), ...then.keys()])];
  const differs = ids.flatMap((id) => {
    const change = (then.get(id)?.count ?? 0) - (now.get(id)?.count ?? 0);
    const name = (then.get(id) ?? now.get(id))!.name;
    return change === 0 ? [] : [`${change > 0 ? "+" : "-"}${counted(Math.abs(change), name)}`];
  });
  const all = (rows: ReadonlyMap<string, { count: number }>) =>
    [...rows.values()].reduce((sum, { count }) => sum + count, 0);
  return [
    wrap(`${io.bold("What if")}: ${changes.join("; ")}.`, io.width),
    wrap(
      `Today's plan adds ${all(now)} animals in all, this one ${all(then)}${differs.length === 0 ? ", the same" : `: ${differs.join(", ")}`}.`,
      io.width,
      "  ",
    ),
  ].join("\n");
}
