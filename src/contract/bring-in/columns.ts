/**
 * What each column of a table holds. Names that this program writes, and plain words for them, are known; any other is
 * proposed or asked about, and what was answered is remembered by the column's name for the next file.
 */
import { ENTRY_FIELDS } from "../daybook/fields.ts";
import { MEASURES } from "../daybook/read-reading.ts";
import { MEASURED, type Measured } from "../daybook/reading.ts";
import { shown } from "../quantity/show.ts";
import { type AnswerChoice, type Answers, answered, type FileQuestion } from "./asked.ts";

export type Role =
  | { readonly is: "on" | "time" | "entry" | "leave_out" }
  /** A quantity's figures, in that unit where a cell has none. */
  | { readonly is: "reading"; readonly quantity: Measured; readonly unit: string }
  /** A field of the reader of entries, by its name. */
  | { readonly is: "field"; readonly name: string };

export interface Column {
  /** From 1, as a keeper counts. */
  readonly number: number;
  readonly header: string;
  readonly role: Role;
  /** Who said so: the header itself, the keeper now, or the keeper at an earlier file. */
  readonly from: "header" | "answer" | "remembered" | "empty";
  /** By which it is given another role. */
  readonly question: FileQuestion;
}

export interface ColumnHabits {
  /** Unit in which the keeper reads a quantity. */
  readonly unitOf: (quantity: Measured) => string;
  /** Roles as text, by `headerKey`. */
  readonly remembered: Answers;
}

const ON = ["date", "day", "on", "when", "observed", "measured", "datum", "tag"];
const TIME = ["time", "clock", "hour", "uhrzeit", "zeit"];
const FIELDS: Readonly<Record<string, string>> = {
  note: "note",
  notes: "note",
  remark: "note",
  remarks: "note",
  comment: "note",
  comments: "note",
  kind: "kind",
  quantity: "quantity",
  text: "text",
  value: "text",
  reading: "text",
  result: "text",
  unit: "unit",
  "kit step": "kit_step",
  animal: "animal",
};
/** Words and signs by which a column may be meant: proposed, never taken without a word. */
const MEANT: Readonly<Record<Measured, RegExp>> = {
  salinity_psu: /\b(?:salinity|sal|sg|specific gravity|salt|salinit[äa]t|salzgehalt)\b/,
  temperature_c: /\b(?:temp|temperature|temperatur)\b/,
  ph: /\bph\b/,
  alkalinity_dkh: /\b(?:alk|alkalinity|kh|dkh|carbonate hardness)\b/,
  no3_mg_per_l: /\b(?:no3|nitrate|nitrat)\b/,
  po4_mg_per_l: /\b(?:po4|phosphate|phosphat)\b/,
  tan_mg_n_per_l: /\b(?:nh3|nh4|ammonia|ammonium|tan)\b/,
  no2_mg_per_l: /\b(?:no2|nitrite|nitrit)\b/,
  calcium_mg_per_l: /\b(?:ca|calcium)\b/,
  magnesium_mg_per_l: /\b(?:mg|magnesium)\b(?!\s*\/)/,
};

/** Fields that entries have: known where the table tells the kind of each row. */
const FIELD_NAMES = [
  ...new Set(Object.values(ENTRY_FIELDS).flatMap((fields) => fields.map(({ name }) => name))),
];

export const headerKey = (header: string): string =>
  header.normalize("NFKC").toLowerCase().replaceAll("_", " ").replace(/\s+/g, " ").trim();

export const roleText = (role: Role): string =>
  role.is === "reading"
    ? `reading:${role.quantity}:${role.unit}`
    : role.is === "field"
      ? `field:${role.name}`
      : role.is;

function roleOf(text: string): Role | null {
  if (text === "on" || text === "time" || text === "entry" || text === "leave_out") return { is: text };
  const [, name] = /^field:([\w.]+)$/.exec(text) ?? [];
  if (name !== undefined) return { is: "field", name };
  const [, measured, unit = ""] = /^reading:(\w+):(.*)$/.exec(text) ?? [];
  const quantity = MEASURED.find((one) => one === measured);
  if (quantity === undefined) return null;
  const { units } = MEASURES[quantity];
  return units.includes(unit) || (units.length === 0 && unit === "")
    ? { is: "reading", quantity, unit }
    : null;
}

