/** `grazewell check-store`: is the store whole, is it kept durably, how old is the last backup? Changes nothing. */
import { Command } from "commander";
import { examine, lastBackup } from "../../store/examine.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { STORE_OPTION, withStore } from "../store/open.ts";

const EXAMPLES = `Examples:
  grazewell check-store
  grazewell check-store --store tanks.db
`;

const DAY_MS = 86_400_000;

export function command(io: Io): Command {
  return new Command("check-store")
    .summary("looks the store over: damage, settings, age of the last backup")
    .description(
      "Looks the whole store over and changes nothing in it: the database's check of itself, settings that keep what was acknowledged, versions that must agree, the last backup. Ends with 65 when something is wrong.",
    )
    .option(...STORE_OPTION)
    .addHelpText("beforeAll", EXAMPLES)
    .action(({ store }: { readonly store?: string }) =>
      withStore(store, "as it is", async (database) => {
        io.out(`store: ${database.place}`);
        const findings = await examine(database);
        for (const { name, good, says } of findings) io.out(`${good ? "ok    " : "WRONG "} ${name}: ${says}`);
        const backup = await lastBackup(database).catch(() => null);
        io.out(
          `last backup that was tried: ${backup === null ? "none" : `${age(backup.at)}, ${backup.folder}`}`,
        );
        io.talk(
          "Copies of the store's file made while the page runs can be torn: use `grazewell backup`, which also tries what it made.",
        );
        const wrong = findings.filter(({ good }) => !good).length;
        if (wrong === 0) return;
        throw new CliError(EXIT.badData, [
          `Wrong: ${wrong} of ${findings.length}. Keep a copy of the store as it is; then restore the latest backup: grazewell restore --help.`,
        ]);
      }),
    );
}

function age(at: string): string {
  const days = Math.floor((Date.now() - Date.parse(at)) / DAY_MS);
  return days < 1 ? "today" : days === 1 ? "a day old" : `${days} days old`;
}
