import type { Migration } from "./migration.ts";

/** Who keeps tanks: a name or nickname, no account. */
export const keeper: Migration = {
  name: "0001-keeper",
  statements: ({ text, tableEnd }) => [
    `CREATE TABLE keeper (
       id ${text} PRIMARY KEY,
       name ${text} NOT NULL UNIQUE,
       added_at ${text} NOT NULL, -- instants are ISO 8601, UTC
       added_by ${text} NOT NULL
     ) ${tableEnd}`,
  ],
};
