/** Heads page: its finding, its words beside its grains, every number a door to a working that is there. */
import { renderToString } from "preact-render-to-string";
import { expect, test } from "vitest";
import { headsOf } from "../../answers/heads/heads.ts";
import { findAnimal } from "../../catalogue/index.ts";
import { readTankFile } from "../../contract/tank-file/read.ts";
import type { TankRecord } from "../../engine/types/record.ts";
import { TankId } from "../parts/tank-context.ts";
import { headsFinding, headsPage } from "./heads.tsx";
import { grainSize, headsRows } from "./heads-chart.tsx";

const TODAY = "2026-06-15";
const HEAD = { id: "t", name: "Try tank", keeper: "Nell", demonstration: false };

function saidOf(animals: string, kept: Partial<TankRecord> = {}) {
  const text = `grazewell_tank: 1\nname: Try tank\nwater_l: 240 L\nfirst_seawater_on: 2025-03-01\nanimals_present: [${animals}]\n`;
  const read = readTankFile(text, { today: TODAY, findAnimal });
  if (!read.ok) throw new Error(JSON.stringify(read.findings[0]));
  const record = { observations: [], happenings: [], declined: [], asOf: TODAY, ...kept };
  return headsOf({ facts: read.facts, record, today: TODAY });
}
const rendered = (said: ReturnType<typeof saidOf>): string =>
  renderToString(
    <TankId.Provider value="t">{headsPage({ head: HEAD, output: said.output }).body}</TankId.Provider>,
  );

const LATE = {
  happenings: [
    {
      ...({ kind: "added", animal: "trochus-snail", count: 9, on: "2025-06-01", entry: "a" } as const),
      ...{ condition: null, bodyRemoved: null, wave: null },
    },
  ],
};

test("nobody on record: said, and the way to an addition", () => {
  const html = rendered(saidOf(""));
  expect(html).toContain("Nobody is on record yet");
  expect(html).toContain("/tanks/t/daybook/new/addition");
});

test("every number links to a working that is there", () => {
  const said = saidOf("{ animal: trochus-snail, count: 9 }, { animal: nassarius-snail, count: 4 }", LATE);
  const html = rendered(said);
  const named = [...html.matchAll(/data-figure="([^"]+)"/g)].map(([, id]) => id);
  const there = new Set(said.figures.map(({ id }) => id));
  expect(named.length).toBeGreaterThan(10);
  for (const id of named) expect(there, id).toContain(id);
});

test("wide bands want a count; the finding says how many kinds", () => {
  const { kinds } = saidOf("{ animal: trochus-snail, count: 9 }", LATE).output;
  expect(headsFinding(kinds)).toBe("1 of 1 kind wants a count to be sure");
  expect(headsFinding([])).toBe("nobody is on record yet");
});

test("many heads share a grain; the file has the twenty runs", () => {
  const { kinds } = saidOf("{ animal: dwarf-cerith, count: 60 (checked) }").output;
  expect(grainSize(kinds)).toBe(5);
  const [header, row] = headsRows(kinds);
  expect(row).toHaveLength(header!.length);
  expect(row!.slice(-20)).toEqual([...kinds[0]!.living_of_20]);
});

test("never the wild, and no haste, blame or promise", () => {
  const html = rendered(saidOf("{ animal: trochus-snail, count: 9 }", LATE)).toLowerCase();
  for (const word of ["oops", "please", "invalid", "forbidden", "perfect", " safe", "sorry"])
    expect(html).not.toContain(word);
});
