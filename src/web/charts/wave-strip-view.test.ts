import { expect, test } from "vitest";
import { type WaveFacts, waveFinding, waveSteps, waveStripView } from "./wave-strip-view.ts";

const wave = (number: number, from: string, to: string, count: number, gate: string[] = []): WaveFacts => ({
  number,
  from,
  to,
  animals: [{ id: "trochus-snail", name: "banded trochus snail", count }],
  gate,
});
const WAVES = [
  wave(1, "2026-06-15", "2026-06-29", 3),
  wave(2, "2026-07-20", "2026-08-03", 1, ["film is back on the glass"]),
];

test("each wave is a step up by its animals, in the order of days, within the strip", () => {
  const { steps, heads } = waveStripView(WAVES);
  expect(heads).toBe(4);
  expect(steps.map(({ before, after }) => [before, after])).toEqual([
    [0, 3],
    [3, 4],
  ]);
  const shares = steps.flatMap(({ fromShare, toShare }) => [fromShare, toShare]);
  expect(shares).toEqual(shares.toSorted((a, b) => a - b));
  expect(shares[0]).toBe(0);
  expect(shares.at(-1)).toBeLessThan(1);
});

test("finding and steps say whole animals, days and the gate", () => {
  expect(waveFinding(waveStripView(WAVES))).toBe("4 animals in 2 waves, the first from 15 Jun 2026");
  expect(waveSteps(WAVES)).toEqual([
    { label: "Wave 1, 15 Jun 2026 to 29 Jun 2026", text: "3 banded trochus snails" },
    {
      label: "Wave 2, 20 Jul 2026 to 3 Aug 2026",
      text: "1 banded trochus snail, only if film is back on the glass",
    },
  ]);
});

test("no waves are no strip", () => {
  expect(() => waveStripView([])).toThrow("Cannot draw a strip of no waves");
});
