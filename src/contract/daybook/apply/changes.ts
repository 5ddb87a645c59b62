/**
 * Changes that hold until the next: feed, light, skimmer. A change of feed tells the whole feed of a usual day: of the
 * food it names, else of the foods there were, in the same proportions. A change of the light's strength is a share of
 * what it was, so several multiply; where nobody said what it was, that is said and nothing is changed.
 */

import { readFeedAmount } from "../../quantity/feeding.ts";
import { isKept } from "../../quantity/outcome.ts";
import { readPlain } from "../../quantity/plain.ts";
import { decimalSign } from "../../quantity/preferences.ts";
import { FOODS, type FoodKind, STRENGTH } from "../../tank-file/assumptions.ts";
import { preferencesOf } from "../../tank-file/preferences-of.ts";
import type { TankFile } from "../../tank-file/schema.ts";
import { feedWords } from "../feed-words.ts";
import type { DaybookEntry } from "../kinds.ts";
import { type ApplyScene, isNews, type Part } from "./scene.ts";

type Change = Extract<DaybookEntry, { kind: "change" }>;
type Foods = NonNullable<NonNullable<TankFile["feeding"]>["foods"]>;

export interface AppliedChanges {
  readonly file: Pick<TankFile, "feeding" | "light" | "equipment">;
  readonly notes: readonly string[];
}

export function changesTold(
  document: TankFile,
  dated: readonly DaybookEntry[],
  { since }: Pick<ApplyScene, "since">,
): AppliedChanges {
  const of = (changed: Change["body"]["changed"], part: Part): Change["body"][] =>
    dated.flatMap((entry) =>
      entry.kind === "change" && entry.body.changed === changed && isNews(entry, since[part])
        ? [entry.body]
        : [],
    );
  const notes: string[] = [];
  const file: { -readonly [Name in keyof AppliedChanges["file"]]: AppliedChanges["file"][Name] } = {};
  const feed = of("feed", "feeding").findLast(({ to }) => to !== null);
  if (feed !== undefined) file.feeding = { ...document.feeding, foods: foodsOf(document, feed) };
  const hours = of("light_hours", "light").at(-1);
  const strengths = of("light_strength", "light").flatMap(({ to }) => (to === null ? [] : [to]));
  if (hours?.to != null) file.light = { ...document.light, hours_per_day: hours.to };
  if (strengths.length > 0) {
    const share = strengths.reduce((all, one) => all * one, 1);
    const par = parOf(document, share);
    if (par === null)
      notes.push("The daybook says how the light's strength changed, but not from what: not counted");
    else file.light = { ...document.light, ...file.light, par_umol_m2_s: par };
  }
  const skimmer = of("skimmer", "equipment").at(-1);
  if (skimmer?.to != null) file.equipment = { ...document.equipment, skimmer: skimmer.to > 0 ? "yes" : "no" };
  return { file, notes };
}

function foodsOf(document: TankFile, { to, to_text, food }: Change["body"]): Foods {
  const grams = to ?? 0;
  const before = document.feeding?.foods ?? [];
  const named = (Object.keys(FOODS) as FoodKind[]).find((kind) => kind === food);
  const [only] = before;
  const kind = named ?? (before.length === 1 ? only?.kind : before.length === 0 ? "dry_pellet" : undefined);
  if (kind !== undefined) return [{ kind, g_per_day: asTyped(document, to_text, grams) }];
  const weights = before.map(({ g_per_day }) => weightOf(document, g_per_day) ?? 1);
  const total = weights.reduce((all, one) => all + one, 0);
  return before.map((one, i) => ({
    ...one,
    g_per_day: weighed(total > 0 ? (grams * (weights[i] ?? 0)) / total : grams / before.length, document),
  }));
}

/** The text, where it is a weight by itself: a pinch stays as wide as it is. */
function asTyped(document: TankFile, text: string, grams: number): string {
  const { amount, times } = feedWords(text);
  const read = readFeedAmount(amount, { preferences: preferencesOf(document.preferences) });
  return times === null && isKept(read) && amount !== "" ? checked(amount) : weighed(grams, document);
}

/** Whoever logged it was asked already whether it is that much. */
const checked = (text: string): string =>
  /\(checked\)$/i.test(text) || /pinch/i.test(text) ? text : `${text} (checked)`;
/** In the keeper's own decimal sign, so that no locale takes it for another; to a tenth of a milligram. */
const weighed = (grams: number, { preferences }: TankFile): string => {
  const sign = decimalSign(preferencesOf(preferences).locale);
  return checked(`${Math.round(10_000 * grams) / 10_000} g`.replace(".", sign));
};

function weightOf(document: TankFile, amount: number | string | undefined): number | null {
  if (amount === undefined) return null;
  if (typeof amount === "number") return amount;
  const read = readFeedAmount(amount, { preferences: preferencesOf(document.preferences) });
  return isKept(read) ? read.value.central : null;
}

/** Light at the rock after a change by a share, as a range; null where nobody said what it was. */
function parOf(document: TankFile, share: number): string | null {
  const { par_umol_m2_s: typed, strength } = document.light ?? {};
  if (typed !== undefined) {
    const preferences = preferencesOf(document.preferences);
    const read = readPlain("par", `${typed}`, { preferences, unit: "PAR" });
    return isKept(read) ? range(read.value.low * share, read.value.high * share) : null;
  }
  if (strength === undefined) return null;
  const { low, high } = STRENGTH[strength].rock;
  return range(low * share, high * share);
}

const whole = (value: number): number => Math.min(2500, Math.round(value));
const range = (low: number, high: number): string =>
  whole(low) === whole(high) ? `${whole(low)} PAR` : `${whole(low)}-${whole(high)} PAR`;
