import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { FindAnimal } from "../quantity/find-animal.ts";
import { ASSUMPTIONS } from "./assumptions.ts";
import { FACT_LABELS } from "./labels.ts";
import { readTankFile, type TankFileResult } from "./read.ts";

const known: Readonly<Record<string, Parameters<FindAnimal>[0]>> = {
  clownfish: "fish",
  "trochus snail": "snail",
};
const findAnimal: FindAnimal = (name) => {
  const group = known[name];
  if (group === "fish") {
    const liveWetMassG = { low: 2, central: 7, high: 20 };
    return { kind: "one", animal: { id: name, commonName: name, group: "fish", liveWetMassG } };
  }
  if (name === "sand snail")
    return {
      kind: "one",
      animal: { id: name, commonName: name, group: "snail", needs: { sandDepthMmMin: 40 } },
    };
  if (group === "snail")
    return { kind: "one", animal: { id: "trochus-snail", commonName: name, group: "snail" } };
  return { kind: "none" };
};
const read = (text: string): TankFileResult => readTankFile(text, { today: "2026-06-15", findAnimal });
const tank = (body: string): string => `grazewell_tank: 1\n${body}`;

function factsOf(text: string): TankFacts {
  const result = read(text);
  if (!result.ok) throw new Error(result.findings.map(({ message }) => message.text).join("\n"));
  return result.facts;
}

function findingsOf(text: string): string[] {
  const result = read(text);
  return result.ok
    ? []
    : result.findings.map(({ line, message }) => `${line ?? "-"} ${message.kind} ${message.text}`);
}

test("I-097: a floor without sand, but animals that live in it: asked, not guessed", () => {
  const dwellers = "animals_present: [{ animal: sand snail, count: 6 }]";
  const [finding] = findingsOf(tank(`water_l: 100\nfloor: { kind: sand, depth_mm: 0 }\n${dwellers}`));
  expect(finding).toMatch(/CONFLICT.*6 animals/);
  expect(findingsOf(tank(`water_l: 100\nfloor: { kind: sand, depth_mm: 40 }\n${dwellers}`))).toEqual([]);
});

describe("with nothing but the water", () => {
  test("113 L is the reference tank of the model's traces", () => {
    const facts = factsOf(tank("water_l: 113"));
    const central = Object.fromEntries(
      (
        [
          ["glassM2", 0.8],
          ["litRockM2", 0.4],
          ["sandM2", 0.25],
          ["rockKg", 11],
          ["parGlass", 60],
          ["parRock", 100],
          ["parSand", 90],
          ["lightHours", 9],
          ["temperatureC", 25.5],
          ["salinityPsu", 35],
          ["ph", 8.1],
          ["feedGPerDay", 0.2],
          ["feedCMgPerG", 420],
          ["feedNMgPerG", 77],
          ["fishWetG", 8],
          ["uneatenShare", 0.08],
          ["ageDays", 60],
        ] as const
      ).map(([field, value]) => [field, [facts[field].central, value]]),
    );
    for (const [field, [is, wanted]] of Object.entries(central)) expect(is, field).toBeCloseTo(wanted!, 12);
  });

  test("surfaces grow with the volume to the power two thirds, rock and feed with the volume", () => {
    const [small, large] = [factsOf(tank("water_l: 50")), factsOf(tank("water_l: 400"))];
    expect(large.glassM2.central / small.glassM2.central).toBeCloseTo(4, 9);
    expect(large.feedGPerDay.central / small.feedGPerDay.central).toBeCloseTo(8, 9);
  });

  test("every gap is named, and each has a label and the entry that would fill it", () => {
    const { assumed } = factsOf(tank("water_l: 113"));
    const labelled: readonly string[] = Object.keys(FACT_LABELS);
    for (const field of assumed) expect(labelled, field).toContain(field);
    for (const field of Object.keys(ASSUMPTIONS)) expect(assumed, field).toContain(field);
  });
});

test("sides give water less glass, air, rock and sand, never the brimful volume", () => {
  const facts = factsOf(
    tank("display_sides_cm: 120x60x50\nrock: { rock_kg: 30 }\nfloor: { kind: sand, depth_mm: 40 }"),
  );
  expect(facts.waterL.origin).toBe("derived");
  expect(facts.waterL.high).toBeLessThan(360);
  expect(facts.waterL.central).toBeGreaterThan(280);
  expect(facts.glassM2.origin).toBe("derived");
});

test("a bare floor and a tank without rock have exactly none", () => {
  const facts = factsOf(tank("water_l: 150\nrock: { start: none }\nfloor: { kind: bare }"));
  for (const field of ["rockKg", "litRockM2", "sandM2", "sandDepthMm"] as const) {
    expect([facts[field].low, facts[field].high], field).toEqual([0, 0]);
  }
  expect(facts.rockStart.value).toBe("none");
});

