/** `grazewell serve`: the page a keeper uses, on this machine, over a store; ends on Ctrl-C. The main job. */
import { Command, InvalidArgumentError, Option } from "commander";
import { Answers } from "../../server/answers.ts";
import { buildApp } from "../../server/app.ts";
import { readBuiltFiles } from "../../server/assets.ts";
import { addDemonstration } from "../../server/demonstration/add.ts";
import { listen, PortTaken, stop } from "../../server/listen.ts";
import { lookAhead } from "../../server/round/round-tanks.ts";
import { isLoopbackName } from "../../server/security.ts";
import { removeNote, servedAt, writeNote } from "../../server/serving-note.ts";
import type { Store } from "../../store/store.ts";
import { placeOf } from "../../store/where.ts";
import { CliError, EXIT, type Io, localDate } from "../io.ts";
import { openKeptStore } from "../open-store.ts";

interface ServeOptions {
  readonly port?: number;
  readonly host: string;
  readonly store?: string;
  readonly demonstration: boolean;
  readonly changesAMinute?: number;
}

const FIRST_PORT = 8420;
const PORTS_TRIED = 20;

const EXAMPLES = `Examples:
  grazewell serve
  grazewell serve --port 9000
  grazewell serve --store tanks.db
`;

export function command(io: Io): Command {
  return new Command("serve")
    .summary("the page: tanks in a store, opened in a browser on this machine")
    .description(
      "Starts the page on this machine and prints its address. Tanks are kept in a store: a file of your own, made when it is not there yet. Ctrl-C ends it; nothing is lost.",
    )
    .addOption(
      new Option(
        "--port <n>",
        `port; ${FIRST_PORT} or the next free one where left out, 0 for any`,
      ).argParser(portNumber),
    )
    .addOption(
      new Option("--host <name>", "this machine's own name: listens nowhere else").default("127.0.0.1"),
    )
    .option(
      "--store <place>",
      "the store: a file, or postgres://... (else DATABASE_URL, else a file of yours)",
    )
    .option("--no-demonstration", "a new store starts empty, without the invented tanks")
    .addOption(
      new Option(
        "--changes-a-minute <n>",
        "most changes a minute from one client; more are told to wait (120 where left out)",
      ).argParser(changeCount),
    )
    .addHelpText("beforeAll", EXAMPLES)
    .action((options: ServeOptions) => serve(options, io));
}

async function serve(options: ServeOptions, io: Io): Promise<void> {
  const { port, host, store: where, demonstration, changesAMinute } = options;
  if (!isLoopbackName(host)) throw wider(host);
  const place = placeOf(where);
  const file = place.kind === "sqlite" ? place.file : null;
  const already = file === null ? null : await servedAt(file);
  if (already !== null) {
    throw new CliError(EXIT.tryAgain, [
      `The store ${file} is served already, at ${already}`,
      "Open that address, or name another store with --store.",
    ]);
  }
  const store = await openKeptStore(where, io);
  const answers = new Answers();
  const today = daily(io);
  if (demonstration) await addDemonstration(store, today(), new Date().toISOString());
  const app = buildApp({
    store,
    answers,
    built: readBuiltFiles(),
    now: () => new Date(),
    today,
    tell: io.talk,
    ...(changesAMinute === undefined ? {} : { writesPerMinute: changesAMinute }),
  });
  const address = await started(() => listen(app, portsOf(port)), store);
  if (file !== null) writeNote(file, address);
  const ahead = lookAhead(store, today());
  io.out(address);
  io.talk(`Grazewell's page is at ${address} Open it in a browser on this machine; Ctrl-C ends it.`);
  await word();
  io.talk("Ending.");
  await stop(app, () => answers.close());
  if (file !== null) removeNote(file);
  await ahead.stop();
  await store.close();
}

async function started(start: () => Promise<string>, store: Store): Promise<string> {
  try {
    return await start();
  } catch (error) {
    await store.close();
    if (!(error instanceof PortTaken)) throw error;
    throw new CliError(EXIT.unreachable, [
      error.message,
      "Name another with --port, or --port 0 for any that is free.",
    ]);
  }
}

/** Until the person, or the system, says stop. A second word ends it at once. */
function word(): Promise<void> {
  return new Promise((resolve) => {
    const signals = ["SIGINT", "SIGTERM"] as const;
    const heard = () => {
      for (const signal of signals) process.off(signal, heard);
      resolve();
    };
    for (const signal of signals) process.on(signal, heard);
  });
}

/** The day where the machine stands, asked each time: the page runs over midnight. */
function daily(io: Io): () => string {
  const told = process.env["GRAZEWELL_TODAY"] ?? "";
  return told === "" ? () => localDate(new Date()) : () => io.today;
}

const portsOf = (port: number | undefined): number[] =>
  port === undefined ? Array.from({ length: PORTS_TRIED }, (_, i) => FIRST_PORT + i) : [port];

function wider(host: string): CliError {
  return new CliError(EXIT.usage, [
    `--host "${host}": the page listens on this machine alone (127.0.0.1). Listening wider needs accounts, which come later.`,
  ]);
}

/** @throws InvalidArgumentError outside 0 to 65535 */
function portNumber(text: string): number {
  const port = Number(text);
  if (/^\d+$/.test(text) && port <= 65_535) return port;
  throw new InvalidArgumentError("must be a whole number from 0 to 65535.");
}

/** @throws InvalidArgumentError outside 1 to 1,000,000 */
function changeCount(text: string): number {
  const count = Number(text);
  if (/^\d+$/.test(text) && count >= 1 && count <= 1_000_000) return count;
  throw new InvalidArgumentError("must be a whole number from 1 to 1,000,000.");
}
