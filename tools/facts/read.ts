/** Reads facts/ from disk and parses its YAML. What cannot be parsed is a problem, not a crash. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parseDocument } from "yaml";
import { DIAGNOSIS_FOLDERS } from "./diagnosis-files.ts";
import type { Problem } from "./problem.ts";

/** File (below facts/) → what it holds, unchecked. */
export type RawFacts = Map<string, unknown>;

/** Parses one file. `facts` gets what it holds, `problems` what is wrong with its YAML. */
export function parseFact(file: string, source: string, facts: RawFacts, problems: Problem[]): void {
  const document = parseDocument(source, { prettyErrors: true, uniqueKeys: true });
  for (const error of document.errors) {
    const line = error.linePos?.[0].line ?? 0;
    const duplicate = error.code === "DUPLICATE_KEY";
    problems.push({
      file,
      field: `line ${line}`,
      wrong: duplicate ? "an id or field stands twice" : `not valid YAML (${error.code})`,
      fix: duplicate
        ? "Keep one of the two."
        : "Compare the line with a neighbour; quote text that holds a comma or a colon.",
    });
  }
  if (document.errors.length === 0) facts.set(file, document.toJS());
}

/** Every YAML file below `folder`, in order of name. */
export function readFacts(folder: string): { facts: RawFacts; problems: Problem[] } {
  const facts: RawFacts = new Map();
  const problems: Problem[] = [];
  const files = ["animals", "parameters", "medicines", ...DIAGNOSIS_FOLDERS].flatMap((kind) =>
    readdirSync(join(folder, kind)).map((name) => `${kind}/${name}`),
  );
  for (const file of [...files, "sources.yaml"].sort()) {
    if (file.endsWith(".yaml")) parseFact(file, readFileSync(join(folder, file), "utf8"), facts, problems);
    else problems.push({ file, field: "", wrong: "not a .yaml file", fix: "Move it out of this folder." });
  }
  return { facts, problems };
}
