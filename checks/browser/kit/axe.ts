/**
 * axe-core in a page, and what it left undecided decided by a check of our own, rule by rule. An undecided rule that
 * has no such check counts as a fault: nothing is waved through.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type axe from "axe-core";
import type { Page } from "playwright-core";
import { contrastOf } from "./contrast.ts";

/** The small form: half of what a page takes to read it. */
const SOURCE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

interface Node {
  readonly target: string;
  readonly why: string;
}
interface Found {
  readonly rule: string;
  readonly nodes: readonly Node[];
}

async function run(
  page: Page,
  rules: readonly string[] | null,
): Promise<{ wrong: Found[]; undecided: Found[] }> {
  // Through the debugger's door, so the page's policy stays in force.
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(SOURCE);
  return page.evaluate(
    async ([tags, only]) => {
      const runOnly = only === null ? { type: "tag", values: tags } : { type: "rule", values: only };
      const results = await (window as unknown as { axe: typeof axe }).axe.run(document, {
        runOnly: runOnly as axe.RunOnly,
        resultTypes: ["violations", "incomplete"],
      });
      const short = (found: axe.Result[]) =>
        found.map(({ id, nodes }) => ({
          rule: id,
          nodes: nodes.map((node) => ({
            target: node.target.flat().join(" "),
            why: [...node.any, ...node.all, ...node.none].map((check) => check.message).join("; "),
          })),
        }));
      return { wrong: short(results.violations), undecided: short(results.incomplete) };
    },
    [TAGS, rules as string[] | null] as const,
  );
}

/** Rules that axe may leave open, each with the check that decides; null: in order, otherwise what is wrong. */
const DECIDE: Readonly<Record<string, (page: Page, target: string) => Promise<string | null>>> = {
  // Text over something axe can't see through: painted colours, worked out here.
  "color-contrast": async (page, target) => {
    const measured = await contrastOf(page, target);
    if (measured === null) return "contrast can't be worked out";
    return measured.ratio >= measured.needed ? null : `contrast ${measured.ratio.toFixed(2)}`;
  },
  // A sign such as + or − is no text that a person would say; words must be part of the name.
  "label-content-name-mismatch": async (page, target) => {
    const shown = (await page.locator(target).first().textContent()) ?? "";
    return /\p{L}/u.test(shown) ? `"${shown.trim()}" is not in its name` : null;
  },
};

/** Everything wrong, in lines; `rules` alone where given (colours again in the other scheme). */
export async function axeFaults(page: Page, rules: readonly string[] | null = null): Promise<string[]> {
  const { wrong, undecided } = await run(page, rules);
  const faults = wrong.flatMap(({ rule, nodes }) =>
    nodes.map(({ target, why }) => `${rule}: ${target} (${why})`),
  );
  for (const { rule, nodes } of undecided) {
    for (const { target, why } of nodes) {
      const verdict = await (DECIDE[rule]?.(page, target) ?? "undecided");
      if (verdict !== null) faults.push(`${rule}: ${target}: ${verdict} (${why})`);
    }
  }
  return faults;
}
