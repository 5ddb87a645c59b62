/** The shape of facts/medicines: what a substance does to whom, how it leaves, when a crew may come back. Never a dose. */
import { z } from "zod";
import { MEDICINE_GROUPS, REMOVERS } from "../../src/engine/types/medicine.ts";
import { measure, nonNegative, paragraph, said, spread, text } from "./fact.ts";

const effect = said(z.enum(["kills", "harms", "risky", "bears", "unknown"]));
const remover = z.strictObject({ works: said(z.enum(["well", "partly", "no"])), said: paragraph });

const each = <const Key extends string, Value extends z.ZodType>(keys: readonly Key[], value: Value) =>
  z.strictObject(Object.fromEntries(keys.map((key) => [key, value])) as Record<Key, Value>);

export const medicineSchema = z.strictObject({
  id: z.string().regex(/^[a-z]+(-[a-z]+)*$/),
  names: z.strictObject({ common: said(text), also: said(z.array(text)) }),
  use: said(z.enum(["bath", "dip", "food"])),
  groups: each(MEDICINE_GROUPS, effect),
  nitrifiers: said(z.enum(["stops", "slows", "little", "unknown"])),
  oxygen: said(z.enum(["lowers", "little", "unknown"])),
  said: paragraph,
  remove: each(REMOVERS, remover),
  gone_days: spread("d").nullable(),
  return: z.strictObject({ days: measure("d", nonNegative), test: paragraph }),
  dont: z.array(paragraph),
  people: paragraph.nullable(),
});
export type MedicineFile = z.infer<typeof medicineSchema>;
