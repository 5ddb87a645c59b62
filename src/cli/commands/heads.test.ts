/** `grazewell heads` in lines and as data. */
import { expect, test } from "vitest";
import { headsOf } from "../../answers/heads/heads.ts";
import { findAnimal } from "../../catalogue/index.ts";
import { readTankFile } from "../../contract/tank-file/read.ts";
import { headsLines } from "../heads/heads-text.ts";

const TODAY = "2026-06-15";

function linesOf(animals: string): string {
  const text = `grazewell_tank: 1\nname: Try tank\nwater_l: 240 L\nfirst_seawater_on: 2025-03-01\nanimals_present: [${animals}]\n`;
  const read = readTankFile(text, { today: TODAY, findAnimal });
  if (!read.ok) throw new Error(JSON.stringify(read.findings[0]));
  const record = { observations: [], happenings: [], declined: [], asOf: TODAY };
  const { output } = headsOf({ facts: read.facts, record, today: TODAY });
  return headsLines(output)
    .map(({ text: words }) => words)
    .join("\n");
}

test("each kind has its sentence, how sure, losses, what would settle it, and the weeks ahead", () => {
  const lines = linesOf("{ animal: trochus-snail, count: 3 }");
  expect(lines).toMatch(/^3 banded trochus snails came; .*of 20\)\. Not counted yet/m);
  expect(lines).toMatch(/No losses logged\. By age alone 3 would live today\./);
  expect(lines).toMatch(/What would settle it: A count by torch/);
  expect(lines).toMatch(
    /If nobody is added, trouble that may set in reckoned with: .* in 4 weeks, .* in 12 weeks and .* in 26 weeks\./,
  );
});

test("nobody there: what to do instead", () => {
  expect(linesOf("")).toBe("Nobody is on record yet. Log an addition: grazewell log --help");
});
