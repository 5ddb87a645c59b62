/** The tank a command speaks of: a file, or one of the store by `--tank`, read with its daybook. */
import type { Command } from "commander";
import type { TankFileResult } from "../contract/tank-file/read.ts";
import type { TankFacts } from "../engine/types/tank.ts";
import type { Store, TankRow } from "../store/store.ts";
import { CliError, EXIT, type Io } from "./io.ts";
import { type ReadTankOptions, readTankResult, takenTank } from "./read-tank.ts";
import { STORE_OPTION, saying } from "./store/open.ts";

export interface TankSource {
  readonly tank?: string;
  readonly store?: string;
}

export function addTankOptions(command: Command): Command {
  return command
    .option("--tank <id>", "a tank of the store, by its id or name, in the place of a file")
    .option(...STORE_OPTION);
}

/** @throws CliError where it can't be read, with all that is to mend */
export async function tankFrom(
  file: string | undefined,
  source: TankSource,
  io: Io,
  options: ReadTankOptions = {},
): Promise<TankFacts> {
  const { label, result } = await tankResultFrom(file, source, io);
  const facts = takenTank(label, result, io, options);
  return source.tank === undefined ? facts : await taught(facts, source.tank, source.store, io);
}

/** A kept tank's facts with what its daybook has taught, as its pages have them. */
async function taught(facts: TankFacts, tank: string, where: string | undefined, io: Io): Promise<TankFacts> {
  const { loadTank } = await import("../server/load-tank.ts");
  const { learnedOf } = await import("../answers/learned/learned.ts");
  const { progressOf } = await import("./plan/plan-of.ts");
  const { teachingPart } = await import("../answers/learned/teaching-part.ts");
  const loaded = await withKeptTank(tank, where, (store, row) => loadTank(store, row.id, io.today));
  if (loaded === null) return facts;
  return learnedOf(facts, teachingPart(loaded.record), progressOf(io)).facts;
}

export interface Labelled {
  /** File, or name of the tank, that messages begin with. */
  readonly label: string;
  readonly result: TankFileResult;
}

/** The same without an opinion on findings. @throws CliError where there is no such file or tank */
export async function tankResultFrom(
  file: string | undefined,
  source: TankSource,
  io: Io,
): Promise<Labelled> {
  const { tank, store: where } = source;
  if (file !== undefined && tank !== undefined) {
    throw new CliError(EXIT.usage, [
      `"${file}" and --tank "${tank}": name one of them, a file or a tank of the store.`,
    ]);
  }
  if (file !== undefined) return { label: file, result: readTankResult(file, io) };
  if (tank === undefined) {
    throw new CliError(EXIT.usage, [
      "Name a tank file (or - for standard input), or a tank of the store with --tank.",
    ]);
  }
  const { readKept } = await import("../server/load-tank.ts");
  return withKeptTank(tank, where, async (store, row) => ({
    label: nameOf(row),
    result: withoutLines(await readKept(store, row, io.today)),
  }));
}

/** A tank of the store, for as long as `work` takes. @throws CliError where there is no such store or tank */
export async function withKeptTank<T>(
  tank: string,
  where: string | undefined,
  work: (store: Store, row: TankRow) => Promise<T>,
): Promise<T> {
  const { openStore } = await import("../store/open.ts");
  return saying(async () => {
    const store = await openStore(where, { use: "existing" });
    try {
      return await work(store, await tankNamed(tank, store));
    } finally {
      await store.close();
    }
  });
}

/** A kept tank is no file: its places have names, not lines. */
function withoutLines(result: TankFileResult): TankFileResult {
  const none = <T extends { readonly line: number | null }>(places: readonly T[]): T[] =>
    places.map((place) => ({ ...place, line: null }));
  return result.ok
    ? { ...result, notices: none(result.notices) }
    : { ...result, findings: none(result.findings) };
}

export const nameOf = ({ id, facts }: TankRow): string =>
  typeof facts["name"] === "string" ? facts["name"] : id;

const MOST_NAMED = 20;

/** @throws CliError naming those there are */
export async function tankNamed(wanted: string, store: Store): Promise<TankRow> {
  const tanks = await store.tanks();
  const byId = tanks.find(({ id }) => id === wanted);
  const named = byId === undefined ? tanks.filter((row) => nameOf(row) === wanted) : [byId];
  const [only, ...others] = named;
  if (only !== undefined && others.length === 0) return only;
  const lines = (only === undefined ? tanks : named).map(
    (row) => `  ${row.id}  ${nameOf(row)}, kept by ${row.keeper.name}`,
  );
  const more = lines.length > MOST_NAMED ? [`  and ${lines.length - MOST_NAMED} more`] : [];
  throw new CliError(EXIT.inputMissing, [
    only === undefined
      ? `--tank "${wanted}": the store has no tank of that id or name. It has ${lines.length === 0 ? "none" : "these"}:`
      : `--tank "${wanted}": ${named.length} tanks of the store have that name. Take the id:`,
    ...lines.slice(0, MOST_NAMED),
    ...more,
  ]);
}
