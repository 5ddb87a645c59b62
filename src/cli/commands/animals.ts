/** `grazewell animals`: the catalogue by kind, one animal as a field-guide entry, and which fit a tank. */
import { existsSync } from "node:fs";
import { Command } from "commander";
import { type Fit, fitOf } from "../../answers/animals/fit.ts";
import { animalsOutputOf } from "../../answers/animals/output.ts";
import { DEFAULT_ENSEMBLE } from "../../answers/plan/plan-tank.ts";
import { animals } from "../../catalogue/index.ts";
import type { Animal } from "../../engine/types/animal.ts";
import { fitsText } from "../animals/fits-text.ts";
import { animalNamed } from "../animals/named.ts";
import { entryText, listText } from "../animals/text.ts";
import type { Io } from "../io.ts";
import { planOf } from "../plan/plan-of.ts";
import { addTankOptions, type TankSource, tankFrom } from "../tank-source.ts";

const EXAMPLES = `Examples:
  grazewell animals
  grazewell animals trochus-snail
  grazewell animals "blue leg hermit" my-tank.yaml
  grazewell animals my-tank.yaml
  grazewell animals my-tank.yaml --json
`;

export function command(io: Io): Command {
  const animalsCommand = new Command("animals")
    .summary("the animals: what each eats and needs, and whether it fits your tank")
    .description(
      "The catalogue by kind; one animal, as an entry of a field guide; with a tank file, how it fits that tank, or which of all fit.",
    )
    .argument("[animal]", "an animal's id or name; or a tank file alone")
    .argument("[file]", "tank file (YAML or JSON), or - for standard input")
    .option("--json", "data for programs: docs/schemas/animals.schema.json")
    .addHelpText("beforeAll", EXAMPLES)
    .action(
      async (
        first: string | undefined,
        second: string | undefined,
        flags: TankSource & { readonly json?: true },
      ) => {
        const fileAlone = first !== undefined && second === undefined && isTankFile(first);
        const file = fileAlone ? first : second;
        const one = first === undefined || fileAlone ? null : animalNamed(first);
        const facts =
          file === undefined && flags.tank === undefined
            ? null
            : await tankFrom(file, flags, io, { quiet: true });
        const plan = facts === null ? null : await planOf(facts, DEFAULT_ENSEMBLE, io);
        const fitFor = (animal: Animal): Fit | null =>
          facts === null || plan === null ? null : fitOf(animal, facts, plan);
        const rows = (one === null ? animals : [one]).map((animal) => ({ animal, fit: fitFor(animal) }));
        const output = animalsOutputOf(rows, facts);
        if (flags.json === true) {
          io.out(JSON.stringify(output, null, 2));
        } else if (one !== null) {
          io.out(entryText(one, output.animals[0]!, facts, io));
        } else if (facts !== null) {
          io.out(fitsText(output.animals, facts, io));
        } else {
          io.out(listText(animals, io));
        }
      },
    );
  return addTankOptions(animalsCommand);
}

/** No animal's name ends like a file's, and none lies in the folder by chance. */
const isTankFile = (text: string): boolean =>
  text === "-" || /\.(?:ya?ml|json)$/i.test(text) || existsSync(text);
