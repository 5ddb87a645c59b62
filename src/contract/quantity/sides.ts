/** Three sides of a glass box, outside to outside: gross volume, never taken for the water in it. */
import { fromCanonical, toCanonical } from "../../engine/units/convert.ts";
import { asciiDigits, NUMBER, readNumber } from "./number.ts";
import { asked, kept, type MessageKind, type Outcome, refused } from "./outcome.ts";
import { tidy } from "./parse.ts";
import { decimalSign, type Preferences } from "./preferences.ts";
import { spelled } from "./rule.ts";
import { figure, shown } from "./show.ts";

export interface Sides {
  readonly lengthCm: number;
  readonly widthCm: number;
  readonly heightCm: number;
  readonly grossL: number;
}

export interface SidesContext {
  readonly preferences: Preferences;
  readonly label?: string;
  /** Unit chosen beside the field; null or absent where nobody chose. */
  readonly unit?: "cm" | "mm" | "m" | "in" | "ft" | null;
}

type LengthUnit = NonNullable<SidesContext["unit"]>;

const UNITS: ReadonlyMap<string, LengthUnit> = new Map(
  Object.entries<LengthUnit>({
    cm: "cm",
    centimetres: "cm",
    centimeters: "cm",
    mm: "mm",
    millimetres: "mm",
    millimeters: "mm",
    m: "m",
    metres: "m",
    meters: "m",
    in: "in",
    inch: "in",
    inches: "in",
    '"': "in",
    "″": "in",
    "''": "in",
    ft: "ft",
    feet: "ft",
    foot: "ft",
  }),
);
const LONGEST_CM = 1000;
const SHAPE = new RegExp(`^(${NUMBER})`);

export function readSides(text: string, context: SidesContext): Outcome<Sides> {
  const label = context.label ?? "Tank sides";
  const say = (kind: MessageKind, words: string) => ({ kind, text: `${label} "${shown(text)}": ${words}` });
  const original = { text, unit: context.unit ?? null };
  if (text.trim() === "") {
    const words = "nothing entered. Enter three sides: length, width, height, such as 90x45x45 cm";
    return refused(original, { kind: "MISSING", text: `${label}: ${words}` });
  }
  const split = splitSides(text, decimalSign(context.preferences.locale));
  if (split === null)
    return refused(original, say("FORMAT", "enter three sides: length, width, height, such as 90x45x45 cm"));
  const { sides, unitText, rewritten } = split;
  if (sides.length !== 3) {
    const missing = ["length, width and height are", "width and height are", "height is"][sides.length];
    const what = missing === undefined ? `there are ${sides.length}` : `${missing} missing`;
    return refused(original, say("FORMAT", `enter three sides: length, width, height. ${capital(what)}`));
  }
  const typed = unitText === "" ? null : (UNITS.get(spelled(unitText)) ?? null);
  if (unitText !== "" && typed === null) {
    return refused(
      original,
      say("UNIT", `"${shown(unitText)}" is not a length. Known here: cm, mm, m, in, ft`),
    );
  }
  const unit = typed ?? context.unit ?? context.preferences.length;
  if (unit === null) return askUnit(text, sides, say);
  const value = boxOf(sides, unit);
  const longest = Math.max(value.lengthCm, value.widthCm, value.heightCm);
  if (!(Math.min(...sides) > 0) || longest > LONGEST_CM) {
    return refused(
      { text, unit },
      say("RANGE", `each side must be more than 0 and at most ${LONGEST_CM} cm`),
    );
  }
  const read = unit === "cm" && !rewritten ? "" : `read as ${sides.join(" x ")} ${unit}, `;
  const echo = `${read}${figure(value.grossL)} L if filled to the brim with nothing in it`;
  return kept("convert", value, { text, unit }, say("ECHO", echo));
}

function askUnit(
  text: string,
  sides: readonly number[],
  say: (kind: MessageKind, words: string) => { kind: MessageKind; text: string },
): Outcome<Sides> {
  const readings = (["in", "cm"] as const).map((unit) => ({
    label: `${unit === "in" ? "inches" : "centimetres"} (${figure(boxOf(sides, unit).grossL)} L)`,
    text: `${sides.join("x")} ${unit}`,
  }));
  return asked({ text, unit: null }, say("AMBIG", `${readings.map((r) => r.label).join(" or ")}?`), readings);
}

function splitSides(
  text: string,
  decimal: "." | ",",
): { sides: number[]; unitText: string; rewritten: boolean } | null {
  if (text.length > 200) return null;
  let rest = tidy(text).toLowerCase();
  const sides: number[] = [];
  let unitText = "";
  let rewritten = asciiDigits(text) !== text;
  while (rest !== "" && sides.length < 9) {
    const token = SHAPE.exec(rest)?.[1];
    if (token === undefined) return null;
    const read = readNumber(token, decimal);
    // "1,200" as a side is open between two sizes a hundredfold apart; too rare to ask, so it is not taken.
    if (read.kind !== "one") return null;
    sides.push(read.value);
    rewritten ||= read.rewritten;
    rest = rest.slice(token.length).trim();
    const unit = /^[^\dx×*,;]*/.exec(rest)?.[0].trim() ?? "";
    const by = unit.replace(/\bby\b/, "").trim();
    if (by !== "" && unitText !== "" && by !== unitText) return null;
    if (by !== "") unitText = by;
    rest = rest
      .slice(unit.length)
      .trim()
      .replace(/^[x×*;]/, "")
      .trim();
  }
  return { sides, unitText, rewritten };
}

function boxOf(sides: readonly number[], unit: LengthUnit): Sides {
  const [lengthCm = 0, widthCm = 0, heightCm = 0] = sides.map((side) => toCanonical("length", side, unit));
  const grossL = fromCanonical("volume", (lengthCm * widthCm * heightCm) / 1000, "L");
  return { lengthCm, widthCm, heightCm, grossL };
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
