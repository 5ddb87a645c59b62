/**
 * Plans every example tank and writes docs/reports/tanks.md: waves, what binds, what changes when habit's limits are
 * set aside. The judgement on them is a person's and stands in docs/validation.md. Run: node tools/review-tanks.ts
 */
import { mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { DEFAULT_ENSEMBLE } from "../src/answers/plan/plan-tank.ts";
import { rations } from "../src/answers/words.ts";
import { processIo } from "../src/cli/io.ts";
import { planOf } from "../src/cli/plan/plan-of.ts";
import { readTank } from "../src/cli/read-tank.ts";
import { explained, type Plan } from "../src/engine/stocking/plan.ts";
import type { TankFacts } from "../src/engine/types/tank.ts";

const ROOT = join(import.meta.dirname, "..");
const silent = { ...processIo(), talk: () => {}, progress: () => {} };

const sections: string[] = [];
const files = readdirSync(join(ROOT, "examples")).sort();
for (const file of files) {
  const facts = readTank(join(ROOT, "examples", file), silent, { quiet: true });
  const plan = await planOf(facts, DEFAULT_ENSEMBLE, silent, true);
  sections.push(section(file, facts, plan));
  console.log(file);
}
const head = [
  "# Plans of the example tanks",
  "",
  "Written by `node tools/review-tanks.ts`; every tank is invented. Judged one by one in [validation.md](../validation.md).",
  "Rations a day; 1 ration = 10 mg C. *fed* = runs of 20 with half alive at 90 days, against what age alone would leave.",
];
mkdirSync(join(ROOT, "docs/reports"), { recursive: true });
writeFileSync(join(ROOT, "docs/reports/tanks.md"), `${[...head, ...sections].join("\n")}\n`);

function section(file: string, facts: TankFacts, plan: Plan): string {
  const waves = plan.waves.map(
    ({ number, from, plannedShare, animals }) =>
      `- wave ${number} (${from}, share ${plannedShare}): ${animals.map(({ animal, count, binding }) => `${count} ${animal.id} [${binding.kind}]`).join(", ")}`,
  );
  const total = plan.drafts.at(-1)?.larder.total;
  const check = (plan.check?.kinds ?? []).map((kind) => {
    const why = explained(kind, plan.fedByHand);
    return `${kind.heads} ${kind.id} ${kind.aliveOf20}/${kind.agedOf20}${why === null ? "" : "*"}`;
  });
  const starving = plan.refused
    .filter(({ animal, reasons }) => animal.role === "crew" && reasons.some(({ code }) => code === "starves"))
    .map(({ animal }) => animal.id);
  const lines = [
    "",
    `## ${file}: ${facts.name}`,
    "",
    `${Math.round(facts.waterL.central)} L, ${Math.round(facts.ageDays.central)} days, ${facts.temperatureC.central} °C; present: ${facts.present.map(({ id, count }) => `${count} ${id}`).join(", ") || "nobody known"}.`,
    `Larder by the last wave: ${rations(total?.central ?? 0)} (${rations(total?.low ?? 0)} to ${rations(total?.high ?? 0)}) rations a day.`,
    "",
    ...(plan.kind === "nothing_yet" ? plan.because.map((text) => `- nothing yet: ${text}`) : waves),
  ];
  if (check.length > 0) lines.push(`- alive / by age alone, of 20 (* explained): ${check.join(", ")}`);
  if (plan.mends.length > 0)
    lines.push(
      `- cut by the forecast: ${plan.mends.map(({ id, from, to }) => `${id} ${from} to ${to}`).join(", ")}`,
    );
  if (plan.fedByHand.length > 0)
    lines.push(
      `- by hand: ${plan.fedByHand.map(({ animal, mgC, standing }) => `${animal.id} ${rations(mgC)} (${standing})`).join(", ")}`,
    );
  if (starving.length > 0) lines.push(`- would starve: ${starving.join(", ")}`);
  for (const cost of plan.limitCosts) {
    if (cost.changes.length > 0)
      lines.push(`- ${cost.text}: ${cost.heads} to ${cost.headsWithout} heads (${cost.changes.join(", ")})`);
  }
  const still = plan.limitCosts.filter(({ changes }) => changes.length === 0).map(({ limit }) => limit);
  if (still.length > 0) lines.push(`- no change without: ${still.join(", ")}`);
  lines.push(
    `- would change it most: ${plan.wouldChange.map(({ unknown, headsIfLow, headsIfHigh }) => `${unknown.label}${headsIfLow === null ? "" : ` (${headsIfLow} to ${headsIfHigh} heads)`}`).join("; ")}`,
  );
  return lines.join("\n");
}
