/**
 * SQLite for the query builder. A transaction takes the right to write when it begins: one that reads first and asks
 * for it later would fail at once where another process had written between. It waits for its turn without holding up
 * the rest of the program, which SQLite's own waiting would.
 */
import type BetterSqlite3 from "better-sqlite3";
import { CompiledQuery, type DatabaseConnection, type Driver, SqliteDialect, SqliteDriver } from "kysely";
import type { BeforeStatement } from "../database.ts";
import { hook } from "../driver-hook.ts";
import { withKeptStatements } from "./statements.ts";

/** How long a transaction waits for another program's. */
const WAIT_MS = 5_000;
const WAIT_STEP_MS = 5;

const busy = (error: unknown) => error instanceof Error && "code" in error && error.code === "SQLITE_BUSY";

interface Manner {
  readonly begin: "begin" | "begin immediate";
  readonly before: BeforeStatement | undefined;
}

class FileDriver extends SqliteDriver {
  readonly #file: BetterSqlite3.Database;
  readonly #how: Manner;

  constructor(file: BetterSqlite3.Database, how: Manner) {
    super({ database: withKeptStatements(file) });
    this.#file = file;
    this.#how = how;
  }
  override async acquireConnection(): Promise<DatabaseConnection> {
    return hook(await super.acquireConnection(), this.#how.before);
  }
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    const began = performance.now();
    for (;;) {
      try {
        return void (await connection.executeQuery(CompiledQuery.raw(this.#how.begin)));
      } catch (error) {
        if (!busy(error) || performance.now() - began > WAIT_MS) throw error;
        await new Promise((again) => setTimeout(again, WAIT_STEP_MS));
      }
    }
  }
  /** A commit that failed may have left it open, or closed it already. What was wrong is in the commit's own error. */
  override async rollbackTransaction(): Promise<void> {
    if (this.#file.inTransaction) this.#file.exec("rollback");
  }
}

export class FileDialect extends SqliteDialect {
  readonly #file: BetterSqlite3.Database;
  readonly #how: Manner;

  constructor(file: BetterSqlite3.Database, how: Manner) {
    super({ database: file });
    this.#file = file;
    this.#how = how;
  }
  override createDriver(): Driver {
    return new FileDriver(this.#file, this.#how);
  }
}
