/**
 * What is known of a tank over time, as the engine uses it: observations and happenings, each with its day. Made from
 * the daybook (answers/record); canonical units, no text. Oldest first; entries of one day in the order they were kept.
 */
import type { Spread } from "./estimate.ts";
import type { Absence, Cover, Growth, Reading } from "./tank.ts";

interface Dated {
  /** Id of the entry it comes from. */
  readonly entry: string;
  /** ISO date, in the tank's own zone. */
  readonly on: string;
}

/** A test of the water. */
export interface ReadingSeen extends Dated {
  readonly kind: "reading";
  readonly quantity: Reading["quantity"];
  readonly value: Spread;
  /** Below or above what the kit can tell. */
  readonly censored: "below" | "above" | null;
  /** Smallest step of the kit in the quantity's unit; null where not said. */
  readonly step: number | null;
  readonly flag: "unusual" | "danger" | null;
}

/** A growth scored 0 to 4. */
export interface GrowthSeen extends Dated {
  readonly kind: "growth";
  readonly growth: Growth;
  readonly score: number;
  readonly traits: Readonly<Record<string, boolean>>;
}

/** Days from clean glass until it needed wiping. */
export interface FilmBack extends Dated {
  readonly kind: "film_back";
  readonly days: number;
}

export interface HeadsSeen extends Dated {
  readonly kind: "heads";
  readonly animal: string;
  readonly seen: number;
  readonly about: boolean;
  readonly hoursFromLightsOut: number | null;
  readonly torch: boolean | null;
  readonly foodOffered: boolean | null;
}

export type SignKind =
  | "waterline_snails"
  | "fallen_snails"
  | "empty_shells"
  | "cast_shell"
  | "hiding"
  | "ill_animals"
  | "white_dots"
  | "hitchhiker"
  | "cloudy_water";

export interface SignSeen extends Dated {
  readonly kind: "sign";
  readonly sign: SignKind;
  /** Catalogue id; null where unknown or no animal is meant. */
  readonly animal: string | null;
  readonly count: number | null;
  readonly kindsSeen: number | null;
  readonly hoursFromLightsOut: number | null;
  readonly traits: Readonly<Record<string, boolean>>;
}

export type Observation = ReadingSeen | GrowthSeen | FilmBack | HeadsSeen | SignSeen;

/** A change of heads. Identifications are applied already: `animal` is what it is known to be today. */
export interface HeadsChanged extends Dated {
  readonly kind: "added" | "lost_found" | "lost_feared" | "moved_out";
  readonly animal: string;
  readonly count: number;
  /** Of additions: reserve on arrival in words; else null. */
  readonly condition: "lively" | "usual" | "weak" | null;
  /** Of losses: whether the body was taken out. */
  readonly bodyRemoved: boolean | null;
  /** Of additions: the wave of the plan; else null. */
  readonly wave: number | null;
}

export interface ChoreDone extends Dated {
  readonly kind: "chore";
  readonly chore:
    | "water_change"
    | "glass_wiped"
    | "sand_siphoned"
    | "sand_stirred"
    | "algae_removed"
    | "filter_changed"
    | "sorbent_renewed"
    | "refugium_harvested"
    | "fallen_snails_righted";
  readonly share: number | null;
}

export interface Changed extends Dated {
  readonly kind: "changed";
  readonly what: "feed" | "light_hours" | "light_strength" | "skimmer" | "other";
  readonly to: number | null;
}

export interface Treated extends Dated {
  readonly kind: "treated";
  readonly substance: string;
  readonly step: "started" | "ended";
}

/** Ammonia put in to feed filters that are starting: no medicine. */
export interface Dosed extends Dated {
  readonly kind: "dosed";
  /** Of the whole water; null where the amount was not told. */
  readonly mgNPerL: number | null;
}

/** Newcomers kept apart, or the tank kept without fish. */
export interface KeptApart extends Dated {
  readonly kind: "apart";
  readonly what: "quarantine" | "fallow";
  readonly step: "started" | "ended";
  /** Who, as typed; empty where nobody was named. */
  readonly words: string;
}

export interface Outage extends Dated {
  readonly kind: "outage";
  readonly of: "power" | "pumps" | "heater" | "lamp" | "skimmer";
  readonly hours: number;
}

/** Animals asked of a shop, and what came of it: heads that arrived, dead or alive. */
export interface Ordered extends Dated {
  readonly step: "placed" | "arrived";
  readonly animal: string;
  readonly heads: number;
  /** The wave of the plan; null where it is none of it, or nobody said. */
  readonly wave: number | null;
  /** Of placed ones: ISO date; null where nobody said. */
  readonly expectedOn: string | null;
}

export type Happening = HeadsChanged | ChoreDone | Changed | Treated | Dosed | KeptApart | Outage;

/** A time away from home, planned, under way or over. */
export interface Away extends Dated, Absence {
  /** Packed for a sitter; null where not said. */
  readonly portions: number | null;
}

export interface Declined extends Dated {
  readonly advice: string;
  readonly reason: string;
  /** What the advice rested on then; null or absent where that was not kept. */
  readonly restsOn?: string | null;
}

/** What the questions were told, where it is known when: what was told after an entry holds that entry already. */
export interface ToldInAnswers {
  readonly sightings: {
    /** ISO date. */
    readonly on: string;
    readonly covers: Readonly<Partial<Record<Growth, Cover>>>;
  } | null;
  /** Feed of a usual day, and the first change of it that was logged after it was told; null where none was. */
  readonly feed: { readonly gPerDay: number; readonly changedBy: string | null } | null;
}

export interface TankRecord {
  /** Absent where nobody knows when the questions were answered. */
  readonly told?: ToldInAnswers;
  readonly observations: readonly Observation[];
  readonly happenings: readonly Happening[];
  readonly declined: readonly Declined[];
  /** What was asked of shops and what came; absent where nothing was. It befell nothing in the tank yet. */
  readonly orders?: readonly Ordered[];
  /** Times away from home, by their day of leaving; absent where none is kept. */
  readonly absences?: readonly Away[];
  /** The day that "today" is, ISO date: nothing in the record is later. */
  readonly asOf: string;
}
