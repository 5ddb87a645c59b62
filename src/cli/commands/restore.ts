/** `grazewell restore`: the store as a backup holds it. What stood there before is kept beside it. */
import { Command } from "commander";
import { readManifest } from "../../store/backup/manifest.ts";
import { isEmpty } from "../../store/backup/pour.ts";
import { restore } from "../../store/backup/restore.ts";
import { withDatabase } from "../../store/database.ts";
import { MIGRATIONS } from "../../store/migrations/list.ts";
import { openDatabase } from "../../store/open.ts";
import { StoreError } from "../../store/store.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { counting, rowsIn, STORE_OPTION, saying } from "../store/open.ts";

const EXAMPLES = `Examples:
  grazewell restore grazewell-backup-2026-06-15T181500
  grazewell restore /media/stick/tanks-2026-06-15 --store tanks.db --replace
`;

interface RestoreOptions {
  readonly store?: string;
  readonly replace?: true;
}

export function command(io: Io): Command {
  return new Command("restore")
    .summary("the store from a backup; the old one is kept")
    .description(
      "Checks the whole backup before it touches anything, fills a store beside the old one, compares row by row, and lets them change places. The old store is kept, and its new name is said. End the page first.",
    )
    .argument("<folder>", "a folder that `grazewell backup` made")
    .option(...STORE_OPTION)
    .option(
      "--replace",
      "also where a store with something in it stands: that one is kept under another name",
    )
    .addHelpText("beforeAll", EXAMPLES)
    .action((folder: string, { store, replace }: RestoreOptions) =>
      saying(async () => {
        readManifest(folder, MIGRATIONS);
        const there = replace === true ? null : await holds(store);
        if (there !== null) {
          throw new CliError(EXIT.cannotWrite, [
            `${there} holds something already.`,
            "To put the backup in its place, add --replace: the store that is there is kept under another name.",
          ]);
        }
        const { manifest, kept } = await restore(folder, store, { progress: counting(io) });
        io.progress(null);
        const rows = rowsIn(manifest.tables.map((table) => table.rows));
        io.talk(`${rows} restored and compared, as they were on ${manifest.made_at}.`);
        if (kept !== null) io.talk(`The store from before is kept: ${kept}`);
      }),
    );
}

/** The place, if a store with something in it stands there, or something that can't be looked into. */
async function holds(where: string | undefined): Promise<string | null> {
  try {
    return await withDatabase(await openDatabase(where, { use: "as it is" }), async (database) =>
      (await isEmpty(database.reads, await database.tables())) ? null : database.place,
    );
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    if (error.reason === "unreachable") return null; // nothing there; a server that is away says so soon enough
    if (error.reason === "damaged") return "A damaged store";
    throw error;
  }
}
