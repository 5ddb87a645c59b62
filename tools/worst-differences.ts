/**
 * Measures how far the seawater lies from printed tables and from other libraries, and writes the worst of each
 * to docs/validation-seawater.md. The same comparisons are tests; this shows by how much they pass.
 * Run: node tools/worst-differences.ts
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Comparison, type LeftOut, worst } from "../checks/comparison.ts";
import * as published from "../checks/published/seawater.ts";
import * as recorded from "../checks/recorded/seawater.ts";

const PAGE = join(import.meta.dirname, "../docs/validation-seawater.md");

const COLUMNS = ["Quantity", "Against", "Values", "Worst difference", "Allowed"];

function row(comparison: Comparison): string[] {
  const { quantity, unit, pairs, tolerance, relative, source } = comparison;
  const of = (value: number) => {
    if (relative) return `${Number((100 * value).toPrecision(2))} %`;
    return `${Number(value.toPrecision(2))}${unit === "" ? "" : ` ${unit}`}`;
  };
  return [quantity, source, String(pairs.length), of(worst(comparison)), of(tolerance)];
}

/** A table as the formatter wants it: every column as wide as its widest cell. */
function table(comparisons: readonly Comparison[]): string {
  const rows = [COLUMNS, ...comparisons.map(row)];
  const widths = COLUMNS.map((_, column) => Math.max(...rows.map((cells) => cells[column]?.length ?? 0)));
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  const [head = "", ...body] = rows.map((cells) => line(cells.map((cell, i) => cell.padEnd(widths[i] ?? 0))));
  return [head, line(widths.map((width) => "-".repeat(width))), ...body].join("\n");
}

const leftOut = (parts: readonly LeftOut[]) =>
  parts.map(({ block, what, why }) => `- \`${block}\`, ${what}: ${why}.`).join("\n");
const count = (comparisons: readonly Comparison[]) =>
  comparisons.reduce((sum, { pairs }) => sum + pairs.length, 0);

const text = `# How far the seawater lies from others

\`tools/worst-differences.ts\` writes this page. Each line is also a test (\`checks/\`); "allowed" is the last digit
printed, the library's own tolerance, or, where two different equations are compared, how far they may disagree.
A difference with % is a share of the value. What each equation is, and how its source was read:
[model/seawater.md](model/seawater.md).

## Printed tables and worked examples: ${count(published.comparisons)} comparisons

${table(published.comparisons)}

Left out:

${leftOut(published.leftOut)}

## Other libraries' answers: ${count(recorded.comparisons)} comparisons

${table(recorded.comparisons)}

Left out:

${leftOut(recorded.leftOut)}

## What this does not prove

The coefficients of the ammonia equation and of the pH scales were typed from the same library that made their check
points: agreement to ten digits there proves the arithmetic, not the typing from the papers. The guards against a
shared slip are the worked examples of a program of other ancestry, the seawater table of 1978 (within its band) and
the bisulfate constant of the Guide. The papers of Clegg & Whitfield and of Garcia & Gordon, and the tables inside the
EPA document, were not opened.
`;

writeFileSync(PAGE, text);
console.log(text);
