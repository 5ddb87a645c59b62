/** Checks the shape of every file against its schema and says in plain words what is wrong. */
import type { z } from "zod";
import { type DiagnosisFiles, noDiagnosis, parseDiagnosis } from "./diagnosis-files.ts";
import { type MedicineFile, medicineSchema } from "./medicine-schema.ts";
import type { Problem } from "./problem.ts";
import type { RawFacts } from "./read.ts";
import {
  type AnimalFile,
  animalSchema,
  type ParameterFile,
  parameterFileSchema,
  type SourceFile,
  sourceFileSchema,
} from "./schema.ts";

/** All of facts/, each file in the shape of its schema. Keys of `animals` and `parameters` are file names. */
export interface Facts {
  readonly animals: ReadonlyMap<string, AnimalFile>;
  readonly parameters: ReadonlyMap<string, ParameterFile>;
  readonly sources: SourceFile;
  readonly diagnosis: DiagnosisFiles;
  readonly medicines: ReadonlyMap<string, MedicineFile>;
}

const MISSING_FIX: Readonly<Record<string, string>> = {
  unit: "Every figure needs its unit, as its neighbours have it.",
  source: "Name at least one key of facts/sources.yaml; memory-trade if nothing was read.",
  evidence: "Say how it is known: read, computed, memory, judgement or backfitted.",
};

/** The likely way out of a schema issue. */
function fixFor(issue: z.core.$ZodIssue, last: string): string {
  if (issue.code === "custom") {
    const { fix } = issue.params ?? {};
    if (typeof fix === "string") return fix;
  }
  if (MISSING_FIX[last] !== undefined) return MISSING_FIX[last];
  if (issue.code === "unrecognized_keys" || issue.code === "invalid_key") {
    return "Check the spelling, or add the field to tools/facts/animal-schema.ts and src/engine/types.";
  }
  if (issue.code === "invalid_value") return `Use one of: ${issue.values.join(", ")}.`;
  return "Compare with another file of the same folder.";
}

function isMissing(value: unknown, path: readonly PropertyKey[]): boolean {
  let at = value;
  for (const key of path) at = (at as Record<PropertyKey, unknown> | undefined | null)?.[key];
  return at === undefined;
}

function shapeProblems(file: string, value: unknown, error: z.ZodError): Problem[] {
  return error.issues.map((issue) => {
    const path = [...issue.path];
    const last = String(path.at(-1) ?? "");
    const wrong = isMissing(value, path) ? `${last} is missing` : issue.message;
    return { file, field: path.join("."), wrong, fix: fixFor(issue, last) };
  });
}

/** The facts that have the right shape; `problems` gets the rest. */
export function checkShape(raw: RawFacts, problems: Problem[]): Facts {
  const animals = new Map<string, AnimalFile>();
  const parameters = new Map<string, ParameterFile>();
  const medicines = new Map<string, MedicineFile>();
  const diagnosis = noDiagnosis();
  let sources: SourceFile = {};
  const parse = <Out>(schema: z.ZodType<Out>, file: string, value: unknown, keep: (out: Out) => void) => {
    const result = schema.safeParse(value);
    if (result.success) keep(result.data);
    else problems.push(...shapeProblems(file, value, result.error));
  };
  for (const [file, value] of raw) {
    if (file.startsWith("animals/")) parse(animalSchema, file, value, (out) => animals.set(file, out));
    else if (file.startsWith("medicines/"))
      parse(medicineSchema, file, value, (out) => medicines.set(file, out));
    else if (file === "sources.yaml") parse(sourceFileSchema, file, value, (out) => (sources = out));
    else if (!parseDiagnosis(file, value, parse, diagnosis))
      parse(parameterFileSchema, file, value, (out) => parameters.set(file, out));
  }
  return { animals, parameters, sources, diagnosis, medicines };
}
