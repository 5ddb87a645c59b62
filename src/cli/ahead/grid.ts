/** A table where the screen has room for it; else a line a row, with the heads of the columns in it. */
import { table, wrap } from "../../answers/words.ts";

export function grid(head: readonly string[], rows: readonly (readonly string[])[], width: number): string {
  const wide = table([head, ...rows], 1);
  if (wide.split("\n").every((line) => line.length <= width)) return wide;
  return rows
    .map(([name = "", ...cells]) => {
      const told = cells.map((cell, i) => `${head[i + 1] ?? ""} ${cell}`.trim());
      return wrap(`${name}: ${told.join("; ")}`, width, "  ", "    ");
    })
    .join("\n");
}
