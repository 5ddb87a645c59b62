/** `grazewell working FIGURE FILE`: how a number came about, down to its sources. */
import { Command } from "commander";
import { animalById, modelParameters, sources } from "../../catalogue/index.ts";
import type { WorkingOutput } from "../../contract/output/working.ts";
import { spreadText } from "../../engine/larder/figures.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import {
  allFigures,
  DEFAULT_ENSEMBLE,
  larderFigures,
  larderScene,
  membersOf,
  planTank,
} from "../plan/plan-tank.ts";
import { wrap } from "../plan/words.ts";
import { readTank } from "../read-tank.ts";
import { ENGINE_VERSION } from "../version.ts";

export function command(io: Io): Command {
  return new Command("working")
    .summary("how do you know? any figure, with inputs, formula and sources")
    .description(
      "How a figure came about: formula, inputs with their origin, parameters with range and source, what would change it.",
    )
    .argument("<figure>", "id of a figure, or 'list' for all that this tank has")
    .argument("<file>", "tank file (YAML or JSON), or - for standard input")
    .option("--json", "as JSON (docs/schemas/working.schema.json)")
    .addHelpText(
      "beforeAll",
      "Examples:\n  grazewell working list examples/first-reef.yaml\n  grazewell working larder.film_glass.supply examples/first-reef.yaml\n  grazewell working plan.trochus-snail.count examples/first-reef.yaml\n",
    )
    .action(async (id: string, file: string, options: { readonly json?: boolean }) => {
      const facts = readTank(file, io, { quiet: true });
      const scene = larderScene(facts, membersOf(facts, DEFAULT_ENSEMBLE), 0);
      const figures = id.startsWith("larder.")
        ? larderFigures(scene)
        : allFigures(await planTank(facts, DEFAULT_ENSEMBLE, io), facts, scene);
      if (id === "list") {
        io.out(
          options.json === true
            ? json(null, figures)
            : figures.map((one) => `${one.id}  ${one.label}`).join("\n"),
        );
        return;
      }
      const figure = figures.find((one) => one.id === id);
      if (figure === undefined) throw unknownFigure(id, figures);
      io.out(options.json === true ? json(figure, []) : textOf(figure, io));
    });
}

function unknownFigure(id: string, figures: readonly Figure[]): CliError {
  const words = id.toLowerCase().split(/[.\s]/);
  const near = figures
    .filter((figure) => words.some((word) => word.length > 3 && figure.id.includes(word)))
    .slice(0, 5);
  return new CliError(EXIT.badData, [
    `Figure "${id}": this tank has no figure of that id.`,
    ...(near.length > 0 ? [`Did you mean ${near.map((one) => one.id).join(", ")}?`] : []),
    "grazewell working list FILE names them all.",
  ]);
}

const ORIGIN_WORDS = {
  stated: "you said",
  derived: "worked out",
  assumed: "assumed",
  figure: "a figure of its own",
} as const;

function textOf(figure: Figure, io: Io): string {
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
    const more = link === undefined ? "" : ` (grazewell working ${link} FILE)`;
    lines.push(wrap(`${label}: ${value}; ${ORIGIN_WORDS[origin]}${more}`, io.width, "  ", "    "));
  }
  if (working.parameters.length > 0)
    lines.push("", io.bold("Parameters, with the range that 9 of 10 runs draw from"));
  for (const { symbol, spread, unit } of working.parameters) {
    const parameter = modelParameters.get(symbol);
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

function sourcesOf(keys: readonly string[]) {
  return keys.flatMap((key) => {
    const source = sources.get(key);
    return source === undefined ? [] : [{ key, title: source.title ?? source.about, opened: source.opened }];
  });
}

function json(figure: Figure | null, figures: readonly Figure[]): string {
  const output: WorkingOutput = {
    schema: "grazewell.working/1",
    engine: ENGINE_VERSION,
    figure:
      figure === null
        ? null
        : {
            id: figure.id,
            label: figure.label,
            value: { low: figure.spread.low, central: figure.spread.central, high: figure.spread.high },
            unit: figure.unit,
            formula: figure.working.formula,
            formula_at: `docs/model/${figure.working.formulaKey}`,
            inputs: figure.working.inputs.map((input) => ({
              label: input.label,
              value: input.value,
              origin: input.origin,
              figure: input.figure ?? null,
            })),
            parameters: figure.working.parameters.map(({ symbol, spread, unit }) => {
              const parameter = modelParameters.get(symbol);
              return {
                id: symbol,
                meaning: parameter?.meaning ?? "",
                value: { low: spread.low, central: spread.central, high: spread.high },
                unit,
                evidence: parameter?.evidence ?? "",
                note: parameter?.note ?? null,
                sources: sourcesOf(parameter?.sources ?? []),
              };
            }),
            animals: figure.working.animals.flatMap((id) => {
              const animal = animalById.get(id);
              return animal === undefined
                ? []
                : [
                    {
                      id,
                      name: animal.commonName,
                      basis: { ...animal.basis },
                      sources: sourcesOf(animal.sources),
                    },
                  ];
            }),
            confidence: figure.working.confidence,
            would_change: [...figure.working.wouldChange],
          },
    figures: figures.map(({ id, label }) => ({ id, label })),
  };
  return JSON.stringify(output, null, 2);
}
