/** Pairs of entries that cannot both hold: asked about, never settled by picking one. */
import { asked } from "../quantity/outcome.ts";
import type { Entries } from "./entries.ts";
import { labelOf, type Path } from "./finding.ts";
import type { TankFile } from "./schema.ts";
import type { Stated } from "./stated.ts";

export function askAboutConflicts(file: TankFile, stated: Stated, entries: Entries): void {
  const ask = (path: Path, typed: string | number, why: string): void => {
    const text = String(typed);
    const message = { kind: "CONFLICT", text: `${labelOf(path)} "${text}": ${why}` } as const;
    entries.take(path, asked({ text, unit: null }, message, []));
  };
  const { amounts } = stated;
  if (stated.floorKind === "bare") {
    const why = "the floor is said to be bare. Is there sand? Then say floor.kind: sand; else leave this out";
    if ((amounts.sandDepthMm?.central ?? 0) > 0) ask(["floor", "depth_mm"], file.floor?.depth_mm ?? "", why);
    if ((amounts.sandM2?.central ?? 0) > 0) ask(["floor", "area_m2"], file.floor?.area_m2 ?? "", why);
  }
  if (stated.rockStart === "none" && (amounts.rockKg?.central ?? 0) > 0) {
    const why =
      "the tank is said to start without rock. Is there rock? Then say how it started; else leave this out";
    ask(["rock", "rock_kg"], file.rock?.rock_kg ?? "", why);
  }
  (file.wishes ?? []).forEach((name, i) => {
    const id = stated.wishes[i];
    if (id !== undefined && stated.wishes.length === file.wishes?.length && stated.exclusions.includes(id))
      ask(["wishes", i], name, "it is also among the exclusions. Which holds? Take it off the other list");
  });
}
