/**
 * `grazewell wrong`: what to do first, the same lists as the pages; with a tank, its numbers behind one. A list comes
 * first and whatever becomes of the tank: one that can't be read keeps nobody from it.
 */
import { Command } from "commander";
import { answersOf } from "../../answers/tank-answers.ts";
import { CRISIS_IDS, type CrisisId, isCrisisId } from "../../answers/wrong/list-ids.ts";
import { hasNumbers, needsEngine, numbersBehind } from "../../answers/wrong/numbers.ts";
import { nearest } from "../../contract/tank-file/suggest.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { loadedSolver, progressOf } from "../plan/plan-of.ts";
import { addTankOptions, type TankSource, tankFrom } from "../tank-source.ts";
import { listText, numbersText, troublesText } from "../wrong/text.ts";

const EXAMPLES = `Examples:
  grazewell wrong
  grazewell wrong ammonia
  grazewell wrong power-cut examples/first-reef.yaml
  grazewell wrong missing --tank "Hallway reef (invented)"
`;

export function command(io: Io): Command {
  const wrong = new Command("wrong")
    .summary("something is wrong: what to do first, and a tank's numbers behind it")
    .description(
      "Without a name: every trouble there is a list for. With one: at most seven lines, when to stop, whom to call. With a tank file or --tank: the numbers behind the list, for that tank.",
    )
    .argument("[trouble]", "name of the list")
    .argument("[file]", "tank file (YAML or JSON), or - for standard input; or --tank")
    .addHelpText("beforeAll", EXAMPLES)
    .action(async (trouble: string | undefined, file: string | undefined, options: TankSource) => {
      if (trouble === undefined) return io.out(troublesText(io));
      if (!isCrisisId(trouble)) throw noList(trouble);
      io.out(listText(trouble, io));
      if (file === undefined && options.tank === undefined) return;
      if (!hasNumbers(trouble)) return io.out("\nNo numbers of a tank stand behind this list.");
      const facts = await tankFrom(file, options, io, { quiet: true });
      io.out(`\n${await numbers(trouble, facts, io)}`);
    });
  return addTankOptions(wrong);
}

/** Twenty runs: enough for n of 20, and soon there. */
const CHOICE = { members: 20, seed: 1 };

async function numbers(list: CrisisId, facts: TankFacts, io: Io): Promise<string> {
  const answers = needsEngine(list)
    ? answersOf(facts, CHOICE, { solve: await loadedSolver(), progress: progressOf(io) })
    : null;
  io.progress(null);
  const parts = numbersBehind(list, { facts }, answers);
  return parts.length === 0
    ? "Nothing of this tank's volume and facts bears on this list."
    : numbersText(parts, io);
}

function noList(name: string): CliError {
  const near = nearest(name, CRISIS_IDS);
  return new CliError(EXIT.usage, [
    `"${name}": there is no list of that name.${near === null ? "" : ` Did you mean ${near}?`}`,
    `There are: ${CRISIS_IDS.join(", ")}`,
  ]);
}
