import { expect, test } from "vitest";
import { editDistance } from "./edit-distance.ts";
import { animalById, animals, findAnimal, modelParameters, sources, supplyParameters } from "./index.ts";

/** What `findAnimal` answers, in one line. */
function answer(text: string): string {
  const found = findAnimal(text);
  if (found.kind === "none") return "none";
  const ids = found.kind === "one" ? [found.animal.id] : found.animals.map(({ id }) => id);
  return `${found.kind}: ${ids.join(" ")}`;
}

test("the catalogue is whole: 73 animals, 226 supply rows and 21 of heads, 123 symbols of the balance and 19 of the larder, every source known", () => {
  expect(animals.length).toBe(73);
  expect(animalById.size).toBe(73);
  expect(supplyParameters.size).toBe(226 + 21);
  expect(modelParameters.size).toBe(123 + 19);
  const named = [...animals, ...supplyParameters.values(), ...modelParameters.values()].flatMap(
    (row) => row.sources,
  );
  expect(named.filter((key) => !sources.has(key))).toEqual([]);
});

test("figures arrive as they stand in facts/", () => {
  const trochus = animalById.get("trochus-snail");
  expect(trochus?.intakeMgCPerDay).toEqual({ low: 5.8, central: 9.6, high: 13 });
  expect(trochus?.diet.film_rock).toBe(0.4);
  expect(trochus?.basis).toMatchObject({ intakeMgCPerDay: "computed: method G1", lifespanYears: "memory" });
  expect(modelParameters.get("kapFilm")).toMatchObject({
    spread: { low: 6e-4, central: 1.2e-3, high: 2e-3 },
    evidence: "backfitted",
  });
  expect(modelParameters.get("gamA")?.range).toBe("nit.areal_max_seawater");
});

test("every symbol of the model can be drawn in logs, or is an exact zero", () => {
  const bad = [...modelParameters.values()].filter(({ spread }) => spread.low <= 0 && spread.high !== 0);
  expect(bad.map(({ id }) => id)).toEqual([]);
});

test("a symbol that departs from the range of its supply row says why in its note", () => {
  const silent = [...modelParameters.values()].filter(({ range, spread, note }) => {
    const row = range === undefined ? undefined : supplyParameters.get(range);
    return row !== undefined && note === undefined && row.spread.high !== spread.high;
  });
  expect(silent.map(({ id }) => id)).toEqual([]);
});

test.each([
  ["trochus-snail", "one: trochus-snail"],
  ["Banded Trochus Snails", "one: trochus-snail"],
  ["emerald crabs", "one: emerald-crab"],
  ["cleaner shrimp", "one: skunk-cleaner-shrimp"],
  ["blood shrimp", "one: fire-shrimp"],
  ["fire worm", "one: bearded-fireworm"],
  ["nassarius snail", "one: nassarius-snail"],
  ["trochus", "several: tectus-snail trochus-snail"],
  ["TURBO", "several: mexican-turbo-snail smooth-turbo-snail"],
  ["astrea", "near: astraea-snail"],
  ["emreald crab", "near: emerald-crab"],
  ["conch", "near: fighting-conch tiger-conch"],
  ["Lysmata amboinensis", "near: skunk-cleaner-shrimp"],
  ["sea monkey of doom", "none"],
  ["", "none"],
  ["()", "none"],
])("findAnimal(%j) → %s", (text, expected) => {
  expect(answer(text)).toBe(expected);
});

test("every animal is found by its id and its common name", () => {
  for (const { id, commonName } of animals) {
    expect(answer(id)).toBe(`one: ${id}`);
    expect(answer(commonName)).toContain(id);
  }
});

test.each([
  ["crab", "crab", 0],
  ["crab", "carb", 1],
  ["crab", "crabs", 1],
  ["trochus", "trocus", 1],
  ["snail", "shrimp", 3],
])("editDistance(%j, %j) is %d when at most 2 matter", (a, b, expected) => {
  expect(editDistance(a, b, 2)).toBe(expected);
});
