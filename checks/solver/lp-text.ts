/** A model as LP text, for a solver outside the product. Names are positions: a solver need not know ours. */
import type { LinearModel } from "../../src/engine/stocking/linear-model.ts";

const exact = (value: number): string => (Number.isInteger(value) ? value.toString() : value.toPrecision(17));

function terms(entries: readonly (readonly [number, number])[]): string {
  if (entries.length === 0) return "0 x0";
  return entries
    .map(([column, value]) => `${value < 0 ? "-" : "+"} ${exact(Math.abs(value))} x${column}`)
    .join("\n  ");
}

export function lpText({ columns, rows }: LinearModel): string {
  const costs = columns.flatMap(({ cost }, i): [number, number][] => (cost === 0 ? [] : [[i, cost]]));
  const constraints = rows.flatMap(({ lower, upper, entries }, i) => {
    const lines: string[] = [];
    if (lower === upper) return [` r${i}: ${terms(entries)} = ${exact(lower)}`];
    if (Number.isFinite(lower)) lines.push(` r${i}l: ${terms(entries)} >= ${exact(lower)}`);
    if (Number.isFinite(upper)) lines.push(` r${i}u: ${terms(entries)} <= ${exact(upper)}`);
    return lines;
  });
  const bounds = columns.map(({ lower, upper }, i) =>
    Number.isFinite(upper) ? ` ${exact(lower)} <= x${i} <= ${exact(upper)}` : ` x${i} >= ${exact(lower)}`,
  );
  const whole = columns.flatMap(({ integer }, i) => (integer ? [`x${i}`] : []));
  return [
    "Minimize",
    ` cost: ${terms(costs)}`,
    "Subject To",
    ...constraints,
    "Bounds",
    ...bounds,
    ...(whole.length === 0 ? [] : ["Generals", ` ${whole.join("\n ")}`]),
    "End",
    "",
  ].join("\n");
}
