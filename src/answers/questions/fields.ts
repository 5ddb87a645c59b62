/**
 * The eight questions as fields of a form: what each is called, how it is asked, which units are offered. Pure data;
 * pages draw it, `form.ts` reads what comes back. Names are unique over all questions, so one form can hold them all.
 */
import { FOODS, type FoodKind } from "../../contract/tank-file/assumptions.ts";
import type { ShownQuantity } from "../../contract/tank-file/shown-in.ts";
import { GROWTHS } from "../../engine/types/tank.ts";
import { GROWTH_WORDS } from "./parse.ts";

interface Common {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  /** Entry of the tank file it tells, as findings name it: `floor.depth_mm`. */
  readonly path: string;
}

export interface TextField extends Common {
  readonly kind: "text";
  /** Units on offer; sent as `NAME_unit`. */
  readonly units?: readonly string[];
  /** The keeper's unit for it, where pages let one choose. */
  readonly shownAs?: ShownQuantity;
  readonly keypad?: "decimal";
  readonly width: "short" | "middle" | "full";
}

/** Radio buttons in words; `""` is the answer of who does not say. */
export interface WordsField extends Common {
  readonly kind: "words";
  readonly options: readonly { readonly value: string; readonly label: string }[];
  /** Side by side: one of many such rows. */
  readonly row?: true;
}

/** Lines of text, one an animal: sent as `NAME_1`, `NAME_2`, ... */
export interface LinesField extends Common {
  readonly kind: "lines";
}

export interface BoxField extends Common {
  readonly kind: "box";
}

export type FormField = TextField | WordsField | LinesField | BoxField;

const options = (...pairs: readonly (readonly [string, string])[]): WordsField["options"] =>
  pairs.map(([value, label]) => ({ value, label }));

const COVERS = options(
  ["", "not looked"],
  ["none", "nothing"],
  ["trace", "a trace"],
  ["patches", "patches"],
  ["covered", "covered"],
);

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

const reading = (
  name: string,
  label: string,
  path: string,
  units: readonly string[],
  shownAs: ShownQuantity,
): TextField => ({ kind: "text", name, label, path, units, shownAs, keypad: "decimal", width: "short" });

