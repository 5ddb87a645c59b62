/** The daybook put into the answers, read back by the one reader; and the record beside it. With the real catalogue. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { findAnimal } from "../../catalogue/index.ts";
import { applyDaybook } from "../../contract/daybook/apply/apply.ts";
import { headsOn, lotsOf, olderLots } from "../../contract/daybook/apply/lots.ts";
import type { ApplyScene, Since } from "../../contract/daybook/apply/scene.ts";
import type { DaybookEntry, EntryKind } from "../../contract/daybook/kinds.ts";
import { type EntryText, readEntry } from "../../contract/daybook/read-entry.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import { readTankFile } from "../../contract/tank-file/read.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import { entryContext } from "./entry-context.ts";
import { recordOf } from "./record.ts";

const today = "2026-06-15";
const DOCUMENT: TankFile = {
  grazewell_tank: 1,
  water_l: "200 L",
  first_seawater_on: "2025-06-01",
  floor: { kind: "sand", depth_mm: "40 mm" },
  feeding: {
    foods: [
      { kind: "dry_pellet", g_per_day: "0.3 g" },
      { kind: "frozen_mysis", g_per_day: "1.5 g" },
    ],
  },
  light: { hours_per_day: 9, par_umol_m2_s: "100-140" },
  fish: [{ animal: "clownfish", count: 2, size: "medium" }],
  animals_present: [
    { animal: "trochus-snail", count: 5, on: "2025-09-01" },
    { animal: "Zzyzx", count: 3 },
  ],
  medicines: ["copper"],
  sightings: { film_glass: "patches", hair_algae: "trace" },
};
const scene: ApplyScene = { today, findAnimal, since: {} };

const factsOf = (document: TankFile) => {
  const read = readTankFile(JSON.stringify(document), { today, findAnimal });
  if (!read.ok) throw new Error(read.findings.map(({ message }) => message.text).join("; "));
  return read.facts;
};

let made = 0;
/** As a keeper would log it; checked against no record. */
function entry<Kind extends EntryKind>(kind: Kind, on: string, typed: EntryText): DaybookEntry {
  const context = {
    ...entryContext(
      { document: DOCUMENT, facts: factsOf(DOCUMENT), entries: [], since: {} },
      { today, now: null },
    ),
    onRecord: () => 1_000_000,
  };
  const read = readEntry(kind, { ...typed, observed: on }, context);
  if (!read.ok) throw new Error(read.doubts.map(({ message }) => message.text).join("; "));
  made += 1;
  return { id: `entry-${String(made).padStart(6, "0")}`, kind, on: read.on, body: read.body } as DaybookEntry;
}
const added = (on: string, animal: string, count: number) =>
  entry("addition", on, { animal, count: `${count} (checked)` });
const lost = (on: string, animal: string, count: number, certainty = "found") =>
  entry("loss", on, { animal, count: `${count} (checked)`, certainty });
const known = (on: string, was: string, animal: string, count?: number) =>
  entry("identification", on, { was, animal, ...(count === undefined ? {} : { count: `${count}` }) });

const applied = (entries: readonly DaybookEntry[], document = DOCUMENT, since: Since = {}) =>
  applyDaybook(document, entries, { ...scene, since });
/** Heads by kind, as the reader finds them in what was written. */
function heads(
  entries: readonly DaybookEntry[],
  document = DOCUMENT,
  since: Since = {},
): Record<string, number> {
  const all: Record<string, number> = {};
  for (const { id, count } of factsOf(applied(entries, document, since).document).present)
    all[id] = (all[id] ?? 0) + count;
  return all;
}