test("text with its unit and the plain number give the same facts", () => {
  const metric = factsOf(tank("water_l: 113.56235352\ntemperature_c: 25\nrock: { rock_kg: 4.5359237 }"));
  const typed = factsOf(tank('water_l: 30 US gal\ntemperature_c: 77 F\nrock: { rock_kg: "10 lb" }'));
  for (const field of ["waterL", "temperatureC", "rockKg", "litRockM2"] as const) {
    expect(typed[field].central).toBeCloseTo(metric[field].central, 9);
  }
});

test("a number of the file is read with its point, whatever the keeper's locale", () => {
  expect(factsOf(tank("preferences: { locale: de-DE }\nwater_l: 113.256")).waterL.central).toBe(113.256);
  expect(factsOf(tank('preferences: { locale: de-DE }\nwater_l: "113,5"')).waterL.central).toBe(113.5);
});

test("an unlikely value is asked about, and kept once it is marked as checked", () => {
  expect(findingsOf(tank("water_l: 113\nsalinity_psu: 53"))[0]).toContain("Is it a conductivity");
  expect(factsOf(tank("water_l: 113\nsalinity_psu: 53 psu (checked)")).salinityPsu.central).toBe(53);
});

test("animals: known ones are counted, fish are weighed, unknown ones are named and count for nothing", () => {
  const facts = factsOf(
    tank(
      "water_l: 113\nfish: [{ animal: clownfish, count: 2 }]\nanimals_present: [{ animal: trochus snail, count: 3 }, { animal: zzyzx }]",
    ),
  );
  expect(facts.present).toEqual([
    { id: "trochus-snail", count: 3, on: null },
    { id: "clownfish", count: 2, on: null },
  ]);
  expect(facts.fishWetG.central).toBe(14);
  expect(facts.unknownAnimals).toEqual(["zzyzx"]);
});

test("readings come in the engine's unit, with the doubt of a keeper's kit", () => {
  const { readings } = factsOf(
    tank("water_l: 113\nreadings: [{ on: 2026-06-12, no3_mg_per_l: 10, po4_mg_per_l: <0.02 }]"),
  );
  expect(readings.map(({ quantity, censored, on }) => [quantity, censored, on])).toEqual([
    ["no3_mg_n_per_l", null, "2026-06-12"],
    ["po4_mg_p_per_l", "below", "2026-06-12"],
  ]);
  expect(readings[0]?.value.central).toBeCloseTo(10 / 4.4266, 4);
  expect(readings[0]?.value.low).toBeLessThan(10 / 4.4266);
});

test("all findings come at once, each with its line and a likely fix", () => {
  const text = tank(`watr_l: 5
water_l: -3
rock: { start: livr, caves: maybe }
floor: 3
animals_present: [{ count: 3 }]
temperature_c: 77
readings:
  - { no3_mg_per_l: 5, on: 2027-01-01 }
sightings: { film_glas: trace, film_rock: lots }`);
  expect(findingsOf(text)).toEqual([
    '2 FORMAT Tank file "watr_l": not a name known here. Did you mean water_l?',
    '3 RANGE Water volume "-3": must be more than 0 L. Did you mean 3?',
    '4 FORMAT Rock at the start "livr": must be one of live, dry, mixed, none. Did you mean live?',
    '4 FORMAT Caves "maybe": must be yes or no',
    '5 FORMAT Floor "3": must be a group of names and values',
    "6 MISSING Animal: must be text",
    '7 UNIT Temperature "77": 77 C would boil the animals. Read as 77 F (25.0 C)?',
    '9 FUTURE Date "2027-01-01": can\'t be after today, 15 June 2026. Plan it instead?',
    '10 FORMAT Sightings "film_glas": not a name known here. Did you mean film_glass?',
    '10 FORMAT Film on rock "lots": not a share we can read. Enter none, trace, patches or covered, or a share such as 30 %',
  ]);
});

test("entries of the wrong kind in a list are one finding each, and hide nothing", () => {
  const text = tank(
    "water_l: 113\nanimals_present: [4, { animal: trochus snail, count: -1 }]\nreadings: [3]\nwishes: [7]\nfeeding: { foods: [x] }\nfirst_seawater_on: 20260501\nname: 2026",
  );
  expect(findingsOf(text)).toEqual([
    '3 FORMAT Animals present "4": must be a group of names and values',
    '3 RANGE Head count "-1": a head count is 0 or more',
    '4 FORMAT Readings "3": must be a group of names and values',
    '5 FORMAT Wishes "7": must be text. Put it in quotes: "7"',
    '6 FORMAT Foods "x": must be a group of names and values',
    '7 FORMAT First seawater "20260501": must be a date, such as 2026-06-15',
    '8 FORMAT Name "2026": must be text. Put it in quotes: "2026"',
  ]);
});

