/**
 * The second opinion on every optimum: glpsol of Debian's glpk-utils, a program of its own, run as a child process.
 * It is no part of the product; tools/prepare.sh installs it.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { LinearModel } from "../../src/engine/stocking/linear-model.ts";
import { lpText } from "./lp-text.ts";

export type SecondOpinion =
  | { readonly status: "optimal"; readonly objective: number }
  | { readonly status: "infeasible" };

/** @throws Error where glpsol is missing or ends without a proof */
export function glpsol(model: LinearModel): SecondOpinion {
  const folder = mkdtempSync(join(tmpdir(), "grazewell-glpsol-"));
  try {
    const file = join(folder, "model.lp");
    const report = join(folder, "answer.txt");
    writeFileSync(file, lpText(model));
    const { error, stdout } = spawnSync(
      "glpsol",
      ["--lp", file, "--mipgap", "0", "--tmlim", "60", "--write", report],
      {
        encoding: "utf8",
      },
    );
    if (error !== undefined)
      throw new Error("glpsol is not here: tools/prepare.sh installs glpk-utils", { cause: error });
    // Its words for a cost without lower bound differ by one: NO DUAL FEASIBLE SOLUTION. That is no answer here.
    if (/NO (PRIMAL |INTEGER )?FEASIBLE SOLUTION/.test(stdout)) return { status: "infeasible" };
    // The line of the whole answer: "s mip ROWS COLUMNS STATUS OBJECTIVE", or "s bas ROWS COLUMNS PRIMAL DUAL OBJECTIVE".
    const line = /^s .*$/m.exec(readFileSync(report, "utf8"))?.[0].split(/\s+/) ?? [];
    const proven = line[1] === "mip" ? line[4] === "o" : line[4] === "f" && line[5] === "f";
    if (!proven) throw new Error(`glpsol ended without a proof: ${line.join(" ")}\n${stdout.slice(-500)}`);
    return { status: "optimal", objective: Number(line.at(-1)) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
