/** `grazewell ahead FILE`: weeks ahead, twenty ways it could go; with flags of a what-if, both side by side. */
import { Command, InvalidArgumentError, Option } from "commander";
import { aheadOutputOf } from "../../answers/ahead/ahead-output.ts";
import { aheadReport } from "../../answers/ahead/report.ts";
import { DEFAULT_ENSEMBLE } from "../../answers/plan/plan-tank.ts";
import { type WhatIfFlags, whatIf } from "../../answers/what-if.ts";
import { aheadText } from "../ahead/ahead-text.ts";
import type { Io } from "../io.ts";
import { memberCount, seedNumber } from "../plan/options.ts";
import { planOf, progressOf } from "../plan/plan-of.ts";
import { addWhatIfFlags } from "../plan/what-if-flags.ts";
import { addTankOptions, type TankSource, tankFrom } from "../tank-source.ts";

interface AheadOptions extends WhatIfFlags, TankSource {
  readonly days: number;
  readonly members: number;
  readonly seed: number;
  readonly plan?: true;
  readonly json?: true;
}

const DEFAULT_DAYS = 365;
const LEAST_DAYS = 14;
const MOST_DAYS = 1825;

const EXAMPLES = `Examples:
  grazewell ahead examples/first-reef.yaml
  grazewell ahead my-tank.yaml --plan --days 180
  grazewell ahead my-tank.yaml --feed "+50 %"
  grazewell ahead my-tank.yaml --crew "+2 trochus-snail" --light "0 for 3 days"
  grazewell ahead my-tank.yaml --dead "5 g fish on day 10" --json
`;

export function command(io: Io): Command {
  const ahead = new Command("ahead")
    .summary("weeks ahead: what water, growths and animals will do")
    .description(
      "Weeks ahead: many versions of the tank, each run on from today, so that you can count in how many of 20 a thing happens. With a what-if, the same beside today's.",
    )
    .argument("[file]", "tank file (YAML or JSON), or - for standard input; or --tank")
    .addOption(new Option("--days <n>", "how far ahead").argParser(dayCount).default(DEFAULT_DAYS))
    .addOption(
      new Option("--members <n>", "runs of the ensemble")
        .argParser(memberCount)
        .default(DEFAULT_ENSEMBLE.members),
    )
    .addOption(
      new Option("--seed <n>", "seed of the draws").argParser(seedNumber).default(DEFAULT_ENSEMBLE.seed),
    )
    .option("--plan", "with the waves of its plan (grazewell waves)")
    .option("--json", "data for programs: docs/schemas/ahead.schema.json");
  return addWhatIfFlags(addTankOptions(ahead))
    .addHelpText("beforeAll", EXAMPLES)
    .action(async (file: string | undefined, options: AheadOptions) => {
      const facts = await tankFrom(file, options, io, { quiet: true });
      const change = whatIf(options, facts);
      for (const note of change?.notes ?? []) io.talk(note);
      const plan = options.plan === true ? await planOf(facts, options, io) : null;
      const request = { facts, whatIf: change, plan, days: options.days, choice: options };
      const report = aheadReport(request, progressOf(io));
      if (options.json === true) io.out(JSON.stringify(aheadOutputOf(report, facts, options), null, 2));
      else io.out(aheadText(report, facts, io));
    });
}

/** @throws InvalidArgumentError outside two weeks to five years */
function dayCount(text: string): number {
  const days = Number(text);
  if (Number.isInteger(days) && days >= LEAST_DAYS && days <= MOST_DAYS) return days;
  throw new InvalidArgumentError(
    `must be a whole number of days from ${LEAST_DAYS} to ${MOST_DAYS}; ${DEFAULT_DAYS} is usual.`,
  );
}
