/** `grazewell waves FILE`: the plan, the main job. */
import { Command, Option } from "commander";
import type { Io } from "../io.ts";
import { memberCount, seedNumber } from "../plan/options.ts";
import { DEFAULT_ENSEMBLE, planTank } from "../plan/plan-tank.ts";
import { wavesOutputOf } from "../plan/waves-output.ts";
import { planText } from "../plan/waves-text.ts";
import { readTank } from "../read-tank.ts";

interface WavesOptions {
  readonly members: number;
  readonly seed: number;
  readonly json?: boolean;
  readonly all?: boolean;
}

export function command(io: Io): Command {
  return new Command("waves")
    .summary("the plan: who comes when, how many, on what condition")
    .description("From a tank file to a crew in waves, each with its gate, checked against the weeks ahead.")
    .argument("<file>", "tank file (YAML or JSON), or - for standard input")
    .addOption(
      new Option("--members <n>", "runs of the ensemble")
        .argParser(memberCount)
        .default(DEFAULT_ENSEMBLE.members),
    )
    .addOption(
      new Option("--seed <n>", "seed of the draws").argParser(seedNumber).default(DEFAULT_ENSEMBLE.seed),
    )
    .option("--all", "also everyone refused, and what each limit costs")
    .option("--json", "the plan as JSON (docs/schemas/waves.schema.json)")
    .addHelpText(
      "beforeAll",
      "Examples:\n  grazewell waves examples/first-reef.yaml\n  grazewell waves my-tank.yaml --all\n  grazewell waves my-tank.yaml --json\n",
    )
    .action(async (file: string, options: WavesOptions) => {
      const facts = readTank(file, io, { quiet: true });
      io.talk(`Planning ${facts.name}.`);
      const plan = await planTank(facts, options, io, options.all === true || options.json === true);
      if (options.json === true) io.out(JSON.stringify(wavesOutputOf(plan, facts, options), null, 2));
      else io.out(planText(plan, facts, io, { full: options.all === true }));
    });
}
