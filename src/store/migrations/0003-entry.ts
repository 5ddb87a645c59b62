import type { Migration } from "./migration.ts";

/** Lines of the daybook and every version of them; lists are asked by day, the latest readings by what they are of. */
export const entry: Migration = {
  name: "0003-entry",
  statements: ({ text, tableEnd }) => [
    `CREATE TABLE entry (
       id ${text} PRIMARY KEY,
       tank_id ${text} NOT NULL REFERENCES tank (id),
       kind ${text} NOT NULL,
       version integer NOT NULL CHECK (version >= 1), -- the latest; so are the three below
       kept integer NOT NULL CHECK (kept IN (0, 1)),
       on_day ${text} NOT NULL, -- ISO date in the tank's zone
       subject ${text}
     ) ${tableEnd}`,
    `CREATE TABLE entry_version (
       entry_id ${text} NOT NULL REFERENCES entry (id),
       version integer NOT NULL CHECK (version >= 1),
       saved_at ${text} NOT NULL,
       saved_by ${text} NOT NULL,
       kept integer NOT NULL CHECK (kept IN (0, 1)),
       on_day ${text} NOT NULL,
       body ${text} NOT NULL, -- JSON
       PRIMARY KEY (entry_id, version)
     ) ${tableEnd}`,
    "CREATE INDEX entry_by_day ON entry (tank_id, on_day, id)",
    "CREATE INDEX entry_latest ON entry (tank_id, subject, on_day) WHERE kept = 1 AND subject IS NOT NULL",
  ],
};
