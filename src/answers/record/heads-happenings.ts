/** Comings and goings as changes of heads; a coming of which some were another kind is two. */
import { isComing } from "../../contract/daybook/comings.ts";
import type { DaybookEntry } from "../../contract/daybook/kinds.ts";
import type { KnownAs } from "../../contract/daybook/known-today.ts";
import type { HeadsChanged } from "../../engine/types/record.ts";

type HeadsEntry = Extract<DaybookEntry, { kind: "addition" | "loss" | "departure" | "move" }>;

export function headsHappenings(entry: HeadsEntry, known: KnownAs): HeadsChanged[] {
  const rest = { condition: null, bodyRemoved: null, wave: null, entry: entry.id, on: entry.on };
  if (isComing(entry)) {
    const { condition } = entry.body;
    // What comes from another tank is none of the plan's waves.
    const wave = entry.kind === "addition" ? entry.body.wave : null;
    return known
      .added(entry)
      .flatMap(({ animal, count }): HeadsChanged[] =>
        animal === null ? [] : [{ ...rest, kind: "added", animal, count, condition, wave }],
      );
  }
  const animal = known.of(entry, entry.body.animal);
  const { count } = entry.body;
  if (animal === null) return [];
  if (entry.kind !== "loss") return [{ ...rest, kind: "moved_out", animal, count }];
  const kind = entry.body.certainty === "found" ? "lost_found" : "lost_feared";
  return [{ ...rest, kind, animal, count, bodyRemoved: entry.body.body_removed }];
}
