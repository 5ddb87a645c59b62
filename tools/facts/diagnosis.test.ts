/** The facts of diagnosis pass; broken copies of them are caught, each with the field that is broken. */
import { resolve } from "node:path";
import { expect, test } from "vitest";
import { checkFacts } from "./check.ts";
import { diagnosisModule } from "./emit.ts";
import { type RawFacts, readFacts } from "./read.ts";

const real = readFacts(resolve(import.meta.dirname, "../../facts"));

// biome-ignore lint/suspicious/noExplicitAny: a test breaks facts in ways their types forbid
type Loose = any;

function problemsAfter(file: string, breakIt: (value: Loose, all: RawFacts) => void) {
  const copy: RawFacts = structuredClone(real.facts);
  breakIt(copy.get(file), copy);
  return checkFacts(copy).problems.map(({ field, wrong }) => `${field}: ${wrong}`);
}

test("the real facts pass: 15 growths, 40 hitchhikers, 32 causes, written the same each time", () => {
  const { facts, problems } = checkFacts(real.facts);
  expect(problems).toEqual([]);
  expect(
    [facts.diagnosis.growths, facts.diagnosis.hitchhikers, facts.diagnosis.causes].map((one) => one.size),
  ).toEqual([15, 40, 32]);
  expect(diagnosisModule(facts)).toBe(diagnosisModule(checkFacts(structuredClone(real.facts)).facts));
});

const DIATOMS = "growths/diatoms.yaml";
test.each<[string, string, RegExp, (value: Loose, all: RawFacts) => void]>([
  ["a chance of 1", DIATOMS, /colour_brown.value: Too big/, (f) => (f.chances.colour_brown.value = 1)],
  [
    "shares above 1",
    DIATOMS,
    /chances.colour: options sum to 1\./,
    (f) => (f.chances.colour_green.value = 0.5),
  ],
  [
    "a trait nobody asks for",
    DIATOMS,
    /chances.smells: no question/,
    (f) => (f.chances.smells = f.chances.smell),
  ],
  [
    "an unknown eater",
    DIATOMS,
    /eaters.sea-cow: no such animal/,
    (f) => (f.eaters["sea-cow"] = f.eaters["nerite-snail"]),
  ],
  ["an unknown source", DIATOMS, /unknown source nobody-1900/, (f) => (f.looks.source = ["nobody-1900"])],
  [
    "a chance without evidence",
    DIATOMS,
    /smell.evidence: evidence is missing/,
    (f) => delete f.chances.smell.evidence,
  ],
  ["another file's id", DIATOMS, /id: does not match/, (f) => (f.id = "dust")],
  ["a verdict of its own", "hitchhikers/limpet.yaml", /verdict.value/, (f) => (f.verdict.value = "boil")],
  [
    "a hitchhiker of no catalogue",
    "hitchhikers/limpet.yaml",
    /animal: no such animal/,
    (f) => (f.animal = "sea-cow"),
  ],
  [
    "an unknown clue",
    "causes/fell.yaml",
    /clues.moon: no such clue/,
    (f) => (f.clues.moon = f.clues.fallen_seen),
  ],
  ["a clue nobody asks for", "causes/clues.yaml", /moon: nothing asks/, (f) => (f.moon = f.sand_stirred)],
  [
    "an effect with one cause",
    "causes/fell.yaml",
    /fallen_snails: 1 causes explain it/,
    (_, all) => {
      for (const [file, value] of all) {
        const cause = value as Loose;
        if (file.startsWith("causes/") && file !== "causes/fell.yaml") delete cause.explains?.fallen_snails;
      }
    },
  ],
])("%s is caught", (_, file, says, breakIt) => {
  expect(problemsAfter(file, breakIt).join("\n")).toMatch(says);
});
