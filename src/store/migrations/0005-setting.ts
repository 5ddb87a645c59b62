import type { Migration } from "./migration.ts";

/** Choices that hold for the whole store, by name; the latest alone. */
export const setting: Migration = {
  name: "0005-setting",
  statements: ({ text, tableEnd }) => [
    `CREATE TABLE setting (
       name ${text} PRIMARY KEY,
       value ${text} NOT NULL, -- JSON
       saved_at ${text} NOT NULL,
       saved_by ${text} NOT NULL
     ) ${tableEnd}`,
  ],
};
