/**
 * A tank's answers and its daybook, put together as of today: a tank file like any other, for the one reader. The answers
 * say how it stood when they were given (scene.ts); what befell since is written into them as a keeper would type it.
 * Limits: heads are what came less what was found dead or moved out; a head count changes none of them.
 */

import { readDate } from "../../quantity/date.ts";
import { isKept } from "../../quantity/outcome.ts";
import { preferencesOf } from "../../tank-file/preferences-of.ts";
import type { TankFile } from "../../tank-file/schema.ts";
import { byDay } from "../by-day.ts";
import type { DaybookEntry } from "../kinds.ts";
import { absencesTold } from "./absences.ts";
import { careTold } from "./care.ts";
import { changesTold } from "./changes.ts";
import { applyHeads } from "./heads.ts";
import type { ApplyScene } from "./scene.ts";
import { medicinesTold, readingsTold, sightingsTold } from "./seen.ts";

export interface Applied {
  readonly document: TankFile;
  /** What is worth saying of it, in sentences. */
  readonly notes: readonly string[];
}

/** `entries` in any order; those of a later day than today are left out. */
export function applyDaybook(
  document: TankFile,
  entries: readonly DaybookEntry[],
  scene: ApplyScene,
): Applied {
  const dated = byDay(entries).filter(({ on }) => on <= scene.today);
  if (dated.length === 0) return { document, notes: [] };
  const firstDay = firstDayOf(document, scene.today);
  const readings = readingsTold(dated, firstDay);
  const heads = applyHeads(document, dated, scene, firstDay);
  const changes = changesTold(document, dated, scene);
  const { care, notes } = careTold(document, dated, scene);
  const sightings = sightingsTold(document, dated, scene);
  const medicines = medicinesTold(document, dated, scene);
  const absences = absencesTold(document, dated, scene.today);
  // The day that the answers spoke of; together with the daybook they speak of today.
  const { as_of: _given, ...answers } = document;
  return {
    document: {
      ...answers,
      ...changes.file,
      ...heads.file,
      ...(care === undefined ? {} : { care }),
      ...(sightings === undefined ? {} : { sightings }),
      ...(medicines === undefined ? {} : { medicines }),
      ...(absences === undefined ? {} : { absences }),
      ...(readings.length === 0 ? {} : { readings: [...(document.readings ?? []), ...readings] }),
    },
    notes: [...heads.notes, ...changes.notes, ...notes],
  };
}

/** First day of seawater, as the reader takes it; null where it is unknown, or can't be read. */
function firstDayOf({ first_seawater_on: typed, preferences }: TankFile, today: string): string | null {
  if (typed === undefined) return null;
  const outcome = readDate(typed, { preferences: preferencesOf(preferences), today, future: "planned" });
  return isKept(outcome) ? outcome.value : null;
}
