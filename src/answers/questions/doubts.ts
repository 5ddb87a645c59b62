/** What is wrong with a sent form, beside the fields that told it, in the words of the file's reader. */
import type { Finding } from "../../contract/tank-file/finding.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import { type FormField, fieldsOf } from "./fields.ts";
import { parseAnimals } from "./parse.ts";
import { animalLines, type Values } from "./prefill.ts";

export interface FieldDoubt {
  /** Name of the field; its input's id. */
  readonly field: string;
  readonly text: string;
  /** What to put into the field instead; its own unit in it. */
  readonly choices: readonly { readonly label: string; readonly text: string }[];
}

export const withText = (choices: Finding["choices"]): FieldDoubt["choices"] =>
  choices.flatMap(({ label, text }) => (text === null ? [] : [{ label, text }]));

/** Findings beside the fields that tell them; what belongs to no field stands at the first of the question. */
export function placed(
  findings: readonly Finding[],
  questions: readonly number[],
  sent: Values,
  file: TankFile,
): readonly FieldDoubt[] {
  const fields = questions.flatMap((question) => fieldsOf(question));
  return findings.map((finding): FieldDoubt => {
    const { path, message } = finding;
    const choices = withText(finding.choices);
    const line = /^(animals_present|fish)\[(\d+)\]\.(animal|count)/.exec(path);
    if (line !== null && questions.includes(4)) return inLine(line, finding, sent, file);
    const field = fieldAt(path, fields, file);
    const first = fields[0]?.name ?? "";
    return field === undefined
      ? { field: first, text: message.text, choices: [] }
      : { field: field.name, text: message.text, choices };
  });
}

/** The field that tells an entry; none for a reading of the daybook, which no question can change. */
export function fieldAt(path: string, fields: readonly FormField[], file: TankFile): FormField | undefined {
  if (outsideDocument(path, file)) return undefined;
  const food = /^feeding\.foods\[(\d+)\]/.exec(path)?.[1];
  const place =
    food === undefined
      ? path.replace(/^readings\[\d+\]/, "readings").replace(/\[\d+\].*$/, "")
      : `feeding.foods.${file.feeding?.foods?.[Number(food)]?.kind ?? ""}`;
  return fields.find((one) => one.kind !== "box" && one.path === place);
}

/** A reading of the daybook, which this form can't change. */
const outsideDocument = (path: string, file: TankFile): boolean =>
  Number(/^readings\[(\d+)\]/.exec(path)?.[1] ?? -1) >= (file.readings?.length ?? 0);

function inLine(
  [, list, index, part]: RegExpExecArray,
  { message, choices }: Finding,
  sent: Values,
  file: TankFile,
): FieldDoubt {
  const entry = (list === "fish" ? file.fish : file.animals_present)?.[Number(index)];
  const line = animalLines(file).find((one) => one.entry === entry)?.line ?? "";
  const name =
    Object.keys(sent).find((key) => /^animal_\d+$/.test(key) && sameLine(sent[key] ?? "", line)) ??
    "animal_1";
  const fixed = (text: string) =>
    part === "animal"
      ? entry?.count === undefined
        ? text
        : `${entry.count} ${text}`
      : `${text} ${entry?.animal}`;
  return {
    field: name,
    text: message.text,
    choices: withText(choices).map(({ label, text }) => ({ label, text: fixed(text) })),
  };
}

/** "two clownfish" stands as "2 clownfish" in the document. */
function sameLine(typed: string, line: string): boolean {
  const answer = parseAnimals(typed.trim());
  const list = answer.kind === "entries" ? answer.entries["animals_present"] : [];
  const [entry] = list as { animal: string; count?: unknown }[];
  return (
    entry !== undefined &&
    (entry.count === undefined ? entry.animal : `${entry.count} ${entry.animal}`) === line
  );
}
