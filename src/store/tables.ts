/**
 * The tables as they are after the last migration, for the query builder and for backup.
 * What was measured or decided stands in the `_version` tables and is never changed there. `tank` and `entry` carry
 * the number of the latest version and what lists are asked by: all of it can be rebuilt, and `check-store` compares it.
 */
export interface Tables {
  migration: { name: string; applied_at: string };
  keeper: { id: string; name: string; added_at: string; added_by: string };
  tank: { id: string; keeper_id: string; demonstration: number; version: number; kept: number };
  tank_version: {
    tank_id: string;
    version: number;
    saved_at: string;
    saved_by: string;
    kept: number;
    /** JSON text. */
    facts: string;
  };
  entry: {
    id: string;
    tank_id: string;
    kind: string;
    version: number;
    kept: number;
    on_day: string;
    /** What a reading is of, so that the latest of each is found without reading bodies; null for other kinds. */
    subject: string | null;
  };
  entry_version: {
    entry_id: string;
    version: number;
    saved_at: string;
    saved_by: string;
    kept: number;
    on_day: string;
    /** JSON text. */
    body: string;
  };
  /** `status` and `body` are null only inside the transaction that does the work. */
  reply: { key: string; fingerprint: string; saved_at: string; status: number | null; body: string | null };
  setting: { name: string; value: string; saved_at: string; saved_by: string };
  act: {
    id: string;
    tank_id: string;
    kind: string;
    saved_at: string;
    saved_by: string;
    /** JSON text. */
    about: string;
    /** Both null while it stands: the one thing of an act that changes. */
    undone_at: string | null;
    undone_by: string | null;
  };
  act_entry: {
    act_id: string;
    entry_id: string;
    /** The version that the act made; 1 where it added the entry. */
    version: number;
    /** The version that undoing it made; null where it stands. */
    undone_version: number | null;
  };
  given_event: {
    tank_id: string;
    care: string;
    sequence: number;
    given_at: string;
    cancelled: number;
    reach: string;
    /** JSON text. */
    event: string;
  };
  calendar_feed: {
    id: string;
    tank_id: string;
    token_hash: string;
    made_at: string;
    made_by: string;
    /** Both null while it stands: the one thing of a feed that changes. */
    taken_back_at: string | null;
    taken_back_by: string | null;
  };
  picture: {
    id: string;
    entry_id: string;
    sha256: string;
    type: string;
    width_px: number;
    height_px: number;
    size_bytes: number;
    shows: string;
    saved_at: string;
    saved_by: string;
    /** Both null while it stands: the one thing of a picture that changes. */
    taken_away_at: string | null;
    taken_away_by: string | null;
    image: Uint8Array;
  };
}

export type TableName = keyof Tables;

/** How one database spells what the two spell differently. */
export interface Spelling {
  /** Text that sorts by its bytes. */
  readonly text: string;
  /** Bytes as they are. */
  readonly bytes: string;
  /** After the closing bracket of a table. */
  readonly tableEnd: string;
}
