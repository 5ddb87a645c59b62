import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import { FIELDS, fieldsOf, MORE, MORE_FIELDS } from "./fields.ts";
import { readForm, unsure } from "./form.ts";
import { type Values, valuesOf } from "./prefill.ts";
import { QUESTIONS } from "./questions.ts";

const context = { today: "2026-06-15" };
const NINE = [1, 2, 3, 4, 5, 6, 7, 8, MORE];
const EIGHT = [1, 2, 3, 4, 5, 6, 7, 8];
const empty: TankFile = { grazewell_tank: 1, name: "Kitchen" };
const watered: TankFile = { ...empty, water_l: "200 L" };

function kept(questions: readonly number[], sent: Values, before: TankFile = watered): TankFile {
  const result = readForm(questions, sent, before, context);
  if (!result.ok) throw new Error(result.doubts.map(({ text }) => text).join("; "));
  return result.file;
}
function doubts(question: number, sent: Values, before: TankFile = watered) {
  const result = readForm([question], sent, before, context);
  if (result.ok) throw new Error("was kept");
  return result.doubts;
}

const ALL: Values = {
  water: "55",
  water_unit: "US gal",
  first_seawater: "1 May 2026",
  rock: "dry",
  seen_film_glass: "patches",
  seen_hair_algae: "trace",
  animal_1: "two clownfish",
  animal_2: "5 trochus snail",
  floor: "sand",
  sand_depth: "1.5",
  sand_depth_unit: "in",
  grain: "fine",
  food_dry_pellet: "0.2",
  food_nori: "some",
  left: "some",
  temperature: "77",
  temperature_unit: "F",
  nitrate: "5",
  nitrate_unit: "mg/L as N",
  measured_on: "yesterday",
  wrong: "no",
};

describe("the eight questions", () => {
  test("each has its fields", () => expect(FIELDS).toHaveLength(QUESTIONS.length));

  test("names are unique over all of them", () => {
    const names = [...FIELDS.flat(), ...MORE_FIELDS].map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  });

  test("keep the keeper's own text and unit", () => {
    expect(kept(EIGHT, ALL, empty)).toEqual({
      grazewell_tank: 1,
      name: "Kitchen",
      water_l: "55 US gal",
      first_seawater_on: "2026-05-01",
      rock: { start: "dry" },
      floor: { kind: "sand", depth_mm: "1.5 in", grain: "fine" },
      temperature_c: "77 F",
      feeding: {
        foods: [{ kind: "dry_pellet", g_per_day: "0.2" }, { kind: "nori" }],
        left_after_two_minutes: "some",
      },
      animals_present: [
        { animal: "clownfish", count: 2 },
        { animal: "trochus snail", count: 5 },
      ],
      readings: [{ on: "2026-06-14", no3_mg_per_l: "5 mg/L as N" }],
      sightings: { film_glass: "patches", hair_algae: "trace" },
    });
  });

  test("make the same document one by one, in any order, and on one form", () => {
    const oneForm = kept(EIGHT, ALL, empty);
    for (const order of [EIGHT, [1, ...EIGHT.slice(1).reverse()]]) {
      const one = order.reduce((file, question) => {
        const names = Object.keys(valuesOf(question, file));
        const own = Object.entries(ALL).filter(
          ([name]) => names.includes(name) || (question === 4 && name.startsWith("animal")),
        );
        return kept([question], Object.fromEntries(own), file);
      }, empty);
      expect(JSON.stringify(one)).toBe(JSON.stringify(oneForm));
    }
  });

  test("shown and sent again unchanged, they change nothing, in any example of a tank file", () => {
    const imperial = readFileSync(join(import.meta.dirname, "../../../examples/imperial.json"), "utf8");
    for (const file of [kept(EIGHT, ALL, empty), JSON.parse(imperial) as TankFile]) {
      const sent = Object.assign({}, ...NINE.map((question) => valuesOf(question, file))) as Values;
      expect(kept(NINE, sent, file)).toEqual(file);
    }
  });
});

describe("I'm not sure", () => {
  test.each(EIGHT)("question %d: takes its own entries out and leaves the rest", (question) => {
    const all = kept(EIGHT, ALL, empty);
    const result = unsure(question, all, context);
    if (!result.ok) throw new Error("is an answer");
    for (const field of fieldsOf(question))
      if (field.kind !== "box")
        expect(valuesOf(question, result.file)[field.name] ?? "").toBe(
          question === 1 && field.name === "water" ? "40-300" : "",
        );
    for (const other of EIGHT.filter((one) => one !== question))
      expect(valuesOf(other, result.file)).toEqual(valuesOf(other, all));
  });
});

describe("what can't be read", () => {
  test("stands beside its field, with readings to choose from", () => {
    const [doubt] = doubts(1, { water: "1,200", water_unit: "L" });
    expect(doubt).toMatchObject({ field: "water", text: expect.stringContaining("Water volume") });
    for (const { text } of doubt?.choices ?? []) kept([1], { water: text, water_unit: "L" });
    expect(doubt?.choices).toHaveLength(2);
  });

  test("nothing entered where an answer is due", () => {
    expect(doubts(1, { water: " ", sides: "" })[0]?.text).toContain("I'm not sure");
    expect(doubts(8, { wrong: "yes" })[0]?.field).toBe("trouble");
  });

  test("an animal by a mistyped or an open name: the fix keeps the count", () => {
    const [first] = doubts(4, { animal_1: "2 clownfish", animal_2: "three trocus" });
    expect(first).toMatchObject({ field: "animal_2" });
    const fixed = kept([4], { animal_1: "2 clownfish", animal_2: first?.choices[0]?.text ?? "" });
    expect(fixed.animals_present?.[1]).toMatchObject({ count: 3 });
  });

  test("every doubt at once, each at its own field", () => {
    const sent = { temperature: "298", temperature_unit: "C", nitrate: "-1", measured_on: "2026-06-20" };
    expect(doubts(7, sent).map(({ field }) => field)).toEqual(["measured_on"]);
    const { measured_on: _, ...rest } = sent;
    expect(
      doubts(7, rest)
        .map(({ field }) => field)
        .sort(),
    ).toEqual(["nitrate", "temperature"]);
  });

  test("what contradicts another answer is said on the page that was sent", () => {
    const [late] = doubts(2, { first_seawater: "today" }, kept(EIGHT, ALL, empty));
    expect(late).toMatchObject({
      field: "first_seawater",
      text: expect.stringContaining("before the tank's"),
    });
  });
});
