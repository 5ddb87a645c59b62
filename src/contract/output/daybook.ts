/** What `grazewell daybook --json` and `grazewell log --json` print: entries as they are kept, the latest first. */
import { z } from "zod";
import { entryView } from "../http/entries.ts";

export const daybookOutput = z.strictObject({
  tank: z.string().describe("id in the store"),
  name: z.string(),
  entries: z.array(entryView),
  /** Of `log`: how it was read, and what is unusual or dangerous. */
  said: z.array(z.strictObject({ kind: z.string(), message: z.string() })).optional(),
});
export type DaybookOutput = z.infer<typeof daybookOutput>;
