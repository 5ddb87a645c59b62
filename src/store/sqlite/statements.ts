/**
 * Statements that were prepared before, kept by their text: preparing one costs more than running it. SQLite itself
 * prepares one anew when the tables changed shape. Limits: for queries that are read whole, not row by row.
 */
import type BetterSqlite3 from "better-sqlite3";

/** The store's own texts are fewer; lists of ids make some more. */
const MOST = 200;

export function withKeptStatements(file: BetterSqlite3.Database) {
  const kept = new Map<string, BetterSqlite3.Statement>();
  return {
    prepare(sql: string): BetterSqlite3.Statement {
      const known = kept.get(sql);
      if (known !== undefined) return known;
      const statement = file.prepare(sql);
      kept.set(sql, statement);
      for (const oldest of kept.keys()) {
        if (kept.size <= MOST) break;
        kept.delete(oldest);
      }
      return statement;
    },
    close: () => void file.close(),
  };
}
