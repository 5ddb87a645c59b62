/** A keeper's evening at the command line: look, log, be asked, answer, and read the plan with it. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { makeKitchen } from "../kit/kitchen.ts";
import { grazewell, shell } from "./command.ts";

const folder = mkdtempSync(join(tmpdir(), "journey-daybook-"));
const store = join(folder, "tanks.db");
const of = ["--tank", "Kitchen (invented)", "--store", store];

beforeAll(() => makeKitchen(store));
afterAll(() => rmSync(folder, { recursive: true }));

test("an evening: two snails seen, one found dead, a question answered, the tank read with it", () => {
  const empty = grazewell(["daybook", ...of]);
  expect({ status: empty.status, stdout: empty.stdout }).toEqual({
    status: 0,
    stdout: "Kitchen (invented): no entries.\n",
  });
  const count = grazewell(["log", "head_count", "animal=trochus snail", "seen=2", "torch=yes", ...of]);
  expect({ status: count.status, stderr: count.stderr }).toEqual({ status: 0, stderr: "" });
  const asked = grazewell(["log", "loss", "animal=trochus snail", "count=9", "certainty=found", ...of]);
  expect({ status: asked.status, stdout: asked.stdout }).toEqual({ status: 65, stdout: "" });
  expect(asked.stderr).toContain('Lost "9": the record has 5');
  expect(grazewell(["log", "loss", "animal=trochus snail", "count=1", "certainty=found", ...of]).status).toBe(
    0,
  );
  const listed = grazewell(["daybook", ...of]).stdout;
  expect(listed).toContain("2 entries");
  expect(listed).toContain("found dead");
  // A head count takes none away; a body found does.
  const facts = JSON.parse(grazewell(["animals", "trochus-snail", "--json", ...of]).stdout);
  expect(JSON.stringify(facts)).toContain("trochus-snail");
  const checked = grazewell(["check", ...of]).stdout;
  expect(checked).toContain("nothing to mend");
});

test("what is printed can be typed into the shell as it stands", () => {
  const where = `--tank kitchen --store ${store}`;
  const asked = shell(`grazewell log chore chore=water_change amount=20 ${where}`);
  expect(asked.status).toBe(65);
  const offered = [...asked.stderr.matchAll(/^ {2}(amount=\S.*?)(?: {3}.*)?$/gm)].map(([, words]) => words);
  expect(offered).toEqual(["amount='20 %'", "amount='20 L'"]);
  expect(shell(`grazewell log chore chore=water_change ${offered[1]} ${where}`).status).toBe(0);
});

test("no store, no tank, no kind: told, each with its code", () => {
  const words = ["growth", "growth=film_glass", "score=2"];
  expect(grazewell(["log", ...words, "--tank", "Kitchen", "--store", store]).status).toBe(66);
  expect(grazewell(["log", ...words, "--tank", "x", "--store", join(folder, "none.db")]).status).not.toBe(0);
  expect(grazewell(["log", "mood", ...of]).status).toBe(2);
  expect(grazewell(["daybook", "--store", store]).stderr).toContain("--tank");
});
