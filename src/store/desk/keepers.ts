/** Keepers and settings: the desk's small tables. */
import type { Db } from "../database.ts";
import type { Desk } from "../store.ts";
import { json, plain, read } from "./text.ts";

type Part = Pick<Desk, "keeperNamed" | "keepers" | "setting" | "saveSetting">;

export const keepersAndSettings = (db: Db): Part => {
  const rows = () => db.selectFrom("keeper").select(["id", "name", "added_at as addedAt"]);
  return {
    async keeperNamed(name, id, stamp) {
      await db
        .insertInto("keeper")
        .values({
          id: plain("a keeper's id", id),
          name: plain("a keeper's name", name),
          added_at: stamp.at,
          added_by: stamp.by,
        })
        .onConflict((conflict) => conflict.column("name").doNothing())
        .execute();
      return rows().where("name", "=", name).executeTakeFirstOrThrow();
    },
    keepers: () => rows().orderBy("name").execute(),

    async setting(name) {
      const row = await db.selectFrom("setting").select("value").where("name", "=", name).executeTakeFirst();
      return row === undefined ? null : read(row.value);
    },
    async saveSetting(name, value, stamp) {
      const change = { value: json(value), saved_at: stamp.at, saved_by: stamp.by };
      await db
        .insertInto("setting")
        .values({ name: plain("a setting's name", name), ...change })
        .onConflict((conflict) => conflict.column("name").doUpdateSet(change))
        .execute();
    },
  };
};
