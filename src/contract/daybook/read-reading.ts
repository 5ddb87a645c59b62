/**
 * A reading as a keeper enters it, at any door (form, API, command line, import), to the reading as it is kept, or
 * every doubt about it at once. The quantity readers judge; nothing is guessed here.
 * Limits: one quantity a reading; what it means for the tank is said elsewhere.
 */
import { fromCanonical } from "../../engine/units/convert.ts";
import { readAlkalinity } from "../quantity/alkalinity.ts";
import { readAmmonia } from "../quantity/ammonia.ts";
import { readInstant, type Seen } from "../quantity/instant.ts";
import { readCalcium, readMagnesium } from "../quantity/minerals.ts";
import { readNumber } from "../quantity/number.ts";
import { readNitrate, readNitrite, readPhosphate } from "../quantity/nutrients.ts";
import {
  type Amount,
  type Choice,
  isKept,
  type Message,
  type Outcome,
  refused,
} from "../quantity/outcome.ts";
import { parseAmount, tidy } from "../quantity/parse.ts";
import { readPh } from "../quantity/ph.ts";
import { decimalSign, type Preferences } from "../quantity/preferences.ts";
import type { MeasureContext } from "../quantity/rule.ts";
import { readSalinity } from "../quantity/salinity.ts";
import { shown } from "../quantity/show.ts";
import { readTemperature } from "../quantity/temperature.ts";
import { readNote } from "../quantity/text.ts";
import { MEASURED, type Measured, type ReadingBody, readingBody } from "./reading.ts";

/** Texts as typed; an absent one is an empty field. */
export interface ReadingText {
  readonly quantity: string;
  readonly text: string;
  /** Chosen beside the field; empty where nobody chose. */
  readonly unit?: string;
  readonly kit_step?: string;
  readonly observed?: string;
  readonly note?: string;
}
export type ReadingField = "quantity" | "text" | "unit" | "kit_step" | "observed" | "note";

export interface ReadingContext {
  readonly preferences: Preferences;
  /** Today where the tank stands, and the clock's instant; ISO. */
  readonly today: string;
  readonly now: string | null;
  /** IANA zone of the tank; null where unknown. */
  readonly zone: string | null;
  /** True once animals live in it: ammonia is then a danger. */
  readonly stocked: boolean;
  /** First day of seawater; nothing was measured before it. */
  readonly notBefore: string | null;
}

export interface ReadingDoubt {
  readonly field: ReadingField;
  readonly label: string;
  readonly typed: string;
  readonly message: Message;
  /** `text` is what to put into the field instead. */
  readonly choices: readonly Choice[];
}

export type ReadReading =
  | {
      readonly ok: true;
      readonly body: ReadingBody;
      /** The day it belongs to. */
      readonly on: string;
      /** How it was read, where that is worth saying. */
      readonly said: readonly Message[];
    }
  | { readonly ok: false; readonly doubts: readonly ReadingDoubt[] };

interface Rule {
  readonly label: string;
  readonly read: (text: string, context: MeasureContext & { readonly stocked: boolean }) => Outcome<Amount>;
  /** Units offered beside the field, the name's own first. Empty: the quantity has none. */
  readonly units: readonly string[];
  /** From the reader's canonical unit to the one the name ends in. */
  readonly toNamed?: (canonical: number) => number;
}

