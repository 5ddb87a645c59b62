/**
 * Reads facts/, checks every figure, and writes src/catalogue/generated/{catalogue,diagnosis}.ts.
 * Run by `npm run facts`; exits 1 and lists file, field, what is wrong and the likely fix. See docs/facts.md.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { checkFacts } from "./check.ts";
import { catalogueModule, diagnosisModule, medicinesModule } from "./emit.ts";
import { formatProblem } from "./problem.ts";
import { readFacts } from "./read.ts";

const root = resolve(import.meta.dirname, "../..");
const target = resolve(root, "src/catalogue/generated/catalogue.ts");

const read = readFacts(resolve(root, "facts"));
const { facts, problems } = checkFacts(read.facts);
const all = [...read.problems, ...problems];
if (all.length > 0) {
  for (const problem of all) console.error(formatProblem(problem));
  console.error(`facts: ${all.length} to put right; nothing was written`);
  process.exitCode = 1;
} else {
  mkdirSync(dirname(target), { recursive: true });
  writeFileSync(target, catalogueModule(facts));
  writeFileSync(resolve(dirname(target), "diagnosis.ts"), diagnosisModule(facts));
  writeFileSync(resolve(dirname(target), "medicines.ts"), medicinesModule(facts));
  console.log(
    `facts: ${facts.animals.size} animals, ${facts.parameters.size} families of parameters, ${facts.diagnosis.growths.size} growths, ${facts.diagnosis.hitchhikers.size} hitchhikers, ${facts.diagnosis.causes.size} causes, ${facts.medicines.size} medicines, all in order`,
  );
}
