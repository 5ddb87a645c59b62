import { describe, expect, test } from "vitest";
import { animals } from "../../catalogue/index.ts";
import type { WavesOutput } from "../../contract/output/waves.ts";
import { GATE_WORDS, gateFor, MORE_THAN_EATEN, SIGN_OF_SHELF } from "../../engine/stocking/gates.ts";
import type { Happening, Observation } from "../../engine/types/record.ts";
import { judgeGate, type Wave } from "./gate.ts";
import {
  chore,
  facts,
  filmBack,
  growth,
  heads,
  moved,
  record,
  scene,
  seen,
  sign,
  TODAY,
} from "./test-kit/scene.ts";

const wave = (onlyIf: readonly string[], change: Partial<Wave> = {}): Wave =>
  ({
    ...{ number: 1, from: TODAY, to: TODAY, only_if: [...onlyIf], sooner_if: GATE_WORDS.open },
    ...{ stop_if: GATE_WORDS.stopGrazers, animals: [] },
    ...change,
  }) as unknown as Wave;
const trochus = { id: "trochus-snail", name: "trochus snail" };
const plan = (one: Wave) => ({ waves: [one], residents: [trochus] }) as unknown as WavesOutput;

function judged(one: Wave, observations: readonly Observation[], happenings: readonly Happening[] = []) {
  return judgeGate(one, plan(one), scene({ record: record(observations, happenings) }));
}
const ofText = (text: string, observations: readonly Observation[], happenings: readonly Happening[] = []) =>
  judged(wave([text]), observations, happenings).onlyIf[0]!;

const tests = (tan: number, no2: number, days: number) => [
  seen("tan_mg_n_per_l", tan, days),
  seen("no2_mg_n_per_l", no2, days),
];

describe("ammonia and nitrite too low for the test to show", () => {
  test("no condition says of a test that it can, or can't, be read: that is what a torn label is", () => {
    for (const words of Object.values(GATE_WORDS)) expect(words).not.toMatch(/be read/);
  });

  test.each([
    ["two tests three days apart, all clear", [...tests(0, 0, 5), ...tests(0, 0, 1)], "met"],
    ["one clear test", tests(0, 0, 1), "cannot_tell"],
    ["two a day apart", [...tests(0, 0, 2), ...tests(0, 0, 1)], "cannot_tell"],
    ["the latest can be read", [...tests(0, 0, 5), ...tests(0.3, 0, 1)], "not_met"],
    ["clear only since two days", [...tests(0, 0.4, 9), ...tests(0, 0, 2), ...tests(0, 0, 1)], "cannot_tell"],
    ["long ago", [...tests(0, 0, 60), ...tests(0, 0, 50)], "cannot_tell"],
  ] as const)("%s: %s", (_, observations, state) => {
    expect(ofText(GATE_WORDS.firstTests, observations).state).toBe(state);
  });

  test("says what test would settle it, and on which entries it rests", () => {
    const observations = tests(0, 0, 1);
    const condition = ofText(GATE_WORDS.firstTests, observations);
    expect(condition.settle).toBe("A test of ammonia and nitrite, on 17 Jun 2026 or later.");
    expect(condition).toMatchObject({ by: "reading", entries: observations.map(({ entry }) => entry) });
  });

  test("a later wave needs tests since the last animals came, and no loss in two weeks", () => {
    const came = moved("added", 3, 10);
    expect(ofText(GATE_WORDS.testsSince, tests(0, 0, 12), [came]).state).toBe("cannot_tell");
    expect(ofText(GATE_WORDS.testsSince, tests(0, 0, 2), [came]).state).toBe("met");
    const lost = moved("lost_found", 1, 3);
    expect(ofText(GATE_WORDS.testsSince, tests(0, 0, 2), [came, lost])).toMatchObject({
      state: "not_met",
      entries: expect.arrayContaining([lost.entry]),
    });
    expect(ofText(GATE_WORDS.testsSince, tests(0, 0, 2), [came, moved("lost_feared", 1, 3)]).state).toBe(
      "cannot_tell",
    );
  });

  test("a loss is looked at again once two weeks have passed, and the tests that are wanting are told as well", () => {
    const lost = moved("lost_found", 1, 12);
    const condition = ofText(GATE_WORDS.testsSince, [], [lost]);
    expect(condition.because).toBe(
      "Found dead, the last on 3 Jun 2026. No test of ammonia and nitrite within 21 days.",
    );
    expect(condition.settle).toBe(
      "No other loss until 18 Jun 2026; find out why meanwhile. A test of ammonia and nitrite.",
    );
    const gate = judged(wave([GATE_WORDS.testsSince]), [], [lost]);
    expect(gate.lookAgain).toBe("2026-06-18");
    expect(judged(wave([GATE_WORDS.testsSince]), tests(0, 0, 2)).lookAgain).toBeNull();
  });
});

