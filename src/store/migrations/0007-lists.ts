import type { Migration } from "./migration.ts";

/** Lists of many tanks: the latest entries of each kind, and whether anything of a tank has changed. No data change. */
export const lists: Migration = {
  name: "0007-lists",
  statements: () => [
    "CREATE INDEX entry_of_kind ON entry (tank_id, kind, on_day) WHERE kept = 1 AND subject IS NULL",
    "CREATE INDEX entry_marks ON entry (tank_id, version)",
  ],
};
