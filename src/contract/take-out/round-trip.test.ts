/** A daybook taken out and brought in again is the same daybook, to the letter, in both forms; as a sheet, its readings are. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readText, scene, taken } from "../../../checks/kit/bring-in-scene.ts";
import { compareEntries, type HeldEntry } from "../bring-in/compare.ts";
import type { FileRead } from "../bring-in/read.ts";
import type { DaybookEntry, EntryKind } from "../daybook/kinds.ts";
import type { FindTank } from "../daybook/other-tank.ts";
import { type EntryText, readEntry } from "../daybook/read-entry.ts";
import { atOnce } from "../steps.ts";
import { csvPieces, sheetPieces } from "./csv-file.ts";
import { jsonPieces } from "./json.ts";

const FROM = {
  tank: { id: "t1", name: 'Kitchen "invented"' },
  at: "2026-06-15T12:00:00.000Z",
  preferences: scene().entry.preferences,
};

/** Words that have broken tables before: quotes, separators, formulas, line ends, other scripts, apostrophes. */
const words = fc
  .oneof(
    fc.constantFrom(
      ...[
        '=HYPERLINK("x","y")',
        "'tis",
        "''",
        "'=1",
        "-1",
        "+1",
        "@x",
        '"',
        '""',
        "a;b,c\td|e",
        "a\nb",
        "a\r\nb",
      ],
      ...["Zoë’s 礁 🪸", "null", "'", "=", "0012", "1-Mar", "\tx", "sep=;", "true", "{}", "e\u0301"],
    ),
    fc.string({ unit: "grapheme", minLength: 1, maxLength: 30 }),
  )
  .filter((text) => text.trim() !== "");
const when = fc.constantFrom(
  "2026-06-01",
  "yesterday",
  "14 Jun",
  "2026-06-02T10:05+01:00",
  "2026-06-03T21:30",
  "today",
);
const animal = fc.constantFrom("trochus snail", "trocus sp of my own", "Zzyzx");

/** Texts of every kind of entry, as keepers type them. */
const TYPED: { readonly [Kind in EntryKind]: fc.Arbitrary<EntryText> } = {
  reading: fc.record({
    quantity: fc.constantFrom(
      "no3_mg_per_l",
      "ph",
      "alkalinity_dkh",
      "salinity_psu",
      "temperature_c",
      "po4_mg_per_l",
    ),
    text: fc.constantFrom(
      "8.1",
      "0",
      "<2",
      ">100",
      "5-10",
      "about 5",
      "25 ppb P",
      "77 F",
      "1.2",
      "8,05",
      "300 (checked)",
    ),
    unit: fc.constantFrom("", "dKH", "mg/L as NO3", "mg/L as N", "C", "psu"),
    kit_step: fc.constantFrom("", "2", "0,5"),
  }),
  growth: fc.record({
    growth: fc.constantFrom("hair_algae", "cyanobacteria", "diatoms"),
    score: fc.constantFrom("0", "2", "30 %", "4"),
    "trait.slimy": fc.constantFrom("yes", "no"),
  }),
  sign: fc.record({
    sign: fc.constantFrom("waterline_snails", "white_dots", "hiding"),
    count: fc.constantFrom("3", ""),
    hours_from_lights_out: fc.constantFrom("2", "3 before", ""),
  }),
  head_count: fc.record({
    animal,
    seen: fc.constantFrom("8", "8?", "many", "0"),
    torch: fc.constantFrom("yes", "no", ""),
  }),
  order: fc.record({
    animal,
    count: fc.constantFrom("5", "1"),
    expected: fc.constantFrom("", "2026-06-20", "4 Dec 2026"),
    from: words,
  }),
  addition: fc.record({
    animal,
    count: fc.constantFrom("5", "1"),
    sold_as: words,
    dead_on_arrival: fc.constantFrom("0", "1"),
  }),
  loss: fc.record({
    animal,
    count: fc.constantFrom("1", "2"),
    certainty: fc.constantFrom("found", "feared"),
  }),
  departure: fc.record({ animal, count: fc.constantFrom("1"), to: words }),
  move: fc.oneof(
    fc.record({ animal, count: fc.constantFrom("1", "3"), to: words, despite_gate: words }),
    fc.record({ animal, count: fc.constantFrom("1"), from: words, condition: fc.constantFrom("weak", "") }),
  ),
  identification: fc.record({ was: animal, animal, count: fc.constantFrom("", "2") }),
  chore: fc.record({
    chore: fc.constantFrom("water_change", "glass_wiped"),
    amount: fc.constantFrom("10 %", "20 L", "half", ""),
    film_days: fc.constantFrom("", "4"),
  }),
  change: fc.record({
    changed: fc.constantFrom("light_hours", "other", "skimmer"),
    to: fc.constantFrom("8 h", "off", "half"),
  }),
  treatment: fc.record({ substance: words, step: fc.constantFrom("started", "ended") }),
  outage: fc.record({ of: fc.constantFrom("power", "pumps"), hours: fc.constantFrom("6", "6 h", "30 min") }),
  relocation: fc.record({ to: words, zone: fc.constantFrom("", "Asia/Kolkata") }),
  absence: fc.record({
    from: fc.constantFrom("2026-07-01", "1 Jul 2026"),
    to: fc.constantFrom("2026-07-02", "15 Jul 2026"),
    fed_by: fc.constantFrom("sitter", "Nobody comes"),
    portions: fc.constantFrom("", "0"),
  }),
  decline: fc.record({ advice: words, reason: words }),
};