/** Fields of each question, in the order of `QUESTIONS`. */
export const FIELDS: readonly (readonly FormField[])[] = [
  [
    {
      kind: "text",
      name: "water",
      label: "Water",
      hint: "Such as 113, about 200, or 180-220",
      path: "water_l",
      units: ["L", "US gal", "imp gal"],
      shownAs: "volume",
      keypad: "decimal",
      width: "short",
    },
    {
      kind: "text",
      name: "sides",
      label: "Or the tank's sides: length, width, height",
      hint: "Such as 90x45x45. The water is worked out from them, with rock and sand taken off",
      path: "display_sides_cm",
      units: ["cm", "in"],
      shownAs: "length",
      width: "middle",
    },
  ],
  [
    {
      kind: "text",
      name: "first_seawater",
      label: "First seawater",
      hint: "Such as 1 May 2026, May 2026, or 6 weeks ago",
      path: "first_seawater_on",
      width: "middle",
    },
    {
      kind: "words",
      name: "rock",
      label: "The rock was",
      path: "rock.start",
      options: options(
        ["live", "live: wet, with life on it"],
        ["dry", "dry"],
        ["mixed", "mixed"],
        ["none", "no rock"],
        ["", "I don't know"],
      ),
    },
  ],
  GROWTHS.map(
    (growth): WordsField => ({
      kind: "words",
      row: true,
      name: `seen_${growth}`,
      label: capital(GROWTH_WORDS[growth]),
      path: `sightings.${growth}`,
      options: COVERS,
    }),
  ),
  [
    {
      kind: "lines",
      name: "animal",
      label: "Animals, one kind a line: how many, then the name",
      hint: "Such as 2 clownfish",
      path: "animals_present",
    },
    { kind: "box", name: "animals_none", label: "Nothing lives in it", path: "animals_present" },
  ],
  [
    {
      kind: "words",
      name: "floor",
      label: "The floor is",
      path: "floor.kind",
      options: options(["bare", "bare"], ["sand", "sand"], ["rubble", "rubble"], ["", "I don't know"]),
    },
    {
      kind: "text",
      name: "sand_depth",
      label: "Depth of the sand",
      hint: "For sand, where you know it",
      path: "floor.depth_mm",
      units: ["cm", "in"],
      shownAs: "length",
      keypad: "decimal",
      width: "short",
    },
    {
      kind: "words",
      name: "grain",
      label: "Grain of the sand",
      path: "floor.grain",
      options: options(["fine", "fine"], ["medium", "medium"], ["coarse", "coarse"], ["", "I don't know"]),
    },
  ],
  [
    ...(Object.keys(FOODS) as FoodKind[]).map(
      (food): TextField => ({
        kind: "text",
        name: `food_${food}`,
        label: `${capital(FOODS[food].label)}, grams a day`,
        path: `feeding.foods.${food}`,
        width: "middle",
        ...(food === "dry_pellet"
          ? { hint: "Such as 0.2, or a pinch. Where you don't know how much, write: some" }
          : {}),
      }),
    ),
    {
      kind: "words",
      name: "left",
      label: "Left after two minutes",
      path: "feeding.left_after_two_minutes",
      options: options(["none", "none"], ["some", "some"], ["a_lot", "a lot"], ["", "I don't know"]),
    },
    { kind: "box", name: "food_none", label: "Nothing goes in", path: "feeding.foods" },
  ],
  [
    reading("temperature", "Temperature", "temperature_c", ["C", "F"], "temperature"),
    reading(
      "salinity",
      "Salinity",
      "salinity_psu",
      ["psu", "sg 25/25", "sg 20/20", "sg", "mS/cm"],
      "salinity",
    ),
    reading("nitrate", "Nitrate", "readings.no3_mg_per_l", ["mg/L as NO3", "mg/L as N"], "nitrate"),
    reading(
      "phosphate",
      "Phosphate",
      "readings.po4_mg_per_l",
      ["mg/L as PO4", "mg/L as P", "ug/L as P"],
      "phosphate",
    ),
    reading(
      "alkalinity",
      "Alkalinity",
      "readings.alkalinity_dkh",
      ["dKH", "meq/L", "mg/L as CaCO3"],
      "alkalinity",
    ),
    {
      kind: "text",
      name: "measured_on",
      label: "Measured on",
      hint: "Such as today, yesterday or 14 Jun. Left empty: today",
      path: "readings.on",
      width: "middle",
    },
  ],
  [
    {
      kind: "words",
      name: "wrong",
      label: "Is anything of that so?",
      path: "trouble",
      options: options(["no", "no"], ["yes", "yes"]),
    },
    {
      kind: "text",
      name: "trouble",
      label: "If yes: what is wrong",
      hint: "Such as: two snails dead, fish gasping",
      path: "trouble",
      width: "full",
    },
    {
      kind: "text",
      name: "medicine",
      label: "If yes: the medicine, by its name on the pack",
      hint: "Such as copper",
      path: "medicines",
      width: "middle",
    },
  ],
];

const YES_NO = options(["yes", "yes"], ["no", "no"], ["", "I don't know"]);

const yesNo = (name: string, label: string, path: string): WordsField => ({
  kind: "words",
  row: true,
  name,
  label,
  path,
  options: YES_NO,
});

const figureField = (name: string, label: string, path: string, hint: string): TextField => ({
  kind: "text",
  name,
  label,
  hint,
  path,
  keypad: "decimal",
  width: "short",
});