test("more water in the display than in all, or than its sides hold, is asked about", () => {
  expect(findingsOf(tank("water_l: 100\ncompartments: { display: { water_l: 120 } }"))[0]).toContain(
    "CONFLICT",
  );
  expect(findingsOf(tank("water_l: 500\ndisplay_sides_cm: 120x60x50"))[0]).toContain("hold at most 360 L");
});

describe("what no tank file may be", () => {
  const deep = `${"[".repeat(5000)}${"]".repeat(5000)}`;
  test.each([
    ["empty", "", "MISSING"],
    ["only a mark and spaces", "\ufeff \n", "MISSING"],
    ["a picture", "\ufffdPNG\r\n\u001a\n\u0000\u0000", "FORMAT"],
    ["a list", "- 1\n- 2", "FORMAT"],
    ["a sentence", "hello", "FORMAT"],
    ["too long", `note: "${"x".repeat(1024 * 1024)}"`, "TOOBIG"],
    ["too deep in brackets", deep, "TOOBIG"],
    ["too deep in dashes", "- ".repeat(100_000), "TOOBIG"],
    ["21 deep", Array.from({ length: 22 }, (_, i) => `${" ".repeat(i)}a:`).join("\n"), "TOOBIG"],
    ["a name given twice", tank("water_l: 1\nwater_l: 2"), "FORMAT"],
    ["a name given twice in JSON", '{"grazewell_tank":1,"water_l":10,"water_l":20}', "FORMAT"],
    ["a prototype", tank("water_l: 10\n__proto__: { x: 1 }"), "FORMAT"],
    ["a prototype in JSON", '{"grazewell_tank":1,"water_l":100,"__proto__":{"x":1}}', "FORMAT"],
    ["infinite", tank("water_l: .inf"), "RANGE"],
    ["infinite by overflow", '{"grazewell_tank":1,"water_l":1e999}', "RANGE"],
    ["not a number", tank("water_l: 100\nph: .nan"), "RANGE"],
    ["anchored", tank("rock: &a { rock_kg: 1 }\nfloor: *a\nwater_l: 100"), "FORMAT"],
    ["tagged", tank("water_l: !!js/function 'x'"), "FORMAT"],
    ["two documents", `${tank("water_l: 100")}\n---\n${tank("water_l: 100")}`, "FORMAT"],
    ["of another version", "grazewell_tank: 2\nwater_l: 100", "FORMAT"],
    ["without its version", "water_l: 100", "MISSING"],
    ["without water", tank("name: Dry"), "MISSING"],
    ["broken", "{ water_l: ", "FORMAT"],
  ])("%s", (_, text, kind) => {
    const result = read(text);
    expect(result.ok).toBe(false);
    if (!result.ok) expect(result.findings.map(({ message }) => message.kind)).toContain(kind);
    expect(Object.prototype).not.toHaveProperty("x");
  });

  test.each([
    ["names nobody knows", (i: number) => `k${i}abc: 1`],
    ["one name over and over", () => "water_l: 1"],
  ])(
    "a mebibyte of %s is answered: a reader that compares all with all runs out of the test's time",
    (_, line) => {
      const lines = Array.from({ length: 60_000 }, (__, i) => line(i));
      expect(read(tank(lines.join("\n"))).ok).toBe(false);
    },
  );

  test("a bomb of references", () => {
    const lines = Array.from(
      { length: 20 },
      (_, i) => `x${i}: &x${i} [${i === 0 ? "1" : `*x${i - 1}, *x${i - 1}`}]`,
    );
    const result = read(tank(lines.join("\n")));
    expect(result.ok).toBe(false);
  });
});

test("a mark at the start, Windows line ends and tabs in JSON are no obstacle", () => {
  expect(factsOf(`\ufeff${tank("water_l: 113\r\nname: Küche\r\n")}`).name).toBe("Küche");
  expect(
    factsOf('{\r\n\t"grazewell_tank": 1,\r\n\t"water_l": 113,\r\n\t"name": "\\u5e7f \\ud83e\\udeb8"\r\n}')
      .name,
  ).toBe("广 🪸");
});

test.each([
  ["floor: { kind: bare, depth_mm: 50 }", "floor is said to be bare"],
  ["floor: { kind: bare, area_m2: 0.2 }", "floor is said to be bare"],
  ["rock: { start: none, rock_kg: 12 }", "said to start without rock"],
  ["wishes: [trochus snail]\nexclusions: [trochus snail]", "also among the exclusions"],
])("what cannot both hold is asked about: %s", (entry, why) => {
  const result = read(tank(`water_l: 100\n${entry}`));
  expect(result.ok ? [] : result.findings.map(({ message }) => message.text)).toEqual([
    expect.stringContaining(why),
  ]);
});

