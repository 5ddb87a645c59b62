/** Those already there that this tank does not suit, in words. */
import { counted, wrap } from "../../answers/words.ts";
import type { Plan } from "../../engine/stocking/plan.ts";
import type { Io } from "../io.ts";

export function residentText({ residents }: Plan, io: Io): string {
  const warned = residents.filter(({ warnings }) => warnings.length > 0);
  if (warned.length === 0) return "";
  return [
    io.bold("Already there, and not at home in this tank"),
    ...warned.flatMap(({ animal, heads, warnings }) =>
      warnings.map(({ text, until }) =>
        wrap(
          `${counted(heads, animal.commonName)}: ${text}${until === null ? "" : ` Better ${until}.`}`,
          io.width,
          "  ",
          "    ",
        ),
      ),
    ),
  ].join("\n");
}
