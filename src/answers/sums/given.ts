/**
 * The texts of a sum's fields to values, or every doubt about them at once. Empty fields take what the tank knows, then
 * what is usually taken; both are told, so that nobody's number is guessed in silence.
 */
import { readDate } from "../../contract/quantity/date.ts";
import { type Amount, type Choice, isKept, type Message } from "../../contract/quantity/outcome.ts";
import type { Preferences } from "../../contract/quantity/preferences.ts";
import { shown } from "../../contract/quantity/show.ts";
import type { Dated, FromTank, Given, GivenAmount, SeriesField, Sum, SumField, SumTank } from "./sum.ts";

/** Texts by field name; a unit chosen beside a field stands under `<name>.unit`. */
export type SumText = Readonly<Record<string, string>>;

export interface SumDoubt {
  readonly field: string;
  readonly label: string;
  readonly typed: string;
  readonly message: Message;
  /** `text` is what to put into the field instead. */
  readonly choices: readonly Choice[];
}

/** What was taken for a field that was left empty. */
export interface Taken extends FromTank {
  readonly field: string;
  readonly label: string;
}

export type ReadSum =
  | {
      readonly ok: true;
      readonly given: Given;
      readonly taken: readonly Taken[];
      readonly said: readonly Message[];
    }
  | { readonly ok: false; readonly doubts: readonly SumDoubt[] };

type Value = GivenAmount | string | readonly Dated[] | null;

export interface SumContext {
  readonly preferences: Preferences;
  /** ISO date. */
  readonly today: string;
  readonly tank: SumTank | null;
}

export function readSum(sum: Sum, typed: SumText, context: SumContext): ReadSum {
  const gather: Gather = { values: new Map(), doubts: [], taken: [], said: [] };
  for (const field of sum.fields) readField(field, typed, context, gather);
  const known = new Set(sum.fields.flatMap(({ name }) => [name, `${name}.unit`]));
  for (const [name, text] of Object.entries(typed)) {
    if (known.has(name)) continue;
    const names = sum.fields.map((field) => field.name).join(", ");
    const words = `"${shown(name)}": not a field of this sum. Known here: ${names}`;
    gather.doubts.push({ ...doubt(name, name, text), message: { kind: "NOTFOUND", text: words } });
  }
  const { values, doubts, taken, said } = gather;
  return doubts.length > 0 ? { ok: false, doubts } : { ok: true, given: givenOf(sum, values), taken, said };
}

interface Gather {
  readonly values: Map<string, Value>;
  readonly doubts: SumDoubt[];
  readonly taken: Taken[];
  readonly said: Message[];
}

const doubt = (field: string, label: string, typed: string): Omit<SumDoubt, "message"> => ({
  field,
  label,
  typed,
  choices: [],
});

/** A choice is told as it is offered, not by its key. */
const choiceLabel = (field: SumField, text: string): string =>
  (field.input === "choice" ? field.choices.find((choice) => choice.text === text)?.label : null) ?? text;

function readField(field: SumField, typed: SumText, context: SumContext, gather: Gather): void {
  const { name, label } = field;
  const own = (typed[name] ?? "").trim();
  const instead = own === "" ? insteadOf(field, context.tank) : null;
  const text = instead?.text ?? own;
  if (instead !== null)
    gather.taken.push({ field: name, label, ...instead, text: choiceLabel(field, instead.text) });
  if (text === "") {
    if (isNeeded(field)) {
      const words = `${label}: nothing entered. ${wanted(field)}`;
      gather.doubts.push({ ...doubt(name, label, ""), message: { kind: "MISSING", text: words } });
    }
    gather.values.set(name, field.input === "series" ? [] : null);
    return;
  }
  const unit = instead === null ? (typed[`${name}.unit`] ?? "").trim() || null : null;
  // How something was read is told of what was typed, not of what nobody typed.
  readText(field, text, unit, context, instead === null ? gather : { ...gather, said: [] });
  if (instead === null || field.input !== "amount") return;
  const value = gather.values.get(name) as Amount | undefined;
  // Its working says that nobody typed it.
  const known = (context.tank === null ? null : (field.fromTank?.(context.tank) ?? null)) !== null;
  if (value !== undefined) gather.values.set(name, { ...value, taken: { how: instead.how, known } });
}

