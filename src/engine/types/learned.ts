/**
 * What a tank's daybook has taught the ensemble, as plain data. Every parameter and fact that members vary in is drawn as
 * a standard normal score; learning moves the scores of those that readings can tell of, and leaves the others to the
 * prior. Beside the scores stands what happened in the days that were learned from, so that a forecast can begin where
 * the learned runs end. docs/model/calibration.md.
 */
export interface Learned {
  /** Symbols of parameters, names of facts and own names (OwnName) whose scores were learned. */
  readonly names: readonly string[];
  /** One row a learned member, in the order of `names`. A draw of more members goes through them again. Empty: nothing learned. */
  readonly scores: readonly (readonly number[])[];
  /** Seed of the prior scores that the rows were moved from: what was not learned is drawn by it, row by row. */
  readonly seed: number;
  /**
   * By row, the prior row that what was not learned is drawn by: runs that agreed with the daybook stand for others that
   * did not, whole. Absent: each row its own.
   */
  readonly drawnBy?: readonly number[];
  readonly window: LearnedWindow;
}

/** The days that were learned from. */
export interface LearnedWindow {
  /** ISO date of its first day. */
  readonly from: string;
  /** Days from then to the day that was today. */
  readonly days: number;
  /** What the keeper did and what befell, by day from `from` on. */
  readonly events: readonly WindowEvent[];
  /** Heads at the first day, by animal. */
  readonly heads: Readonly<Record<string, number>>;
  /** What the first day had, times what today has: feed, fish, hours of light, strength of light. */
  readonly first: Given;
  /** Quantities and growths that were observed: the learned runs overrule single readings of them. */
  readonly observed: readonly string[];
  /** Hair algae as last seen in the four weeks before today: day of the window, mg C/m2 of lit rock. */
  readonly hairSeen?: { readonly day: number; readonly mgCPerM2: number };
  /**
   * By animal, the chance that none, one, two ... of the heads on the keeper's list of today live no longer, as the head
   * counts leave it; sums to 1.
   */
  readonly unseenLosses?: Readonly<Record<string, readonly number[]>>;
}

/** What a keeper gives, as a multiple of what the tank's facts of today say. */
export interface Given {
  readonly feed: number;
  readonly fish: number;
  readonly hours: number;
  readonly light: number;
  readonly skimmer: 0 | 1 | null;
}

/** A happening without anything that differs from member to member. */
export type WindowEvent = { readonly t: number } & (
  | { readonly kind: "water"; readonly share: number; readonly siphon: number }
  | { readonly kind: "wipe"; readonly share: number }
  | { readonly kind: "siphon" | "stir" | "pull" | "harvest"; readonly share: number }
  | { readonly kind: "filter" | "sorbent" }
  | { readonly kind: "arrive"; readonly animal: string; readonly count: number; readonly condition: number }
  | { readonly kind: "leave"; readonly animal: string; readonly count: number }
  | { readonly kind: "ammonia"; readonly mgNPerL: number }
  | { readonly kind: "body"; readonly mgC: number; readonly mgN: number; readonly mgP: number }
  | ({ readonly kind: "given" } & Given)
);

/**
 * Scores that are the daybook's own: how the window began, what eyes and kits add, and where the water stands today
 * against the run (in units of its own, not a score).
 */
export const OWN_NAMES = [
  "hairAtStart",
  "nitrifiersAtStart",
  "wipedBefore",
  "eyeFilm",
  "eyeSand",
  "eyeHair",
  "eyeDust",
  "eyeHeads",
  "kitTan",
  "kitNo2",
  "kitNo3",
  "kitPo4",
  "wipedAt",
  "tanToday",
  "no2Today",
  "no3Today",
  "po4Today",
] as const;
export type OwnName = (typeof OWN_NAMES)[number];
