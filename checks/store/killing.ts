/** Kills the writer at random, again and again, and counts what was acknowledged, lost, torn. */
import { type ChildProcess, spawn } from "node:child_process";
import { EventEmitter, once } from "node:events";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { examine } from "../../src/store/examine.ts";
import { openDatabase } from "../../src/store/open.ts";
import type { Chance } from "../kit/chance.ts";
import type { DatabaseName, Ground, Spot } from "./grounds.ts";
import { TANKS } from "./writer.ts";

export interface Toll {
  kills: number;
  /** Of those, how often the PostgreSQL server was stopped at once instead of the writer. */
  crashes: number;
  acknowledged: number;
  /** Acknowledged, and not there afterwards. */
  lost: number;
  /** There by half. */
  torn: number;
  /** What the database, or check-store, found wrong. */
  faults: string[];
}

export interface Manner {
  /** Share of the kills that come so long after the start, while the store is opened, made or mended. */
  readonly fromTheStart: number;
  /** So long at most, in milliseconds, after that or after the first acknowledgement. */
  readonly longestMs: number;
  /** Then a new store: every row is looked at after every kill. */
  readonly killsOfAStore: number;
}
export const USUAL: Manner = { fromTheStart: 0.2, longestMs: 400, killsOfAStore: 20 };
/** Each kill meets the making of a store. */
export const FIRST_STARTS: Manner = { ...USUAL, fromTheStart: 1, killsOfAStore: 1 };

/** On PostgreSQL, of so many kills one is the server's. */
const CRASH_EACH = 10;

export async function kill(
  database: DatabaseName,
  land: Ground,
  kills: number,
  chance: Chance,
  { fromTheStart, longestMs, killsOfAStore }: Manner = USUAL,
  tell: (toll: Toll) => void = () => {},
): Promise<Toll> {
  const toll: Toll = { kills: 0, crashes: 0, acknowledged: 0, lost: 0, torn: 0, faults: [] };
  let spot = land.spot();
  let next = waiting(spot);
  for (let round = 1; round <= kills; round++) {
    const [here, writer] = [spot, next];
    if (round % killsOfAStore === 0) spot = land.spot();
    if (round < kills) next = waiting(spot); // starts while this one is at work
    const acknowledged = heard(writer);
    await acknowledged.ready;
    writer.stdin?.write("\n");
    if (!chance.is(fromTheStart)) await acknowledged.first;
    await new Promise((done) => setTimeout(done, chance.between(1, longestMs)));
    const crash = database === "postgres" && round % CRASH_EACH === 0;
    // It never ends of itself.
    if (writer.exitCode !== null) toll.faults.push(`the writer ended with ${writer.exitCode}`);
    if (crash) land.crash();
    writer.kill("SIGKILL");
    if (writer.exitCode === null && writer.signalCode === null) await once(writer, "close");
    await account(here, acknowledged, toll);
    toll.kills++;
    if (crash) toll.crashes++;
    tell(toll);
  }
  return toll;
}

function waiting({ where, options }: Spot): ChildProcess {
  const words = [join(import.meta.dirname, "writer.ts"), where, options.schema ?? ""];
  // Compiled once for all writers: their start is most of the time this takes.
  const env = { ...process.env, NODE_COMPILE_CACHE: join(tmpdir(), "gw-store-cache") };
  return spawn(process.execPath, words, { env, stdio: ["pipe", "pipe", "ignore"] });
}

/** What the writer says was acknowledged: the latest of each tank, and how many in all. */
function heard(writer: ChildProcess) {
  const news = new EventEmitter();
  const ended = once(writer, "close");
  const come = (what: string) => Promise.race([once(news, what), ended]);
  const all = { latest: new Map<string, number>(), count: 0, ready: come("ready"), first: come("first") };
  let rest = "";
  writer.stdout?.setEncoding("utf8").on("data", (chunk: string) => {
    const lines = (rest + chunk).split("\n");
    rest = lines.pop() ?? "";
    for (const line of lines) {
      const [tank = "", n] = line.split(" ");
      if (n === undefined) {
        news.emit("ready");
        continue;
      }
      all.latest.set(tank, Number(n));
      all.count++;
      news.emit("first");
    }
  });
  return all;
}

/** Opens what was left, as the next start would, and looks at every row that a write makes. */
async function account(
  spot: Spot,
  heard: { latest: Map<string, number>; count: number },
  toll: Toll,
): Promise<void> {
  const database = await openDatabase(spot.where, spot.options);
  try {
    const wrong = (await examine(database)).filter(({ good }) => !good);
    toll.faults.push(...wrong.map(({ name, says }) => `${name}: ${says}`));
    toll.acknowledged += heard.count;
    for (const id of TANKS) {
      const tank = await database.reads
        .selectFrom("tank")
        .select("version")
        .where("id", "=", id)
        .executeTakeFirst();
      const writes = (tank?.version ?? 1) - 1;
      toll.lost += Math.max(0, (heard.latest.get(id) ?? 0) - writes);
      const { count } = await database.reads
        .selectFrom("entry_version")
        .innerJoin("entry", "entry.id", "entry_version.entry_id")
        .where("entry.tank_id", "=", id)
        .select(({ fn }) => fn.countAll<number>().as("count"))
        .executeTakeFirstOrThrow();
      toll.torn += Math.abs(2 * writes - count);
    }
  } finally {
    await database.close();
  }
}
