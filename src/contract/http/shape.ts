/**
 * What is sent to the API against its shape: every fault at once, each with its place, what was typed, what is allowed
 * and the likely fix. What the figures mean is judged by the readers, not here.
 */
import { z } from "zod";
import type { Choice, MessageKind } from "../quantity/outcome.ts";
import { shown } from "../quantity/show.ts";
import { labelOf } from "../tank-file/finding.ts";
import { nearest } from "../tank-file/suggest.ts";
import { pointerOf } from "./json.ts";

export interface HttpFault {
  /** JSON pointer into what was sent; names of a query stand at the top. */
  readonly pointer: string;
  readonly kind: MessageKind;
  readonly detail: string;
  readonly typed: string | null;
  readonly allowed: readonly string[];
  readonly choices: readonly Choice[];
}

export type Shaped<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly HttpFault[] };

type Issue = z.core.$ZodIssue;
type Path = readonly (string | number)[];

export function shapedAs<T>(schema: z.ZodType<T>, data: unknown): Shaped<T> {
  const result = schema.safeParse(data, { reportInput: false });
  if (result.success) return { ok: true, value: result.data };
  return { ok: false, faults: result.error.issues.flatMap((issue) => faultsOf(issue, data, schema)) };
}

function faultsOf(issue: Issue, data: unknown, schema: z.ZodType): HttpFault[] {
  const path = issue.path.map((step) => (typeof step === "symbol" ? String(step) : step));
  if (issue.code === "unrecognized_keys") {
    const known = path.length === 0 ? Object.keys(objectFor(schema, data)?.shape ?? {}) : [];
    return issue.keys.slice(0, 100).map((name) => unknownName([...path, name], name, known));
  }
  const value = valueAt(data, path);
  const typed = value === undefined ? null : typeof value === "string" ? value : JSON.stringify(value);
  const kinds = issue.code === "invalid_union" && issue.errors.length === 0 ? namesOf(schema) : [];
  const allowed = kinds.length > 0 ? kinds : allowedBy(issue);
  const near = typed === null || issue.code !== "invalid_value" ? null : nearest(typed, allowed);
  const guess = near === null ? "" : `. Did you mean ${near}?`;
  const said = typed === null ? "" : ` "${shown(typed)}"`;
  return [
    {
      pointer: pointerOf(path),
      kind: kindOf(issue, typed),
      detail: `${nameOf(path)}${said}: must be ${allowed.length > 1 ? `one of ${allowed.join(", ")}` : allowed.join("")}${guess}`,
      typed,
      allowed,
      choices: near === null ? [] : [{ label: near, text: near }],
    },
  ];
}

/** Names of the kinds that a body can be of, where it is of one of several. */
function namesOf(schema: z.ZodType): string[] {
  if (!(schema instanceof z.ZodDiscriminatedUnion)) return [];
  return schema.options.flatMap((option) => kindNames(option, schema.def.discriminator));
}

function kindNames(option: unknown, discriminator: string): string[] {
  const kind = option instanceof z.ZodObject ? option.shape[discriminator] : undefined;
  return kind instanceof z.ZodLiteral ? [...kind.values].map(String) : [];
}

/** The object that a body is: of several kinds the one it names. */
function objectFor(schema: z.ZodType, data: unknown): z.ZodObject | undefined {
  if (schema instanceof z.ZodObject) return schema;
  if (!(schema instanceof z.ZodDiscriminatedUnion)) return undefined;
  const { discriminator } = schema.def;
  const named = valueAt(data, [discriminator]);
  const option: unknown = schema.options.find((one) =>
    kindNames(one, discriminator).some((name) => name === named),
  );
  return option instanceof z.ZodObject ? option : undefined;
}

function unknownName(path: Path, name: string, known: readonly string[]): HttpFault {
  const near = nearest(name, known);
  const guess =
    near === null ? (known.length === 0 ? "" : ` Known here: ${known.join(", ")}`) : ` Did you mean ${near}?`;
  return {
    pointer: pointerOf(path),
    kind: "FORMAT",
    detail: `"${shown(name)}": unknown field.${guess}`,
    typed: name,
    allowed: known,
    choices: near === null ? [] : [{ label: near, text: near }],
  };
}

const nameOf = (path: Path): string => (path.length === 0 ? "Body" : labelOf(path));

function kindOf(issue: Issue, typed: string | null): MessageKind {
  if (typed === null) return "MISSING";
  if (issue.code === "too_big" && issue.origin !== "number" && issue.origin !== "int") return "TOOBIG";
  return issue.code === "too_big" || issue.code === "too_small" ? "RANGE" : "FORMAT";
}

const TYPES: Readonly<Record<string, string>> = {
  number: "a number",
  int: "a whole number",
  string: "text",
  boolean: "true or false",
  array: "a list",
  object: "an object of names and values",
  record: "an object of names and values",
};

function allowedBy(issue: Issue): string[] {
  switch (issue.code) {
    case "invalid_type":
      return [TYPES[issue.expected] ?? issue.expected];
    case "invalid_value":
      return issue.values.map(String);
    case "invalid_union":
      return [...new Set(issue.errors.flat().flatMap(allowedBy))];
    case "too_big":
      return [`${issue.maximum}${unitOf(issue.origin)} or ${LESS[issue.origin] ?? "fewer"}`];
    case "too_small":
      return [`${issue.minimum}${unitOf(issue.origin)} or more`];
    case "invalid_format":
      return [FORMATS[issue.format] ?? issue.message];
    default:
      return [issue.message];
  }
}

const LESS: Readonly<Record<string, string>> = { number: "less", int: "less" };
const unitOf = (origin: string): string =>
  origin === "string" ? " letters" : origin === "array" ? " entries" : "";
const FORMATS: Readonly<Record<string, string>> = {
  date: "a date, such as 2026-06-15",
  datetime: "an instant, such as 2026-06-15T12:00:00Z",
  regex: "digits alone",
};

function valueAt(data: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, step) =>
      typeof value === "object" && value !== null && Object.hasOwn(value, step)
        ? (value as Record<string | number, unknown>)[step]
        : undefined,
    data,
  );
}
