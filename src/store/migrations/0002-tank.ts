import type { Migration } from "./migration.ts";

/** Tanks and every version of their facts; the number of the latest stands in the tank and guards its writes. */
export const tank: Migration = {
  name: "0002-tank",
  statements: ({ text, tableEnd }) => [
    `CREATE TABLE tank (
       id ${text} PRIMARY KEY,
       keeper_id ${text} NOT NULL REFERENCES keeper (id),
       demonstration integer NOT NULL CHECK (demonstration IN (0, 1)),
       version integer NOT NULL CHECK (version >= 1), -- the latest
       kept integer NOT NULL CHECK (kept IN (0, 1)) -- the latest version's
     ) ${tableEnd}`,
    `CREATE TABLE tank_version (
       tank_id ${text} NOT NULL REFERENCES tank (id),
       version integer NOT NULL CHECK (version >= 1),
       saved_at ${text} NOT NULL,
       saved_by ${text} NOT NULL,
       kept integer NOT NULL CHECK (kept IN (0, 1)),
       facts ${text} NOT NULL, -- JSON
       PRIMARY KEY (tank_id, version)
     ) ${tableEnd}`,
    "CREATE INDEX tank_by_keeper ON tank (keeper_id)",
  ],
};
