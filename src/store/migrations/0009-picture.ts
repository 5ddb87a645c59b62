import type { Migration } from "./migration.ts";

/** Pictures kept with entries: written once; taking one away, and bringing it back, is all that changes. */
export const picture: Migration = {
  name: "0009-picture",
  statements: ({ text, bytes, tableEnd }) => [
    `CREATE TABLE picture (
       id ${text} PRIMARY KEY,
       entry_id ${text} NOT NULL REFERENCES entry (id),
       sha256 ${text} NOT NULL, -- of the bytes, hexadecimal
       type ${text} NOT NULL CHECK (type IN ('image/jpeg', 'image/png', 'image/webp')),
       width_px integer NOT NULL CHECK (width_px >= 1),
       height_px integer NOT NULL CHECK (height_px >= 1),
       size_bytes integer NOT NULL CHECK (size_bytes >= 1),
       shows ${text} NOT NULL, -- as the keeper says it; may be empty
       saved_at ${text} NOT NULL,
       saved_by ${text} NOT NULL,
       taken_away_at ${text}, -- both null while it stands
       taken_away_by ${text},
       image ${bytes} NOT NULL,
       UNIQUE (entry_id, sha256)
     ) ${tableEnd}`,
  ],
};
