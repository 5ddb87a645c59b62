/**
 * Entries of the daybook over the API: a kind, and its fields as a keeper types them, or as numbers and yes or no. The
 * fields are those of the daybook's own table, so that a form and the API can't differ.
 */
import { z } from "zod";
import { ENTRY_FIELDS, type EntryField } from "../daybook/fields.ts";
import { ENTRY_BODIES, ENTRY_KINDS, type EntryKind } from "../daybook/kinds.ts";
import { id, message, versioned } from "./parts.ts";
import { readingQuery } from "./readings.ts";

const LONGEST_WORDS = 1000;

/** A field of the table; `null` of JSON is no value, leave the name out instead. */
function fieldSchema({ input, label, example, choices }: EntryField): z.ZodType {
  const words = example === "" ? label : `${label}: ${example}`;
  switch (input) {
    case "choice":
      return z.enum(choices.map(({ text }) => text) as [string, ...string[]]).describe(label);
    case "yes_no":
      return z.union([z.boolean(), z.enum(["yes", "no"])]).describe(label);
    case "count":
    case "amount":
      return z.union([z.number(), z.string().max(200)]).describe(words);
    case "traits":
      return z
        .record(z.string().max(60), z.boolean())
        .describe(`${label}: names of traits, each seen or not`);
    case "note":
      return z.string().max(10_000);
    default:
      return z.string().max(LONGEST_WORDS).describe(words);
  }
}

/** What the API takes for a kind. */
function shapeOf(kind: EntryKind) {
  const fields = ENTRY_FIELDS[kind].map((field) => {
    const schema = fieldSchema(field);
    return [field.name, field.needed ? schema : schema.optional()] as const;
  });
  return z.strictObject({ kind: z.literal(kind), ...Object.fromEntries(fields) });
}

type Shape = ReturnType<typeof shapeOf>;
export const newEntry = z.discriminatedUnion("kind", ENTRY_KINDS.map(shapeOf) as [Shape, ...Shape[]]);
/** Judged by the table; what a field holds is known by its name alone. */
export type NewEntry = { readonly kind: EntryKind } & Readonly<
  Record<string, string | number | boolean | Readonly<Record<string, boolean>> | undefined>
>;

const viewOf = (kind: EntryKind) =>
  z.strictObject({
    id,
    tank: id,
    kind: z.literal(kind),
    on: z.iso.date().describe("the day it belongs to"),
    ...versioned,
    body: ENTRY_BODIES[kind],
  });
type View = ReturnType<typeof viewOf>;
export const entryView = z.discriminatedUnion("kind", ENTRY_KINDS.map(viewOf) as [View, ...View[]]);
export type EntryView = z.infer<typeof entryView>;

export const entrySaved = z.strictObject({
  entry: entryView,
  said: z.array(message).describe("how it was read, and what is unusual or dangerous"),
});

export const entryList = z.strictObject({
  entries: z.array(entryView).describe("the latest first"),
  next: z
    .strictObject({ after_on: z.iso.date(), after_id: id })
    .nullable()
    .describe("to ask for the earlier ones; null where there are none"),
});

export const entryQuery = readingQuery.extend({
  kind: z
    .enum(ENTRY_KINDS as [EntryKind, ...EntryKind[]])
    .optional()
    .describe("only entries of this kind"),
});

export const entryHistory = z.strictObject({ versions: z.array(entryView) });