/** Any words name a tank: what a file says of another is not held against the store. */
const findTank: FindTank = (text) => ({
  kind: "one",
  tank: {
    ...{ id: `id of ${text}`.slice(0, 100), name: text.slice(0, 200), notBefore: null, onRecord: () => 100 },
    ...{ knownAs: (id: string) => id, toldOn: () => null },
  },
  receiving: { said: () => [], gateNotMet: null },
});
const context = scene({ onRecord: () => 100, findTank });
const entry = (id: string) =>
  fc
    .oneof(
      ...(Object.keys(TYPED) as EntryKind[]).map((kind) => TYPED[kind].map((typed) => ({ kind, typed }))),
    )
    .chain(({ kind, typed }) =>
      fc.record({ observed: when, note: fc.option(words, { nil: "" }) }).map((more) => {
        const read = readEntry(kind, { ...typed, ...more }, context.entry);
        return read.ok ? ({ id, kind, on: read.on, body: read.body } as DaybookEntry) : null;
      }),
    );
const daybook = fc
  .array(entry(""), { maxLength: 25 })
  .map((all) => all.flatMap((one, i) => (one === null ? [] : [{ ...one, id: `e${i}` } as DaybookEntry])));

const kindsIn = (entries: readonly DaybookEntry[]) => new Set(entries.map(({ kind }) => kind));
const asCsv = (entries: readonly DaybookEntry[]) => [...csvPieces(kindsIn(entries), entries)].join("");
const asJson = (entries: readonly DaybookEntry[]) => [...jsonPieces(FROM, entries)].join("");
const plain = (file: FileRead) =>
  taken(file).entries.map(({ entry: id, kind, on, body }) => ({ id, kind, on, body }));
const heldOf = (entries: readonly DaybookEntry[]): HeldEntry[] =>
  entries.map((one) => ({
    ...one,
    version: 1,
    kept: true,
    changedAt: "",
    body: one.body as HeldEntry["body"],
  }));

