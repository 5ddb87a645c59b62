/** `grazewell larder FILE`: what the tank makes as food, shelf by shelf, and who eats it. */
import { Command, Option } from "commander";
import { type LaidLarder, type LarderBeside, larderFor, larderOutputOf } from "../../answers/larder.ts";
import { DEFAULT_ENSEMBLE, type EnsembleChoice } from "../../answers/plan/plan-tank.ts";
import { STATEMENT } from "../../answers/statement.ts";
import { type WhatIfFlags, whatIf } from "../../answers/what-if.ts";
import { counted, fitted, rations, rationsADay, table, wrap } from "../../answers/words.ts";
import { SHELF_NAME, SHELVES } from "../../engine/types/shelf.ts";
import type { Io } from "../io.ts";
import { memberCount, seedNumber } from "../plan/options.ts";
import { addWhatIfFlags } from "../plan/what-if-flags.ts";
import { addTankOptions, type TankSource, tankFrom } from "../tank-source.ts";

interface LarderOptions extends EnsembleChoice, WhatIfFlags, TankSource {
  readonly json?: boolean;
}

export function command(io: Io): Command {
  const larder = new Command("larder")
    .summary("food your tank makes, and who eats it")
    .description("Supply of each shelf with its spread, and what the animals there need of it.")
    .argument("[file]", "tank file (YAML or JSON), or - for standard input; or --tank")
    .addOption(
      new Option("--members <n>", "runs of the ensemble")
        .argParser(memberCount)
        .default(DEFAULT_ENSEMBLE.members),
    )
    .addOption(
      new Option("--seed <n>", "seed of the draws").argParser(seedNumber).default(DEFAULT_ENSEMBLE.seed),
    )
    .option("--json", "as JSON (docs/schemas/larder.schema.json)")
    .addHelpText(
      "beforeAll",
      "Examples:\n  grazewell larder examples/first-reef.yaml\n  grazewell working larder.film_rock.supply examples/first-reef.yaml\n",
    )
    .action(async (file: string | undefined, options: LarderOptions) => {
      const facts = await tankFrom(file, options, io, { quiet: true });
      const changed = whatIf(options, facts);
      for (const note of changed?.notes ?? []) io.talk(note);
      const today = larderFor(facts, options);
      const then = changed === null ? today : larderFor(changed.facts, options);
      const beside = changed === null ? null : { changes: changed.changes, today: today.scene };
      io.out(
        options.json === true
          ? JSON.stringify(larderOutputOf(then, options, beside), null, 2)
          : textOf(then, io, beside),
      );
    });
  return addWhatIfFlags(addTankOptions(larder));
}

function textOf(
  { facts, scene: { larder }, mouths }: LaidLarder,
  io: Io,
  beside: LarderBeside | null,
): string {
  const wanted = (shelf: (typeof SHELVES)[number]) =>
    mouths.reduce((sum, mouth) => sum + mouth.byShelfMgC[shelf], 0);
  const rows = SHELVES.map((shelf) => {
    const { supply, pessimistic } = larder.shelves[shelf];
    const need = wanted(shelf);
    return [
      SHELF_NAME[shelf],
      rations(pessimistic),
      ...(beside === null ? [] : [rations(beside.today.larder.shelves[shelf].supply.central)]),
      rations(supply.central),
      `${rations(supply.low)} to ${rations(supply.high)}`,
      rations(need),
      balance(pessimistic, supply.central, need),
    ];
  });
  const heads = [
    "shelf",
    "15 of 20",
    ...(beside === null ? ["middle"] : ["today", "then"]),
    "90 % band",
    "wanted",
    "",
  ];
  const total = `All shelves together: ${rations(larder.total.central)} rations a day (${rations(larder.total.low)} to ${rations(larder.total.high)}).`;
  const eaters = mouths.map(
    ({ animal, heads, needMgC }) =>
      `${counted(heads, animal.commonName)}: ${rationsADay(needMgC)} to keep ${heads === 1 ? "its" : "their"} weight`,
  );
  return [
    wrap(
      `${io.bold(`Larder of ${facts.name}`)}: food your tank makes, in rations a day. A ration is 10 mg of carbon, about what one 22 mm trochus eats; "15 of 20" is what 15 of 20 runs reach, "wanted" what the animals there need.`,
      io.width,
    ),
    ...(beside === null ? [] : [wrap(`What if: ${beside.changes.join("; ")}.`, io.width)]),
    fitted(table([heads, ...rows]), io.width, () =>
      rows.map(
        ([shelf, ...cells]) =>
          `${shelf}: ${cells.flatMap((cell, i) => (cell === "" ? [] : [`${heads[i + 1]} ${cell}`.trim()])).join(", ")}`,
      ),
    ),
    wrap(total, io.width),
    ...(eaters.length > 0
      ? [eaters.map((line) => wrap(line, io.width, "  ", "    ")).join("\n")]
      : ["  Nobody eats from it yet."]),
    wrap("How do you know? grazewell working larder.film_rock.supply FILE (any shelf's name).", io.width),
    wrap(STATEMENT, io.width),
  ].join("\n\n");
}

function balance(pessimistic: number, central: number, need: number): string {
  if (need === 0) return central >= 1 ? "nobody eats it" : "";
  if (need <= pessimistic) return "enough";
  return need <= central ? "enough in half" : "short";
}
