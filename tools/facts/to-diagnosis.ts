/** From the files of diagnosis to the `DiagnosisFacts` the engine uses. */
import type {
  CauseFact,
  DiagnosisFacts,
  GrowthFact,
  HitchhikerFact,
  KeyQuestion,
  SaidFact,
} from "../../src/engine/types/diagnosis.ts";
import type { Reading } from "../../src/engine/types/tank.ts";
import type { DiagnosisFiles } from "./diagnosis-files.ts";
import type { CauseFile, GrowthFile, HitchhikerFile, QuestionsFile } from "./diagnosis-schema.ts";
import type { Provenance } from "./fact.ts";

const saidFact = ({ text, evidence, source, note }: Provenance & { readonly text: string }): SaidFact => ({
  text,
  evidence: note === undefined ? evidence : `${evidence}: ${note}`,
  sources: source,
});

const questionsFrom = (file: QuestionsFile): KeyQuestion[] =>
  Object.entries(file).map(([id, question]) => {
    const { ask, how = null, effort } = question;
    return "options" in question
      ? {
          ...{ id, ask, how, effort, no: null, record: null },
          options: Object.entries(question.options).map(([option, words]) => ({ id: option, words })),
        }
      : {
          ...{ id, ask, how, effort, no: question.no, record: question.record ?? null },
          options: [{ id, words: question.yes }],
        };
  });

/** What a file leaves open is filled: a yes by the question's own chance, the rest of a share in equal parts. */
function chancesOf(chances: GrowthFile["chances"], questions: QuestionsFile): Record<string, number> {
  const all: Record<string, number> = {};
  for (const [id, question] of Object.entries(questions)) {
    if (!("options" in question)) {
      all[id] = chances[id]?.value ?? question.otherwise;
      continue;
    }
    const options = Object.keys(question.options);
    const sum = options.reduce((total, option) => total + (chances[option]?.value ?? 0), 0);
    const open = options.filter((option) => chances[option] === undefined).length;
    for (const option of options) all[option] = chances[option]?.value ?? (1 - sum) / open;
  }
  return all;
}

const readOf = (chances: GrowthFile["chances"]): Record<string, string[]> =>
  Object.fromEntries(
    Object.entries(chances).flatMap(([trait, { source }]) => {
      const works = source.filter((key) => !key.startsWith("memory-"));
      return works.length === 0 ? [] : [[trait, works]];
    }),
  );

function describedFrom(file: GrowthFile | HitchhikerFile, questions: QuestionsFile, total: number) {
  return {
    id: file.id,
    name: file.names.common.value,
    also: file.names.also.value,
    scientific: file.names.scientific.value,
    prior: file.prior.value / total,
    looks: saidFact(file.looks),
    chances: chancesOf(file.chances, questions),
    read: readOf(file.chances),
    doLines: file.do.map(saidFact),
    dont: file.dont.map(saidFact),
    stop: saidFact(file.stop),
  };
}

const sum = (files: Iterable<GrowthFile | HitchhikerFile>): number =>
  [...files].reduce((total, { prior }) => total + prior.value, 0);

function growthsFrom({ growths, growthQuestions }: DiagnosisFiles): GrowthFact[] {
  const total = sum(growths.values());
  return [...growths.values()].map((file) => ({
    ...describedFrom(file, growthQuestions, total),
    sighting: file.sighting,
    shelf: file.shelf,
    eaters: Object.entries(file.eaters).map(([animal, { value, evidence }]) => ({
      ...{ animal, eats: value, evidence },
    })),
    crew: file.crew.value,
    crewSaid: saidFact(file.crew_said),
    closesGates: file.closes_gates,
    toxin: file.toxin === null ? null : saidFact(file.toxin),
  }));
}

function hitchhikersFrom({ hitchhikers, hitchhikerQuestions }: DiagnosisFiles): HitchhikerFact[] {
  const total = sum(hitchhikers.values());
  return [...hitchhikers.values()].map((file) => ({
    ...describedFrom(file, hitchhikerQuestions, total),
    verdict: file.verdict.value,
    because: saidFact(file.because),
    animal: file.animal,
    shelves: file.shelves,
    dangers: file.dangers,
  }));
}

function causeFrom(file: CauseFile): CauseFact {
  const { text, evidence, sources } = { ...saidFact(file.name) };
  return {
    id: file.id,
    name: text,
    evidence,
    sources,
    askFirst: file.ask_first,
    explains: Object.fromEntries(
      Object.entries(file.explains).map(([effect, chance]) => [effect, chance?.value ?? 0]),
    ),
    clues: Object.fromEntries(
      Object.entries(file.clues).map(([clue, row]) => [clue, { if: row.if, otherwise: row.else }]),
    ),
    doLines: file.do.map(saidFact),
    dont: file.dont.map(saidFact),
    stop: saidFact(file.stop),
  };
}

/** A reading is named in files as people write it, in the engine by its canonical unit. */
const CANONICAL: Readonly<Record<string, Reading["quantity"]>> = {
  no2_mg_per_l: "no2_mg_n_per_l",
  no3_mg_per_l: "no3_mg_n_per_l",
  po4_mg_per_l: "po4_mg_p_per_l",
  alkalinity_dkh: "alkalinity_meq_per_l",
};

export function toDiagnosis(files: DiagnosisFiles): DiagnosisFacts {
  return {
    growths: { questions: questionsFrom(files.growthQuestions), things: growthsFrom(files) },
    hitchhikers: { questions: questionsFrom(files.hitchhikerQuestions), things: hitchhikersFrom(files) },
    clues: Object.entries(files.clues).map(([id, clue]) => ({ id, ...clue })),
    causes: [...files.causes.values()].map(causeFrom),
    artefacts: Object.entries(files.artefacts).map(([id, { of, shows, says, speaks_for, check }]) => ({
      ...{ id, shows, speaksFor: speaks_for, says: saidFact(says), check: saidFact(check) },
      of: CANONICAL[of] ?? (of as Reading["quantity"]),
    })),
    waterline: Object.entries(files.waterline).map(([animal, { value, evidence, source }]) => ({
      ...{ animal, habit: value, evidence, sources: source },
    })),
  };
}
