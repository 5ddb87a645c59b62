/**
 * From plain data to a tank file of the right shape, with every fault of shape at once: what is wrong is
 * reported and set aside, so that the rest can still be read and its own faults found in the same run.
 */
import type { z } from "zod";
import type { Choice, MessageKind } from "../quantity/outcome.ts";
import { shown } from "../quantity/show.ts";
import type { Fault } from "./document.ts";
import { labelOf, type Path } from "./finding.ts";
import { TANK_FILE_VERSION, type TankFile, tankFileSchema } from "./schema.ts";
import { nearest } from "./suggest.ts";

type Issue = z.core.$ZodIssue;
export interface ShapeFault extends Fault {
  readonly choices: readonly Choice[];
}

const NO_ZONE = "not a time zone we know; enter one such as Europe/London";

/** Stands where a required value is missing, so that the rest of the entry is still read. */
const PLACEHOLDER: Readonly<Record<string, unknown>> = {
  animal: "",
  kind: "dry_pellet",
  grazewell_tank: TANK_FILE_VERSION,
};
const MOST_ROUNDS = 30;
/** Unknown names of one group that are looked into; a file with more is of another kind altogether. */
const MOST_NAMES = 100;

export function shapeOf(
  data: unknown,
  lineOf: (path: Path) => number | null,
): { file: TankFile; faults: ShapeFault[] } {
  const faults: ShapeFault[] = [];
  if (!isRecord(data)) {
    const message = {
      kind: "FORMAT" as const,
      text: "Tank file: must hold names and values, such as water_l: 113",
    };
    return {
      file: { grazewell_tank: TANK_FILE_VERSION },
      faults: [{ path: [], line: 1, typed: null, message, choices: [] }],
    };
  }
  const copy = structuredClone(data);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const result = tankFileSchema.safeParse(copy);
    if (result.success) return { file: result.data, faults };
    for (const issue of result.error.issues) {
      for (const { path, ...rest } of faultsOf(issue, copy))
        faults.push({ path, line: lineOf(path), ...rest });
      setAside(issue, copy);
    }
  }
  return { file: { grazewell_tank: TANK_FILE_VERSION }, faults };
}

type Unplaced = Omit<ShapeFault, "line">;

function faultsOf(issue: Issue, data: unknown): Unplaced[] {
  const path = issue.path.map((step) => (typeof step === "symbol" ? String(step) : step));
  if (issue.code === "unrecognized_keys") {
    const known = namesAt(path);
    return issue.keys.slice(0, MOST_NAMES).map((key) => {
      const near = nearest(key, known);
      const guess = near === null ? ` Known here: ${known.join(", ")}` : ` Did you mean ${near}?`;
      const label = path.length === 0 ? "Tank file" : labelOf(path);
      const text = `${label} "${shown(key)}": not a name known here.${guess}`;
      const choices = near === null ? [] : [{ label: near, text: near }];
      return { path: [...path, key], typed: key, message: { kind: "FORMAT", text }, choices };
    });
  }
  const value = at(data, path);
  const typed =
    value === undefined ? null : typeof value === "object" ? JSON.stringify(value) : String(value);
  const { kind, words, choices } = explain(issue, typed, path);
  const said = typed === null ? "" : ` "${shown(typed)}"`;
  return [{ path, typed, message: { kind, text: `${labelOf(path)}${said}: ${words}` }, choices }];
}

