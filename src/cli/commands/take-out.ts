/** `grazewell take-out`: a tank's daybook as a file of the keeper's own. */
import { closeSync, openSync, writeSync } from "node:fs";
import { Command } from "commander";
import { readDate } from "../../contract/quantity/date.ts";
import { isKept } from "../../contract/quantity/outcome.ts";
import { TAKE_OUT_FORMATS } from "../../contract/take-out/taken.ts";
import { preferencesOf } from "../../contract/tank-file/preferences-of.ts";
import type { LoadedTank } from "../../server/route.ts";
import { takeOut } from "../../server/take-out/pieces.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { STORE_OPTION } from "../store/open.ts";
import { withTank } from "../store/tank-of-store.ts";

const EXAMPLES = `Examples:
  grazewell take-out --tank Kitchen > kitchen.csv
  grazewell take-out --tank Kitchen --format json -o kitchen.json
  grazewell take-out --tank Kitchen --format readings --from 2026-01-01
`;

interface Options {
  readonly tank?: string;
  readonly store?: string;
  readonly format: string;
  readonly from?: string;
  readonly to?: string;
  readonly output?: string;
}

export function command(io: Io): Command {
  return new Command("take-out")
    .summary("the daybook of a tank as a file: CSV or JSON")
    .description(
      "Writes all kept entries of a tank's daybook. csv: a row an entry, every field; json: every entry whole; readings: a sheet with a column a quantity, its unit in the header. csv and json brought in again give the same daybook.",
    )
    .option("--tank <id>", "a tank of the store, by its id or name")
    .option(...STORE_OPTION)
    .option("--format <format>", TAKE_OUT_FORMATS.join(", "), "csv")
    .option("--from <date>", "the first day")
    .option("--to <date>", "the last day")
    .option("-o, --output <file>", "a file that is not there yet; left out: standard output")
    .addHelpText("beforeAll", EXAMPLES)
    .action((options: Options) =>
      withTank(options.store, options.tank, io, async (tank, store) => {
        const format = TAKE_OUT_FORMATS.find((one) => one === options.format);
        if (format === undefined) {
          throw new CliError(EXIT.usage, [
            `--format "${options.format}": must be one of ${TAKE_OUT_FORMATS.join(", ")}.`,
          ]);
        }
        const [from, to] = [dayOf("--from", options.from, tank, io), dayOf("--to", options.to, tank, io)];
        const of = { id: tank.row.id, name: tank.head.name };
        const now = new Date().toISOString();
        const pieces = takeOut(store, { tank: of, document: tank.document, format, from, to, now });
        const sink = sinkOf(options.output, io);
        try {
          for await (const piece of pieces) sink.write(piece);
        } finally {
          sink.close();
        }
        if (options.output !== undefined) io.talk(`${tank.head.name}: written to ${options.output}.`);
      }),
    );
}

function dayOf(flag: string, text: string | undefined, tank: LoadedTank, { today }: Io): string | null {
  if (text === undefined) return null;
  const preferences = preferencesOf(tank.document.preferences);
  const read = readDate(text, { preferences, today, future: "planned", label: flag });
  if (isKept(read)) return read.value;
  throw new CliError(EXIT.badData, [read.message.text]);
}

/** A file is made anew: none is written over. */
function sinkOf(file: string | undefined, io: Io) {
  if (file === undefined) {
    // Adds no line break of its own: pieces end as the file does.
    let held = "";
    return {
      write: (piece: string) => {
        const whole = held + piece;
        const end = whole.lastIndexOf("\n");
        if (end > 0) io.out(whole.slice(0, end));
        held = whole.slice(end + 1);
      },
      close: () => {
        if (held !== "") io.out(held);
      },
    };
  }
  try {
    const descriptor = openSync(file, "wx", 0o600);
    return {
      write: (piece: string) => void writeSync(descriptor, piece),
      close: () => closeSync(descriptor),
    };
  } catch (error) {
    const why = (error as NodeJS.ErrnoException).code === "EEXIST" ? "is there already" : "can't be written";
    throw new CliError(EXIT.cannotWrite, [`--output "${file}": ${why}. Name a file that is not there yet.`]);
  }
}
