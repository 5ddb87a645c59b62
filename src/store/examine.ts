/** Looks a store over without changing it: the database's own check, what must agree within it, how old the backup is. */
import { createHash } from "node:crypto";
import { sql } from "kysely";
import type { Database, Db } from "./database.ts";
import { deskOn } from "./desk/desk.ts";
import { appliedIn } from "./migrate.ts";
import { MIGRATIONS } from "./migrations/list.ts";

export interface Finding {
  readonly name: string;
  readonly good: boolean;
  readonly says: string;
}

/** What must be none: how many rows break it. */
const AGREE: readonly (readonly [name: string, broken: (db: Db) => Promise<number>])[] = [
  [
    "tanks agree with their latest version",
    (db) =>
      count(
        db,
        sql`tank LEFT JOIN tank_version AS v ON v.tank_id = tank.id AND v.version = tank.version
      WHERE v.version IS NULL OR v.kept <> tank.kept`,
      ),
  ],
  [
    "entries agree with their latest version",
    (db) =>
      count(
        db,
        sql`entry LEFT JOIN entry_version AS v ON v.entry_id = entry.id AND v.version = entry.version
      WHERE v.version IS NULL OR v.kept <> entry.kept OR v.on_day <> entry.on_day`,
      ),
  ],
  [
    "no version of a tank is missing",
    (db) =>
      count(
        db,
        sql`(SELECT tank.id FROM tank JOIN tank_version AS v ON v.tank_id = tank.id
      GROUP BY tank.id, tank.version HAVING count(*) <> tank.version OR max(v.version) <> tank.version) AS broken`,
      ),
  ],
  [
    "no version of an entry is missing",
    (db) =>
      count(
        db,
        sql`(SELECT entry.id FROM entry JOIN entry_version AS v ON v.entry_id = entry.id
      GROUP BY entry.id, entry.version HAVING count(*) <> entry.version OR max(v.version) <> entry.version) AS broken`,
      ),
  ],
  [
    "every act's versions are there",
    (db) =>
      count(
        db,
        sql`act_entry AS a LEFT JOIN entry_version AS v ON v.entry_id = a.entry_id
      AND v.version = coalesce(a.undone_version, a.version) WHERE v.version IS NULL`,
      ),
  ],
  [
    "no version of what calendars were given is missing",
    (db) =>
      count(
        db,
        sql`(SELECT tank_id FROM given_event GROUP BY tank_id, care HAVING count(*) <> max(sequence) + 1) AS broken`,
      ),
  ],
  ["every kept answer is whole", (db) => count(db, sql`reply WHERE status IS NULL OR body IS NULL`)],
  ["every picture is as it was sent", spoiltPictures],
];

/** One after the other: all of them would not fit into memory. */
async function spoiltPictures(db: Db): Promise<number> {
  let spoilt = 0;
  for (const { id } of await db.selectFrom("picture").select("id").execute()) {
    const row = await db
      .selectFrom("picture")
      .select(["sha256", "size_bytes", "image"])
      .where("id", "=", id)
      .executeTakeFirstOrThrow();
    const sha256 = createHash("sha256").update(row.image).digest("hex");
    if (row.sha256 !== sha256 || row.size_bytes !== row.image.length) spoilt += 1;
  }
  return spoilt;
}

async function count(db: Db, rows: ReturnType<typeof sql>): Promise<number> {
  const result = await sql<{ n: number }>`SELECT count(*) AS n FROM ${rows}`.execute(db);
  return result.rows[0]?.n ?? 0;
}

export async function examine(database: Database): Promise<Finding[]> {
  const applied = await appliedIn(database);
  const pending = MIGRATIONS.filter(({ name }) => !applied.includes(name));
  const faults = await database.faults();
  const findings: Finding[] = [
    { name: "shape", good: true, says: shape(applied.at(-1) ?? "", pending.length) },
    ...(await database.durableSettings()).map(({ name, value, wanted }) => ({
      name: `setting ${name}`,
      good: wanted.includes(value),
      says: wanted.includes(value) ? value : `${value}; must be ${wanted.join(" or ")}`,
    })),
  ];
  if (faults !== null) {
    findings.push({
      name: "the database's check of itself",
      good: faults.length === 0,
      says: faults.length === 0 ? "nothing wrong" : faults.slice(0, 10).join("; "),
    });
  }
  if (pending.length > 0) return findings;
  return database.snapshot(async (db) => {
    for (const [name, broken] of AGREE) {
      const rows = await broken(db);
      findings.push({ name, good: rows === 0, says: rows === 0 ? "yes" : `not so for ${rows}` });
    }
    return findings;
  });
}

export interface BackupNote {
  readonly at: string;
  readonly folder: string;
}

const NOTE = "last_backup";

/** Remembered in the store itself: `check-store` shows how old the last backup is that was tried. */
export async function noteBackup(database: Database, { at, folder }: BackupNote): Promise<void> {
  await database.transact((db) => deskOn(db).saveSetting(NOTE, { at, folder }, { at, by: "backup" }));
}

export async function lastBackup(database: Database): Promise<BackupNote | null> {
  const note = await deskOn(database.reads).setting(NOTE);
  return note === null ? null : { at: String(note["at"]), folder: String(note["folder"]) };
}

const shape = (last: string, pending: number): string =>
  pending === 0 ? last : `${last}; changes due, made at the next start of the server: ${pending}`;
