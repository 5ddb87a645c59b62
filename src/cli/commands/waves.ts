/** `grazewell waves FILE`: the plan, the main job. */
import { Command, Option } from "commander";
import { DEFAULT_ENSEMBLE } from "../../answers/plan/plan-tank.ts";
import { wavesOutputOf } from "../../answers/plan/waves-output.ts";
import { type WhatIfFlags, whatIf } from "../../answers/what-if.ts";
import type { Io } from "../io.ts";
import { besideText } from "../plan/beside-text.ts";
import { memberCount, seedNumber } from "../plan/options.ts";
import { planOf } from "../plan/plan-of.ts";
import { planText } from "../plan/waves-text.ts";
import { addWhatIfFlags } from "../plan/what-if-flags.ts";
import { addTankOptions, type TankSource, tankFrom } from "../tank-source.ts";

interface WavesOptions extends WhatIfFlags, TankSource {
  readonly members: number;
  readonly seed: number;
  readonly json?: boolean;
  readonly all?: boolean;
}

export function command(io: Io): Command {
  const waves = new Command("waves")
    .summary("the plan: who comes when, how many, on what condition")
    .description("From a tank file to a crew in waves, each with its gate, checked against the weeks ahead.")
    .argument("[file]", "tank file (YAML or JSON), or - for standard input; or --tank")
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
    .action(async (file: string | undefined, options: WavesOptions) => {
      const facts = await tankFrom(file, options, io, { quiet: true });
      const changed = whatIf(options, facts);
      for (const note of changed?.notes ?? []) io.talk(note);
      io.talk(`Planning ${facts.name}.`);
      const planned = changed?.facts ?? facts;
      const plan = await planOf(planned, options, io, options.all === true || options.json === true);
      const beside =
        changed === null ? null : { changes: changed.changes, today: await planOf(facts, options, io) };
      if (options.json === true) {
        io.out(JSON.stringify(wavesOutputOf(plan, planned, options, beside), null, 2));
        return;
      }
      if (beside !== null) io.out(`${besideText(plan, beside, io)}\n`);
      io.out(planText(plan, planned, io, { full: options.all === true }));
    });
  return addWhatIfFlags(addTankOptions(waves));
}
