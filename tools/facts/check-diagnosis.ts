/** What must hold between the files of diagnosis: traits, clues, animals and shares that exist and add up. */
import type { Facts } from "./check-shape.ts";
import { EFFECTS, type QuestionsFile } from "./diagnosis-schema.ts";
import type { Problem } from "./problem.ts";

interface Thing {
  readonly id: string;
  readonly chances: Readonly<Record<string, { readonly value: number }>>;
}

const optionsOf = (questions: QuestionsFile): string[] =>
  Object.entries(questions).flatMap(([id, question]) =>
    "options" in question ? Object.keys(question.options) : [id],
  );

/** Options of one question exclude each other: what a thing leaves open is shared by those it does not name. */
function checkShares(file: string, { chances }: Thing, questions: QuestionsFile): Problem[] {
  return Object.entries(questions).flatMap(([id, question]) => {
    if (!("options" in question)) return [];
    const options = Object.keys(question.options);
    const named = options.filter((option) => chances[option] !== undefined);
    const sum = named.reduce((total, option) => total + (chances[option]?.value ?? 0), 0);
    const left = 1 - sum;
    const open = options.length - named.length;
    const fits = open === 0 ? Math.abs(left) < 1e-9 : left >= 0.001 * open && left < 0.8;
    return fits
      ? []
      : [
          {
            file,
            field: `chances.${id}`,
            wrong: `options sum to ${sum.toFixed(3)}, ${open} of them not named`,
            fix: "Leave a little for those not named, at most 0.8 in all; name all of them only where they sum to 1.",
          },
        ];
  });
}

function checkThing(file: string, thing: Thing, questions: QuestionsFile): Problem[] {
  const known = new Set(optionsOf(questions));
  const folder = file.split("/")[0];
  return [
    ...(file === `${folder}/${thing.id}.yaml`
      ? []
      : [{ file, field: "id", wrong: `does not match the file name: ${thing.id}`, fix: "Rename one." }]),
    ...Object.keys(thing.chances)
      .filter((trait) => !known.has(trait))
      .map((trait) => ({
        file,
        field: `chances.${trait}`,
        wrong: "no question asks this",
        fix: `Add it to ${folder}/questions.yaml, or correct the name.`,
      })),
    ...checkShares(file, thing, questions),
  ];
}

function checkAnimals({ animals, diagnosis }: Facts): Problem[] {
  const known = new Set([...animals.values()].map(({ id }) => id));
  const named: [file: string, field: string, id: string][] = [
    ...[...diagnosis.growths].flatMap(([file, { eaters }]) =>
      Object.keys(eaters).map((id): [string, string, string] => [file, `eaters.${id}`, id]),
    ),
    ...[...diagnosis.hitchhikers].flatMap(([file, { animal }]): [string, string, string][] =>
      animal === null ? [] : [[file, "animal", animal]],
    ),
    ...Object.keys(diagnosis.waterline).map((id): [string, string, string] => [
      "causes/waterline.yaml",
      id,
      id,
    ]),
  ];
  return named
    .filter(([, , id]) => !known.has(id))
    .map(([file, field]) => ({
      file,
      field,
      wrong: "no such animal",
      fix: "Use the id of a file in facts/animals.",
    }));
}

function checkClues({ diagnosis }: Facts): Problem[] {
  const { clues, causes, artefacts, growthQuestions, hitchhikerQuestions } = diagnosis;
  const uses: [file: string, field: string, clue: string][] = [
    ...[...causes].flatMap(([file, cause]) =>
      Object.keys(cause.clues).map((clue): [string, string, string] => [file, `clues.${clue}`, clue]),
    ),
    ...Object.entries(artefacts).flatMap(([id, { speaks_for }]) =>
      speaks_for.map((clue): [string, string, string] => ["causes/test-artefacts.yaml", id, clue]),
    ),
    ...[growthQuestions, hitchhikerQuestions].flatMap((questions) =>
      Object.entries(questions).flatMap(([id, question]): [string, string, string][] =>
        "record" in question && question.record !== undefined
          ? [["questions.yaml", id, question.record]]
          : [],
      ),
    ),
  ];
  const used = new Set(uses.map(([, , clue]) => clue));
  return [
    ...uses
      .filter(([, , clue]) => clues[clue] === undefined)
      .map(([file, field]) => ({
        file,
        field,
        wrong: "no such clue",
        fix: "Use an id of causes/clues.yaml.",
      })),
    ...Object.keys(clues)
      .filter((clue) => !used.has(clue))
      .map((clue) => ({
        file: "causes/clues.yaml",
        field: clue,
        wrong: "nothing asks for this clue",
        fix: "Name it in a cause, or drop it.",
      })),
  ];
}

/** Ranking needs rivals. */
function checkEffects({ diagnosis }: Facts): Problem[] {
  return EFFECTS.flatMap((effect) => {
    const count = [...diagnosis.causes.values()].filter(({ explains }) => explains[effect] !== undefined);
    return count.length >= 2
      ? []
      : [
          {
            file: "causes/",
            field: effect,
            wrong: `${count.length} causes explain it`,
            fix: "Two at least must: a single cause can't be weighed.",
          },
        ];
  });
}

export function checkDiagnosis(facts: Facts): Problem[] {
  const { growths, hitchhikers, growthQuestions, hitchhikerQuestions } = facts.diagnosis;
  return [
    ...[...growths].flatMap(([file, thing]) => checkThing(file, thing, growthQuestions)),
    ...[...hitchhikers].flatMap(([file, thing]) => checkThing(file, thing, hitchhikerQuestions)),
    ...checkAnimals(facts),
    ...checkClues(facts),
    ...checkEffects(facts),
  ];
}
