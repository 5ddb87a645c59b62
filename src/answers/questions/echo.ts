/** How the answers to a question are kept, in words: the keeper's text, or how it was read where that differs. */
import { inWordsDate } from "../../contract/quantity/calendar.ts";
import type { Notice } from "../../contract/tank-file/finding.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import { fieldAt } from "./doubts.ts";
import { type FormField, fieldsOf, UNIT_WORDS } from "./fields.ts";
import { type Values, valuesOf } from "./prefill.ts";
import { QUESTIONS } from "./questions.ts";

export function echoOf(question: number, file: TankFile, notices: readonly Notice[]): readonly string[] {
  const fields = fieldsOf(question);
  const values = valuesOf(question, file);
  const lines = fields.flatMap((field) => {
    const said = notices.filter(({ path }) => fieldAt(path, fields, file) === field).map(({ text }) => text);
    // A text that was read otherwise says so itself; several animals each have their own line.
    return said.length > 0 && field.kind !== "lines" ? said : [...keptLines(field, values), ...said];
  });
  if (lines.length > 0) return lines;
  const notSure = QUESTIONS[question - 1]?.notSure;
  return [
    question === 8 ? "No: nothing is wrong." : `Left open: ${notSure ?? "nothing is taken for known"}.`,
  ];
}

function keptLines(field: FormField, values: Values): readonly string[] {
  const value = values[field.name] ?? "";
  switch (field.kind) {
    case "lines":
      return Object.entries(values).flatMap(([name, line]) =>
        name.startsWith(`${field.name}_`) && line !== "" ? [line] : [],
      );
    case "box":
      return value === "" ? [] : [`${field.label}.`];
    case "words": {
      const word = field.options.find((option) => option.value === value)?.label ?? value;
      return value === "" || field.name === "wrong" ? [] : [`${field.label}: ${word}`];
    }
    case "text": {
      const unit = values[`${field.name}_unit`];
      const words = unit === undefined ? "" : ` ${UNIT_WORDS[unit] ?? unit}`;
      const shown = /^\d{4}-\d\d-\d\d$/.test(value) ? inWordsDate(value) : value;
      return value === "" ? [] : [`${field.label}: ${shown}${words}`];
    }
  }
}
