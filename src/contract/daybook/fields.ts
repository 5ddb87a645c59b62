/**
 * What each kind of entry asks for: one table for form, API, command line and import. Names are those of the kept body
 * without `_text`; `trait.ID` is taken beside them by kinds that have `traits`.
 */
import { GROWTHS } from "../../engine/types/tank.ts";
import { FOODS, type FoodKind } from "../tank-file/assumptions.ts";
import { GROWTH_ANCHORS, SCORE_WORDS } from "./growth-anchors.ts";
import type { Changed, Chore, FedBy } from "./kinds/care.ts";
import type { Sign } from "./kinds/sighting.ts";
import type { EntryKind } from "./kinds.ts";
import { MEASURES } from "./read-reading.ts";
import { MEASURED } from "./reading.ts";

export interface FieldChoice {
  readonly label: string;
  /** What stands in the field when it is chosen. */
  readonly text: string;
}

export interface EntryField {
  readonly name: string;
  readonly label: string;
  /** `words`: any text. `day`: one that may lie ahead. `amount`: a number, with or without its unit. `traits`: fields `trait.ID`, each yes or no. */
  readonly input:
    | "choice"
    | "words"
    | "animal"
    | "tank"
    | "count"
    | "amount"
    | "yes_no"
    | "when"
    | "day"
    | "note"
    | "traits";
  readonly needed: boolean;
  /** Of `choice` all there are; of `yes_no` both; else some that are often meant, or none. */
  readonly choices: readonly FieldChoice[];
  /** An example of what to type; empty where the choices say it. */
  readonly example: string;
}

export const KIND_LABELS: Readonly<Record<EntryKind, string>> = {
  reading: "Reading",
  growth: "Growth seen",
  sign: "Sign seen",
  head_count: "Head count",
  order: "Animals ordered",
  addition: "Animals added",
  loss: "Animals lost",
  departure: "Animals moved out",
  move: "Animals moved between tanks",
  identification: "Animal known anew",
  chore: "Chore done",
  change: "Change",
  treatment: "Treatment",
  outage: "Outage",
  relocation: "Tank moved",
  absence: "Away from home",
  decline: "Advice declined",
};

export const SIGN_LABELS: Readonly<Record<Sign, string>> = {
  waterline_snails: "Snails at the waterline",
  fallen_snails: "Fallen snails",
  empty_shells: "Empty shells",
  cast_shell: "Cast shell",
  hiding: "Hiding",
  ill_animals: "Animals that look ill",
  white_dots: "White dots",
  hitchhiker: "Unknown guest",
  cloudy_water: "Cloudy water",
};

export const CHORE_LABELS: Readonly<Record<Chore, string>> = {
  water_change: "Water changed",
  glass_wiped: "Glass wiped",
  sand_siphoned: "Sand siphoned",
  sand_stirred: "Sand stirred",
  algae_removed: "Algae taken out by hand",
  filter_changed: "Filter changed",
  sorbent_renewed: "Phosphate remover renewed",
  refugium_harvested: "Refugium harvested",
  fallen_snails_righted: "Fallen snails righted",
};

export const CHANGED_LABELS: Readonly<Record<Changed, string>> = {
  feed: "Feed a day, all of it",
  light_hours: "Hours of light a day",
  light_strength: "Strength of the light",
  skimmer: "Skimmer",
  other: "Something else",
};

const FED_BY_LABELS: Readonly<Record<FedBy, string>> = {
  sitter: "A sitter, packed portions",
  nobody: "Nobody comes",
  feeder: "An automatic feeder",
};

const field = (
  name: string,
  label: string,
  input: EntryField["input"],
  more: Partial<Pick<EntryField, "needed" | "choices" | "example">> = {},
): EntryField => ({ name, label, input, needed: false, choices: [], example: "", ...more });

const choicesOf = <Name extends string>(labels: Readonly<Record<Name, string>>): FieldChoice[] =>
  Object.entries<string>(labels).map(([text, label]) => ({ text, label }));

const YES_NO: readonly FieldChoice[] = [
  { label: "Yes", text: "yes" },
  { label: "No", text: "no" },
];
const yesNo = (name: string, label: string): EntryField => field(name, label, "yes_no", { choices: YES_NO });

const COMMON: readonly EntryField[] = [
  field("observed", "When", "when", { example: "today, 14 Jun, 2026-06-14T21:30+01:00" }),
  field("note", "Note", "note"),
];
const ANIMAL = field("animal", "Animal", "animal", { needed: true, example: "trochus snail" });
const LIGHTS_OUT = field("hours_from_lights_out", "Hours from lights-out", "amount", {
  example: "2, or 3 before",
});
const CONDITION = field("condition", "Condition", "choice", {
  choices: choicesOf({ lively: "Lively", usual: "As usual", weak: "Weak" }),
});
const TRAITS = field("traits", "Traits seen", "traits");

const foodLabels = Object.fromEntries(
  (Object.keys(FOODS) as FoodKind[]).map((kind) => [kind, FOODS[kind].label]),
);

