/**
 * What befell the invented tanks, as their keepers would type it: a reef whose feed was doubled, a small tank whose tests
 * read nothing while algae grow, a tank in its first weeks, an old one whose hermits dwindle. Days are counted back from
 * the day they are made; every text goes through the one reader.
 */
import type { EntryKind } from "../../contract/daybook/kinds.ts";
import type { EntryText } from "../../contract/daybook/read-entry.ts";
import { inventedReadings } from "./readings.ts";
import { before } from "./tanks.ts";

export interface InventedEntry {
  readonly kind: EntryKind;
  readonly typed: EntryText;
}

/** The daybook of a demonstration tank by its name; oldest first. */
export type DaybookName = "feed doubled" | "tests read nothing" | "first weeks" | "hermits dwindle";

export function inventedDaybook(name: DaybookName, today: string): readonly InventedEntry[] {
  const entries = DAYBOOKS[name].map(
    ([daysAgo, kind, typed]): InventedEntry & { readonly daysAgo: number } => ({
      ...{ daysAgo, kind },
      typed: { ...typed, observed: before(today, daysAgo) },
    }),
  );
  const told = [...entries].sort((a, b) => b.daysAgo - a.daysAgo).map(({ kind, typed }) => ({ kind, typed }));
  if (name !== "feed doubled") return told;
  return [
    ...inventedReadings(today).map((typed) => ({ kind: "reading" as const, typed: { ...typed } })),
    ...told,
  ];
}

type Line = readonly [daysAgo: number, kind: EntryKind, typed: EntryText];

const growth = (daysAgo: number, of: string, score: number): Line => [
  daysAgo,
  "growth",
  { growth: of, score: String(score) },
];
const wiped = (daysAgo: number, filmDays: number): Line => [
  daysAgo,
  "chore",
  { chore: "glass_wiped", film_days: String(filmDays) },
];
const changed = (daysAgo: number, amount: string): Line => [
  daysAgo,
  "chore",
  { chore: "water_change", amount },
];
const counted = (daysAgo: number, animal: string, seen: string, more: EntryText = {}): Line => [
  daysAgo,
  "head_count",
  { animal, seen, hours_from_lights_out: "2", torch: "yes", ...more },
];
const read = (daysAgo: number, quantity: string, text: string, unit: string, kit_step: string): Line => [
  daysAgo,
  "reading",
  { quantity, text, unit, kit_step },
];
const ammonia = (daysAgo: number, text: string): Line =>
  read(daysAgo, "tan_mg_n_per_l", text, "mg/L as N", "0.2");
const nitrite = (daysAgo: number, text: string): Line =>
  read(daysAgo, "no2_mg_per_l", text, "mg/L as NO2", "0.05");
const nitrate = (daysAgo: number, text: string): Line =>
  read(daysAgo, "no3_mg_per_l", text, "mg/L as NO3", "2");
const phosphate = (daysAgo: number, text: string): Line =>
  read(daysAgo, "po4_mg_per_l", text, "mg/L as PO4", "0.03");

const DAYBOOKS: Readonly<Record<DaybookName, readonly Line[]>> = {
  "feed doubled": [
    ...[56, 49, 42, 35, 28, 21, 14, 7].map((day) => changed(day, "10 %")),
    ...[wiped(50, 6), wiped(43, 6), wiped(36, 5), wiped(29, 5), wiped(22, 4), wiped(15, 4), wiped(8, 3)],
    [40, "addition", { animal: "dwarf cerith", count: "4", sold_as: "dwarf cerith", condition: "lively" }],
    [30, "change", { changed: "feed", to: "1.2 g", food: "dry_pellet" }],
    ...[growth(52, "film_glass", 2), growth(38, "film_glass", 2), growth(24, "film_glass", 3)],
    ...[growth(10, "film_glass", 3), growth(3, "film_glass", 3)],
    ...[growth(52, "hair_algae", 1), growth(38, "hair_algae", 1), growth(24, "hair_algae", 2)],
    ...[growth(10, "hair_algae", 2), growth(3, "hair_algae", 3)],
    counted(28, "trochus snail", "3"),
    counted(14, "trochus snail", "2"),
    counted(14, "nassarius snail", "2", { food_offered: "yes" }),
    counted(14, "dwarf cerith", "3"),
    [12, "sign", { sign: "empty_shells", animal: "trochus snail", count: "1" }],
    [
      12,
      "loss",
      { animal: "trochus snail", count: "1", certainty: "found", body_removed: "yes", cause: "unknown" },
    ],
    [
      5,
      "sign",
      { sign: "waterline_snails", animal: "trochus snail", count: "1", hours_from_lights_out: "3" },
    ],
  ],
  "tests read nothing": [
    [40, "addition", { animal: "blue-leg hermit", count: "2", condition: "usual" }],
    ...[35, 28, 21, 14, 7].map((day) => changed(day, "20 %")),
    ...[nitrate(34, "0"), nitrate(24, "0"), nitrate(13, "0"), nitrate(4, "0")],
    ...[phosphate(34, "0"), phosphate(24, "0"), phosphate(13, "0.03"), phosphate(4, "0")],
    ...[growth(34, "hair_algae", 1), growth(24, "hair_algae", 1), growth(13, "hair_algae", 2)],
    growth(4, "hair_algae", 3),
    [
      3,
      "sign",
      {
        sign: "cast_shell",
        animal: "blue-leg hermit",
        count: "1",
        note: "Whole, eyes and all; nobody in it.",
      },
    ],
    [2, "sign", { sign: "hiding", animal: "blue-leg hermit", count: "1" }],
  ],
  "first weeks": [
    ...[
      ammonia(19, "2"),
      ammonia(16, "2"),
      ammonia(13, "1.4"),
      ammonia(10, "0.8"),
      ammonia(7, "0.2"),
      ammonia(4, "0"),
      ammonia(2, "0"),
    ],
    ...[
      nitrite(19, "0"),
      nitrite(16, "0.1"),
      nitrite(13, "0.5"),
      nitrite(10, "1.5"),
      nitrite(7, "1"),
      nitrite(4, "0.4"),
      nitrite(2, "0.2"),
    ],
    ...[nitrate(16, "0"), nitrate(10, "2"), nitrate(2, "5")],
    ...[growth(16, "diatoms", 0), growth(10, "diatoms", 1), growth(6, "diatoms", 2), growth(2, "diatoms", 4)],
  ],
  "hermits dwindle": [
    ...[56, 42, 28, 14].map((day) => changed(day, "15 %")),
    ...[nitrate(50, "22"), nitrate(36, "24"), nitrate(20, "24"), nitrate(6, "26")],
    ...[phosphate(50, "0.12"), phosphate(36, "0.15"), phosphate(20, "0.15"), phosphate(6, "0.15")],
    read(6, "alkalinity_dkh", "8.4", "dKH", "0.3"),
    ...[growth(50, "hair_algae", 3), growth(20, "hair_algae", 4), growth(6, "hair_algae", 4)],
    ...[growth(50, "cyanobacteria", 0), growth(20, "cyanobacteria", 1), growth(6, "cyanobacteria", 2)],
    ...[
      counted(58, "scarlet hermit", "4"),
      counted(30, "scarlet hermit", "3"),
      counted(6, "scarlet hermit", "2"),
    ],
    [22, "sign", { sign: "empty_shells", animal: "scarlet hermit", count: "1" }],
    [18, "outage", { of: "pumps", hours: "3 h" }],
  ],
};
