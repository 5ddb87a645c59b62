/**
 * Random lives of a daybook under import, each lived in the store and on the page of rules; after every deed both must show
 * the same. By hand: node checks/store/bring-in-lives.ts --lives 1000 --database sqlite|postgres [--seed 1]
 * Prints rows lost and rows doubled; ends with 1 if there were any.
 */
import { parseArgs } from "node:util";
import fc from "fast-check";
import { findAnimal } from "../../src/catalogue/index.ts";
import type { DaybookEntry } from "../../src/contract/daybook/kinds.ts";
import { readReading } from "../../src/contract/daybook/read-reading.ts";
import { NO_PREFERENCES } from "../../src/contract/quantity/preferences.ts";
import { csvPieces } from "../../src/contract/take-out/csv-file.ts";
import { jsonPieces } from "../../src/contract/take-out/json.ts";
import { readTankFile } from "../../src/contract/tank-file/read.ts";
import type { TankFile } from "../../src/contract/tank-file/schema.ts";
import { bringIn } from "../../src/server/bring-in/carry-out.ts";
import { keptEntries } from "../../src/server/bring-in/daybook.ts";
import { undoAct } from "../../src/server/bring-in/undo.ts";
import { newId } from "../../src/server/new-id.ts";
import type { Json, Store } from "../../src/store/store.ts";
import { type Act, type Deed, type Entry, type Line, lives, Page, type Told } from "./bring-in-model.ts";
import { DATABASES, type DatabaseName, ground } from "./grounds.ts";

const TODAY = "2026-06-15";
const NOW = "2026-06-15T12:00:00.000Z";
const stamp = { at: NOW, by: "checks" };
const FACTS = { grazewell_tank: 1, water_l: "200 L" } as unknown as TankFile;
const context = {
  preferences: NO_PREFERENCES,
  today: TODAY,
  now: NOW,
  zone: null,
  stocked: true,
  notBefore: null,
};

export interface Toll {
  lives: number;
  deeds: number;
  imports: number;
  lost: number;
  doubled: number;
  readonly first: string[];
}

const dayOf = (day: number): string => `2026-06-0${day}`;
const textOf = ({ quantity, figure }: Line): string =>
  quantity === "ph" ? `8.${figure}` : String(400 + figure);

function bodyOf(line: Line): { readonly on: string; readonly body: Json } {
  const unit = line.quantity === "ph" ? "" : "mg/L";
  const read = readReading(
    { quantity: line.quantity, text: textOf(line), unit, observed: dayOf(line.day) },
    context,
  );
  if (!read.ok) throw new Error(read.doubts[0]?.message.text);
  return { on: read.on, body: read.body };
}

/** As a keeper's sheet: a row a line, the figure under its quantity. */
const sheetOf = (lines: readonly Line[]): string =>
  [
    "date,ph,calcium",
    ...lines.map((line) =>
      line.quantity === "ph" ? `${dayOf(line.day)},${textOf(line)},` : `${dayOf(line.day)},,${textOf(line)}`,
    ),
  ].join("\n");

const some = <T>(of: readonly T[], which: number): T | undefined => of[which % Math.max(1, of.length)];

interface File {
  readonly text: string;
  readonly told: readonly Told[];
}

