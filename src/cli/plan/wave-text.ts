/** One wave: who comes, what each eats and is limited by, the gate, and what to mind. */

import { counted, dateWords, table, wrap } from "../../answers/words.ts";
import type { PlannedAnimal, Wave } from "../../engine/stocking/plan-shape.ts";
import { SHELF_NAME } from "../../engine/types/shelf.ts";
import type { Io } from "../io.ts";

/** What binds a number, in short; the data and the page say it in full. */
const WHY_NOT_MORE: Readonly<Record<PlannedAnimal["binding"]["kind"], string>> = {
  food: "food",
  room: "room",
  company: "company",
  first_wave: "a first wave is kept small",
  forecast: "the weeks ahead",
  worth: "others have most of its food already",
};

/** Where the text of an entry begins, after its label. */
const INDENT = " ".repeat(13);

export function waveText({ number, from, to, day, animals, gate }: Wave, io: Io, full: boolean): string {
  const rows = animals.map(({ animal, count, eats, binding }) => [
    counted(count, animal.commonName),
    `eats ${eats.map((shelf) => SHELF_NAME[shelf]).join(", ")}`,
    `why not more: ${WHY_NOT_MORE[binding.kind]}`,
  ]);
  const entry = (label: string, text: string) => wrap(text, io.width, `  ${label.padEnd(11)}`, INDENT);
  const lines = [
    io.bold(`Wave ${number}: ${dateWords(from)} to ${dateWords(to)}`),
    ...animalLines(rows, io),
    ...gate.onlyIf.map((text, i) =>
      wrap(text, io.width, i === 0 ? `  ${"only if:".padEnd(11)}` : INDENT, `${INDENT}  `),
    ),
    // A wave whose window is open can't come sooner.
    ...(day === 0 ? [] : [entry("sooner if:", gate.soonerIf)]),
    entry("stop if:", gate.stopIf),
  ];
  const shells = animals.reduce((sum, { spareShells }) => sum + spareShells, 0);
  if (shells > 0)
    lines.push(
      entry(
        "also:",
        shells === 1
          ? "bring 1 empty shell of a size up for the hermits to change into"
          : `bring ${shells} empty shells of a size up for the hermits to change into`,
      ),
    );
  for (const [caution, names] of cautionsOf(animals))
    lines.push(entry("mind:", `${names.join(", ")}: ${lowerFirst(caution)}`));
  if (full) {
    for (const { animal, binding } of animals)
      lines.push(entry("why:", `no more of the ${animal.commonName} because of ${binding.text}`));
  }
  return lines.join("\n");
}

/** One line an animal where it fits; on a narrow screen, what it eats stands below. */
function animalLines(rows: readonly (readonly string[])[], io: Io): string[] {
  const wide = table(rows, 3, "  ").split("\n");
  if (wide.every((line) => line.length <= io.width)) return wide;
  return rows.flatMap(([who = "", ...rest]) => [`  ${who}`, wrap(rest.join("; "), io.width, "      ")]);
}

/** Each caution once, with the kinds that it is about. */
function cautionsOf(animals: readonly PlannedAnimal[]): Map<string, string[]> {
  const kinds = new Map<string, string[]>();
  for (const { animal, cautions } of animals) {
    for (const caution of cautions) kinds.set(caution, [...(kinds.get(caution) ?? []), animal.commonName]);
  }
  return kinds;
}

const lowerFirst = (text: string): string => text[0]!.toLowerCase() + text.slice(1);
