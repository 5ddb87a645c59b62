import type { Migration } from "./migration.ts";

/** Many entries changed as one act, such as a file brought in: which versions it made, so that it is undone as one. */
export const act: Migration = {
  name: "0006-act",
  statements: ({ text, tableEnd }) => [
    `CREATE TABLE act (
       id ${text} PRIMARY KEY,
       tank_id ${text} NOT NULL REFERENCES tank (id),
       kind ${text} NOT NULL,
       saved_at ${text} NOT NULL,
       saved_by ${text} NOT NULL,
       about ${text} NOT NULL, -- JSON
       undone_at ${text}, -- both null while it stands
       undone_by ${text}
     ) ${tableEnd}`,
    `CREATE TABLE act_entry (
       act_id ${text} NOT NULL REFERENCES act (id),
       entry_id ${text} NOT NULL REFERENCES entry (id),
       version integer NOT NULL CHECK (version >= 1), -- that the act made
       undone_version integer CHECK (undone_version > version), -- that undoing it made; null where it stands
       PRIMARY KEY (act_id, entry_id)
     ) ${tableEnd}`,
    "CREATE INDEX act_by_tank ON act (tank_id, saved_at)",
    "CREATE INDEX act_entry_by_entry ON act_entry (entry_id)",
  ],
};