describe("heads", () => {
  test("what came and what went since the answers were given", () => {
    expect(
      heads([added("2026-05-01", "nassarius-snail", 4), lost("2026-05-20", "trochus-snail", 2)]),
    ).toMatchObject({ "trochus-snail": 3, "nassarius-snail": 4, clownfish: 2 });
  });
  test("a feared loss takes nothing, a found one all there is, and no more", () => {
    expect(heads([lost("2026-05-20", "trochus-snail", 2, "feared")])["trochus-snail"]).toBe(5);
    const over = [lost("2026-05-20", "trochus-snail", 9)];
    expect(heads(over)["trochus-snail"]).toBeUndefined();
    expect(applied(over).notes.join()).toContain(
      "Of banded trochus snail the daybook has 4 more gone than came",
    );
  });
  test("fish come to the fish, and stay what they were said to be", () => {
    const { document } = applied([
      added("2026-05-01", "tailspot-blenny", 1),
      lost("2026-06-01", "clownfish", 1),
    ]);
    expect(document.fish).toEqual([
      { animal: "clownfish", count: 1, size: "medium" },
      { animal: "tailspot-blenny", count: 1, on: "2026-05-01" },
    ]);
    expect(document.animals_present).toEqual(DOCUMENT.animals_present);
  });
  test("one that nobody knows stays under its own name", () => {
    const { document } = applied([lost("2026-05-01", "zzyzx", 1), added("2026-05-02", "Blorp", 1)]);
    expect(document.animals_present?.slice(1)).toEqual([
      { animal: "Zzyzx", count: 2 },
      { animal: "Blorp", count: 1, on: "2026-05-02" },
    ]);
  });
  test("known anew: the kind changes from the start, the entries do not", () => {
    const entries = [
      added("2026-05-01", "trochus-snail", 3),
      lost("2026-05-20", "trochus-snail", 1),
      known("2026-06-01", "trochus-snail", "tectus-snail"),
    ];
    const before = JSON.stringify(entries);
    expect(heads(entries)).toMatchObject({ "tectus-snail": 7 });
    expect(heads(entries)["trochus-snail"]).toBeUndefined();
    expect(recordOf(entries, today).happenings.map((one) => "animal" in one && one.animal)).toEqual([
      "tectus-snail",
      "tectus-snail",
    ]);
    expect(JSON.stringify(entries)).toBe(before);
    // What comes later under the old name is what it says.
    expect(heads([...entries, added("2026-06-10", "trochus-snail", 2)])).toMatchObject({
      "tectus-snail": 7,
      "trochus-snail": 2,
    });
  });
  test("some of them: the latest that came, then those of the answers", () => {
    const entries = [
      added("2026-05-01", "trochus-snail", 3),
      known("2026-06-01", "trochus-snail", "tectus-snail", 4),
    ];
    expect(heads(entries)).toMatchObject({ "tectus-snail": 4, "trochus-snail": 4 });
  });
  test("entries from before the answers were given are in them already", () => {
    const since = { animals_present: { on: "2026-05-10", atMs: null } };
    const entries = [added("2026-05-01", "trochus-snail", 3), added("2026-05-10", "trochus-snail", 1)];
    expect(heads(entries, DOCUMENT, since)["trochus-snail"]).toBe(6);
    const at = (day: string) => headsOn(DOCUMENT, entries, { ...scene, since }, "trochus-snail", day);
    expect([at("2026-04-30"), at("2026-05-01"), at("2026-05-10")]).toEqual([2, 5, 6]);
  });
  test("of the very day, what was kept before the answers is in them", () => {
    const id = (ms: number) =>
      `${ms
        .toString(16)
        .padStart(12, "0")
        .replace(/^(.{8})/, "$1-")}-7000-8000-000000000000`;
    const noon = Date.parse("2026-05-10T12:00:00Z");
    const since = { animals_present: { on: "2026-05-10", atMs: noon } };
    const one = added("2026-05-10", "trochus-snail", 1);
    expect(heads([{ ...one, id: id(noon - 1) }], DOCUMENT, since)["trochus-snail"]).toBe(5);
    expect(heads([{ ...one, id: id(noon + 1) }], DOCUMENT, since)["trochus-snail"]).toBe(6);
  });
  test("a loss soon after a purchase is taken from it", () => {
    const entries = [added("2026-05-01", "trochus-snail", 3), lost("2026-05-03", "trochus-snail", 2)];
    const { lots } = lotsOf(DOCUMENT, entries, scene);
    expect(lots.filter(({ animal }) => animal === "trochus-snail").map(({ count }) => count)).toEqual([5, 1]);
  });
});