describe("taken out and brought in again", () => {
  test("every kind of entry is made by the generators", () => {
    const made = fc.sample(daybook, { numRuns: 200, seed: 4 }).flat();
    expect(kindsIn(made).size).toBe(Object.keys(TYPED).length);
  });

  test.each([
    ["CSV", asCsv],
    ["JSON", asJson],
  ])("%s gives every entry back to the letter, and nothing new beside the daybook", (_, write) => {
    fc.assert(
      fc.property(daybook, (entries) => {
        const file = readText(write(entries), {}, context);
        expect(taken(file).faults).toEqual([]);
        expect(plain(file)).toEqual(entries);
        const comparison = atOnce(compareEntries(taken(file).entries, heldOf(entries), new Set()));
        expect(comparison).toMatchObject({ fresh: [], clashes: [], deleted: [], twice: [] });
        expect(comparison.same).toHaveLength(entries.length);
        // Beside a daybook that holds none of these ids, as of another store, likewise.
        const elsewhere = heldOf(entries).map((one) => ({ ...one, id: `other-${one.id}` }));
        expect(atOnce(compareEntries(taken(file).entries, elsewhere, new Set())).fresh).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  test("a sheet of readings holds each of them, and brings nothing new", () => {
    fc.assert(
      fc.property(daybook, (entries) => {
        const readings = entries.filter(({ kind }) => kind === "reading");
        const text = [...sheetPieces(entries, FROM.preferences)].join("");
        if (readings.length === 0) return;
        const file = readText(text, {}, context);
        // Two of a time and quantity that are alike fall into one row each: the same entry once.
        const comparison = atOnce(compareEntries(taken(file).entries, heldOf(readings), new Set()));
        const without = readings.filter(({ body }) => "kit_step" in body && body.kit_step === null);
        if (without.length === readings.length) expect(comparison).toMatchObject({ fresh: [], clashes: [] });
        expect(taken(file).faults).toEqual([]);
        expect(taken(file).entries).toHaveLength(readings.length);
      }),
      { numRuns: 150 },
    );
  });
});

test("a bare figure that was understood in another unit has it in the sheet", () => {
  const typed = { quantity: "temperature_c", text: "77", observed: "2026-06-01" };
  const read = readEntry("reading", typed, context.entry);
  if (!read.ok) throw new Error("was not kept");
  const entry = { id: "e1", kind: "reading", on: read.on, body: read.body } as DaybookEntry;
  expect([...sheetPieces([entry], FROM.preferences)].join("")).toContain("77 F");
});

describe("I-120, I-124", () => {
  const noted = (note: string) =>
    [
      {
        id: "e1",
        kind: "decline",
        on: "2026-06-01",
        body: { observed_text: "x", observed_at: null, note, advice: "a", reason: "b" },
      },
    ] as unknown as DaybookEntry[];

  test("a formula is written with an apostrophe and read back without", () => {
    const text = asCsv(noted('=HYPERLINK("x","y")'));
    expect(text).toContain(`"'=HYPERLINK(""x"",""y"")"`);
    expect(plain(readText(text))[0]?.body).toMatchObject({ note: '=HYPERLINK("x","y")' });
  });

  test("a null inside is refused, in both forms", () => {
    expect(readText(asCsv(noted("A\u0000B"))).kind).toBe("refused");
    expect(taken(readText(asJson(noted("A\u0000B")))).faults).toMatchObject([{ line: 2, label: "note" }]);
  });
});

test("a file that was changed by hand is held to its texts: the figure beside them may not say otherwise", () => {
  const read = readEntry(
    "reading",
    { quantity: "no3_mg_per_l", text: "10 mg/L as NO3", observed: "2026-06-01" },
    context.entry,
  );
  if (!read.ok) throw new Error("was not kept");
  const entries = [{ id: "e1", kind: "reading", on: read.on, body: read.body }] as DaybookEntry[];
  const forged = asJson(entries).replace('"central":10', '"central":1');
  expect(taken(readText(forged)).faults[0]?.message.text).toContain("the text beside it reads as");
  const unknown = asJson(entries).replace('"text":', '"admin":true,"text":');
  expect(taken(readText(unknown)).faults[0]?.message.text).toContain('unknown field "admin"');
  expect(taken(readText(asJson(entries).replace('"kind":"reading"', '"kind":"mood"'))).faults[0]?.label).toBe(
    "kind",
  );
  expect(readText('{"entries":[]}').kind).toBe("refused");
  // Laid out in any other way it is the same file.
  const tidy = JSON.stringify(JSON.parse(asJson(entries)), null, 2);
  expect(plain(readText(tidy))).toEqual(entries);
  expect(readText(asJson(entries).replace("{", '{"entries":[],')).kind).toBe("refused");
});