/** What an empty field is taken to be. */
function insteadOf(field: SumField, tank: SumTank | null): FromTank | null {
  const known = tank === null ? null : (field.fromTank?.(tank) ?? null);
  return known ?? usualOf(field);
}

/** What is usually taken where a field stays empty and no tank knows better. */
export function usualOf(field: SumField): FromTank | null {
  if (field.input === "amount" && typeof field.empty === "object") return field.empty;
  if (field.input !== "choice" || field.usual === null) return null;
  return { text: field.usual, how: "taken where nothing is said" };
}

export const isNeeded = (field: SumField): boolean =>
  field.input === "choice" ? field.usual === null : field.empty === "needed";

const wanted = (field: SumField): string =>
  field.input === "choice"
    ? `Choose one of: ${field.choices.map((choice) => choice.text).join(", ")}`
    : `Enter for example ${field.example}`;

function readText(
  field: SumField,
  text: string,
  unit: string | null,
  context: SumContext,
  gather: Gather,
): void {
  const { name, label } = field;
  const refuse = (message: Message, choices: readonly Choice[] = []) =>
    gather.doubts.push({ ...doubt(name, label, text), message, choices });
  if (field.input === "choice") {
    if (field.choices.some((choice) => choice.text === text)) gather.values.set(name, text);
    else refuse({ kind: "NOTFOUND", text: `${label} "${shown(text)}": ${wanted(field)}` }, field.choices);
    return;
  }
  const { preferences, today } = context;
  if (field.input === "series") {
    const lines = text.split("\n").filter((line) => line.trim() !== "");
    const series = lines.flatMap((line) => seriesLine(field, line, context, refuse) ?? []);
    gather.values.set(
      name,
      series.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0)),
    );
    return;
  }
  const outcome =
    field.input === "date"
      ? readDate(text, { preferences, today, label, future: field.future })
      : field.read(text, { preferences, label, unit });
  if (!isKept<unknown>(outcome)) {
    refuse(outcome.message, outcome.choices);
    return;
  }
  if (outcome.message !== null) gather.said.push(outcome.message);
  gather.values.set(name, outcome.value as Value);
}

/** "2026-11-01 8.2 dKH": a day, then a value. */
function seriesLine(
  field: SeriesField,
  line: string,
  { preferences, today }: SumContext,
  refuse: (message: Message, choices?: readonly Choice[]) => void,
): Dated | null {
  const [, day = "", rest = ""] = /^\s*(\S+)[\s,;:]+(.+)$/.exec(line) ?? [];
  const label = `${field.label}, line "${shown(line)}"`;
  if (day === "") {
    refuse({ kind: "FORMAT", text: `${label}: enter a day and a value, such as ${field.example}` });
    return null;
  }
  const on = readDate(day, { preferences, today, label, future: "refuse" });
  const value = field.read(rest, { preferences, label, unit: null });
  for (const outcome of [on, value]) if (!isKept<unknown>(outcome)) refuse(outcome.message);
  return isKept(on) && isKept(value) ? { on: on.value, value: value.value } : null;
}

function givenOf(sum: Sum, values: ReadonlyMap<string, Value>): Given {
  const of = (name: string): Value => {
    const value = values.get(name);
    if (value === undefined) throw new TypeError(`Cannot reckon "${sum.id}": it has no field ${name}`);
    return value;
  };
  const needed = (name: string): GivenAmount => {
    const value = of(name);
    if (value === null)
      throw new TypeError(`Cannot reckon "${sum.id}": ${name} may be empty, ask with maybe`);
    return value as GivenAmount;
  };
  return {
    amount: needed,
    maybe: (name) => of(name) as GivenAmount | null,
    choice: (name) => of(name) as string,
    series: (name) => of(name) as readonly Dated[],
    date: (name) => of(name) as string | null,
  };
}