export const ENTRY_FIELDS: Readonly<Record<EntryKind, readonly EntryField[]>> = {
  reading: [
    field("quantity", "What was measured", "choice", {
      needed: true,
      choices: MEASURED.map((name) => ({ text: name, label: MEASURES[name].label })),
    }),
    field("text", "Reading", "amount", { needed: true, example: "5, <2, 25 ppb P" }),
    field("unit", "Unit", "words", { example: "mg/L as NO3" }),
    field("kit_step", "Smallest step of the kit", "amount", { example: "2" }),
    ...COMMON,
  ],
  growth: [
    field("growth", "Growth", "choice", {
      needed: true,
      choices: GROWTHS.map((name) => ({ text: name, label: GROWTH_ANCHORS[name].label })),
    }),
    field("score", "Score, 0 to 4", "amount", {
      needed: true,
      choices: SCORE_WORDS.map((word, score) => ({ text: String(score), label: `${score} ${word}` })),
      example: "2, or 30 %",
    }),
    TRAITS,
    ...COMMON,
  ],
  sign: [
    field("sign", "What was seen", "choice", { needed: true, choices: choicesOf(SIGN_LABELS) }),
    { ...ANIMAL, needed: false },
    field("count", "How many", "count", { example: "3" }),
    field("kinds_seen", "How many kinds", "amount", { example: "2" }),
    LIGHTS_OUT,
    TRAITS,
    ...COMMON,
  ],
  head_count: [
    ANIMAL,
    field("seen", "Seen", "count", { needed: true, example: "8, 8?, many" }),
    LIGHTS_OUT,
    yesNo("torch", "By torch"),
    yesNo("food_offered", "Food offered"),
    ...COMMON,
  ],
  order: [
    ANIMAL,
    field("count", "Ordered", "count", { needed: true, example: "5" }),
    field("wave", "Wave of the plan", "amount", { example: "2" }),
    field("expected", "Should come on", "day", { example: "4 Dec, 2026-12-04" }),
    field("from", "Of whom", "words", { example: "the shop in Mill Lane" }),
    field("despite_gate", "Why, though the gate was not met", "words"),
    ...COMMON,
  ],
  addition: [
    ANIMAL,
    field("count", "Alive", "count", { needed: true, example: "5" }),
    field("sold_as", "Sold as", "words", { example: "turbo" }),
    field("dead_on_arrival", "Dead on arrival", "count", { example: "0" }),
    CONDITION,
    field("wave", "Wave of the plan", "amount", { example: "2" }),
    field("despite_gate", "Why, though the gate was not met", "words"),
    ...COMMON,
  ],
  loss: [
    ANIMAL,
    field("count", "Lost", "count", { needed: true, example: "1" }),
    field("certainty", "Found or feared", "choice", {
      needed: true,
      choices: choicesOf({ found: "Found: a body or an empty shell", feared: "Feared: nothing was found" }),
    }),
    yesNo("body_removed", "Body taken out"),
    field("cause", "What it was, you think", "choice", {
      choices: choicesOf({
        unknown: "Can't tell",
        starved: "Starved",
        eaten: "Eaten",
        fell: "Fell and was not righted",
        moult: "Died in the moult",
        poisoned: "Poisoned",
        arrival: "Weak from the journey",
        age: "Old age",
      }),
    }),
    ...COMMON,
  ],
  departure: [
    ANIMAL,
    field("count", "Moved out", "count", { needed: true, example: "2" }),
    field("to", "Where to", "words", { needed: true, example: "a friend's tank" }),
    ...COMMON,
  ],
  move: [
    ANIMAL,
    field("count", "Moved", "count", { needed: true, example: "3" }),
    field("to", "To which tank", "tank", { example: "Hallway reef" }),
    field("from", "From which tank", "tank", { example: "Hallway reef" }),
    CONDITION,
    field("despite_gate", "Why, though the gate was not met", "words"),
    ...COMMON,
  ],
  identification: [
    field("was", "Taken for", "animal", { needed: true, example: "trochus snail" }),
    { ...ANIMAL, label: "Is" },
    field("count", "How many of them", "count", { example: "all, where left empty" }),
    ...COMMON,
  ],
  chore: [
    field("chore", "What was done", "choice", { needed: true, choices: choicesOf(CHORE_LABELS) }),
    field("amount", "How much", "amount", { example: "10 %, 20 L, half" }),
    field("film_days", "Days until the glass needed it again", "amount", { example: "4" }),
    ...COMMON,
  ],
  change: [
    field("changed", "What was changed", "choice", { needed: true, choices: choicesOf(CHANGED_LABELS) }),
    field("to", "To what", "amount", { needed: true, example: "0.4 g pellet, 8 h, half, off" }),
    field("food", "Food", "choice", { choices: choicesOf(foodLabels) }),
    ...COMMON,
  ],
  treatment: [
    field("substance", "Active ingredient", "words", { needed: true, example: "praziquantel" }),
    field("step", "Step", "choice", {
      needed: true,
      choices: choicesOf({ started: "Put in", ended: "Tested gone, or taken out" }),
    }),
    ...COMMON,
  ],
  outage: [
    field("of", "What was out", "choice", {
      needed: true,
      choices: choicesOf({
        power: "Power",
        pumps: "Pumps",
        heater: "Heater",
        lamp: "Lamp",
        skimmer: "Skimmer",
      }),
    }),
    field("hours", "How long", "amount", { needed: true, example: "6 h" }),
    ...COMMON,
  ],
  relocation: [
    field("to", "Where to", "words", { needed: true, example: "the hall" }),
    field("zone", "Time zone from then on", "words", { example: "Europe/London" }),
    ...COMMON,
  ],
  absence: [
    field("from", "Leaving", "day", { needed: true, example: "1 Jul, 2026-07-01" }),
    field("to", "Coming back", "day", { needed: true, example: "15 Jul" }),
    field("fed_by", "Who feeds", "choice", { needed: true, choices: choicesOf(FED_BY_LABELS) }),
    field("every_days", "A sitter feeds on every so many days", "amount", {
      example: "2, where left empty",
    }),
    field("portions", "Portions packed", "count", { example: "6" }),
    field("observed", "Noted on", "when", { example: "today, 14 Jun" }),
    field("note", "Note", "note"),
  ],
  decline: [
    field("advice", "Advice", "words", { needed: true }),
    field("reason", "Reason", "words", { needed: true }),
    ...COMMON,
  ],
};