/** What can be measured: its label, its reader and the units offered. */
export const MEASURES: Readonly<Record<Measured, Rule>> = {
  salinity_psu: {
    label: "Salinity",
    read: readSalinity,
    units: ["psu", "sg 25/25", "sg 20/20", "sg", "mS/cm"],
  },
  temperature_c: { label: "Temperature", read: readTemperature, units: ["C", "F"] },
  ph: { label: "pH", read: readPh, units: [] },
  alkalinity_dkh: {
    label: "Alkalinity",
    read: readAlkalinity,
    units: ["dKH", "meq/L", "mg/L as CaCO3"],
    toNamed: (meq) => fromCanonical("alkalinity", meq, "dKH"),
  },
  no3_mg_per_l: { label: "Nitrate", read: readNitrate, units: ["mg/L as NO3", "mg/L as N"] },
  po4_mg_per_l: {
    label: "Phosphate",
    read: readPhosphate,
    units: ["mg/L as PO4", "mg/L as P", "ug/L as P", "ug/L as PO4"],
  },
  tan_mg_n_per_l: {
    label: "Ammonia",
    // The units offered are of total ammonia. A bare figure may be of free ammonia, and is asked about.
    read: (text, context) =>
      readAmmonia(text, {
        ...context,
        form: context.unit != null || /\bas (?:n|nh3|nh4)\b/i.test(text) ? "total" : null,
      }),
    units: ["mg/L as N", "mg/L as NH3", "mg/L as NH4"],
  },
  no2_mg_per_l: { label: "Nitrite", read: readNitrite, units: ["mg/L as NO2", "mg/L as N"] },
  calcium_mg_per_l: { label: "Calcium", read: readCalcium, units: ["mg/L"] },
  magnesium_mg_per_l: { label: "Magnesium", read: readMagnesium, units: ["mg/L"] },
};

const CHECKED = /\s*\(checked\)$/i;

/** The chosen unit written behind a text that has none; the text then means the same without the choice. */
export function withUnit(text: string, unit: string | null, { locale }: Preferences): string {
  const typed = text.trim();
  if (unit === null || unit === "" || typed === "") return typed;
  const parsed = parseAmount(typed, decimalSign(locale));
  if (parsed === null || parsed.unit !== null) return typed;
  const checked = CHECKED.test(typed);
  return `${typed.replace(CHECKED, "")} ${unit}${checked ? " (checked)" : ""}`;
}

export function readReading(typed: ReadingText, context: ReadingContext): ReadReading {
  const quantity = measuredOf(typed.quantity);
  if (quantity === undefined) return { ok: false, doubts: [unknownQuantity(typed.quantity)] };
  const rule = MEASURES[quantity];
  const { preferences, stocked } = context;
  const doubts: ReadingDoubt[] = [];
  const said: Message[] = [];
  const take = <T>(field: ReadingField, label: string, text: string, outcome: Outcome<T>): T | null => {
    if (isKept(outcome)) {
      if (outcome.message !== null) said.push(outcome.message);
      return outcome.value;
    }
    doubts.push({ field, label, typed: text, message: outcome.message, choices: outcome.choices });
    return null;
  };

  const stepText = typed.kit_step?.trim() ?? "";
  const step = stepText === "" ? null : take("kit_step", STEP, stepText, readStep(stepText, rule, context));
  const unit = rule.units.length === 0 ? null : typed.unit?.trim() || null;
  if (unit !== null && !rule.units.includes(unit)) {
    return { ok: false, doubts: [...doubts, unknownUnit(unit, rule)] };
  }
  const outcome = rule.read(typed.text, { preferences, unit, kitStep: step, label: rule.label, stocked });
  const amount = take("text", rule.label, typed.text, outcome);
  const observed = typed.observed?.trim() || "today";
  const when = whenOf(observed, context);
  // An empty field means today: nobody needs to be told.
  const quiet = (typed.observed ?? "").trim() === "" && isKept(when);
  const seen = take("observed", WHEN, observed, quiet ? { ...when, message: null } : when);
  const noteText = typed.note ?? "";
  const note = noteText.trim() === "" ? null : take("note", "Note", noteText, readNote(noteText));
  if (amount === null || seen === null || doubts.length > 0) return { ok: false, doubts };

  const judged = outcome.message;
  const flagged = outcome.verdict === "flag";
  const named = rule.toNamed ?? ((value: number) => value);
  const body: ReadingBody = {
    quantity,
    text: withUnit(typed.text, unit, preferences),
    kit_step: step === null ? null : String(step),
    observed_text: observed.slice(0, 60),
    observed_at: seen.at === null ? null : withOffset(seen.at),
    value: { low: named(amount.low), central: named(amount.central), high: named(amount.high) },
    censored: amount.censored,
    flag: flagged ? (judged?.kind === "DANGER" ? "danger" : "unusual") : null,
    said: judged === null ? null : judged.text,
    note,
  };
  if (!readingBody.safeParse(body).success) return { ok: false, doubts: [tooLong(typed, note)] };
  return { ok: true, body, on: seen.day, said };
}