export async function liveOne(store: Store, deeds: readonly Deed[], toll: Toll): Promise<void> {
  const tankId = newId();
  await store.together(async (desk) => {
    const keeper = await desk.keeperNamed("Ada", "k1", stamp);
    await desk.addTank(
      { id: tankId, keeperId: keeper.id, demonstration: false, facts: FACTS as unknown as Json },
      stamp,
    );
  });
  const read = readTankFile(JSON.stringify(FACTS), { today: TODAY, findAnimal });
  if (!read.ok) throw new Error(read.findings[0]?.message.text);
  const tank = { document: FACTS, facts: read.facts, entries: [], since: {} } as never;
  const page = new Page();
  const files: File[] = [];
  const actIds = new Map<Act, string>();
  /** The page's entries and the store's, as they were made: side by side by the order of their making. */
  const ids = new Map<Entry, string>();
  const meet = async () => {
    const rows = [...(await store.entries(tankId, { limit: 40_000, withRemoved: true }))].sort((a, b) =>
      a.id < b.id ? -1 : 1,
    );
    for (const [i, entry] of page.entries.entries()) {
      const row = rows[i];
      if (row !== undefined) ids.set(entry, row.id);
    }
  };
  const bring = async (file: File, answers: Readonly<Record<string, string>>) => {
    const done = await bringIn(
      store,
      {
        tankId,
        tank,
        today: TODAY,
        now: NOW,
        file: { name: "x.csv", bytes: Buffer.from(file.text) },
        answers,
      },
      { stamp, newId, key: null },
    );
    if (done.kind === "open") throw new Error(`Open: ${JSON.stringify(done.examined).slice(0, 500)}`);
    const before = page.acts.length;
    page.bringIn(file.told, answers["clash"] ?? "", answers["deleted"] ?? "");
    toll.imports++;
    const act = page.acts[before];
    if ((act === undefined) !== (done.kind === "nothing"))
      throw new Error(`Expected another end than ${done.kind}`);
    if (act !== undefined && done.kind === "done") actIds.set(act, done.act);
  };
  for (const deed of deeds) {
    toll.deeds++;
    const entry = "which" in deed ? some(page.entries, deed.which) : undefined;
    switch (deed.deed) {
      case "bring_in": {
        const file = { text: sheetOf(deed.lines), told: deed.lines };
        files.push(file);
        await bring(file, { clash: deed.clash, deleted: deed.deleted });
        break;
      }
      case "again": {
        const file = some(files, deed.which);
        if (file !== undefined) await bring(file, { clash: deed.clash, deleted: deed.deleted });
        break;
      }
      case "take_out": {
        const { entries } = await keptEntries(store, tankId);
        const text = textOfDaybook(entries, deed.format, tankId);
        const byId = new Map([...ids].map(([one, id]) => [id, one]));
        const told = entries.flatMap(({ id }) => {
          const one = byId.get(id);
          return one === undefined ? [] : [{ ...one.line, of: one }];
        });
        const file = { text, told };
        files.push(file);
        // At once it brings nothing: all of it is here.
        await bring(file, { clash: "file", deleted: "bring_back" });
        break;
      }
      case "undo": {
        const act = some(page.acts, deed.which);
        const id = act === undefined ? undefined : actIds.get(act);
        if (act === undefined || id === undefined) break;
        await store.together((desk) => undoAct(desk, tankId, id, deed.answer, { stamp, today: TODAY }));
        page.undo(act, deed.answer);
        break;
      }
      case "correct": {
        if (entry === undefined || !entry.kept) break;
        page.correct(entry, deed.figure);
        const row = await store.entry(ids.get(entry) ?? "");
        await store.correctEntry(
          row?.id ?? "",
          row?.version ?? 0,
          { ...bodyOf(entry.line), kept: true },
          stamp,
        );
        break;
      }
      case "take_away":
      case "bring_back": {
        const kept = deed.deed === "bring_back";
        if (entry === undefined || entry.kept === kept) break;
        page.keep(entry, kept);
        const row = await store.entry(ids.get(entry) ?? "");
        if (row === null) throw new Error("An entry of the page is not in the store");
        await store.correctEntry(row.id, row.version, { on: row.on, body: row.body, kept }, stamp);
        break;
      }
      case "log": {
        page.log(deed.line);
        await store.addEntries(tankId, [{ id: newId(), kind: "reading", ...bodyOf(deed.line) }], stamp);
        break;
      }
    }
    await meet();
    await compare(store, tankId, page, toll, deeds);
  }
  toll.lives++;
}

function textOfDaybook(entries: readonly DaybookEntry[], format: "csv" | "json", id: string): string {
  if (format === "csv") return [...csvPieces(["reading"], entries)].join("");
  return [...jsonPieces({ tank: { id, name: "x" }, at: NOW, preferences: NO_PREFERENCES }, entries)].join("");
}

async function compare(
  store: Store,
  tankId: string,
  page: Page,
  toll: Toll,
  deeds: readonly Deed[],
): Promise<void> {
  const rows = await store.entries(tankId, { limit: 40_000 });
  const seen = rows.map(({ on, body }) => {
    const figure = Number((body["value"] as { readonly central: number }).central);
    const small = body["quantity"] === "ph" ? Math.round((figure - 8) * 10) : Math.round(figure - 400);
    return `${Number(on.slice(8))} ${String(body["quantity"])} ${small}`;
  });
  const rest = [...seen];
  const lost = page.seen().filter((one) => {
    const at = rest.indexOf(one);
    if (at >= 0) rest.splice(at, 1);
    return at < 0;
  });
  toll.lost += lost.length;
  toll.doubled += rest.length;
  if (lost.length + rest.length > 0 && toll.first.length === 0) {
    toll.first.push(`lost ${lost.join(", ")}; doubled ${rest.join(", ")}; after ${JSON.stringify(deeds)}`);
  }
}

export async function liveAll(database: DatabaseName, count: number, seed: number): Promise<Toll> {
  const toll: Toll = { lives: 0, deeds: 0, imports: 0, lost: 0, doubled: 0, first: [] };
  const land = ground(database);
  try {
    const store = await land.spot().open();
    try {
      for (const deeds of fc.sample(lives, { numRuns: count, seed })) await liveOne(store, deeds, toll);
    } finally {
      await store.close();
    }
  } finally {
    land.end();
  }
  return toll;
}

if (process.argv[1] === import.meta.filename) {
  const { values } = parseArgs({
    options: {
      lives: { type: "string", default: "1000" },
      seed: { type: "string", default: "1" },
      database: { type: "string", default: "sqlite" },
    },
  });
  const database = DATABASES.find((one) => one === values.database);
  if (database === undefined) throw new Error(`--database must be ${DATABASES.join(" or ")}`);
  const toll = await liveAll(database, Number(values.lives), Number(values.seed));
  console.log(`${database}, seed ${values.seed}: ${JSON.stringify(toll)}`);
  process.exitCode = toll.lost + toll.doubled > 0 ? 1 : 0;
}
