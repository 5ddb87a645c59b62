/** Every kind of entry that a daybook holds, and the shape of its body. One table: store, doors and readers go by it. */
import type { z } from "zod";
import {
  additionBody,
  departureBody,
  headCountBody,
  identificationBody,
  lossBody,
  orderBody,
} from "./kinds/animals.ts";
import {
  absenceBody,
  changeBody,
  choreBody,
  declineBody,
  outageBody,
  relocationBody,
  treatmentBody,
} from "./kinds/care.ts";
import { moveBody } from "./kinds/move.ts";
import { growthBody, signBody } from "./kinds/sighting.ts";
import { readingBody } from "./reading.ts";

export const ENTRY_BODIES = {
  reading: readingBody,
  growth: growthBody,
  sign: signBody,
  head_count: headCountBody,
  order: orderBody,
  addition: additionBody,
  loss: lossBody,
  departure: departureBody,
  move: moveBody,
  identification: identificationBody,
  chore: choreBody,
  change: changeBody,
  treatment: treatmentBody,
  outage: outageBody,
  relocation: relocationBody,
  absence: absenceBody,
  decline: declineBody,
} as const;
export type EntryKind = keyof typeof ENTRY_BODIES;
export const ENTRY_KINDS = Object.keys(ENTRY_BODIES) as readonly EntryKind[];

export type EntryBody<Kind extends EntryKind = EntryKind> = z.infer<(typeof ENTRY_BODIES)[Kind]>;

/** An entry as it is kept, its body known by its kind. */
export type DaybookEntry = {
  [Kind in EntryKind]: {
    readonly id: string;
    readonly kind: Kind;
    /** Day in the tank's own zone, ISO date. */
    readonly on: string;
    readonly body: EntryBody<Kind>;
  };
}[EntryKind];

/** A kept row as an entry; null where this program does not know its kind, or an older one kept another shape. */
export function entryOfRow(row: {
  readonly id: string;
  readonly kind: string;
  readonly on: string;
  readonly body: unknown;
}): DaybookEntry | null {
  const schema = (ENTRY_BODIES as Readonly<Record<string, z.ZodType>>)[row.kind];
  const parsed = schema?.safeParse(row.body);
  if (parsed?.success !== true) return null;
  return { id: row.id, kind: row.kind, on: row.on, body: parsed.data } as DaybookEntry;
}
