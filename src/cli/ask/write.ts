/** Answers as a tank file on disk; nothing is overwritten unasked. */
import { renameSync, rmSync, writeFileSync } from "node:fs";
import { stringify } from "yaml";
import type { AnswerContext, Entries } from "../../answers/questions/answer.ts";
import { inWordsDate } from "../../contract/quantity/calendar.ts";
import { CliError, EXIT } from "../io.ts";

export function tankFileText(
  entries: Entries,
  { today, preferences }: AnswerContext,
  form: "yaml" | "json" = "yaml",
): string {
  const { locale, gallon } = preferences;
  const own = { ...(locale === "en" ? {} : { locale }), ...(gallon === null ? {} : { gallon }) };
  const body = {
    grazewell_tank: 1,
    ...(Object.keys(own).length === 0 ? {} : { preferences: own }),
    ...entries,
  };
  if (form === "json") return `${JSON.stringify(body, null, 2)}\n`;
  return `# Written by grazewell ask on ${inWordsDate(today)}. What else can stand here: docs/tank-file.md\n${stringify(body)}`;
}

export function writeTankFile(file: string, text: string, force: boolean): void {
  try {
    if (force) replaceWhole(file, text);
    else writeFileSync(file, text, { flag: "wx" });
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    const why =
      code === "EEXIST"
        ? "is there already. Name another file, or add --force to write over it"
        : `can't be written (${code ?? String(error)})`;
    throw new CliError(EXIT.cannotWrite, [`Tank file "${file}": ${why}`]);
  }
}

/** Beside it first, then in its place: whoever breaks off in between still has the old file. */
function replaceWhole(file: string, text: string): void {
  const beside = `${file}.new`;
  try {
    writeFileSync(beside, text);
    renameSync(beside, file);
  } catch (error) {
    rmSync(beside, { force: true });
    throw error;
  }
}
