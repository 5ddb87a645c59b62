/** Answers as they come: the larder before the plan, and at the end the same as all at once. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { findAnimal } from "../catalogue/index.ts";
import { readTankFile } from "../contract/tank-file/read.ts";
import { loadSolver } from "../solver/highs.ts";
import { answersOf, partsOf } from "./tank-answers.ts";

const text = readFileSync(join(import.meta.dirname, "../../examples/no-rock-150.yaml"), "utf8");
const read = readTankFile(text, { today: "2026-11-26", findAnimal });

test("parts come larder first, and add up to the whole", async () => {
  if (!read.ok) throw new Error("the example can't be read");
  const means = { solve: await loadSolver(), progress: () => {} };
  const given = [read.facts, { members: 10, seed: 1 }, means] as const;
  const whole = answersOf(...given);
  const parts = partsOf(...given);
  const first = parts.next();
  expect(Object.keys(first.value)).toEqual(["larder", "workings"]);
  expect(first.value.larder).toEqual(whole.larder);
  for (const [id, figure] of Object.entries(first.value.workings!))
    expect(whole.workings[id]).toEqual(figure);
  expect(Object.keys(parts.next().value)).toEqual(["waves", "animals"]);
  const last = parts.next();
  expect(last.done).toBe(true);
  expect(last.value).toEqual(whole);
});
