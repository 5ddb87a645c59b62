/**
 * `grazewell`: picks the command, loads only that one, and turns whatever goes wrong into an exit code.
 *
 * No handler for Ctrl-C, on purpose (serve alone has one, to finish what is under way): a handler waits until a
 * computation lets go, the system's own way does not.
 * Files are written whole, at the end of a command, so nothing is left by halves.
 */

import { Command, CommanderError } from "commander";
import { Refusal } from "../answers/refusal.ts";
import { ENGINE_VERSION } from "../answers/version.ts";
import { CliError, EXIT, type Io, processIo } from "./io.ts";

interface CommandModule {
  /** The command with its arguments, options and action. */
  readonly command: (io: Io) => Command;
}

/** Every command: its line in the help, and where it lives. Loaded only when called. */
const COMMANDS: Readonly<Record<string, { summary: string; load: () => Promise<CommandModule> }>> = {
  serve: {
    summary: "the page: tanks in a store, opened in a browser on this machine",
    load: () => import("./commands/serve.ts"),
  },
  ask: { summary: "eight questions that make a tank file", load: () => import("./commands/ask.ts") },
  check: {
    summary: "what is wrong with a tank file, how it was read, what was assumed",
    load: () => import("./commands/check.ts"),
  },
  larder: { summary: "food your tank makes, and who eats it", load: () => import("./commands/larder.ts") },
  waves: {
    summary: "the plan: who comes when, how many, on what condition",
    load: () => import("./commands/waves.ts"),
  },
  ahead: {
    summary: "weeks ahead: what water, growths and animals will do",
    load: () => import("./commands/ahead.ts"),
  },
  animals: {
    summary: "the animals: what each eats and needs, and whether it fits your tank",
    load: () => import("./commands/animals.ts"),
  },
  "what-is-this": {
    summary: "a growth, an animal or dots by their traits; causes of what the daybook holds",
    load: () => import("./commands/what-is-this.ts"),
  },
  feeding: {
    summary: "feeding: what it brings, what fish need, portions, fasting, leaving home",
    load: () => import("./commands/feeding.ts"),
  },
  arrivals: {
    summary: "arrivals: before you pay, quarantine with dates, medicines, a fallow time",
    load: () => import("./commands/arrivals.ts"),
  },
  wrong: {
    summary: "something is wrong: what to do first, and a tank's numbers behind it",
    load: () => import("./commands/wrong.ts"),
  },
  working: {
    summary: "how do you know? any figure, with inputs, formula and sources",
    load: () => import("./commands/working.ts"),
  },
  daybook: {
    summary: "what happened to a tank of the store: readings, sightings, counts, chores",
    load: () => import("./commands/daybook.ts"),
  },
  log: {
    summary: "an entry into a tank's daybook",
    load: () => import("./commands/log.ts"),
  },
  next: {
    summary: "what to do next for a tank of the store, and why",
    load: () => import("./commands/next.ts"),
  },
  round: {
    summary: "every tank of the store, the neediest first",
    load: () => import("./commands/round.ts"),
  },
  almanac: {
    summary: "what is due when: dated care, as a calendar file on request",
    load: () => import("./commands/almanac.ts"),
  },
  weeks: {
    summary: "weeks 1 to 26 on one page: expect, test, do, don't, buy",
    load: () => import("./commands/weeks.ts"),
  },
  heads: {
    summary: "who lives in a tank of the store: heads by kind, losses, orders",
    load: () => import("./commands/heads.ts"),
  },
  trends: {
    summary: "which way a kept tank's readings go, and when a limit could be met",
    load: () => import("./commands/trends.ts"),
  },
  "start-up": {
    summary: "where in the nitrogen cycle a young tank is, and when it ends, of 20",
    load: () => import("./commands/start-up.ts"),
  },
  water: {
    summary: "what the water is: density, oxygen, ammonia",
    load: () => import("./commands/water.ts"),
  },
  sum: {
    summary: "water sums: each question with its fields, answered with range and working",
    load: () => import("./commands/sum.ts"),
  },
  "bring-in": {
    summary: "a file of readings or of a daybook into a tank of the store",
    load: () => import("./commands/bring-in.ts"),
  },
  "take-out": {
    summary: "the daybook of a tank as a file: CSV or JSON",
    load: () => import("./commands/take-out.ts"),
  },
  backup: {
    summary: "a copy of the store that was restored for trial before it counts",
    load: () => import("./commands/backup.ts"),
  },
  restore: {
    summary: "the store from a backup; the old one is kept",
    load: () => import("./commands/restore.ts"),
  },
  "check-store": {
    summary: "looks the store over: damage, settings, age of the last backup",
    load: () => import("./commands/check-store.ts"),
  },
  "move-store": {
    summary: "the whole store to another place: SQLite, PostgreSQL, either way",
    load: () => import("./commands/move-store.ts"),
  },
};

const EXAMPLES = `Examples:
  grazewell serve
  grazewell ask -o tank.yaml
  grazewell check tank.yaml
  grazewell help check
`;

async function main(argv: readonly string[], io: Io): Promise<void> {
  const program = new Command("grazewell")
    .description(
      "From a reef tank's facts to the crew it can feed. Figures are estimates, shown with their range.",
    )
    .addHelpText("before", EXAMPLES)
    .version(
      `grazewell ${ENGINE_VERSION}, engine ${ENGINE_VERSION}, Node ${process.versions.node}`,
      "-V, --version",
      "which Grazewell this is",
    )
    .exitOverride()
    .showHelpAfterError("(grazewell --help lists the commands)");
  const words = argv.filter((word) => !word.startsWith("-"));
  const called = words[0] === "help" ? words[1] : words[0];
  for (const [name, { summary, load }] of Object.entries(COMMANDS)) {
    if (name === called) program.addCommand((await load()).command(io).exitOverride());
    else program.command(name).summary(summary).description(summary);
  }
  if (argv.length === 0) return program.outputHelp();
  // Help on a command there is not: the answer to calling it, which suggests the likely one.
  const astray =
    argv[0] === "help" && called !== undefined && !["help", ...Object.keys(COMMANDS)].includes(called);
  await program.parseAsync(astray ? [called] : argv, { from: "user" });
}

/** Says what went wrong, and returns the exit code that says it to a program. */
function ending(error: unknown, talk: (text: string) => void): number {
  // The command parser has spoken already.
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.done : EXIT.usage;
  if (error instanceof CliError || error instanceof Refusal) {
    for (const line of error.lines) talk(line);
    return error instanceof CliError ? error.exitCode : EXIT.badData;
  }
  talk(
    "This is a fault in Grazewell, not in your input. Keep the lines below, and the tank file, for whoever mends it.",
  );
  talk(`grazewell ${ENGINE_VERSION}: ${error instanceof Error ? error.stack : String(error)}`);
  return EXIT.ourBug;
}

const toStandardError = (text: string) => void process.stderr.write(`${text}\n`);

// A reader that has seen enough, as `head` does, is no failure; a full disk is.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(EXIT.done);
  toStandardError(`Standard output can't be written (${error.code ?? error.message}).`);
  process.exit(EXIT.cannotWrite);
});
// Nobody listens to the talk: the data still go their way.
process.stderr.on("error", () => {});
process.on("uncaughtException", (error) => process.exit(ending(error, toStandardError)));

try {
  const io = processIo();
  try {
    await main(process.argv.slice(2), io);
  } finally {
    io.progress(null);
  }
} catch (error) {
  process.exitCode = ending(error, toStandardError);
}
