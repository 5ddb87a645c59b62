/** What a tank file says once every entry is read: canonical values, nothing filled in. */
import type { Spread } from "../../engine/types/estimate.ts";
import type { Absence, AnimalCount, Cover, Growth, Reading, ShopTerms } from "../../engine/types/tank.ts";
import type { Sides } from "../quantity/sides.ts";
import type { FoodKind } from "./assumptions.ts";
import type { TankFile } from "./schema.ts";

/** A value somebody gave, and in which words. */
export interface Told extends Spread {
  readonly how: string;
}

export interface Box {
  readonly waterL?: Told | undefined;
  readonly sides?: (Sides & { readonly how: string }) | undefined;
}

export interface ToldFood {
  readonly kind: FoodKind;
  readonly gPerDay: Told | undefined;
}

/** Some fish: how many, and what one weighs where it can be told. */
export interface ToldFish {
  readonly count: number;
  readonly eachG: Told | undefined;
}

export interface Stated {
  readonly name: string;
  readonly asOf: string;
  readonly waterL: Told | undefined;
  readonly display: Box;
  readonly otherChambers: readonly Box[];
  readonly firstSeawaterOn: string | undefined;
  readonly rockStart: "live" | "dry" | "mixed" | "none" | undefined;
  readonly floorKind: "bare" | "sand" | "rubble" | undefined;
  readonly grain: "fine" | "medium" | "coarse" | undefined;
  readonly amounts: Readonly<Partial<Record<AmountField, Told>>>;
  readonly lightStrength: "low" | "medium" | "high" | undefined;
  readonly phScale: "nbs" | "total" | undefined;
  /** Undefined where nothing was said; empty where nothing is fed. */
  readonly foods: readonly ToldFood[] | undefined;
  readonly leftAfterTwoMinutes: "none" | "some" | "a_lot" | undefined;
  readonly handFed: readonly ToldFood[];
  readonly fish: readonly ToldFish[] | undefined;
  readonly mechanicalFilter: "none" | "some" | undefined;
  readonly refugium: { readonly lightHours: number | undefined; readonly mostG: number | undefined } | null;
  readonly answers: Readonly<Partial<Record<AnswerField, boolean>>>;
  readonly sourceWater: "tap" | "conditioned" | "purified" | undefined;
  readonly keeperLevel: TankFile["keeper_experience"];
  readonly medicines: readonly string[];
  readonly trouble: string | null;
  readonly sightings: Readonly<Partial<Record<Growth, Cover>>>;
  readonly readings: readonly Reading[];
  readonly present: readonly AnimalCount[];
  readonly planned: readonly AnimalCount[];
  readonly unknownAnimals: readonly string[];
  readonly wishes: readonly string[];
  readonly exclusions: readonly string[];
  readonly shop: ShopTerms | undefined;
  readonly absences: readonly Absence[] | undefined;
  readonly stockList: readonly string[] | null;
  readonly priceBandMax: 1 | 2 | 3 | 4;
}

export type AmountField =
  | "rockKg"
  | "sandDepthMm"
  | "sandM2"
  | "lightHours"
  | "par"
  | "temperatureC"
  | "salinityPsu"
  | "ph"
  | "filterChangeDays"
  | "phosphateRemoverG"
  | "waterChangePercent"
  | "waterChangeEveryDays"
  | "wipeGlassEveryDays";

export type AnswerField = "caves" | "secured" | "skimmer" | "lid" | "pumpGuards" | "corals";