describe("film back on the glass", () => {
  const text = SIGN_OF_SHELF.film_glass;
  test.each([
    ["told in days", [filmBack(4, 2)], [], "met"],
    ["told to take longer", [filmBack(9, 2)], [], "not_met"],
    ["told long ago", [filmBack(4, 40)], [], "cannot_tell"],
    ["wiped, and seen again", [growth("film_glass", 1, 6)], [chore("glass_wiped", 10)], "met"],
    ["wiped, and bare a week later", [growth("film_glass", 0, 3)], [chore("glass_wiped", 10)], "not_met"],
    ["wiped, nothing since", [], [chore("glass_wiped", 3)], "cannot_tell"],
    ["nothing kept", [], [], "cannot_tell"],
  ] as const)("%s", (_, observations, happenings, state) => {
    const condition = ofText(text, observations, happenings);
    expect(condition.state).toBe(state);
    expect(condition.settle === null).toBe(state === "met");
  });
});

test.each([
  ["hair_algae", growth("hair_algae", 1, 3), growth("hair_algae", 0, 3)],
  ["film_rock", growth("diatoms", 2, 3), growth("film_rock", 1, 3)],
  ["detritus_sand", growth("detritus_sand", 1, 3), growth("detritus_sand", 0, 3)],
  ["uneaten_feed", growth("leftovers", 2, 3), growth("leftovers", 0, 3)],
] as const)("the sign of %s: seen, not seen, not looked for", (shelf, there, absent) => {
  expect(ofText(SIGN_OF_SHELF[shelf], [there]).state).toBe("met");
  expect(ofText(SIGN_OF_SHELF[shelf], [absent]).state).toBe("not_met");
  expect(ofText(SIGN_OF_SHELF[shelf], []).state).toBe("cannot_tell");
});

test("heads: half or more seen of each kind named, since the last came", () => {
  const text = `${GATE_WORDS.heads} (trochus snail)`;
  expect(ofText(text, [heads("trochus-snail", 4, 2)]).state).toBe("met");
  expect(ofText(text, [heads("trochus-snail", 1, 2)]).state).toBe("not_met");
  expect(ofText(text, [heads("trochus-snail", 4, 20)], [moved("added", 2, 5)]).state).toBe("cannot_tell");
});

describe("what stops a wave", () => {
  test.each([
    ["two dead within a week", [], [moved("lost_found", 1, 6), moved("lost_found", 1, 2)], "met"],
    ["two dead, ten days apart", [], [moved("lost_found", 1, 13), moved("lost_found", 1, 2)], "not_met"],
    ["snails that climb", [sign("waterline_snails", 2)], [], "met"],
    ["glass bare for a week", [filmBack(8, 2)], [], "met"],
    ["nothing", [filmBack(3, 2)], [], "not_met"],
  ] as const)("%s", (_, observations, happenings, state) => {
    const gate = judged(wave([]), observations, happenings);
    expect(gate.stopIf.state).toBe(state);
    expect(gate.state).toBe(state === "met" ? "not_met" : "met");
  });

  test("ammonia, where the wave grazes nothing", () => {
    const one = wave([], { stop_if: GATE_WORDS.stopOthers });
    expect(judged(one, [seen("tan_mg_n_per_l", 0.3, 2)]).stopIf.state).toBe("met");
    expect(judged(one, [seen("tan_mg_n_per_l", 0, 2)]).stopIf.state).toBe("not_met");
  });
});

test("sooner: film back twice as fast, or a score that rises", () => {
  const sooner = (shelf: "film_glass" | "hair_algae", observations: readonly Observation[]) =>
    judged(wave([], { sooner_if: MORE_THAN_EATEN[shelf] }), observations).soonerIf?.state;
  expect(sooner("film_glass", [filmBack(8, 9), filmBack(3, 2)])).toBe("met");
  expect(sooner("film_glass", [filmBack(5, 9), filmBack(4, 2)])).toBe("not_met");
  expect(sooner("film_glass", [])).toBe("cannot_tell");
  expect(sooner("hair_algae", [growth("hair_algae", 1, 9), growth("hair_algae", 3, 2)])).toBe("met");
});

test("every sentence that the plan can put into a gate is judged by its own rule, or by eye alone", () => {
  const known = scene({ record: record(), facts: facts() });
  const byEye = new Set<string>();
  for (const animal of animals)
    for (const first of [true, false]) {
      const { onlyIf, stopIf, soonerIf } = gateFor([animal], ["trochus snail"], { first, open: false });
      const one = wave(onlyIf, { stop_if: stopIf, sooner_if: soonerIf });
      const gate = judgeGate(one, plan(one), known);
      for (const { text, by } of gate.onlyIf) if (by === null) byEye.add(text);
    }
  expect([...byEye]).toEqual([]);
});
