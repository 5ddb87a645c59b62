/** `grazewell daybook`: what happened to a kept tank, the latest first. */
import { Command, InvalidArgumentError, Option } from "commander";
import { ENTRY_KINDS, type EntryKind } from "../../contract/daybook/kinds.ts";
import { readDate } from "../../contract/quantity/date.ts";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import { daybookOutputOf } from "../daybook/output.ts";
import { printDaybook } from "../daybook/print.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { STORE_OPTION } from "../store/open.ts";
import { nameOf, withKeptTank } from "../tank-source.ts";

const EXAMPLES = `Examples:
  grazewell daybook --tank "Hallway reef (invented)"
  grazewell daybook --tank Kitchen --kind growth --from 2026-05-01
  grazewell daybook --tank Kitchen --limit 1000 --json
`;

const USUALLY_LISTED = 50;
const MOST_LISTED = 40_000;

interface Flags {
  readonly tank: string;
  readonly store?: string;
  readonly kind?: EntryKind;
  readonly from?: string;
  readonly to?: string;
  readonly limit: number;
  readonly json?: true;
}

export function command(io: Io): Command {
  return new Command("daybook")
    .summary("what happened to a tank of the store: readings, sightings, counts, chores")
    .description(
      "Lists a kept tank's daybook, the latest first. Entries that were taken away are left out. What each kind holds: docs/daybook.md. To add one: grazewell log.",
    )
    .addHelpText("beforeAll", EXAMPLES)
    .requiredOption("--tank <id>", "a tank of the store, by its id or name")
    .option(...STORE_OPTION)
    .addOption(new Option("--kind <kind>", "only entries of this kind").choices(ENTRY_KINDS))
    .option("--from <day>", "from this day on", dayOf(io))
    .option("--to <day>", "up to this day", dayOf(io))
    .option("--limit <count>", `at most so many, 1 to ${MOST_LISTED}`, limitOf, USUALLY_LISTED)
    .option("--json", "data for programs: docs/schemas/daybook.schema.json")
    .action(async ({ tank, store: where, kind, from, to, limit, json }: Flags) => {
      await withKeptTank(tank, where, async (store, row) => {
        const rows = await store.entries(row.id, {
          limit: Math.min(MOST_LISTED, limit + 1),
          ...(kind === undefined ? {} : { kind }),
          ...(from === undefined ? {} : { from }),
          ...(to === undefined ? {} : { to }),
        });
        const listed = rows.slice(0, limit);
        if (json === true) io.out(JSON.stringify(daybookOutputOf(row, listed), null, 2));
        else await printDaybook(nameOf(row), listed, rows.length > limit, io);
      });
    });
}

const dayOf =
  (io: Io) =>
  (text: string): string => {
    const outcome = readDate(text, {
      preferences: NO_PREFERENCES,
      today: io.today,
      future: "planned",
      label: "Day",
    });
    if ("value" in outcome) return outcome.value;
    throw new CliError(EXIT.usage, [outcome.message.text]);
  };

function limitOf(text: string): number {
  const count = Number(text);
  if (/^\d{1,5}$/.test(text) && count >= 1 && count <= MOST_LISTED) return count;
  throw new InvalidArgumentError(`must be 1 to ${MOST_LISTED}`);
}
