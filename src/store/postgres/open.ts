/**
 * PostgreSQL behind the store: a pool of connections, all tables in a schema of their own, so that a database may be
 * shared with other programs and a store can be changed for another by changing names.
 */
import { type Driver, Kysely, PostgresDialect, PostgresDriver, sql } from "kysely";
import pg from "pg";
import type { BeforeStatement, Database } from "../database.ts";
import { hook } from "../driver-hook.ts";
import type { Tables } from "../tables.ts";
import { copySchema, tablesOf } from "./copy-schema.ts";
import { durableSettings } from "./settings.ts";

/** Schema of a store where none is named. */
export const SCHEMA = "grazewell";
/** Any number that no other program is likely to lock by: "GRZW". */
const LOCK = 0x47_52_5a_57;
const CONNECTIONS = 10;
const BIGINT = 20;

export interface PostgresOptions {
  readonly schema?: string | undefined;
  readonly before?: BeforeStatement | undefined;
}

export async function openPostgres(url: string, options: PostgresOptions = {}): Promise<Database> {
  const schema = options.schema ?? SCHEMA;
  const pool = new pg.Pool({
    connectionString: url,
    application_name: "grazewell",
    max: CONNECTIONS,
    connectionTimeoutMillis: 5_000,
    // A transaction whose program hangs lets go; a wait for a lock ends.
    options: `-c search_path=${quoted(schema)} -c synchronous_commit=on -c lock_timeout=10s -c idle_in_transaction_session_timeout=60s`,
    types: {
      getTypeParser: (oid, format) =>
        Number(oid) === BIGINT ? (text: string) => Number(text) : pg.types.getTypeParser(oid, format),
    },
  });
  // A lost connection is no event of its own: the statement that meets it fails, the next connection is new. Without
  // a listener on the pool (idle ones) and on each client (those at work), Node would end the program.
  pool.on("error", () => {});
  pool.on("connect", (client) => client.on("error", () => {}));
  const reads = new Kysely<Tables>({ dialect: new HookedDialect(pool, options.before) });
  try {
    await sql`SELECT 1`.execute(reads);
  } catch (error) {
    await reads.destroy();
    throw error;
  }
  return {
    name: "postgres",
    place: placeOf(url, schema),
    spelling: { text: 'text COLLATE "C"', bytes: "bytea", tableEnd: "" },
    reads,
    transact: (work, alone = false) =>
      reads
        .transaction()
        .setIsolationLevel("repeatable read")
        .execute(async (db) => {
          // A gate that each write passes: many together, or one alone, which then waits for those inside. A lock of a
          // table, as that comes before the moment which the transaction sees; the table is never written meanwhile.
          const mode = alone ? sql`EXCLUSIVE` : sql`ROW SHARE`;
          await sql`LOCK TABLE migration IN ${mode} MODE`.execute(db);
          return work(db);
        }),
    snapshot: (work) =>
      reads.transaction().setIsolationLevel("repeatable read").setAccessMode("read only").execute(work),
    tables: () => tablesOf(reads, schema),
    // Not at one moment: what another start did while this one waited for the lock must be seen.
    reshape: (work) =>
      reads
        .transaction()
        .setIsolationLevel("read committed")
        .execute(async (db) => {
          await sql`SELECT pg_advisory_xact_lock(${LOCK})`.execute(db);
          await sql`CREATE SCHEMA IF NOT EXISTS ${sql.id(schema)}`.execute(db);
          return work(db);
        }),
    async settle() {},
    copyAside: (label) => copySchema(reads, schema, label),
    durableSettings: () => durableSettings(reads),
    // Checksums and constraints are the server's own work, at every read and write.
    faults: async () => null,
    close: () => reads.destroy(),
  };
}

class HookedDialect extends PostgresDialect {
  readonly #pool: pg.Pool;
  readonly #before: BeforeStatement | undefined;

  constructor(pool: pg.Pool, before: BeforeStatement | undefined) {
    super({ pool });
    this.#pool = pool;
    this.#before = before;
  }
  override createDriver(): Driver {
    const before = this.#before;
    return new (class extends PostgresDriver {
      override async acquireConnection(...options: Parameters<PostgresDriver["acquireConnection"]>) {
        return hook(await super.acquireConnection(...options), before);
      }
    })({ pool: this.#pool });
  }
}

const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;

/** The address as it may be shown: without user and password. */
function placeOf(url: string, schema: string): string {
  try {
    const { host, pathname } = new URL(url);
    return `postgres://${host}${pathname} (${schema})`;
  } catch {
    return `PostgreSQL (${schema})`;
  }
}
