/** A whole store from one place to another, which must be empty: SQLite to PostgreSQL, back, or like to like. */
import type { Database } from "../database.ts";
import { StoreError } from "../store.ts";
import { type Counts, compare, isEmpty, type Progress, pour, storeSource } from "./pour.ts";

/** All rows, compared before they count. What comes to the old store meanwhile is not taken along: see docs/store.md. */
export async function moveStore(from: Database, to: Database, progress?: Progress): Promise<Counts> {
  return from.snapshot((old) =>
    to.transact(async (fresh) => {
      if (!(await isEmpty(fresh))) {
        throw new StoreError(
          "cannot_write",
          `The store ${to.place} holds something already.`,
          "Move into a place where no store is yet; to replace one, use backup and restore.",
        );
      }
      const counts = await pour(storeSource(old), fresh, progress);
      await compare(storeSource(old), fresh, to.place);
      return counts;
    }),
  );
}
