/**
 * A tank's answers as its daybook has moved them since: what a question shows, and what an answer is given over. Only
 * parts that the questions ask about are moved: who answers one says how that part stands today, and no other.
 */

import { MORE } from "../../answers/questions/fields.ts";
import type { Part } from "../../contract/daybook/apply/scene.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import type { LoadedTank } from "../route.ts";

const PARTS_OF: Readonly<Record<number, readonly Part[]>> = {
  3: ["sightings"],
  4: ["animals_present", "fish"],
  6: ["feeding"],
  8: ["medicines"],
  [MORE]: ["light", "equipment"],
};

export function toldToday(
  { document, applied }: Pick<LoadedTank, "document" | "applied">,
  questions: readonly number[],
): TankFile {
  const parts = questions.flatMap((question) => PARTS_OF[question] ?? []);
  const moved = parts.flatMap((part) =>
    applied[part] === undefined ? [] : [[part, applied[part]] as const],
  );
  return moved.length === 0 ? document : { ...document, ...Object.fromEntries(moved) };
}
