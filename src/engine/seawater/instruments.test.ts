/** One salinity from any instrument, with and without its own error. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { celsius, practicalSalinity } from "../units/quantity.ts";
import { OutOfRange } from "../units/range.ts";
import { corrected, type Instrument, salinityShown, shownBy } from "./instruments.ts";
import { GRAVITY_SCALES } from "./specific-gravity.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const INSTRUMENTS: readonly Instrument[] = [
  { kind: "salinity" },
  ...Object.values(GRAVITY_SCALES).flatMap((scale): Instrument[] => [
    { kind: "gravity", scale },
    { kind: "floating", scale },
  ]),
  { kind: "conductivity_25" },
  { kind: "conductivity" },
];
const T = celsius(25);

test("what an instrument shows is read back as the water's salinity", () => {
  fc.assert(
    fc.property(fc.constantFrom(...INSTRUMENTS), number(8, 40), number(18, 30), (instrument, s, t) => {
      const shown = shownBy(instrument, practicalSalinity(s), celsius(t));
      // Fresh by a 4 °C scale: no instrument has it, and the reader says so.
      if ("scale" in instrument && shown < 1) return;
      expect(salinityShown(instrument, shown, celsius(t))).toBeCloseTo(s, 6);
    }),
  );
});

test("a straight error is taken off whole by two waters, a shift by one", () => {
  fc.assert(
    fc.property(fc.constantFrom(...INSTRUMENTS), number(25, 40), number(0.9, 1.1), (instrument, s, slope) => {
      const shift = instrument.kind === "gravity" || instrument.kind === "floating" ? 0.0007 : 0.6;
      const fresh = shownBy(instrument, practicalSalinity(0), T);
      const seen = (salinity: number, by: number) =>
        fresh + shift + by * (shownBy(instrument, practicalSalinity(salinity), T) - fresh);
      const reference = (by: number) => ({ shown: seen(35, by), salinity: practicalSalinity(35) });
      const truth = shownBy(instrument, practicalSalinity(s), T);
      const two = { inFresh: seen(0, slope), inReference: reference(slope) };
      expect(corrected(instrument, seen(s, slope), two, T)).toBeCloseTo(truth, 8);
      for (const one of [
        { inFresh: seen(0, 1), inReference: null },
        { inFresh: null, inReference: reference(1) },
      ])
        expect(corrected(instrument, seen(s, 1), one, T)).toBeCloseTo(truth, 8);
    }),
  );
});

test("untried, it is taken at its word; one that tells nothing apart is refused", () => {
  const none = { inFresh: null, inReference: null };
  expect(corrected({ kind: "salinity" }, 34.2, none, T)).toBe(34.2);
  const dead = { inFresh: 35, inReference: { shown: 35, salinity: practicalSalinity(35) } };
  expect(() => corrected({ kind: "salinity" }, 35, dead, T)).toThrow(OutOfRange);
});
