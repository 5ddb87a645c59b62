/**
 * SQLite for the query builder. A transaction takes the right to write when it begins: one that reads first and asks
 * for it later would fail at once where another process had written between.
 */
import type BetterSqlite3 from "better-sqlite3";
import { CompiledQuery, type DatabaseConnection, type Driver, SqliteDialect, SqliteDriver } from "kysely";
import type { BeforeStatement } from "../database.ts";
import { hook } from "../driver-hook.ts";

class ImmediateDriver extends SqliteDriver {
  readonly #file: BetterSqlite3.Database;
  readonly #before: BeforeStatement | undefined;

  constructor(file: BetterSqlite3.Database, before: BeforeStatement | undefined) {
    super({ database: file });
    this.#file = file;
    this.#before = before;
  }
  override async acquireConnection(): Promise<DatabaseConnection> {
    return hook(await super.acquireConnection(), this.#before);
  }
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw("begin immediate"));
  }
  /** A commit that failed may have left it open, or closed it already. What was wrong is in the commit's own error. */
  override async rollbackTransaction(): Promise<void> {
    if (this.#file.inTransaction) this.#file.exec("rollback");
  }
}

export class FileDialect extends SqliteDialect {
  readonly #file: BetterSqlite3.Database;
  readonly #before: BeforeStatement | undefined;

  constructor(file: BetterSqlite3.Database, before: BeforeStatement | undefined) {
    super({ database: file });
    this.#file = file;
    this.#before = before;
  }
  override createDriver(): Driver {
    return new ImmediateDriver(this.#file, this.#before);
  }
}