/** Columns that the header names for certain: a role; null where it must be asked. */
function knownRole(header: string, { unitOf }: ColumnHabits, kinds: boolean): Role | null {
  const key = headerKey(header);
  if (ON.includes(key)) return { is: "on" };
  if (TIME.includes(key)) return { is: "time" };
  const field = Object.hasOwn(FIELDS, key) ? FIELDS[key] : undefined;
  if (field !== undefined) return { is: "field", name: field };
  if (kinds) {
    const [own] = FIELD_NAMES.filter((one) => headerKey(one) === key);
    if (own !== undefined) return { is: "field", name: own };
  }
  const [, name = key, unit] = /^(.*?)\s*[([]([^)\]]*)[)\]]$/.exec(key) ?? [];
  const quantity = MEASURED.find((one) =>
    [one.replaceAll("_", " "), MEASURES[one].label.toLowerCase()].includes(name),
  );
  if (quantity === undefined) return null;
  const { units } = MEASURES[quantity];
  if (unit === undefined) {
    // Our own name ends in its unit; a plain word leaves it to the keeper's habit.
    return { is: "reading", quantity, unit: name.includes(" ") ? (units[0] ?? "") : unitOf(quantity) };
  }
  const stated = units.find((one) => headerKey(one) === unit);
  return stated === undefined ? null : { is: "reading", quantity, unit: stated };
}

/** The quantity that a cell names: its own name, its label, or the one that its words can mean. */
export function measuredIn(cell: string): Measured | null {
  const key = headerKey(cell);
  const named = MEASURED.find((one) => headerKey(one) === key || MEASURES[one].label.toLowerCase() === key);
  if (named !== undefined) return named;
  const [only, ...others] = MEASURED.filter((quantity) => MEANT[quantity].test(key));
  return only !== undefined && others.length === 0 ? only : null;
}

export interface Columns {
  readonly columns: readonly Column[];
  readonly questions: readonly FileQuestion[];
}

/** @param hasCells whether anything stands below a header */
export function columnsOf(
  headers: readonly string[],
  hasCells: (index: number) => boolean,
  habits: ColumnHabits,
  answers: Answers,
): Columns {
  const questions: FileQuestion[] = [];
  const kinds = headers.some((header) => headerKey(header) === "kind");
  const columns = headers.map((header, index): Column => {
    const number = index + 1;
    const question = questionOf(number, header, habits);
    const said = answered(answers, question);
    const role = said === null ? null : roleOf(said);
    if (role !== null) return { number, header, role, from: "answer", question };
    const known = knownRole(header, habits, kinds);
    if (known !== null) return { number, header, role: known, from: "header", question };
    const key = headerKey(header);
    const before = Object.hasOwn(habits.remembered, key) ? roleOf(habits.remembered[key] ?? "") : null;
    if (before !== null) return { number, header, role: before, from: "remembered", question };
    if (hasCells(index)) questions.push(question);
    return { number, header, role: { is: "leave_out" }, from: "empty", question };
  });
  return { columns, questions };
}

function questionOf(number: number, header: string, habits: ColumnHabits): FileQuestion {
  const proposed = proposals(header, habits);
  const words = header.trim() === "" ? "has no name" : `"${shown(header.trim())}"`;
  const [first] = proposed;
  const text =
    first === undefined
      ? `Column ${number} ${words}: what does it hold?`
      : `Column ${number} ${words}: map it to ${first.label}? Remembered for next time`;
  return { name: `column.${number}`, kind: "AMBIG", text, choices: [...proposed, ...everything(proposed)] };
}

function proposals(header: string, { unitOf }: ColumnHabits): AnswerChoice[] {
  const key = headerKey(header);
  return MEASURED.filter((quantity) => MEANT[quantity].test(key)).flatMap((quantity) => {
    const { units } = MEASURES[quantity];
    const own = unitOf(quantity);
    const order = units.length === 0 ? [""] : [own, ...units.filter((unit) => unit !== own)];
    return order.map((unit) => choiceOf(quantity, unit));
  });
}

const choiceOf = (quantity: Measured, unit: string): AnswerChoice => ({
  label: `${MEASURES[quantity].label}${unit === "" ? "" : `, ${unit}`}`,
  value: roleText({ is: "reading", quantity, unit }),
});

function everything(before: readonly AnswerChoice[]): AnswerChoice[] {
  const rest: AnswerChoice[] = [
    { label: "leave it out", value: "leave_out" },
    { label: "the date", value: "on" },
    { label: "the time of day", value: "time" },
    { label: "a note", value: "field:note" },
    { label: "what was measured", value: "field:quantity" },
    { label: "the figure", value: "field:text" },
    { label: "the unit", value: "field:unit" },
    { label: "the kind of entry", value: "field:kind" },
    ...MEASURED.flatMap((quantity) => {
      const { units } = MEASURES[quantity];
      return (units.length === 0 ? [""] : units).map((unit) => choiceOf(quantity, unit));
    }),
  ];
  return rest.filter(({ value }) => before.every((one) => one.value !== value));
}
