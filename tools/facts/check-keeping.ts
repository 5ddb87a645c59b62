/** What must hold between the risks, the needs and the sentences of one animal: what a keeper will be told. */

import type { Rule } from "./rule.ts";
import type { AnimalFile } from "./schema.ts";

const company: Rule = ({ company: { group_min, max_per_tank }, risks }) => {
  const most = max_per_tank.value ?? Number.POSITIVE_INFINITY;
  if (group_min.value > most) return ["company.group_min", "above max_per_tank", "Correct one of the two."];
  if ("single_per_tank" in risks && most !== 1)
    return [
      "company.max_per_tank",
      "must be 1 with the risk single_per_tank",
      "Set it to 1 or drop the risk.",
    ];
  if ("pair_only" in risks && most !== 2)
    return ["company.max_per_tank", "must be 2 with the risk pair_only", "Set it to 2 or drop the risk."];
  return;
};

const shells: Rule = ({ needs, kind }) =>
  (needs.empty_shells !== null) !== (kind.group.value === "hermit") && [
    "needs.empty_shells",
    "hermits need spare shells, others do not",
    "Give a spread to a hermit, null to others.",
  ];

const lid: Rule = ({ needs, risks }) =>
  ("jumps" in risks || "escapes" in risks) &&
  !needs.lid.value && [
    "needs.lid",
    "must be true for an animal that jumps or escapes",
    "Set it to true or drop the risk.",
  ];

const pumpGuard: Rule = ({ needs, risks }) =>
  "pump_intake_hazard" in risks &&
  !needs.pump_guard.value && [
    "needs.pump_guard",
    "must be true with the risk pump_intake_hazard",
    "Set it to true or drop the risk.",
  ];

const ALGAE = ["hair_algae", "bubble_algae"] as const;

const service: Rule = ({ diet, services }) => {
  for (const shelf of ALGAE) {
    if (services[`${shelf}_removal`].value > 0 && diet[shelf].value === 0)
      return [
        `services.${shelf}_removal`,
        `above 0, but ${shelf} is not eaten`,
        "Set it to 0, or give a share.",
      ];
  }
  return;
};

const NUMBER_IN_WORDS = /(\d+(?:\.\d+)?) (days|mm deep|litres|m²|°C)/g;

/** What a figure in a sentence may be: a fact of the same unit. */
function figures({ tank, needs, water }: AnimalFile): Readonly<Record<string, readonly number[]>> {
  return {
    days: [tank.min_age.value],
    "mm deep": [needs.sand_depth.value],
    litres: [tank.min_volume.value, tank.spacing.central],
    "m²": [needs.sand_area.value / 1e4],
    "°C": [water.temperature.max],
  };
}

/** `only_if` repeats figures in words: they must be those of the facts. */
const sameFigures: Rule = (animal) => {
  const facts = figures(animal);
  for (const [index, sentence] of animal.only_if.entries()) {
    for (const [all, number, unit = ""] of sentence.matchAll(NUMBER_IN_WORDS)) {
      if (!facts[unit]?.includes(Number(number)))
        return [
          `only_if.${index}`,
          `says ${all}, the fact is ${facts[unit]?.join(" or ")}`,
          "Make the two agree.",
        ];
    }
  }
  return;
};

export const keepingRules: readonly Rule[] = [company, shells, lid, pumpGuard, service, sameFigures];
