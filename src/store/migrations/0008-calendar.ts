import type { Migration } from "./migration.ts";

/** What calendars were given of a tank, version by version, and the feeds they were given by; a token's hash alone. */
export const calendar: Migration = {
  name: "0008-calendar",
  statements: ({ text, tableEnd }) => [
    `CREATE TABLE given_event (
       tank_id ${text} NOT NULL REFERENCES tank (id),
       care ${text} NOT NULL, -- id of the duty
       sequence integer NOT NULL CHECK (sequence >= 0),
       given_at ${text} NOT NULL,
       cancelled integer NOT NULL CHECK (cancelled IN (0, 1)),
       reach ${text} NOT NULL, -- ISO date: the last day of any version so far
       event ${text} NOT NULL, -- JSON
       PRIMARY KEY (tank_id, care, sequence)
     ) ${tableEnd}`,
    `CREATE TABLE calendar_feed (
       id ${text} PRIMARY KEY,
       tank_id ${text} NOT NULL REFERENCES tank (id),
       token_hash ${text} NOT NULL UNIQUE, -- SHA-256, hexadecimal
       made_at ${text} NOT NULL,
       made_by ${text} NOT NULL,
       taken_back_at ${text}, -- both null while it stands
       taken_back_by ${text}
     ) ${tableEnd}`,
    "CREATE INDEX calendar_feed_by_tank ON calendar_feed (tank_id, made_at)",
  ],
};
