/** `grazewell start-up FILE`: where in its nitrogen cycle a young tank is, and when it ends, of 20. */
import { Command } from "commander";
import { startUpFor } from "../../answers/start-up/with-start-up.ts";
import { DO_NOW, endTitle, NOT_NOW, ROCK_WORDS, STAGE_TITLE } from "../../answers/start-up/words.ts";
import { chance, dateWords, wrap } from "../../answers/words.ts";
import type { StartUpOutput } from "../../contract/output/start-up.ts";
import { round3 } from "../../engine/types/link.ts";
import type { TankRecord } from "../../engine/types/record.ts";
import type { Io } from "../io.ts";
import { progressOf } from "../plan/plan-of.ts";
import { addTankOptions, type TankSource, tankFrom, withKeptTank } from "../tank-source.ts";

const EXAMPLES = `Examples:
  grazewell start-up my-tank.yaml
  grazewell start-up --tank "Cellar tank (invented)"
  grazewell start-up my-tank.yaml --json
`;

interface Flags extends TankSource {
  readonly json?: true;
}

export function command(io: Io): Command {
  return addTankOptions(
    new Command("start-up")
      .summary("where in the nitrogen cycle a young tank is, and when it ends")
      .description(
        "Start-up by tests: where in the nitrogen cycle this tank is, its end counted of 20 with dates, the test that declares it done, what is left alone meanwhile. How it is reckoned: docs/model/start-up.md.",
      )
      .argument("[file]", "tank file (YAML or JSON), or - for standard input; or --tank"),
  )
    .addHelpText("beforeAll", EXAMPLES)
    .option("--json", "data for programs: docs/schemas/start-up.schema.json")
    .action(async (file: string | undefined, flags: Flags) => {
      const facts = await tankFrom(file, flags, io, { quiet: true });
      const record = flags.tank === undefined ? null : await recordKept(flags.tank, flags.store, io);
      const { output } = startUpFor(facts, record, progressOf(io));
      if (flags.json === true) io.out(JSON.stringify(output, null, 2));
      else io.out(startUpText(output, io));
    });
}

async function recordKept(tank: string, where: string | undefined, io: Io): Promise<TankRecord | null> {
  const { loadTank } = await import("../../server/load-tank.ts");
  const loaded = await withKeptTank(tank, where, (store, row) => loadTank(store, row.id, io.today));
  return loaded?.record ?? null;
}

function startUpText(output: StartUpOutput, io: Io): string {
  const { tank, stage, says, end, versions, next_test, by_rock, dose } = output;
  const line = (text: string) => wrap(text, io.width, "  ", "    ");
  const running = stage !== "past" && stage !== "proven";
  return [
    io.bold(`Start-up of ${tank.name} on ${dateWords(tank.as_of)}: ${endTitle(output)}`),
    wrap(`${STAGE_TITLE[stage]}. ${says}`, io.width),
    ...DO_NOW[stage].map(line),
    ...(next_test === null ? [] : [line(`Next test: ${dateWords(next_test.on)}.`)]),
    ...(end === null
      ? []
      : end.by.map(({ on, of_20 }) => line(`Done by ${dateWords(on)}: ${chance(of_20)}`))),
    ...(versions === null
      ? []
      : [
          line(
            `${versions.left} of ${versions.drawn} versions of the tank end within ${versions.within_days} days; the others are left out. ${versions.taught ? "They have learned from its tests." : "They know no test of it yet."}${end === null ? " Too few to tell a date." : ""}`,
          ),
        ]),
    ...(dose === null || !running
      ? []
      : [
          line(
            `The test: dose ${round3(dose.mg_n_per_l)} mg N/L of ammonia (${round3(dose.ammonium_chloride_g.central)} g of pure ammonium chloride), only with nothing living in the water; done when both are too low for the tests to show a day later.`,
          ),
        ]),
    ...by_rock.map(({ rock, days, this_tank }) =>
      line(
        `With ${ROCK_WORDS[rock]}${this_tank ? " (this tank)" : ""}: ${days.central} days from filling (${days.low} to ${days.high})`,
      ),
    ),
    ...(running ? [io.bold("Not now"), ...NOT_NOW.map(line)] : []),
    wrap(output.statement, io.width),
  ].join("\n");
}
