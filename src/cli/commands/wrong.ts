/**
 * `grazewell wrong`: what to do first, the same lists as the pages; with a tank, its numbers behind one. A list comes
 * first and whatever becomes of the tank: one that can't be read keeps nobody from it. With --json one document is printed, so there a tank that can't be read is
 * an error instead.
 */
import { Command } from "commander";
import { answersOf, type TankAnswers } from "../../answers/tank-answers.ts";
import { CRISIS_IDS, type CrisisId, isCrisisId } from "../../answers/wrong/list-ids.ts";
import { hasNumbers, needsEngine, numbersBehind } from "../../answers/wrong/numbers.ts";
import { wrongListOutputOf, wrongOutputOf } from "../../answers/wrong/output.ts";
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
  grazewell wrong pumps examples/first-reef.yaml --json
`;

interface Flags extends TankSource {
  readonly json?: true;
}

export function command(io: Io): Command {
  const wrong = new Command("wrong")
    .summary("something is wrong: what to do first, and a tank's numbers behind it")
    .description(
      "Without a name: every trouble there is a list for. With one: at most seven lines, when to stop, whom to call. With a tank file or --tank: the numbers behind the list, for that tank.",
    )
    .argument("[trouble]", "name of the list")
    .argument("[file]", "tank file (YAML or JSON), or - for standard input; or --tank")
    .addHelpText("beforeAll", EXAMPLES)
    .option("--json", "data for programs: docs/schemas/wrong.schema.json, or wrong-list.schema.json")
    .action(async (trouble: string | undefined, file: string | undefined, options: Flags) => {
      if (trouble !== undefined && !isCrisisId(trouble)) throw noList(trouble);
      if (options.json === true)
        return io.out(JSON.stringify(await data(trouble, file, options, io), null, 2));
      if (trouble === undefined) return io.out(troublesText(io));
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

async function data(list: CrisisId | undefined, file: string | undefined, options: Flags, io: Io) {
  if (list === undefined) return wrongOutputOf();
  if (file === undefined && options.tank === undefined) return wrongListOutputOf(list, null, null);
  const facts = await tankFrom(file, options, io, { quiet: true });
  return wrongListOutputOf(list, facts, hasNumbers(list) ? await answersBehind(list, facts, io) : null);
}

/** Null where the list has no need of the engine. */
async function answersBehind(list: CrisisId, facts: TankFacts, io: Io): Promise<TankAnswers | null> {
  if (!needsEngine(list)) return null;
  const answers = answersOf(facts, CHOICE, { solve: await loadedSolver(), progress: progressOf(io) });
  io.progress(null);
  return answers;
}

async function numbers(list: CrisisId, facts: TankFacts, io: Io): Promise<string> {
  const answers = await answersBehind(list, facts, io);
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
