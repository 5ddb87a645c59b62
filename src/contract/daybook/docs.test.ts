/** docs/daybook.md says what the code does: kinds, fields, anchors. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { GROWTHS } from "../../engine/types/tank.ts";
import { PARTS } from "./apply/scene.ts";
import { ENTRY_FIELDS, KIND_LABELS } from "./fields.ts";
import { cropOfScore, GROWTH_ANCHORS } from "./growth-anchors.ts";
import { ENTRY_KINDS } from "./kinds.ts";

const doc = readFileSync(join(import.meta.dirname, "../../../docs/daybook.md"), "utf8");

test.each(ENTRY_KINDS)("the table has every field of %s", (kind) => {
  const named = ENTRY_FIELDS[kind].flatMap(({ name, input, needed }) => {
    if (name === "observed" || name === "note") return [];
    return [input === "traits" ? "`trait.ID`" : needed ? `**\`${name}\`**` : `\`${name}\``];
  });
  expect(doc).toContain(`| \`${kind}\` | ${KIND_LABELS[kind]} | ${named.join(", ")} |`);
});

test.each(GROWTHS)("anchors of %s", (growth) => {
  const { label, anchors } = GROWTH_ANCHORS[growth];
  expect(doc).toContain(`| ${label} | ${anchors.join(" | ")} |`);
});

test("crops of film, and the parts that the daybook goes on with", () => {
  const crops = ([1, 2, 3] as const).map((score) => cropOfScore("film_glass", score)!.central);
  expect(crops).toEqual([76, 300, 1184]);
  expect(doc).toContain("about 76, 300 and 1,184 mg C/m2");
  for (const part of PARTS) if (part !== "care") expect(doc).toMatch(new RegExp(`\`${part}[.\`]`));
});
