/** What must hold between files: ids, sources, who eats whom, ranges of the model's symbols. */
import type { AnimalGroup, AnimalRisk } from "../../src/engine/types/animal.ts";
import type { Facts } from "./check-shape.ts";
import { diagnosisFiles } from "./diagnosis-files.ts";
import type { Problem } from "./problem.ts";
import type { AnimalFile } from "./schema.ts";

/** A likely eater of a group carries this risk, so that a page that lists risks cannot miss it. */
const RISK_OF_EATING: Readonly<Partial<Record<AnimalGroup, AnimalRisk>>> = {
  snail: "eats_snails",
  hermit: "eats_hermits",
  shrimp: "eats_shrimp",
  fish: "eats_fish",
  worm: "eats_worms_pods",
  pod: "eats_worms_pods",
};

/** Every source key named anywhere in a value, with its path. */
function* namedSources(value: unknown, path: string): Generator<[key: string, path: string]> {
  if (typeof value !== "object" || value === null) return;
  for (const [field, inner] of Object.entries(value)) {
    const at = path === "" ? field : `${path}.${field}`;
    if (field === "source" && typeof inner === "string") yield [inner, at];
    else if (field === "source" && Array.isArray(inner)) for (const key of inner) yield [String(key), at];
    else yield* namedSources(inner, at);
  }
}

function checkSources({ animals, parameters, sources, diagnosis, medicines }: Facts): Problem[] {
  return [...animals, ...parameters, ...diagnosisFiles(diagnosis), ...medicines].flatMap(([file, value]) =>
    [...namedSources(value, "")]
      .filter(([key]) => !Object.hasOwn(sources, key))
      .map(([key, field]) => ({
        file,
        field,
        wrong: `unknown source ${key}`,
        fix: "Add it to facts/sources.yaml, or correct the key.",
      })),
  );
}

/** One substance under one name: what a daybook says must resolve to one of them. */
function checkMedicines({ medicines }: Facts): Problem[] {
  const taken = new Map<string, string>();
  return [...medicines].flatMap(([file, { id, names }]) => {
    const problems: Problem[] =
      file === `medicines/${id}.yaml`
        ? []
        : [{ file, field: "id", wrong: `does not match the file name: ${id}`, fix: "Rename one." }];
    for (const name of new Set([names.common.value, ...names.also.value].map((one) => one.toLowerCase()))) {
      const first = taken.get(name);
      if (first === undefined) taken.set(name, file);
      else
        problems.push({
          ...{ file, field: "names.also", wrong: `the name ${name} is taken by ${first}` },
          fix: "Leave it to one of them.",
        });
    }
    return problems;
  });
}

function checkIds({ animals, parameters }: Facts): Problem[] {
  const problems: Problem[] = [];
  const seen = new Map<string, string>();
  const take = (id: string, file: string, field: string) => {
    const first = seen.get(id);
    if (first === undefined) seen.set(id, file);
    else
      problems.push({
        file,
        field,
        wrong: `the id ${id} is taken by ${first}`,
        fix: "Give one of them another id.",
      });
  };
  for (const [file, animal] of animals) {
    take(animal.id, file, "id");
    if (file !== `animals/${animal.id}.yaml`)
      problems.push({
        file,
        field: "id",
        wrong: `does not match the file name: ${animal.id}`,
        fix: "Rename one.",
      });
  }
  for (const [file, family] of parameters) {
    const name = file.slice("parameters/".length, -".yaml".length);
    for (const id of Object.keys(family)) {
      take(id, file, id);
      const belongs = name.startsWith("model-") ? !id.includes(".") : id.startsWith(`${name}.`);
      if (!belongs)
        problems.push({
          file,
          field: id,
          wrong: "does not belong to this family",
          fix: "Move it to its own file.",
        });
    }
  }
  return problems;
}

const LINKS = [
  ["eaten_by", "eats_animals"],
  ["eats_animals", "eaten_by"],
] as const;

function checkEaters({ animals }: Facts): Problem[] {
  const byId = new Map<string, AnimalFile>([...animals.values()].map((animal) => [animal.id, animal]));
  const problems: Problem[] = [];
  for (const [file, animal] of animals) {
    for (const [field, mirror] of LINKS) {
      for (const [other, link] of Object.entries(animal[field])) {
        const at = { file, field: `${field}.${other}` };
        const back = byId.get(other)?.[mirror][animal.id];
        if (!byId.has(other))
          problems.push({ ...at, wrong: "no such animal", fix: "Use the id of a file in facts/animals." });
        else if (back?.value !== link.value)
          problems.push({
            ...at,
            wrong: `${mirror}.${animal.id} of animals/${other}.yaml says ${back?.value ?? "nothing"}`,
            fix: `Write "${link.value}" on both sides, or drop both lines.`,
          });
      }
    }
    for (const [prey, link] of Object.entries(animal.eats_animals)) {
      const group = byId.get(prey)?.kind.group.value;
      const risk = group === undefined ? undefined : RISK_OF_EATING[group];
      if (link.value === "likely" && risk !== undefined && animal.risks[risk] === undefined)
        problems.push({
          file,
          field: `risks.${risk}`,
          wrong: `missing, though it is likely to eat ${prey}`,
          fix: "Add the risk, or make the link possible.",
        });
    }
  }
  return problems;
}

function checkRanges({ parameters }: Facts): Problem[] {
  const all = new Map([...parameters.values()].flatMap((family) => Object.entries(family)));
  return [...parameters].flatMap(([file, family]) =>
    Object.entries(family).flatMap(([id, { range }]) =>
      range === undefined || all.has(range)
        ? []
        : [
            {
              file,
              field: `${id}.range`,
              wrong: `no parameter ${range}`,
              fix: "Use the id of a supply row.",
            },
          ],
    ),
  );
}

export function checkAcross(facts: Facts): Problem[] {
  return [
    ...checkIds(facts),
    ...checkMedicines(facts),
    ...checkSources(facts),
    ...checkEaters(facts),
    ...checkRanges(facts),
  ];
}
