/**
 * Snails at the waterline, judged by kind and hour: kinds of the night at the water's edge in the dark, and kinds that
 * leave the water by habit, are as they should be. Several kinds at once ask for oxygen, ammonia and salinity now,
 * whatever the hour. docs/model/diagnosis.md#waterline
 */
import type { SignSeen } from "../../types/record.ts";
import { isDark } from "./clues/kinds.ts";
import { type DiagnosisScene, signsSeen, within } from "./scene.ts";

export type WaterlineVerdict =
  /** Several kinds at once, or most of the tank's snails by day: test now. */
  | "test_now"
  /** By day and not a habit of the kind: test within days, and look again. */
  | "test_soon"
  | "habit"
  /** The hour or the kind was not said. */
  | "cannot_tell";

export interface WaterlineJudged {
  readonly sign: SignSeen;
  readonly verdict: WaterlineVerdict;
  readonly kinds: number;
  /** Kinds seen at once on that day, in the catalogue's ids. */
  readonly animals: readonly string[];
  readonly dark: boolean | null;
  readonly habit: "leaves" | "edge" | null;
}

/** A sighting is news for three days. */
const NEWS_DAYS = 3;

export function judgeWaterline(scene: DiagnosisScene): WaterlineJudged | null {
  const seen = signsSeen(scene.record, "waterline_snails");
  const last = seen.at(-1);
  if (last === undefined || last.count === 0 || !within(last.on, scene.record.asOf, NEWS_DAYS)) return null;
  const sameDay = seen.filter(({ on, count }) => on === last.on && count !== 0);
  const animals = [...new Set(sameDay.flatMap(({ animal }) => animal ?? []))];
  const kinds = Math.max(animals.length, ...sameDay.map(({ kindsSeen }) => kindsSeen ?? 1));
  const dark = last.hoursFromLightsOut === null ? null : isDark(last.hoursFromLightsOut);
  const habit =
    animals.length === 1
      ? (scene.diagnosis.waterline.find(({ animal }) => animal === animals[0])?.habit ?? null)
      : null;
  return { sign: last, verdict: verdictOf(kinds, dark, habit, animals), kinds, animals, dark, habit };
}

function verdictOf(
  kinds: number,
  dark: boolean | null,
  habit: WaterlineJudged["habit"],
  animals: readonly string[],
): WaterlineVerdict {
  if (kinds >= 2) return "test_now";
  if (habit === "leaves") return "habit";
  if (habit === "edge") return dark === null ? "cannot_tell" : dark ? "habit" : "test_soon";
  if (animals.length === 0) return "cannot_tell";
  return "test_soon";
}
