/**
 * Measures how far the seawater and its reagents lie from printed tables and from other libraries, and writes the worst of each
 * to docs/validation-seawater.md. The same comparisons are tests; this shows by how much they pass.
 * Run: node tools/worst-differences.ts
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Comparison, type LeftOut, worst } from "../checks/comparison.ts";
import * as printedDoses from "../checks/published/reagents.ts";
import * as published from "../checks/published/seawater.ts";
import * as recordedMasses from "../checks/recorded/reagents.ts";
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

const reagents = [...printedDoses.comparisons, ...recordedMasses.comparisons];

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

${leftOut(recorded.leftOut) || "Nothing."}

## Reagents: ${count(reagents)} comparisons

${table(reagents)}

Left out:

${leftOut(printedDoses.leftOut)}

## What this does not prove

The coefficients of the carbonate constants, of the ammonia equation and of the pH scales were typed from the same
library that made their check points: agreement to ten digits there proves the arithmetic, not the typing from the
papers. The guards against a shared slip are the Guide's printed constants (six of ours), the 96 values of Weiss's
table, the worked examples of a program of other ancestry and the seawater table of 1978 (within its band). Aragonite
has one such guard, from memory: the measured product, 2.5 % above the equation. The papers of Lueker, Mucci, Millero,
Clegg & Whitfield and Garcia & Gordon, the Guide itself and the tables inside the EPA document were not opened.

No comparison says how true a hobby test is, and that is where a keeper's error lies: 0.1 of pH is a fifth of the
saturation of aragonite. Reagents are held against formulas; what a jar holds, and what it has drawn from damp air, is
its label's business.
`;

writeFileSync(PAGE, text);
console.log(text);
