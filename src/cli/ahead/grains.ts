/** Twenty grains: one a run, solid where it has what is asked, empty where not. Counted, never by colour. */

const SOLID = "●";
const EMPTY = "○";

/** "●●●○○ ○○○○○ ○○○○○ ○○○○○": in fives, so that they can be counted. */
function grains(of20: number): string {
  const row = SOLID.repeat(of20) + EMPTY.repeat(20 - of20);
  return row.match(/.{5}/gu)!.join(" ");
}

export interface GrainBlock {
  readonly title: string;
  /** A date in words, and in how many of 20 runs by each course. */
  readonly rows: readonly { readonly date: string; readonly of20: readonly number[] }[];
}

/** Blocks under each other; with two courses their grains stand side by side. */
export function grainBlocks(blocks: readonly GrainBlock[], indent = "  "): string[] {
  return blocks.flatMap(({ title, rows }) => [
    `${indent}${title}`,
    ...rows.map(({ date, of20 }) => {
      const sets = of20.map((n) => `${grains(n)} ${String(n).padStart(2)}`);
      return `${indent}  ${date.padEnd(DATE)}${sets.join("   ")}`;
    }),
  ]);
}
const DATE = 13;