describe("what else the daybook says", () => {
  test("nothing in it, nothing changed", () => {
    expect(applied([]).document).toBe(DOCUMENT);
  });
  test("the last score of each growth, in the words of the answers", () => {
    const growth = (on: string, name: string, score: string) => entry("growth", on, { growth: name, score });
    const { document } = applied([
      growth("2026-06-10", "film_glass", "4"),
      growth("2026-06-12", "film_glass", "1"),
      growth("2026-06-01", "diatoms", "3"),
    ]);
    expect(factsOf(document).sightings).toEqual({
      film_glass: "trace",
      hair_algae: "trace",
      diatoms: "patches",
    });
  });
  test("feed: a named food is all of it, without a name the foods keep their shares", () => {
    const feed = (to: string) => applied([entry("change", "2026-06-01", { changed: "feed", to })]).document;
    const named = factsOf(feed("0.5 g nori"));
    expect(named.feedGPerDay).toMatchObject({ central: 0.5 });
    expect(feed("0.5 g nori").feeding?.foods?.map(({ kind }) => kind)).toEqual(["nori"]);
    expect(feed("0.9 g").feeding?.foods?.map(({ g_per_day }) => g_per_day)).toEqual([
      "0.15 g (checked)",
      "0.75 g (checked)",
    ]);
    const pinch = factsOf(feed("a pinch of flakes")).feedGPerDay;
    expect([pinch.low, pinch.high]).toEqual([0.05, 0.3]);
    expect(factsOf(feed("every other day")).feedGPerDay.central).toBeCloseTo(1.8, 9);
  });
  test("light: hours as said, strengths multiplied", () => {
    const { document } = applied([
      entry("change", "2026-06-01", { changed: "light_strength", to: "half" }),
      entry("change", "2026-06-05", { changed: "light_strength", to: "half" }),
      entry("change", "2026-06-05", { changed: "light_hours", to: "7 h" }),
    ]);
    expect(factsOf(document).parRock.central).toBeCloseTo(30, 6);
    expect(factsOf(document).lightHours.central).toBe(7);
    const { light: _, ...dark } = DOCUMENT;
    const change = entry("change", "2026-06-01", { changed: "light_strength", to: "half" });
    expect(applied([change], dark).notes.join()).toContain("not from what");
  });
  test("treatments run until they are said to be gone", () => {
    const step = (on: string, substance: string, what: string) =>
      entry("treatment", on, { substance, step: what });
    const medicines = (...all: DaybookEntry[]) => factsOf(applied(all).document).medicines;
    expect(medicines(step("2026-06-01", "Praziquantel", "started"))).toEqual(["copper", "Praziquantel"]);
    expect(medicines(step("2026-06-03", "COPPER", "ended"))).toEqual([]);
    // Of one day: what might still be in the water is said to be.
    const same = [step("2026-06-05", "copper", "ended"), step("2026-06-05", "copper", "started")];
    expect(medicines(...same)).toEqual(["copper"]);
    expect(medicines(...same.toReversed())).toEqual(["copper"]);
  });
  test("intervals are worked out from three chores of the last 60 days, and that is said", () => {
    const water = (on: string) => entry("chore", on, { chore: "water_change", amount: "15 %" });
    const two = [water("2026-06-01"), water("2026-06-08"), water("2026-03-01")];
    expect(applied(two).document.care).toBeUndefined();
    const { document, notes } = applied([...two, water("2026-06-13")]);
    expect(factsOf(document).waterChangeEveryDays.central).toBe(6);
    expect(factsOf(document).waterChangeFraction.central).toBeCloseTo(0.15, 9);
    expect(notes.join()).toContain("every 6 days");
  });
  test("a change from before the answers were given no longer holds", () => {
    const since = { feeding: { on: "2026-06-10", atMs: null } };
    const feed = entry("change", "2026-06-01", { changed: "feed", to: "0.5 g nori" });
    expect(factsOf(applied([feed], DOCUMENT, since).document).feedGPerDay.central).toBeCloseTo(1.8, 9);
  });
  test("a file that speaks of an earlier day speaks of today with its daybook", () => {
    const document: TankFile = { ...DOCUMENT, as_of: "2026-04-01" };
    expect(factsOf(applied([added("2026-05-01", "trochus-snail", 1)], document).document).asOf).toBe(today);
  });
  test("the last five readings of each quantity", () => {
    const entries = Array.from({ length: 8 }, (_, i) =>
      entry("reading", `2026-06-0${i + 1}`, {
        quantity: "no3_mg_per_l",
        text: `${i + 1}`,
        unit: "mg/L as NO3",
      }),
    );
    expect(factsOf(applied(entries).document).readings.map(({ on }) => on)).toEqual(
      [8, 7, 6, 5, 4].map((day) => `2026-06-0${day}`),
    );
  });
});

