/** `grazewell backup`: a folder that has been restored for trial, and so is a backup. */
import { resolve } from "node:path";
import { Command } from "commander";
import { ENGINE_VERSION } from "../../answers/version.ts";
import { backUp } from "../../store/backup/write.ts";
import { noteBackup } from "../../store/examine.ts";
import type { Io } from "../io.ts";
import { counting, rowsIn, STORE_OPTION, withStore } from "../store/open.ts";

const EXAMPLES = `Examples:
  grazewell backup
  grazewell backup /media/stick/tanks-2026-06-15
  grazewell backup --store tanks.db
`;

export function command(io: Io): Command {
  return new Command("backup")
    .summary("a copy of the store that was restored for trial before it counts")
    .description(
      "Copies all there is, at one moment, while the page may go on; restores the copy into an empty place, compares row by row, and only then gives it its name. Prints the folder. A plain copy of the store's file while the page runs is no backup.",
    )
    .argument("[folder]", "where to; must not be there yet. Left out: a folder here, named by the time")
    .option(...STORE_OPTION)
    .addHelpText("beforeAll", EXAMPLES)
    .action((folder: string | undefined, { store }: { readonly store?: string }) =>
      withStore(store, "existing", async (database) => {
        const to = folder ?? `grazewell-backup-${new Date().toISOString().slice(0, 19).replaceAll(":", "")}`;
        const manifest = await backUp(database, to, { program: ENGINE_VERSION, progress: counting(io) });
        await noteBackup(database, { at: manifest.made_at, folder: resolve(to) });
        io.progress(null);
        io.out(to);
        const rows = rowsIn(manifest.tables.map((table) => table.rows));
        io.talk(`${rows} of ${database.place}, restored for trial and compared: all as they were.`);
        io.talk("Keep it on another machine, or another disk.");
      }),
    );
}
