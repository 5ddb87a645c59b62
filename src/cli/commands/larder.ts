/** `grazewell larder FILE`: what the tank makes as food, shelf by shelf, and who eats it. */
import { Command, Option } from "commander";
import { animals } from "../../catalogue/index.ts";
import type { LarderOutput } from "../../contract/output/larder.ts";
import { RATION_MG_C } from "../../engine/larder/larder.ts";
import { type Mouth, mouthsOf } from "../../engine/larder/mouths.ts";
import { companyOf, isCrew, warmthOf } from "../../engine/stocking/waves.ts";
import { SHELF_NAME, SHELVES } from "../../engine/types/shelf.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Io } from "../io.ts";
import { memberCount, seedNumber } from "../plan/options.ts";
import { DEFAULT_ENSEMBLE, type EnsembleChoice, larderScene, membersOf } from "../plan/plan-tank.ts";
import { STATEMENT } from "../plan/statement.ts";
import { counted, fitted, rations, rationsADay, table, wrap } from "../plan/words.ts";
import { readTank } from "../read-tank.ts";
import { ENGINE_VERSION } from "../version.ts";
import { addWhatIfFlags, type WhatIfFlags, whatIf } from "../what-if.ts";

interface LarderOptions extends EnsembleChoice, WhatIfFlags {
  readonly json?: boolean;
}

export function command(io: Io): Command {
  const larder = new Command("larder")
    .summary("food your tank makes, and who eats it")
    .description("Supply of each shelf with its spread, and what the animals there need of it.")
    .argument("<file>", "tank file (YAML or JSON), or - for standard input")
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
    .action((file: string, options: LarderOptions) => {
      const facts = readTank(file, io, { quiet: true });
      const changed = whatIf(options, facts);
      for (const note of changed?.notes ?? []) io.talk(note);
      const today = laid(facts, options);
      const then = changed === null ? today : laid(changed.facts, options);
      const beside = changed === null ? null : { changes: changed.changes, today: today.scene };
      io.out(
        options.json === true
          ? JSON.stringify(outputOf(then, options, beside), null, 2)
          : textOf(then, io, beside),
      );
    });
  return addWhatIfFlags(larder);
}

/** A larder with its mouths. */
interface Laid {
  readonly facts: TankFacts;
  readonly scene: Scene;
  readonly mouths: readonly Mouth[];
}
interface Beside {
  readonly changes: readonly string[];
  readonly today: Scene;
}

function laid(facts: TankFacts, choice: EnsembleChoice): Laid {
  const crew = companyOf(facts, animals).filter(({ animal, planned }) => !planned && isCrew(animal));
  return {
    facts,
    scene: larderScene(facts, membersOf(facts, choice), 0),
    mouths: mouthsOf(
      crew.map(({ animal, count }) => ({ animal, heads: count })),
      warmthOf(facts),
    ),
  };
}

type Scene = ReturnType<typeof larderScene>;

function textOf({ facts, scene: { larder }, mouths }: Laid, io: Io, beside: Beside | null): string {
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

function outputOf(
  { facts, scene: { larder }, mouths }: Laid,
  choice: EnsembleChoice,
  beside: Beside | null,
): LarderOutput {
  const { low, central, high } = larder.total;
  return {
    schema: "grazewell.larder/1",
    engine: ENGINE_VERSION,
    seed: choice.seed,
    members: choice.members,
    tank: { name: facts.name, as_of: facts.asOf },
    ration_mg_c: RATION_MG_C,
    shelves: SHELVES.map((shelf) => {
      const { supply, pessimistic } = larder.shelves[shelf];
      return {
        id: shelf,
        name: SHELF_NAME[shelf],
        supply_mg_c_per_day: { low: supply.low, central: supply.central, high: supply.high },
        pessimistic_mg_c_per_day: pessimistic,
        supply_rations_per_day: supply.central / RATION_MG_C,
        wanted_mg_c_per_day: mouths.reduce((sum, mouth) => sum + mouth.byShelfMgC[shelf], 0),
      };
    }),
    total_mg_c_per_day: { low, central, high },
    mouths: mouths.map(({ animal, heads, needMgC, mostMgC, byShelfMgC }) => ({
      id: animal.id,
      heads,
      need_mg_c_per_day: needMgC,
      most_mg_c_per_day: mostMgC,
      need_rations_per_day: needMgC / RATION_MG_C,
      by_shelf_mg_c_per_day: { ...byShelfMgC },
    })),
    what_if:
      beside === null
        ? null
        : {
            changes: [...beside.changes],
            today_central_mg_c_per_day: Object.fromEntries(
              SHELVES.map((shelf) => [shelf, beside.today.larder.shelves[shelf].supply.central]),
            ),
          },
    statement: STATEMENT,
  };
}
