import type { Migration } from "./migration.ts";

/** Answers given to a key, kept with the work they tell of: a request sent twice is done once. */
export const reply: Migration = {
  name: "0004-reply",
  statements: ({ text, tableEnd }) => [
    `CREATE TABLE reply (
       key ${text} PRIMARY KEY,
       fingerprint ${text} NOT NULL,
       saved_at ${text} NOT NULL,
       status integer,
       body ${text} -- JSON
     ) ${tableEnd}`,
  ],
};
