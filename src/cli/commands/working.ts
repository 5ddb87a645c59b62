/** `grazewell working FIGURE FILE`: how a number came about, down to its sources. */
import { Command } from "commander";
import { larderFigures, linkedFacts, tankAndPlanFigures } from "../../answers/figures/all.ts";
import { animalFact, withConfidence } from "../../answers/figures/confidence.ts";
import { larderFor } from "../../answers/larder.ts";
import { DEFAULT_ENSEMBLE } from "../../answers/plan/plan-tank.ts";
import { figuresOf } from "../../answers/tank-answers.ts";
import { workingOutputOf } from "../../answers/working.ts";
import type { Figure } from "../../engine/types/figure.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { loadedSolver, planOf, progressOf } from "../plan/plan-of.ts";
import { addTankOptions, type TankSource, tankFrom } from "../tank-source.ts";
import { workingText } from "../working-text.ts";

export function command(io: Io): Command {
  const working = new Command("working")
    .summary("how do you know? any figure, with inputs, formula and sources")
    .description(
      "How a figure came about: formula, inputs with their origin, parameters with range and source, what would change it.",
    )
    .argument("<figure>", "id of a figure, or 'list' for all that this tank has")
    .argument("[file]", "tank file (YAML or JSON), or - for standard input; or --tank")
    .option("--json", "as JSON (docs/schemas/working.schema.json)")
    .addHelpText(
      "beforeAll",
      "Examples:\n  grazewell working list examples/first-reef.yaml\n  grazewell working larder.film_glass.supply examples/first-reef.yaml\n  grazewell working plan.trochus-snail.count examples/first-reef.yaml\n",
    )
    .action(
      async (id: string, file: string | undefined, options: TankSource & { readonly json?: boolean }) => {
        const facts = await tankFrom(file, options, io, { quiet: true });
        const figures = await figuresFor(id, facts, io);
        if (id === "list") {
          io.out(
            options.json === true
              ? JSON.stringify(workingOutputOf(null, figures), null, 2)
              : figures.map((one) => `${one.id}  ${one.label}`).join("\n"),
          );
          return;
        }
        const figure = figures.find((one) => one.id === id);
        if (figure === undefined) throw unknownFigure(id, figures);
        io.out(
          options.json === true
            ? JSON.stringify(workingOutputOf(figure, []), null, 2)
            : workingText(figure, (link) => `grazewell working ${link} FILE`, io),
        );
      },
    );
  return addTankOptions(working);
}

/** Only as much is worked out as the figure needs: facts of animals nothing, the larder no plan, the plan no weeks ahead. */
async function figuresFor(id: string, facts: TankFacts, io: Io): Promise<readonly Figure[]> {
  const fact = animalFact(id);
  if (fact !== null) return [fact];
  if (/^(larder|tank)\./.test(id)) return withConfidence(larderFigures(larderFor(facts, DEFAULT_ENSEMBLE)));
  if (id === "list" || id.startsWith("ahead.")) {
    const solve = await loadedSolver();
    const figures = figuresOf(facts, DEFAULT_ENSEMBLE, { solve, progress: progressOf(io) });
    io.progress(null);
    return id === "list" ? [...figures, ...linkedFacts(figures)] : figures;
  }
  const plan = await planOf(facts, DEFAULT_ENSEMBLE, io);
  return withConfidence(tankAndPlanFigures(larderFor(facts, DEFAULT_ENSEMBLE), plan));
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
