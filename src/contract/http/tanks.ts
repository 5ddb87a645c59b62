/** Tanks over the API. */
import { z } from "zod";
import { facts, id, message, versioned } from "./parts.ts";

const keeper = z.strictObject({ id, name: z.string() });

export const tankSummary = z.strictObject({
  id,
  name: z.string(),
  keeper,
  demonstration: z.boolean().describe("an invented tank that came with the program"),
  ...versioned,
});
export type TankSummary = z.infer<typeof tankSummary>;

export const tankList = z.strictObject({ tanks: z.array(tankSummary) });

export const tankView = tankSummary.extend({ facts });
export type TankView = z.infer<typeof tankView>;

export const newTank = z.strictObject({
  keeper: z.string().min(1).max(200).describe("name or nickname of who keeps it"),
  facts,
});

export const tankChange = z.strictObject({ facts });

/** A tank as it was just kept, and how it was read. */
export const tankSaved = z.strictObject({
  tank: tankView,
  notices: z
    .array(message.extend({ pointer: z.string() }))
    .describe("how entries were read, and what is unusual or dangerous"),
});

export const tankHistory = z.strictObject({ versions: z.array(tankView).describe("the first one first") });
