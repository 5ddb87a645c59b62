/** What holds for every reader and any text: no throw, an honest message, one value whatever the locale. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readAlkalinity } from "./alkalinity.ts";
import { readAmmonia } from "./ammonia.ts";
import { readCount } from "./count.ts";
import { readCoverage } from "./coverage.ts";
import { readDate } from "./date.ts";
import { readFeeding } from "./feeding.ts";
import { readInstant } from "./instant.ts";
import { readCalcium, readMagnesium } from "./minerals.ts";
import { readNitrate, readNitrite, readPhosphate } from "./nutrients.ts";
import { type Amount, isKept, type Outcome } from "./outcome.ts";
import { readPh } from "./ph.ts";
import { readPlain } from "./plain.ts";
import { NO_PREFERENCES, type Preferences } from "./preferences.ts";
import { readSalinity } from "./salinity.ts";
import { readSandDepth } from "./sand-depth.ts";
import { shown } from "./show.ts";
import { readSides } from "./sides.ts";
import { readSpecies } from "./species.ts";
import { readTemperature } from "./temperature.ts";
import { readName, readNote } from "./text.ts";
import { readVolume } from "./volume.ts";

type Read<T> = (text: string, preferences: Preferences) => Outcome<T>;

const measures: Readonly<Record<string, readonly [string, Read<Amount>]>> = {
  volume: ["Water volume", (t, preferences) => readVolume(t, { preferences, unit: "L" })],
  salinity: ["Salinity", (t, preferences) => readSalinity(t, { preferences, unit: "psu" })],
  temperature: ["Temperature", (t, preferences) => readTemperature(t, { preferences, unit: "C" })],
  ph: ["pH", (t, preferences) => readPh(t, { preferences })],
  alkalinity: ["Alkalinity", (t, preferences) => readAlkalinity(t, { preferences, unit: "dKH" })],
  calcium: ["Calcium", (t, preferences) => readCalcium(t, { preferences, unit: "mg/L" })],
  magnesium: ["Magnesium", (t, preferences) => readMagnesium(t, { preferences, unit: "mg/L" })],
  nitrate: ["Nitrate", (t, preferences) => readNitrate(t, { preferences, unit: "mg/L as NO3", kitStep: 2 })],
  nitrite: ["Nitrite", (t, preferences) => readNitrite(t, { preferences, unit: "mg/L as NO2" })],
  phosphate: ["Phosphate", (t, preferences) => readPhosphate(t, { preferences, unit: "mg/L as PO4" })],
  ammonia: [
    "Ammonia",
    (t, preferences) => readAmmonia(t, { preferences, unit: "mg/L as N", form: "total", stocked: true }),
  ],
  sand: ["Sand depth", (t, preferences) => readSandDepth(t, { preferences, unit: "mm" })],
  rock: ["Rock", (t, preferences) => readPlain("rock_kg", t, { preferences, unit: "kg" })],
  feed: ["Feed", (t, preferences) => readFeeding(t, { preferences, waterL: 100 })],
};
const unitless: typeof measures = {
  "volume without unit": ["Water volume", (t, preferences) => readVolume(t, { preferences })],
  "salinity without unit": ["Salinity", (t, preferences) => readSalinity(t, { preferences })],
  "nitrate without unit": ["Nitrate", (t, preferences) => readNitrate(t, { preferences })],
  "temperature without unit": ["Temperature", (t, preferences) => readTemperature(t, { preferences })],
};
const today = "2026-06-15";
const others: Readonly<Record<string, readonly [string, Read<unknown>]>> = {
  sides: ["Tank sides", (t, preferences) => readSides(t, { preferences })],
  count: ["Head count", (t, preferences) => readCount(t, { preferences, waterL: 100, onRecord: 7 })],
  coverage: ["Coverage", (t, preferences) => readCoverage(t, { preferences, unit: "%" })],
  date: ["Date", (t, preferences) => readDate(t, { preferences, today, future: "refuse" })],
  instant: [
    "Date",
    (t, preferences) =>
      readInstant(t, {
        preferences,
        today,
        future: "refuse",
        now: `${today}T12:00:00Z`,
        zone: "Europe/London",
      }),
  ],
  species: ["Animal", (t) => readSpecies(t, () => ({ kind: "none" }))],
  name: ["Tank name", (t) => readName(t)],
  note: ["Note", (t) => readNote(t)],
};
const everything = Object.entries({ ...measures, ...unitless, ...others });

const FORBIDDEN = /\b(?:invalid|please|sorry|oops|illegal|error occurred)\b/i;

const pieces = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(..."0123456789") },
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      ".",
      ",",
      " ",
      "-",
      "\u00a0",
      "'",
      "e",
      "/",
      ":",
      "×",
      "x",
      "+",
      "<",
      ">",
      "~",
      "?",
      "%",
      "(",
      ")",
    ),
  },
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      ..."L,l,gal,US gal,imp gal,psu,sg 25/25,sg,mS/cm,C,F,K,dKH,meq/L,ppm,ppb P,mg/L,NO3-N,NO3,cm,in,ft,g/day,pinch,cube,about,(checked),many,June,T,Z,as N,NaN,Infinity,٣,१,𝟗".split(
        ",",
      ),
    ),
  },
  { weight: 1, arbitrary: fc.string({ unit: "binary", maxLength: 3 }) },
);
const anyText = fc.array(pieces, { maxLength: 12 }).map((parts) => parts.join(""));

const LOCALES = ["en-GB", "en-US", "de-DE", "fr-FR", "pt-BR", "de-CH", "pl-PL", "ar-EG", "hi-IN", "sv-SE"];
const habits = (locale: string): Preferences => ({ ...NO_PREFERENCES, locale });

describe.each(everything)("%s, whatever is typed,", (_, [label, read]) => {
  test("never throws, and answers in the field's words", () => {
    fc.assert(
      fc.property(anyText, fc.constantFrom(...LOCALES), (text, locale) => {
        const { message, original } = read(text, habits(locale));
        expect(original.text).toBe(text);
        if (message === null) return;
        expect(message.text).toContain(label);
        expect(message.text.replace(shown(text), "")).not.toMatch(FORBIDDEN);
        if (message.kind !== "MISSING") expect(message.text).toContain(shown(text));
      }),
      { numRuns: 1000, seed: 20260615 },
    );
  });

  test("a reading on offer is kept when picked", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const preferences = habits("en-GB");
        const outcome = read(text, preferences);
        if (isKept(outcome) || outcome.verdict !== "ask") return;
        for (const choice of outcome.choices) {
          if (choice.text !== null)
            expect(isKept(read(choice.text, preferences)), `${text} → ${choice.text}`).toBe(true);
        }
      }),
      { numRuns: 1000, seed: 7 },
    );
  });
});

describe.each(Object.entries(measures))("%s", (_, [, read]) => {
  test("prints back and is read again as the same value", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 2000, noNaN: true }), (typed) => {
        const first = read(String(typed), habits("en-GB"));
        if (!isKept(first)) return;
        const { central, unit } = first.value;
        const again = read(`${central} ${unit} (checked)`, habits("en-GB"));
        expect(isKept(again)).toBe(true);
        if (isKept(again)) expect(again.value.central).toBeCloseTo(central, 9);
      }),
    );
  });

  test("a number written the way of a locale is read as that number there, or asked about", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 99_999, noNaN: true }),
        fc.constantFrom(...LOCALES),
        (value, locale) => {
          const rounded = Number(value.toPrecision(5));
          const written = new Intl.NumberFormat(locale, { maximumSignificantDigits: 5 }).format(rounded);
          const there = read(written, habits(locale));
          const plain = read(String(rounded), habits("en"));
          if (isKept(there) && isKept(plain)) expect(there.value.central).toBeCloseTo(plain.value.central, 9);
          // What reads without doubt as plain figures is never refused for its separators.
          if (isKept(plain) && plain.verdict === "accept")
            expect(there.verdict, `${written} in ${locale}`).not.toBe("refuse");
        },
      ),
      { numRuns: 300 },
    );
  });

  test("no figure makes it throw: a fine sweep, finest where a specific gravity could be meant", () => {
    const coarse = Array.from({ length: 1200 }, (_, i) => 10 ** (-3 + i / 150));
    const gravities = Array.from({ length: 700 }, (_, i) => 0.98 + i / 10_000);
    for (const value of [...coarse, ...gravities]) {
      for (const text of [String(value), value.toPrecision(5)]) {
        expect(() => read(text, habits("en-GB")), text).not.toThrow();
      }
    }
  });

  test("two locales never keep two values for the same text", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const [a, b] = [read(text, habits("en-GB")), read(text, habits("de-DE"))];
        if (isKept(a) && isKept(b)) expect(a.value).toEqual(b.value);
      }),
      { numRuns: 1000, seed: 3 },
    );
  });
});

test("20,000 random texts go through every reader", () => {
  const corpus = fc.sample(anyText, { numRuns: 20_000, seed: 42 });
  const preferences = habits("en-GB");
  const verdicts = new Map<string, number>();
  for (const text of corpus) {
    for (const [name, [, read]] of everything) {
      const key = `${name} ${read(text, preferences).verdict}`;
      verdicts.set(key, (verdicts.get(key) ?? 0) + 1);
    }
  }
  // The corpus is no good if it only ever meets one answer.
  for (const verdict of ["accept", "convert", "flag", "ask", "refuse"]) {
    expect([...verdicts.keys()].some((key) => key.endsWith(verdict))).toBe(true);
  }
});

test("very long texts are refused at once", () => {
  const texts = [
    "9".repeat(1e6),
    "1,".repeat(5e5),
    " ".repeat(1e6),
    `${"é".repeat(1e6)}`,
    "-".repeat(1e6),
    "1 ".repeat(1e5),
  ];
  for (const text of texts)
    for (const [, [, read]] of everything) expect(read(text, habits("en-GB")).verdict).toBe("refuse");
});