/** What no question asks, but who knows it can tell on the single form: it narrows the plan further. */
export const MORE_FIELDS: readonly FormField[] = [
  figureField("light_hours", "Hours of light a day", "light.hours_per_day", "Such as 9"),
  {
    kind: "words",
    row: true,
    name: "light_strength",
    label: "Strength of the light",
    path: "light.strength",
    options: options(["low", "low"], ["medium", "medium"], ["high", "high"], ["", "I don't know"]),
  },
  figureField("par", "Light measured at the rock, µmol/m²/s", "light.par_umol_m2_s", "Such as 120"),
  {
    ...figureField("rock_weight", "Weight of the rock", "rock.rock_kg", "Such as 11"),
    units: ["kg", "lb"],
  },
  yesNo("caves", "Caves in the rock", "rock.caves"),
  yesNo("secured", "Rock fixed, so that no animal topples it", "rock.secured"),
  figureField("ph", "pH", "ph", "Such as 8.1"),
  {
    kind: "words",
    row: true,
    name: "filter",
    label: "Mechanical filter",
    path: "equipment.mechanical_filter",
    options: options(
      ["none", "none"],
      ["floss", "floss"],
      ["sock", "sock"],
      ["cartridge", "cartridge"],
      ["roller", "roller"],
      ["", "I don't know"],
    ),
  },
  figureField("filter_days", "Days between changes of it", "equipment.filter_change_days", "Such as 4"),
  yesNo("skimmer", "Skimmer", "equipment.skimmer"),
  yesNo("lid", "Lid", "equipment.lid"),
  yesNo("guards", "Guards on the pump inlets", "equipment.pump_guards"),
  yesNo("corals", "Corals", "corals"),
  figureField(
    "change_percent",
    "Water changed each time, per cent",
    "care.water_change_percent",
    "Such as 10",
  ),
  figureField("change_days", "Days between water changes", "care.water_change_every_days", "Such as 7"),
  figureField("wipe_days", "Days between wiping the glass", "care.wipe_glass_every_days", "Such as 7"),
  {
    kind: "words",
    name: "source_water",
    label: "Water for changes",
    path: "source_water",
    options: options(
      ["tap", "from the tap"],
      ["conditioned", "from the tap, conditioned"],
      ["purified", "purified"],
      ["", "I don't know"],
    ),
  },
  {
    kind: "words",
    name: "experience",
    label: "The keeper's experience",
    path: "keeper_experience",
    options: options(
      ["first-tank", "a first tank"],
      ["experienced", "experienced"],
      ["specialist", "a specialist"],
      ["", "not said"],
    ),
  },
];

/** Stands for those in a list of questions. */
export const MORE = 9;

export const fieldsOf = (question: number): readonly FormField[] =>
  question === MORE ? MORE_FIELDS : (FIELDS[question - 1] ?? []);

/** Words for a unit, beside a field. */
export const UNIT_WORDS: Readonly<Record<string, string>> = {
  L: "litres",
  "US gal": "US gallons",
  "imp gal": "imperial gallons",
  cm: "cm",
  in: "inches",
  C: "°C",
  F: "°F",
  psu: "psu (ppt)",
  "sg 25/25": "specific gravity at 25/25 °C",
  "sg 20/20": "specific gravity at 20/20 °C",
  sg: "specific gravity, scale unknown",
  "mS/cm": "mS/cm at 25 °C",
  dKH: "dKH",
  "meq/L": "meq/L",
  "mg/L as CaCO3": "ppm as CaCO3",
  "mg/L as NO3": "mg/L as nitrate (NO3)",
  "mg/L as N": "mg/L as nitrogen (N)",
  "mg/L as PO4": "mg/L as phosphate (PO4)",
  "mg/L as P": "mg/L as phosphorus (P)",
  "ug/L as P": "ppb as phosphorus (P)",
  "ug/L as PO4": "ppb as phosphate (PO4)",
  "mg/L as NH3": "mg/L as NH3",
  "mg/L as NH4": "mg/L as NH4",
  "mg/L as NO2": "mg/L as nitrite (NO2)",
  "mg/L": "mg/L",
};

/** Shown-in choice → unit offered first beside a field. */
const OFFERED_FIRST: Readonly<Record<string, string>> = {
  sg: "sg 25/25",
  NO3: "mg/L as NO3",
  "NO3-N": "mg/L as N",
  PO4: "mg/L as PO4",
  "PO4-P": "mg/L as P",
};

/** The unit that stands beside a field before anyone chose. */
export function firstUnit(field: TextField, shownIn: Readonly<Record<string, string | undefined>>): string {
  const units = field.units ?? [];
  const wanted = field.shownAs === undefined ? undefined : shownIn[field.shownAs];
  const unit = wanted === undefined ? undefined : (OFFERED_FIRST[wanted] ?? wanted);
  return unit !== undefined && units.includes(unit) ? unit : (units[0] ?? "");
}