/** Additions, losses, departures and identifications among few kinds, in any order. */
const KINDS = ["trochus-snail", "tectus-snail", "nassarius-snail"] as const;
const act = fc.record({
  what: fc.constantFrom("added", "lost", "moved", "known", "some"),
  kind: fc.constantFrom(...KINDS),
  other: fc.constantFrom(...KINDS),
  count: fc.integer({ min: 1, max: 9 }),
  day: fc.integer({ min: 0, max: 20 }),
});
type Act = typeof act extends fc.Arbitrary<infer One> ? One : never;

function entryOf({ what, kind, other, count, day }: Act): DaybookEntry[] {
  const on = addDays("2026-05-01", day);
  if (what === "added") return [added(on, kind, count)];
  if (what === "lost") return [lost(on, kind, count)];
  if (what === "moved")
    return [entry("departure", on, { animal: kind, count: `${count} (checked)`, to: "Bo" })];
  if (kind === other) return [];
  return [known(on, kind, other, what === "some" ? count : undefined)];
}

describe("of every daybook", () => {
  test("what is written reads back, and no kind has fewer heads than none", () => {
    fc.assert(
      fc.property(fc.array(act, { maxLength: 12 }), (acts) => {
        const entries = acts.flatMap(entryOf);
        const { lots } = lotsOf(DOCUMENT, entries, scene);
        for (const { count } of lots) expect(count).toBeGreaterThanOrEqual(0);
        const told: Record<string, number> = {};
        for (const { animal, count } of lots)
          if (animal !== null && count > 0) told[animal] = (told[animal] ?? 0) + count;
        expect(heads(entries)).toEqual(told);
      }),
      { numRuns: 100 },
    );
  });

  test("being known anew changes kinds, never how many there are", () => {
    fc.assert(
      fc.property(fc.array(act, { maxLength: 12 }), (acts) => {
        const entries = acts
          .flatMap(entryOf)
          .filter(({ kind }) => kind === "addition" || kind === "identification");
        const named = entries.filter(({ kind }) => kind === "addition");
        const sum = (all: Record<string, number>) => Object.values(all).reduce((a, b) => a + b, 0);
        expect(sum(heads(entries))).toBe(sum(heads(named)));
        const count = (some: readonly DaybookEntry[]) =>
          recordOf(some, today, olderLots(DOCUMENT, findAnimal)).happenings.reduce(
            (n, one) => n + (one.kind === "added" ? one.count : 0),
            0,
          );
        expect(count(entries)).toBe(count(named));
      }),
      { numRuns: 100 },
    );
  });

  test("the order in which entries are handed over says nothing", () => {
    fc.assert(
      fc.property(fc.array(act, { maxLength: 10 }), fc.infiniteStream(fc.nat()), (acts, chance) => {
        const entries = acts.flatMap(entryOf);
        const mixed = entries
          .map((one) => [chance.next().value ?? 0, one] as const)
          .toSorted((a, b) => a[0] - b[0])
          .map(([, one]) => one);
        expect(applied(mixed)).toEqual(applied(entries));
        expect(recordOf(mixed, today)).toEqual(recordOf(entries, today));
      }),
      { numRuns: 50 },
    );
  });

  test("of one day it does not matter whether what came or what went was logged first", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 }), (came, went) => {
        const one = added("2026-05-01", "nassarius-snail", came);
        const two = lost("2026-05-01", "nassarius-snail", went);
        expect(
          heads([
            { ...one, id: "b" },
            { ...two, id: "a" },
          ]),
        ).toEqual(
          heads([
            { ...one, id: "a" },
            { ...two, id: "b" },
          ]),
        );
      }),
      { numRuns: 20 },
    );
  });
});
