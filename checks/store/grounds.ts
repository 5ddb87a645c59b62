/** The two real databases under one roof: a check is written once and run on each. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type OpenOptions, openDatabase, openStore } from "../../src/store/open.ts";
import { type Row, rowsOf, SHAPES } from "../../src/store/rows.ts";
import type { Store } from "../../src/store/store.ts";
import { startCluster } from "./postgres.ts";

/** Where one store may stand, apart from all others. */
export interface Spot {
  readonly where: string;
  readonly options: OpenOptions;
  open(options?: OpenOptions): Promise<Store>;
  /** Every row of every table. */
  rows(): Promise<Readonly<Record<string, readonly Row[]>>>;
}

export interface Ground {
  readonly folder: string;
  /** A spot where nothing is yet. */
  spot(): Spot;
  /** Pulls the server down hard and starts it again; nothing on SQLite. */
  crash(): void;
  end(): void;
}

export const DATABASES = ["sqlite", "postgres"] as const;
export type DatabaseName = (typeof DATABASES)[number];

export function ground(database: DatabaseName): Ground {
  const folder = mkdtempSync(join(tmpdir(), "gw-store-"));
  const cluster = database === "postgres" ? startCluster() : null;
  let spots = 0;
  return {
    folder,
    spot() {
      const name = `spot_${++spots}`;
      return cluster === null
        ? spotAt(join(folder, `${name}.db`), {})
        : spotAt(cluster.url, { schema: name });
    },
    crash: () => cluster?.crash(),
    end() {
      cluster?.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

export function spotAt(where: string, options: OpenOptions): Spot {
  return {
    where,
    options,
    open: (more = {}) => openStore(where, { ...options, ...more }),
    async rows() {
      const database = await openDatabase(where, { ...options, use: "as it is" });
      try {
        return await database.snapshot(async (db) => {
          const all: Record<string, Row[]> = {};
          for (const shape of SHAPES) {
            const rows: Row[] = [];
            for await (const row of rowsOf(db, shape)) rows.push(row);
            all[shape.table] = rows;
          }
          return all;
        });
      } finally {
        await database.close();
      }
    },
  };
}

/** A hand and an instant that tell one write from another. */
export const stamp = (n = 0) => ({ at: new Date(1_780_000_000_000 + n).toISOString(), by: "checks" });