test.each(["floor: { kind: bare, depth_mm: 0 }", "rock: { start: none, rock_kg: 0 }"])(
  "nought beside none is no conflict: %s",
  (entry) => expect(read(tank(`water_l: 100\n${entry}`)).ok).toBe(true),
);

test("as_of is the day that everything in the file is judged from", () => {
  const facts = factsOf(tank("as_of: 2026-03-01\nwater_l: 113\nfirst_seawater_on: 2026-02-01"));
  expect([facts.asOf, facts.ageDays.central]).toEqual(["2026-03-01", 28]);
  expect(
    findingsOf(tank("as_of: 2026-03-01\nwater_l: 113\nreadings: [{ ph: 8, on: 2026-04-01 }]"))[0],
  ).toContain("FUTURE");
});

describe("invented files", () => {
  const folder = join(import.meta.dirname, "../../../examples");
  const samples = readdirSync(folder).map((name) => readFileSync(join(folder, name), "utf8"));
  const FORBIDDEN = /\b(?:invalid|please|sorry|oops|illegal|error occurred)\b/i;

  const scrambled = fc
    .tuple(
      fc.constantFrom(...samples),
      fc.array(
        fc.tuple(
          fc.nat(),
          fc.oneof(
            fc.string({ maxLength: 4 }),
            fc.constantFrom("", "\n", "-", "{", "]", '"', ": ", "1e9", "~", "&a", "*a", "null"),
          ),
        ),
        { maxLength: 6 },
      ),
    )
    .map(([text, cuts]) =>
      cuts.reduce((all, [where, put]) => {
        const at = where % (all.length + 1);
        return all.slice(0, at) + put + all.slice(at + (where % 7));
      }, text),
    );

  test("however they are scrambled, are read or answered, never thrown at", () => {
    fc.assert(
      fc.property(scrambled, (text) => {
        const result = read(text);
        if (!result.ok) {
          expect(result.findings.length).toBeGreaterThan(0);
          for (const { message, typed } of result.findings) {
            expect(typed === null ? message.text : message.text.replaceAll(typed, "")).not.toMatch(FORBIDDEN);
          }
          return;
        }
        for (const [field, value] of Object.entries(result.facts)) {
          if (typeof value !== "object" || value === null || !("central" in value)) continue;
          expect([value.low, value.central, value.high].every(Number.isFinite), field).toBe(true);
          expect(value.low, field).toBeLessThanOrEqual(value.central);
          expect(value.central, field).toBeLessThanOrEqual(value.high);
        }
      }),
      { numRuns: 1500, seed: 11 },
    );
  });

  test("the order of entries changes nothing", () => {
    const entries = [
      "water_l: 113",
      "temperature_c: 26",
      "preferences: { gallon: us, locale: en-US }",
      "rock: { rock_kg: 9 }",
      "fish: [{ count: 2, size: small }]",
      "floor: { kind: sand }",
    ];
    const facts = factsOf(tank(entries.join("\n")));
    fc.assert(
      fc.property(fc.shuffledSubarray(entries, { minLength: entries.length }), (shuffled) => {
        expect(factsOf(tank(shuffled.join("\n")))).toEqual(facts);
      }),
      { numRuns: 50 },
    );
  });
});

test("a kit's smallest step is no reading, and nothing is said of it as one", () => {
  const readings = "readings: [{ on: 2026-06-01, alkalinity_dkh: 8.2, kit_steps: { alkalinity_dkh: 0.3 } }]";
  const result = read(tank(`water_l: 113\n${readings}`));
  expect(result.ok && result.notices.filter(({ path }) => path.includes("kit_steps"))).toEqual([]);
});

describe("how a shop sells", () => {
  const shopOf = (body: string) => {
    const result = read(tank(`water_l: 113\n${body}`));
    return result.ok ? result.facts.shop : result.findings.map(({ path, message }) => [path, message.text]);
  };

  test("in one unit, its animals by the catalogue's names; nothing said is no shop", () => {
    expect(
      shopOf(
        "shop: { lead_days: 3, least_heads: 10, holds_below_c: 41 F, packs: [{ animal: trochus snail, heads: 5 }] }",
      ),
    ).toEqual({
      ...{ leadDays: 3, leastHeads: 10, holdsBelowC: 5, holdsAboveC: null },
      packs: [{ animal: "trochus-snail", heads: 5 }],
    });
    expect(shopOf("temperature_c: 25")).toBeUndefined();
  });

  test("what can't be read is told by its place", () => {
    expect(shopOf("shop: { packs: [{ animal: trochus snail, heads: a few }] }")).toEqual([
      ["shop.packs[0].heads", expect.stringContaining("enter whole animals")],
    ]);
  });
});
