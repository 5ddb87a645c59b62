/** Numbers behind the lists: each opens its working, each working ends somewhere, and the oxygen comes from the runs. */
import { beforeAll, describe, expect, test } from "vitest";
import { type Example, exampleTank } from "../../../checks/kit/example-answers.ts";
import { referenceTank } from "../../engine/larder/test-kit/reference-tank.ts";
import { unionisedAmmoniaFraction } from "../../engine/seawater/ammonia.ts";
import type { Sentence } from "../sentence.ts";
import { workingOf } from "../working.ts";
import { CRISIS_IDS } from "./list-ids.ts";
import { HOURS_FIGURE } from "./numbers/oxygen.ts";
import { hasNumbers, needsEngine, numbersBehind, troubleFigures } from "./numbers.ts";
import { troubleWorking } from "./working.ts";

const PLENTY_MS = 600_000;
let example: Example;
beforeAll(async () => {
  example = await exampleTank("mature-400.yaml");
}, PLENTY_MS);

const figuresIn = (sentences: readonly Sentence[]) =>
  sentences.flatMap((sentence) =>
    sentence.flatMap((part) => (typeof part === "string" ? [] : [part.figure])),
  );

describe("no dead ends", () => {
  test.each(CRISIS_IDS.filter(hasNumbers))(
    "%s: every number that is shown has a working, and its inputs too",
    (list) => {
      const { facts, answers } = example;
      const parts = numbersBehind(list, { facts }, answers);
      expect(parts.length).toBeGreaterThan(0);
      const shown = figuresIn(
        parts.flatMap(({ rows, tables }) => [
          ...rows.map(({ value }) => value),
          ...tables.flatMap((table) => table.rows.flat()),
        ]),
      );
      expect(shown.length).toBeGreaterThan(0);
      const working = (id: string) => troubleWorking({ facts }, id) ?? workingOf(answers, id);
      const seen = new Set<string>();
      const follow = (id: string): void => {
        if (seen.has(id)) return;
        seen.add(id);
        const found = working(id);
        expect(found, id).not.toBeNull();
        for (const { figure } of found!.inputs) if (figure !== null) follow(figure);
      };
      for (const id of shown) follow(id);
    },
  );
});

test("lists that only people can act on have no numbers, those of water and power have", () => {
  expect(CRISIS_IDS.filter((id) => !hasNumbers(id))).toEqual([
    ...["person", "ill", "sting", "water-power", "sand", "slime"],
  ]);
  expect(CRISIS_IDS.filter(needsEngine)).toEqual(["power-cut", "pumps", "gasping"]);
});

test("hours of oxygen: the band in order, and runs that only add up over the hours", () => {
  const hours = workingOf(example.answers, HOURS_FIGURE)!;
  const { low, central, high } = hours.value;
  expect(low).toBeGreaterThanOrEqual(0);
  expect(low).toBeLessThanOrEqual(central);
  expect(central).toBeLessThanOrEqual(high);
  const within = [2, 4, 8, 12, 24].map(
    (limit) => workingOf(example.answers, `care.wrong.pumps_off.within_${limit}`)!.value.central,
  );
  expect(within.toSorted((a, b) => a - b)).toEqual(within);
  // The middle of the band lies where half of the runs are at the alarm.
  const [before, after] = [within.findLast((_, i) => [2, 4, 8, 12, 24][i]! < central) ?? 0, within.at(-1)!];
  expect(before).toBeLessThanOrEqual(10);
  if (central <= 24) expect(after).toBeGreaterThanOrEqual(10);
});

describe("ammonia of a tank with a bad test", () => {
  const tan = 1;
  const facts = referenceTank({
    readings: [
      {
        quantity: "tan_mg_n_per_l",
        value: { low: tan, central: tan, high: tan },
        censored: null,
        on: "2026-06-14",
      },
    ],
  });
  const value = (name: string) =>
    troubleFigures({ facts }).find(({ id }) => id === `care.wrong.${name}`)!.spread;

  test("the share is the engine's at the tank's own pH, warmth and salinity, within its band", () => {
    const { low, central, high } = value("unionised_share");
    const own = unionisedAmmoniaFraction(
      ...([facts.temperatureC.central, facts.salinityPsu.central, facts.ph.central] as const),
      facts.phScale,
    );
    expect(central).toBeCloseTo(100 * own, 9);
    expect(low).toBeLessThan(central);
    expect(high).toBeGreaterThan(central);
  });

  test("after the change that is asked for, ammonia is at the limit", () => {
    const limit = value("ammonia_for_days").central;
    const change = value("change_for_ammonia").central;
    expect(tan).toBeGreaterThan(limit);
    expect(tan * (1 - change / 100)).toBeCloseTo(limit, 9);
    const quarters = value("quarters_for_ammonia").central;
    expect(tan * 0.75 ** quarters).toBeLessThanOrEqual(limit);
    expect(tan * 0.75 ** (quarters - 1)).toBeGreaterThan(limit);
    // 0.035 mg NH3/L of it is poison there, by definition of the limit.
    expect((limit * value("unionised_share").central * (17.031 / 14.007)) / 100).toBeCloseTo(0.035, 4);
  });

  test("a dead fish of 10 cm is 16 g, 27 mg of nitrogen a gram, over the tank's water", () => {
    expect(value("dead.fish_10_cm.rise").central).toBeCloseTo((16 * 27) / facts.waterL.central, 9);
  });
});

test("without a test of ammonia it asks for one", () => {
  const [part] = numbersBehind("ammonia", { facts: referenceTank({ readings: [] }) }, null);
  expect(part!.rows.at(-1)!.value).toEqual(["none is kept: test it now, and log it"]);
});
