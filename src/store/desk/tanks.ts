/**
 * Tanks and the versions of their facts. The number in `tank` is moved on only from the version a write was made from:
 * one statement decides who came first, whatever the isolation.
 */
import type { Db } from "../database.ts";
import type { Desk, Json, Saved, Stamp, TankRow } from "../store.ts";
import { bit, isVersion, json, plain, read, versionColumns } from "./text.ts";

type Part = Pick<Desk, "addTank" | "tanks" | "tank" | "saveFacts" | "setKept" | "tankHistory" | "holdTanks">;

export const tanks = (db: Db): Part => {
  const versions = () =>
    db
      .selectFrom("tank")
      .innerJoin("keeper", "keeper.id", "tank.keeper_id")
      .innerJoin("tank_version as v", "v.tank_id", "tank.id")
      .select(["tank.id", "tank.demonstration", "keeper.id as keeper_id", "keeper.name", "keeper.added_at"])
      .select(["v.version", "v.saved_at", "v.saved_by", "v.kept", "v.facts"]);
  const latest = () => versions().whereRef("v.version", "=", "tank.version");

  async function tank(id: string): Promise<TankRow | null> {
    const row = await latest().where("tank.id", "=", id).executeTakeFirst();
    return row === undefined ? null : tankRow(row);
  }

  async function save(
    id: string,
    from: number,
    change: (before: TankRow) => { readonly facts: Json; readonly kept: boolean },
    stamp: Stamp,
  ): Promise<Saved<TankRow>> {
    const before = await tank(id);
    if (before === null) return { kind: "not_found" };
    if (before.version !== from || !isVersion(from)) return { kind: "conflict", current: before };
    const { facts, kept } = change(before);
    const version = from + 1;
    const { numUpdatedRows } = await db
      .updateTable("tank")
      .set({ version, kept: bit(kept) })
      .where("id", "=", id)
      .where("version", "=", from)
      .executeTakeFirst();
    if (numUpdatedRows !== 1n) return { kind: "conflict", current: (await tank(id)) ?? before };
    await addVersion(id, { version, stamp, kept, facts });
    return { kind: "saved", row: { ...before, version, stamp, kept, facts } };
  }

  const addVersion = (
    id: string,
    { version, stamp, kept, facts }: Pick<TankRow, "version" | "stamp" | "kept" | "facts">,
  ) =>
    db
      .insertInto("tank_version")
      .values({ tank_id: id, version, ...versionColumns(stamp, kept), facts: json(facts) })
      .execute();

  return {
    async addTank({ id, keeperId, demonstration, facts }, stamp) {
      await db
        .insertInto("tank")
        .values({
          id: plain("a tank's id", id),
          keeper_id: keeperId,
          demonstration: bit(demonstration),
          version: 1,
          kept: 1,
        })
        .execute();
      await addVersion(id, { version: 1, stamp, kept: true, facts });
      return tankRow(await latest().where("tank.id", "=", id).executeTakeFirstOrThrow());
    },
    async tanks() {
      const rows = await latest()
        .where("tank.kept", "=", 1)
        .orderBy("keeper.name")
        .orderBy("tank.id")
        .execute();
      return rows.map(tankRow);
    },
    tank,
    saveFacts: (id, from, facts, stamp) => save(id, from, ({ kept }) => ({ facts, kept }), stamp),
    setKept: (id, from, kept, stamp) => save(id, from, ({ facts }) => ({ facts, kept }), stamp),
    async holdTanks(ids) {
      // A row that is written, even as it was, belongs to this write until its end; in one order, so that none wait in a ring.
      for (const id of ids.toSorted()) {
        await db
          .updateTable("tank")
          .set(({ ref }) => ({ kept: ref("kept") }))
          .where("id", "=", id)
          .execute();
      }
    },
    async tankHistory(id) {
      return (await versions().where("tank.id", "=", id).orderBy("v.version").execute()).map(tankRow);
    },
  };
};

interface Row {
  readonly id: string;
  readonly demonstration: number;
  readonly keeper_id: string;
  readonly name: string;
  readonly added_at: string;
  readonly version: number;
  readonly saved_at: string;
  readonly saved_by: string;
  readonly kept: number;
  readonly facts: string;
}

const tankRow = (row: Row): TankRow => ({
  id: row.id,
  keeper: { id: row.keeper_id, name: row.name, addedAt: row.added_at },
  demonstration: row.demonstration === 1,
  version: row.version,
  stamp: { at: row.saved_at, by: row.saved_by },
  kept: row.kept === 1,
  facts: read(row.facts),
});
