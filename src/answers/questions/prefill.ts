/** What a tank file says, as the fields of the questions show it: the keeper's own text and unit, ready to be changed. */
import { parseAmount } from "../../contract/quantity/parse.ts";
import { decimalSign } from "../../contract/quantity/preferences.ts";
import { spelled } from "../../contract/quantity/rule.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import { shownIn } from "../units-shown.ts";
import { type FormField, fieldsOf, firstUnit, type TextField } from "./fields.ts";
import { entryAt } from "./paths.ts";

/** Sent by a form or shown in it: field's name → text. */
export type Values = Readonly<Record<string, string>>;

/** Fields of question 1 to 8, as the document answers them; an unanswered one is empty. */
export function valuesOf(question: number, file: TankFile): Values {
  return Object.assign({}, ...fieldsOf(question).map((field) => shownOf(field, file)));
}

function shownOf(field: FormField, file: TankFile): Values {
  switch (field.kind) {
    case "lines":
      return linesOf(file);
    case "box":
      return isNothing(field.name, file) ? { [field.name]: "yes" } : {};
    case "words":
      return { [field.name]: wordOf(field.name, field.path, file) };
    case "text":
      return textOf(field, file);
  }
}

function wordOf(name: string, path: string, file: TankFile): string {
  if (name === "wrong") return troubled(file) ? "yes" : "";
  const value = entryAt(file, path);
  if (typeof value === "boolean") return value ? "yes" : "no";
  // A share such as 30 % has no button: left as it is until another is chosen.
  return typeof value === "string" ? value : "";
}

const troubled = ({ trouble, medicines = [] }: TankFile): boolean =>
  (trouble?.trim() ?? "") !== "" || medicines.length > 0;

function isNothing(name: string, file: TankFile): boolean {
  if (name === "food_none") return file.feeding?.foods?.length === 0;
  return file.animals_present?.length === 0 && (file.fish?.length ?? 0) === 0;
}

/** The entry that a text field tells, as it stands in the document. */
export function rawOf(field: TextField, file: TankFile): unknown {
  if (field.path.startsWith("feeding.foods.")) {
    const kind = field.path.slice("feeding.foods.".length);
    const food = file.feeding?.foods?.find((one) => one.kind === kind);
    return food === undefined ? undefined : (food.g_per_day ?? "some");
  }
  if (field.path.startsWith("readings.")) {
    const name = field.path.slice("readings.".length);
    return (file.readings?.at(-1) as Readonly<Record<string, unknown>> | undefined)?.[name];
  }
  if (field.path === "medicines") return file.medicines?.join(", ");
  return entryAt(file, field.path);
}

function textOf(field: TextField, file: TankFile): Values {
  const first = firstUnit(field, shownIn(file.preferences));
  const raw = rawOf(field, file);
  const units = field.units;
  if (raw === undefined)
    return { [field.name]: "", ...(units === undefined ? {} : { [`${field.name}_unit`]: first }) };
  const text = Array.isArray(raw) ? raw.join("x") : String(raw);
  if (units === undefined) return { [field.name]: text };
  // A bare number is in the unit of the entry's name, which stands first but for sand, kept in mm.
  if (typeof raw === "number" && field.name === "sand_depth")
    return { sand_depth: `${raw} mm`, sand_depth_unit: first };
  const split = splitUnit(text, units, file);
  return {
    [field.name]: split.text,
    [`${field.name}_unit`]: split.unit ?? (typeof raw === "string" ? first : (units[0] ?? "")),
  };
}

/** "55 US gal" as 55 and the choice beside it; a unit that is not on offer stays in the text. */
function splitUnit(text: string, units: readonly string[], file: TankFile) {
  const sides = /^(.*\d)\s*(cm|in)$/i.exec(text);
  const unitText =
    parseAmount(text, decimalSign(file.preferences?.locale ?? "en"))?.unit ?? sides?.[2] ?? null;
  const unit = unitText === null ? undefined : units.find((one) => spelled(one) === spelled(unitText ?? ""));
  if (unit === undefined || !text.endsWith(unit)) {
    const last = sides === null ? undefined : units.find((one) => one === sides[2]);
    if (last === undefined) return { text, unit: undefined };
    return { text: sides?.[1] ?? text, unit: last };
  }
  return { text: text.slice(0, -unit.length).trim(), unit };
}

type AnimalEntry = Readonly<Record<string, unknown>>;

/** Lines of animals and the entries they stand for: an unchanged line keeps its size and its day of arrival. */
export function animalLines({ animals_present = [], fish = [] }: TankFile): readonly {
  readonly line: string;
  readonly list: "animals_present" | "fish";
  readonly entry: AnimalEntry;
}[] {
  const line = ({ animal = "fish", count }: { animal?: string | undefined; count?: unknown }) =>
    count === undefined ? animal : `${count} ${animal}`;
  return [
    ...animals_present.map((entry) => ({ line: line(entry), list: "animals_present" as const, entry })),
    ...fish.map((entry) => ({ line: line(entry), list: "fish" as const, entry })),
  ];
}

const linesOf = (file: TankFile): Values =>
  Object.fromEntries(animalLines(file).map(({ line }, i) => [`animal_${i + 1}`, line]));