const LONGEST_NOTE = 10_000;
const WHEN = "When";
const STEP = "Smallest step of the kit";

/** Nothing entered means today; "yesterday" is settled now, as it would mean another day tomorrow. */
function whenOf(text: string, { preferences, today, now, zone, notBefore }: ReadingContext): Outcome<Seen> {
  return readInstant(text, { preferences, today, now, zone, notBefore, future: "refuse", label: WHEN });
}

/** A step is no reading, so an unusual one says nothing; but none is larger than what can be read at all. */
function readStep(text: string, rule: Rule, { preferences, stocked }: ReadingContext): Outcome<number> {
  const original = { text, unit: null };
  const read = readNumber(tidy(text), decimalSign(preferences.locale));
  if (read.kind === "one" && read.value > 0) {
    const unit = rule.units[0] ?? null;
    const asReading = rule.read(`${text} (checked)`, { preferences, unit, label: STEP, stocked });
    if (!isKept(asReading)) {
      const { message } = asReading;
      return { ...asReading, message: { ...message, text: message.text.replace(" (checked)", "") } };
    }
    return { verdict: "accept", value: read.value, original, message: null };
  }
  return refused(original, {
    kind: "FORMAT",
    text: `${STEP} "${shown(text)}": enter a number more than 0, such as 2, in the unit of the reading, or leave it empty`,
  });
}

/** The readers count letters as people do, the record as machines do. */
function tooLong({ text, note: typed = "" }: ReadingText, note: string | null): ReadingDoubt {
  const field = (note?.length ?? 0) > LONGEST_NOTE ? ("note" as const) : ("text" as const);
  const label = field === "note" ? "Note" : "Reading";
  const shownText = field === "note" ? typed : text;
  const message = {
    kind: "TOOBIG" as const,
    text: `${label} "${shown(shownText)}": longer than can be kept`,
  };
  return { field, label, typed: shownText, message, choices: [] };
}

/** By its name in data, or as a page calls it: "no3_mg_per_l" or "nitrate". */
function measuredOf(typed: string): Measured | undefined {
  const named = typed.trim().toLowerCase();
  return MEASURED.find((name) => name === named || MEASURES[name].label.toLowerCase() === named);
}

function unknownQuantity(typed: string): ReadingDoubt {
  const known = MEASURED.map((name) => MEASURES[name].label).join(", ");
  const message = {
    kind: "FORMAT" as const,
    text: `What was measured${typed.trim() === "" ? ": nothing chosen. One of these" : ` "${shown(typed)}": choose one of these`}: ${known}`,
  };
  const choices = MEASURED.map((name) => ({ label: MEASURES[name].label, text: name }));
  return { field: "quantity", label: "What was measured", typed, message, choices };
}

function unknownUnit(typed: string, { label, units }: Rule): ReadingDoubt {
  const message = {
    kind: "UNIT" as const,
    text: `Unit of ${label} "${shown(typed)}": must be one of ${units.join(", ")}`,
  };
  const choices = units.map((unit) => ({ label: unit, text: unit }));
  return { field: "unit", label: `Unit of ${label}`, typed, message, choices };
}

/** An instant with the offset it was given in: `2026-06-15T23:30:00+14:00`. */
export function withOffset({ utc, offsetMinutes }: NonNullable<Seen["at"]>): string {
  const local = new Date(Date.parse(utc) + offsetMinutes * 60_000).toISOString().slice(0, 19);
  if (offsetMinutes === 0) return `${local}Z`;
  const size = Math.abs(offsetMinutes);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${local}${offsetMinutes < 0 ? "-" : "+"}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}
