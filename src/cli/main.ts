/**
 * `grazewell`: picks the command, loads only that one, and turns whatever goes wrong into an exit code.
 */
import { Command, CommanderError } from "commander";
import { CliError, EXIT, type Io, processIo } from "./io.ts";

interface CommandModule {
  /** The command with its arguments, options and action. */
  readonly command: (io: Io) => Command;
}

/** Every command: its line in the help, and where it lives. Loaded only when called. */
const COMMANDS: Readonly<Record<string, { summary: string; load: () => Promise<CommandModule> }>> = {
  water: { summary: "what the water is: density, oxygen, ammonia", load: () => import("./commands/water.ts") },
};

async function main(argv: readonly string[], io: Io): Promise<void> {
  const program = new Command("grazewell")
    .description("From a reef tank's facts to the crew it can feed. Figures are estimates, shown with their range.")
    .exitOverride()
    .showHelpAfterError("(grazewell --help lists the commands)");
  const called = argv.find((word) => !word.startsWith("-"));
  for (const [name, { summary, load }] of Object.entries(COMMANDS)) {
    if (name === called) program.addCommand((await load()).command(io).exitOverride());
    else program.command(name).summary(summary).description(summary).allowUnknownOption();
  }
  await program.parseAsync(argv, { from: "user" });
}

const io = processIo();
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  process.exit(error.code === "EPIPE" ? EXIT.done : EXIT.cannotWrite);
});
try {
  await main(process.argv.slice(2), io);
} catch (error) {
  io.progress(null);
  if (error instanceof CliError) {
    for (const line of error.lines) io.talk(line);
    process.exitCode = error.exitCode;
  } else if (error instanceof CommanderError) {
    process.exitCode = error.exitCode === 0 ? EXIT.done : EXIT.usage;
  } else {
    io.talk(`This is a fault in Grazewell, not in your input: ${error instanceof Error ? error.stack : String(error)}`);
    process.exitCode = EXIT.ourBug;
  }
}
