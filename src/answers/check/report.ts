/** The answer of `grazewell check` as data: what was read and how, what was assumed, or what is wrong. */
import type { CheckOutput } from "../../contract/output/check.ts";
import { figure } from "../../contract/quantity/show.ts";
import { FACT_LABELS } from "../../contract/tank-file/labels.ts";
import type { TankFileResult } from "../../contract/tank-file/read.ts";
import type { Estimate, Known } from "../../engine/types/estimate.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import type { TankFacts } from "../../engine/types/tank.ts";

type Read = Extract<CheckOutput, { ok: true }>;

export function reportOf(file: string, result: TankFileResult): CheckOutput {
  const schema = "grazewell.check/1" as const;
  if (!result.ok) {
    const findings = result.findings.map(({ path, label, line, typed, message, choices }) => ({
      path,
      label,
      line,
      typed,
      kind: message.kind,
      message: message.text,
      choices: choices.map((choice) => ({ ...choice })),
    }));
    return { schema, ok: false, file, findings };
  }
  const { facts, notices } = result;
  return {
    schema,
    ok: true,
    file,
    name: facts.name,
    as_of: facts.asOf,
    notices: notices.map(({ path, label, line, kind, text }) => ({ path, label, line, kind, message: text })),
    facts: factsOf(facts),
    assumed: assumedOf(facts),
    unknown_animals: [...facts.unknownAnimals],
  };
}

const entries = Object.entries(FACT_LABELS) as [
  keyof typeof FACT_LABELS,
  (typeof FACT_LABELS)["waterL"] & {},
][];

function factsOf(facts: TankFacts): Read["facts"] {
  return entries.flatMap(([field, { label, unit }]) => {
    const value = facts[field];
    if (!isEstimate(value)) return [];
    const { low, central, high, origin, how } = value;
    return [{ field, label, low, central, high, unit, origin, how, figure: figureId.tank(field) }];
  });
}

const RANK = { much: 0, some: 1, little: 2 };

function assumedOf(facts: TankFacts): Read["assumed"] {
  return entries
    .filter(([field]) => facts.assumed.includes(field))
    .map(([field, { label, unit, entry, matters }]) => ({
      field,
      label,
      taken_as: takenAs(facts[field], unit),
      answer: entry,
      matters,
      figure: isEstimate(facts[field]) || typeof facts[field] === "number" ? figureId.tank(field) : null,
    }))
    .sort((a, b) => RANK[a.matters] - RANK[b.matters]);
}

function takenAs(value: TankFacts[keyof TankFacts], unit: string): string {
  if (isEstimate(value)) return `${band(value)} ${unit}`.trim();
  // Only where hours or macroalgae of a refugium are not known.
  if (typeof value === "object" && value !== null && "maxMgC" in value) {
    return `${figure(24 * value.light)} h of light, ${figure(value.maxMgC)} mg C of macroalgae at most`;
  }
  const plain = isKnown(value) ? value.value : value;
  if (typeof plain === "boolean") return plain ? "yes" : "no";
  return `${String(plain)} ${unit}`.trim();
}

/** `0.4 (0.12 to 1)`; the figure alone where it is exact. */
export function band({ low, central, high }: Pick<Estimate, "low" | "central" | "high">): string {
  const exact = figure(low) === figure(high);
  return exact ? figure(central) : `${rough(central)} (${rough(low)} to ${rough(high)})`;
}

/** Three digits are more than a band deserves, two would hide small steps. */
const rough = (value: number): string => figure(Number(value.toPrecision(3)));

function isEstimate(value: unknown): value is Estimate {
  return typeof value === "object" && value !== null && "central" in value && "how" in value;
}

function isKnown(value: unknown): value is Known<unknown> {
  return typeof value === "object" && value !== null && "value" in value && "origin" in value;
}
