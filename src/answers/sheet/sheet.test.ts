import { beforeAll, describe, expect, test } from "vitest";
import { type Example, exampleTank } from "../../../checks/kit/example-answers.ts";
import { plain } from "../sentence.ts";
import { callMeIf } from "./call-me.ts";
import { measureFor, type WaveTexts } from "./fit.ts";
import { sheetOf } from "./sheet.ts";

/** Two tanks planned and forecast on a busy machine. */
const PLENTY_MS = 600_000;
let young: Example;
let treated: Example;
beforeAll(async () => {
  young = await exampleTank("first-reef.yaml");
  treated = await exampleTank("copper-110.yaml");
}, PLENTY_MS);

describe("measureFor", () => {
  const wave = (animals: number, name: string): WaveTexts => ({
    animals: Array.from({ length: animals }, (_, i) => `${i + 1} ${name}`),
    conditions: Array.from({ length: 6 }, () => "settled waste shows on the sand two days after cleaning"),
    stopIf: null,
  });

  test("one small wave is shown whole", () => {
    expect(measureFor([wave(3, "dwarf ceriths")])).toEqual({ animals: 12, conditions: 6, waves: 1 });
  });

  test("the more there is, the less of each is shown, and last whole waves are left to the page", () => {
    const measures = [1, 2, 4, 6, 12].map((count) =>
      measureFor(Array.from({ length: count }, () => wave(12, "eastern mudsnails (mis-sold as nassarius)"))),
    );
    const animals = measures.map((one) => one.animals);
    expect(animals).toEqual([...animals].sort((a, b) => b - a));
    expect(measures.at(-1)!.waves).toBeLessThan(12);
    expect(measures.every(({ waves }) => waves >= 1)).toBe(true);
  });
});

describe("sheetOf", () => {
  test("what is shown and what is counted make up the plan", () => {
    const sheet = sheetOf(young.answers);
    const { waves } = young.answers.waves;
    expect(sheet.waves.length + sheet.moreWaves).toBe(waves.length);
    for (const [i, wave] of sheet.waves.entries()) {
      expect(wave.animals.length + wave.moreAnimals).toBe(waves[i]!.animals.length);
      expect(wave.onlyIf.length + wave.moreConditions).toBe(waves[i]!.only_if.length);
    }
  });

  test("where nothing may come it says why, and no wave", () => {
    const sheet = sheetOf(treated.answers);
    expect(sheet.waves).toEqual([]);
    expect(sheet.finding).toContain("Add nothing yet");
    expect(sheet.because.length).toBeGreaterThan(0);
  });
});

test("three reasons to call, each once", () => {
  for (const { answers } of [young, treated]) {
    const reasons = callMeIf(answers).map(plain);
    expect(new Set(reasons).size).toBe(3);
  }
});
