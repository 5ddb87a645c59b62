/** Lets a check step in before every statement of a connection, whoever sends it. */
import type { DatabaseConnection } from "kysely";
import type { BeforeStatement } from "./database.ts";

const hooked = new WeakSet<DatabaseConnection>();

export function hook<C extends DatabaseConnection>(connection: C, before: BeforeStatement | undefined): C {
  if (before === undefined || hooked.has(connection)) return connection;
  hooked.add(connection);
  const execute = connection.executeQuery.bind(connection);
  connection.executeQuery = async (query, options) => {
    await before(query.sql);
    return execute(query, options);
  };
  return connection;
}
