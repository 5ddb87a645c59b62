/**
 * Which kinds go hungry, named before they die: from the weeks ahead (reserve of each kind, chance of losses beyond age)
 * and from signs of the record (bare glass, losses, waterline). Without the weeks ahead the signs alone speak, and less.
 * Limits and weights are judgement. docs/model/diagnosis.md#hunger
 */
import type { Animal } from "../../types/animal.ts";
import { clueOf } from "./clues.ts";
import { type DiagnosisScene, livingIn, type Subject, within } from "./scene.ts";

/** What the weeks ahead say of one kind: reserve by week (median, 0 to 1; null where too few live), and chance. */
export interface KindAhead {
  readonly id: string;
  readonly conditionByWeek: readonly (number | null)[];
  readonly lowConditionByWeek: readonly (number | null)[];
  readonly starvesOf20: number;
}

export interface HungryKind {
  readonly animal: Animal;
  readonly heads: number;
  /** Weeks until the median reserve is under the limit; 0: it is today; null: signs alone say so. */
  readonly inWeeks: number | null;
  readonly starvesOf20: number | null;
  readonly signs: readonly HungerSign[];
}
export type HungerSign = "glass_bare" | "losses" | "hungry_shelf" | "fallen";

/** Reserve at which an animal is hungry: under a quarter of full, deaths by hunger set in (model: hc). */
const HUNGRY_AT = 0.25;
/** Looked this far ahead, weeks: there is time to act, and the runs still agree. */
const LOOK_WEEKS = 6;
/** Of 20 runs: named where this many lose more than age takes. */
const STARVES_FROM = 11;

export function hungryKinds(scene: DiagnosisScene, ahead: readonly KindAhead[] | null): HungryKind[] {
  return livingIn(scene).flatMap(({ animal, count }): HungryKind[] => {
    const signs = signsOf(scene, animal);
    const kind = ahead?.find(({ id }) => id === animal.id) ?? null;
    const week = kind === null ? -1 : weekHungry(kind);
    const starves = kind?.starvesOf20 ?? null;
    const byRuns = week >= 0 && (starves ?? 0) >= STARVES_FROM;
    // A run that is even about it is believed where a sign agrees; signs alone need two.
    const bySigns =
      ahead === null
        ? signs.length >= 2
        : (starves ?? 0) >= STARVES_FROM - 5 && week >= 0 && signs.length >= 1;
    if (!byRuns && !bySigns) return [];
    return [{ animal, heads: count, inWeeks: week >= 0 ? week : null, starvesOf20: starves, signs }];
  });
}

const weekHungry = ({ conditionByWeek }: KindAhead): number =>
  conditionByWeek.slice(0, LOOK_WEEKS + 1).findIndex((level) => level !== null && level < HUNGRY_AT);

function signsOf(scene: DiagnosisScene, animal: Animal): HungerSign[] {
  const { record } = scene;
  const subject: Subject = {
    ...{ effect: "snail_loss", on: record.asOf, animal: animal.id },
    ...{ kindsSeen: null, hoursFromLightsOut: null },
  };
  const holds = (id: string): boolean => clueOf(id, scene, subject).holds === true;
  const onGlass = animal.diet.film_glass + animal.diet.film_rock >= 0.4;
  const lost = record.happenings.some(
    (one) =>
      (one.kind === "lost_found" || one.kind === "lost_feared") &&
      one.animal === animal.id &&
      within(one.on, record.asOf, 21),
  );
  const fresh = clueOf("arrival_fresh", scene, subject).holds === true;
  const rules: readonly (readonly [HungerSign, boolean])[] = [
    ["glass_bare", onGlass && holds("glass_bare")],
    ["hungry_shelf", onGlass && holds("hungry_shelf")],
    ["losses", lost && !fresh],
    ["fallen", holds("fallen_seen") && !holds("poor_righter")],
  ];
  return rules.flatMap(([sign, seen]) => (seen ? [sign] : []));
}
