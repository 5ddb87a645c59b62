/** `grazewell heads --tank ID`: who lives in a kept tank, how sure, what would settle it; losses, orders, the way down. */
import { Command } from "commander";
import { headsOf } from "../../answers/heads/heads.ts";
import { CAUTION } from "../../answers/statement.ts";
import { wrap } from "../../answers/words.ts";
import { headsLines } from "../heads/heads-text.ts";
import type { Io } from "../io.ts";
import { STORE_OPTION } from "../store/open.ts";
import { withKeptTank } from "../tank-source.ts";

const EXAMPLES = `Examples:
  grazewell heads --tank "Hallway reef (invented)"
  grazewell heads --tank Kitchen --json
`;

interface Flags {
  readonly tank: string;
  readonly store?: string;
  readonly json?: true;
}

export function command(io: Io): Command {
  return new Command("heads")
    .summary("who lives in a tank of the store: heads by kind, losses, orders")
    .description(
      "Heads of a kept tank, kind by kind, from what was added, found, missed and counted. A head not seen is not a head dead. How it is reckoned: docs/model/heads.md.",
    )
    .addHelpText("beforeAll", EXAMPLES)
    .requiredOption("--tank <id>", "a tank of the store, by its id or name")
    .option(...STORE_OPTION)
    .option("--json", "data for programs: docs/schemas/heads.schema.json")
    .action(async ({ tank, store: where, json }: Flags) => {
      const { loadTank } = await import("../../server/load-tank.ts");
      const loaded = await withKeptTank(tank, where, (store, row) => loadTank(store, row.id, io.today));
      if (loaded === null) return;
      const { facts, record } = loaded;
      const { output } = headsOf({ facts, record, today: io.today });
      if (json === true) io.out(JSON.stringify(output, null, 2));
      else
        io.out(
          [
            io.bold(`Heads of ${facts.name}`),
            ...headsLines(output).map(({ text, indent }) =>
              wrap(text, io.width, " ".repeat(indent), " ".repeat(indent + 2)),
            ),
            wrap(CAUTION.wild, io.width),
            wrap(output.statement, io.width),
          ].join("\n"),
        );
    });
}
