/** `grazewell move-store`: all of a store to another place, compared before it counts. */
import { Command } from "commander";
import { moveStore } from "../../store/backup/move.ts";
import type { Io } from "../io.ts";
import { counting, rowsIn, withStore } from "../store/open.ts";

const EXAMPLES = `Examples:
  grazewell move-store tanks.db postgres://ada@localhost/grazewell
  grazewell move-store postgres://ada@localhost/grazewell tanks.db
`;

export function command(io: Io): Command {
  return new Command("move-store")
    .summary("the whole store to another place: SQLite, PostgreSQL, either way")
    .description(
      "Copies every row, with all versions, into an empty place and compares them before it counts: all arrives, or nothing. The old store stays as it is. End the page first: what is written meanwhile does not come along.",
    )
    .argument("<from>", "the store: a file, or postgres://...")
    .argument("<to>", "the new place: a file that is not there yet, or postgres://... without a store")
    .addHelpText("beforeAll", EXAMPLES)
    .action((from: string, to: string) =>
      withStore(from, "existing", (old) =>
        withStore(to, "new", async (fresh) => {
          const counts = await moveStore(old, fresh, counting(io));
          io.progress(null);
          io.talk(`${rowsIn(Object.values(counts))} moved and compared: all as they were.`);
          io.talk("From now on start the page with --store, or DATABASE_URL, naming the new place.");
          io.out(fresh.place);
        }),
      ),
    );
}
