/**
 * Animals that went from one tank of the store to another. Each of the two daybooks keeps its half: in the one they left
 * `to` names the other tank, in the one they came to `from` does. The store changes the halves together (server/moves).
 */
import { z } from "zod";
import { entryCommon, heads, namedAnimal } from "./common.ts";

const tankId = z.string().max(100).nullable();
const tankName = z.string().max(200).nullable();

export const moveBody = z
  .strictObject({
    ...entryCommon,
    ...namedAnimal,
    count: heads.min(1),
    /** Id of the tank they went to, and its name then; null in the half of that tank. */
    to: tankId,
    to_text: tankName,
    /** Id of the tank they came from, and its name then; null in the half of that tank. */
    from: tankId,
    from_text: tankName,
    condition: z.enum(["lively", "usual", "weak"]).nullable(),
    /** Why they were moved though the gate of the receiving tank was not met; null where it was, or there is none. */
    despite_gate: z.string().max(1000).nullable(),
  })
  .refine(({ to, from }) => (to === null) !== (from === null), {
    path: ["to"],
    message: "one of to and from must be given: the tank they went to, or the one they came from",
  });
