/** How a figure came about, as text: formula, inputs with their origin, parameters and works, confidence. */
import { TABLE } from "../answers/figures/table.ts";
import { wrap } from "../answers/words.ts";
import { sourcesOf } from "../answers/working.ts";
import { animalById, sources } from "../catalogue/index.ts";
import type { Figure } from "../engine/types/figure.ts";
import { spreadText } from "../engine/types/link.ts";
import type { Io } from "./io.ts";

const ORIGIN_WORDS = {
  stated: "you said",
  derived: "worked out",
  assumed: "assumed",
  figure: "a figure of its own",
} as const;

/** @param door the command that tells of another figure */
export function workingText(figure: Figure, door: (id: string) => string, io: Io): string {
  const { working } = figure;
  const lines = [
    `${io.bold(figure.label)}: ${spreadText(figure.spread, figure.unit)}`,
    "",
    wrap(`= ${working.formula}`, io.width, "", "  "),
    `  explained in docs/model/${working.formulaKey}`,
    "",
    io.bold("What went in"),
  ];
  for (const { label, value, origin, figure: link } of working.inputs) {
    const more = link === undefined ? "" : ` (${door(link)})`;
    lines.push(wrap(`${label}: ${value}; ${ORIGIN_WORDS[origin]}${more}`, io.width, "  ", "    "));
  }
  if (working.parameters.length > 0)
    lines.push("", io.bold("Parameters, with the range that 9 of 10 runs draw from"));
  for (const { symbol, spread, unit } of working.parameters) {
    const parameter = TABLE.get(symbol);
    lines.push(
      wrap(
        `${symbol}, ${parameter?.meaning ?? ""}: ${spreadText(spread, unit)}; ${parameter?.evidence ?? ""}`,
        io.width,
        "  ",
        "    ",
      ),
    );
    for (const source of sourcesOf(parameter?.sources ?? []))
      lines.push(wrap(sourceLine(source), io.width, "      "));
  }
  for (const id of working.animals) {
    const animal = animalById.get(id);
    if (animal === undefined) continue;
    lines.push("", io.bold(`Facts of the ${animal.commonName}`));
    for (const [field, words] of FIELDS_TOLD) {
      const basis = animal.basis[field];
      if (basis !== undefined) lines.push(wrap(`${words}: ${basis}`, io.width, "  ", "    "));
    }
    for (const source of sourcesOf(animal.sources)) lines.push(wrap(sourceLine(source), io.width, "      "));
  }
  if (working.references !== undefined && working.references.length > 0) {
    lines.push("", io.bold("Published works"));
    for (const work of working.references) {
      const known = sources.get(work);
      lines.push(wrap(known?.title ?? known?.about ?? work, io.width, "  ", "    "));
    }
  }
  lines.push("", `Confidence: ${working.confidence}.`);
  if (working.wouldChange.length > 0)
    lines.push(wrap(`What would change it most: ${working.wouldChange.join("; ")}.`, io.width));
  return lines.join("\n");
}

const FIELDS_TOLD = [
  ["intakeMgCPerDay", "what one eats a day"],
  ["breakEvenIntakeMgCPerDay", "what keeps its weight"],
  ["diet", "shares of its diet"],
] as const;

/** A source, and how far it was opened: what was never a text to open says so in its title. */
const sourceLine = ({ title, opened }: { readonly title: string; readonly opened: string }): string =>
  `source: ${title}${opened === "none" ? "" : ` [${opened}]`}`;
