/** The files of diagnosis by what they hold: which schema each is read by, and all of them in one. */
import type { z } from "zod";
import {
  type ArtefactsFile,
  artefactsSchema,
  type CauseFile,
  type CluesFile,
  causeSchema,
  cluesSchema,
  type GrowthFile,
  growthSchema,
  type HitchhikerFile,
  hitchhikerSchema,
  type QuestionsFile,
  questionsSchema,
  type WaterlineFile,
  waterlineSchema,
} from "./diagnosis-schema.ts";

export const DIAGNOSIS_FOLDERS = ["growths", "hitchhikers", "causes"] as const;

/** Keys of the maps are file names. */
export interface DiagnosisFiles {
  readonly growths: Map<string, GrowthFile>;
  readonly hitchhikers: Map<string, HitchhikerFile>;
  readonly causes: Map<string, CauseFile>;
  growthQuestions: QuestionsFile;
  hitchhikerQuestions: QuestionsFile;
  clues: CluesFile;
  artefacts: ArtefactsFile;
  waterline: WaterlineFile;
}

export const noDiagnosis = (): DiagnosisFiles => ({
  growths: new Map(),
  hitchhikers: new Map(),
  causes: new Map(),
  growthQuestions: {},
  hitchhikerQuestions: {},
  clues: {},
  artefacts: {},
  waterline: {},
});

type Parse = <Out>(schema: z.ZodType<Out>, file: string, value: unknown, keep: (out: Out) => void) => void;

/** Reads one file of diagnosis into `into`; false where the file belongs to another part of facts/. */
export function parseDiagnosis(file: string, value: unknown, parse: Parse, into: DiagnosisFiles): boolean {
  const [folder, name] = file.split("/");
  if (!DIAGNOSIS_FOLDERS.some((one) => one === folder)) return false;
  if (file === "growths/questions.yaml")
    parse(questionsSchema, file, value, (out) => (into.growthQuestions = out));
  else if (file === "hitchhikers/questions.yaml")
    parse(questionsSchema, file, value, (out) => (into.hitchhikerQuestions = out));
  else if (folder === "growths") parse(growthSchema, file, value, (out) => into.growths.set(file, out));
  else if (folder === "hitchhikers")
    parse(hitchhikerSchema, file, value, (out) => into.hitchhikers.set(file, out));
  else if (name === "clues.yaml") parse(cluesSchema, file, value, (out) => (into.clues = out));
  else if (name === "test-artefacts.yaml")
    parse(artefactsSchema, file, value, (out) => (into.artefacts = out));
  else if (name === "waterline.yaml") parse(waterlineSchema, file, value, (out) => (into.waterline = out));
  else parse(causeSchema, file, value, (out) => into.causes.set(file, out));
  return true;
}

/** Every file with its name, for checks that read them all alike. */
export const diagnosisFiles = (files: DiagnosisFiles): [string, unknown][] => [
  ...files.growths,
  ...files.hitchhikers,
  ...files.causes,
  ["causes/test-artefacts.yaml", files.artefacts],
  ["causes/waterline.yaml", files.waterline],
];
