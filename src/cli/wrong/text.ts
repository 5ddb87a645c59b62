/** Crisis lists and the numbers behind them, as lines of a terminal. */
import { plain } from "../../answers/sentence.ts";
import { table, wrap } from "../../answers/words.ts";
import { CRISIS_IDS, type CrisisId } from "../../answers/wrong/list-ids.ts";
import { AFTERWARDS, BEFORE, CRISIS_GROUPS, CRISIS_LISTS } from "../../answers/wrong/lists.ts";
import type { NumbersPart } from "../../answers/wrong/numbers/shape.ts";

type Width = { readonly width: number };

/** Every trouble by its name, people first. */
export function troublesText({ width }: Width): string {
  const longest = Math.max(...CRISIS_IDS.map((id) => id.length));
  const groups = Object.entries(CRISIS_GROUPS).map(([about, name]) => [
    name,
    ...CRISIS_IDS.filter((id) => CRISIS_LISTS[id].about === about).map(
      (id) => `  ${id.padEnd(longest)}  ${CRISIS_LISTS[id].see}`,
    ),
  ]);
  return [wrap(BEFORE, width), "What do you see? grazewell wrong NAME", ...groups.flat()].join("\n");
}

export function listText(id: CrisisId, { width }: Width): string {
  const { see, lines } = CRISIS_LISTS[id];
  const steps = lines.map((line, i) => wrap(line, width, `  ${i + 1}. `, "     "));
  return [see, ...steps, "", wrap(AFTERWARDS, width)].join("\n");
}

export function numbersText(parts: readonly NumbersPart[], { width }: Width): string {
  const blocks = parts.map(({ title, rows, tables, notes }) =>
    [
      title,
      ...rows.map(({ label, value }) => wrap(`${label}: ${plain(value)}`, width, "  ", "    ")),
      ...tables.flatMap(({ title: name, columns, rows: cells }) => {
        const texts = [columns, ...cells.map((row) => row.map(plain))];
        const wide = table(texts);
        const fits = wide.split("\n").every((line) => line.length <= width);
        const words = texts
          .slice(1)
          .map(([first = "", ...rest]) =>
            wrap(
              `${first}: ${rest.map((cell, i) => `${columns[i + 1]} ${cell}`).join("; ")}`,
              width,
              "  ",
              "    ",
            ),
          );
        return [`  ${name}`, ...(fits ? [wide] : words)];
      }),
      ...notes.map((note) => wrap(note, width, "  ", "  ")),
    ].join("\n"),
  );
  return blocks.join("\n\n");
}