function explain(
  issue: Issue,
  typed: string | null,
  path: Path,
): { kind: MessageKind; words: string; choices: Choice[] } {
  if (path[0] === "grazewell_tank") {
    const newer = typed !== null && Number(typed) > TANK_FILE_VERSION;
    const words = newer
      ? `made for version ${typed}; this reads version ${TANK_FILE_VERSION}. Update first`
      : `must be ${TANK_FILE_VERSION}, the version of the file's form`;
    const text = String(TANK_FILE_VERSION);
    return {
      kind: typed === null ? "MISSING" : "FORMAT",
      words,
      choices: newer ? [] : [{ label: text, text }],
    };
  }
  if (issue.code === "too_big")
    return { kind: "TOOBIG", words: `must have at most ${issue.maximum} entries`, choices: [] };
  if (path.join(".") === "preferences.zone") return { kind: "FORMAT", words: NO_ZONE, choices: [] };
  const { values, types } = optionsOf(issue);
  const name = path.at(-1);
  if (name === "on" || name === "as_of" || name === "first_seawater_on") {
    return { kind: "FORMAT", words: "must be a date, such as 2026-06-15", choices: [] };
  }
  if (typed !== null && types.join() === "text" && /^[\w.+-]+$/.test(typed)) {
    const quoted = JSON.stringify(typed);
    return {
      kind: "FORMAT",
      words: `must be text. Put it in quotes: ${quoted}`,
      choices: [{ label: quoted, text: quoted }],
    };
  }
  const near = typed === null || values.length === 0 ? null : nearest(typed, values);
  const guess = near === null ? "" : `. Did you mean ${near}?`;
  const kind: MessageKind = typed === null ? "MISSING" : "FORMAT";
  const choices = near === null ? [] : [{ label: near, text: near }];
  return { kind, words: `must be ${[...types, ...oneOf(values)].join(", or ")}${guess}`, choices };
}

const TYPE_WORDS: Readonly<Record<string, string>> = {
  number: "a number",
  string: "text",
  boolean: "yes or no",
  array: "a list",
  object: "a group of names and values",
  tuple: "a list of three numbers",
};

function oneOf(values: readonly string[]): string[] {
  if (values.length === 0 || (values.length === 2 && values.includes("yes"))) return [];
  return [values.length === 1 ? (values[0] ?? "") : `one of ${values.join(", ")}`];
}

/** What would have been taken: words, and kinds of value. */
function optionsOf(issue: Issue): { values: string[]; types: string[] } {
  const issues = issue.code === "invalid_union" ? issue.errors.flat() : [issue];
  const values = issues.flatMap((one) => (one.code === "invalid_value" ? one.values.map(String) : []));
  const types = issues.flatMap((one) =>
    one.code === "invalid_type" ? [TYPE_WORDS[one.expected] ?? one.expected] : [],
  );
  return { values: [...new Set(values)], types: [...new Set(types)] };
}

function setAside(issue: Issue, data: unknown): void {
  const path = issue.path;
  if (issue.code === "unrecognized_keys") {
    const object = at(data, path);
    if (isRecord(object)) for (const key of issue.keys) delete object[key];
    return;
  }
  const last = path.at(-1);
  const parent = at(data, path.slice(0, -1));
  if (Array.isArray(parent) && typeof last === "number") parent[last] = harmless(path);
  else if (isRecord(parent) && typeof last === "string") {
    if (issue.code === "too_big" && Array.isArray(parent[last])) parent[last] = [];
    else if (last in PLACEHOLDER && !isOptional(path)) parent[last] = PLACEHOLDER[last];
    else delete parent[last];
  }
}

/** An entry of a list that says nothing, in place of one that can't be read. */
function harmless(path: Issue["path"]): unknown {
  const list = path.findLast((step) => typeof step === "string");
  if (list === "animals_present" || list === "animals_planned") return { animal: "" };
  if (list === "foods" || list === "hand_fed_to_crew") return { kind: "dry_pellet" };
  return list === "fish" || list === "readings" ? {} : "";
}

/** Only a food's kind is required; a floor's may be left out. */
const isOptional = (path: Issue["path"]): boolean =>
  path[0] === "floor" || (path[0] === "fish" && path.at(-1) === "animal");

function namesAt(path: Path): string[] {
  let schema: unknown = tankFileSchema;
  for (const step of path)
    schema =
      typeof step === "number"
        ? inner(schema, "element")
        : (inner(schema, "shape") as Record<string, unknown>)?.[step];
  return Object.keys((inner(schema, "shape") as object | undefined) ?? {});
}

/** Looks through "optional" to a part of a schema. */
function inner(schema: unknown, part: "shape" | "element"): unknown {
  let here = schema as
    | { def?: { type?: string; innerType?: unknown }; shape?: unknown; element?: unknown }
    | undefined;
  while (here?.def?.type === "optional") here = here.def.innerType as typeof here;
  return here?.[part];
}

function at(data: unknown, path: Issue["path"]): unknown {
  let here: unknown = data;
  for (const step of path) here = (here as Record<PropertyKey, unknown> | undefined)?.[step];
  return here;
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
