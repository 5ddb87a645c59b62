import { expect, test } from "vitest";
import { scores } from "../numeric/draws.ts";
import { errorsHolding, stillApart } from "./catching-up.ts";
import { deviations, dot, type Matrix, meanOf } from "./matrix.ts";
import type { Observed } from "./observed.ts";
import { assimilated } from "./smoother.ts";

const MEMBERS = 400;
const SD = 0.2;
const of = (group: Observed["group"]) => ({ group }) as Observed;
const diagonal = (variances: readonly number[]): Matrix =>
  variances.map((variance, i) => Float64Array.from(variances, (_, j) => (i === j ? variance : 0)));
const spreadOf = (row: Float64Array): number => {
  const [around] = deviations([row]);
  return Math.sqrt(dot(around!, around!) / (row.length - 1));
};
/** Two names that are observed as they are; phosphate and film as far as the engine cares. */
const drawn: Matrix = [scores("one", MEMBERS, 1), scores("two", MEMBERS, 1)];
const errors = diagonal([SD ** 2, SD ** 2]);
const pass = (z: Matrix, times: number, covariance = errors, held: readonly boolean[] = []) =>
  assimilated({
    ...{ scores: z, predicted: z, observed: Float64Array.of(0.5, -0.5), errors: covariance, times },
    ...{ held, noise: `${times}`, seed: 2 },
  });

test("runs that a whole pass has moved are as near as tests allow; with a tenth of it, or none, they are apart", () => {
  const water = [of("po4"), of("no3")];
  expect(stillApart(water, drawn, drawn, errors)).toEqual([true, true]);
  expect(stillApart(water, drawn, pass(drawn, 10), errors)).toEqual([true, true]);
  expect(stillApart(water, drawn, pass(drawn, 1), errors)).toEqual([false, false]);
});

test("only tests of water catch up, and each quantity is judged by itself", () => {
  expect(stillApart([of("po4"), of("film_rock")], drawn, drawn, errors)).toEqual([true, false]);
  const [one, two] = [pass(drawn, 1)[0]!, drawn[1]!];
  expect(stillApart([of("po4"), of("no3")], drawn, [one, two], errors)).toEqual([false, true]);
});

test("what is held stays where it was, though it goes with what is moved", () => {
  const [one, other] = drawn;
  const both: Matrix = [one!, Float64Array.from(one!, (value, m) => 0.6 * value + 0.8 * other![m]!)];
  const times = 2.5;
  const alone = assimilated({
    ...{ scores: both, predicted: [both[0]!], observed: Float64Array.of(0.5), errors: diagonal([SD ** 2]) },
    ...{ times, noise: "alone", seed: 2 },
  });
  const held = pass(both, times, errorsHolding(errors, [true, false], times), [false, true]);
  expect(meanOf(alone[1]!)).toBeGreaterThan(0.5 * meanOf(alone[0]!));
  expect(meanOf(held[0]!)).toBeGreaterThan(0.3);
  expect(Math.abs(meanOf(held[1]!))).toBeLessThan(0.1 * meanOf(held[0]!));
  expect(spreadOf(held[0]!)).toBeLessThan(0.7 * spreadOf(both[0]!));
});
