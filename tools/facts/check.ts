/** All checks of facts/, in order: shape first, then each animal, then what holds between files. */
import { checkAcross } from "./check-across.ts";
import { checkAnimal } from "./check-animal.ts";
import { checkDiagnosis } from "./check-diagnosis.ts";
import { checkShape, type Facts } from "./check-shape.ts";
import type { Problem } from "./problem.ts";
import type { RawFacts } from "./read.ts";

export function checkFacts(raw: RawFacts): { facts: Facts; problems: Problem[] } {
  const problems: Problem[] = [];
  const facts = checkShape(raw, problems);
  // A file of the wrong shape is left out of `facts`: links to it would be reported as missing too.
  const whole = problems.length === 0;
  for (const [file, animal] of facts.animals) problems.push(...checkAnimal(file, animal));
  if (whole) problems.push(...checkAcross(facts), ...checkDiagnosis(facts));
  return { facts, problems };
}
