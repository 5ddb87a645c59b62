/** A fleet ranked as the server ranks a store, without one: the same functions on the same rows. */

import type { KnownOfTank } from "../../src/answers/bench/known.ts";
import { filtered, NO_FILTER, type RoundRow, rowOf, summaryOf } from "../../src/answers/round/round.ts";
import { findAnimal } from "../../src/catalogue/index.ts";
import { readTankFile } from "../../src/contract/tank-file/read.ts";
import type { TankFile } from "../../src/contract/tank-file/schema.ts";
import { knownFrom, presentWith } from "../../src/server/round/known-tank.ts";
import type { EntryRow, Json, NewEntry, TankRow } from "../../src/store/store.ts";
import type { FleetTank } from "./fleet.ts";

const STAMP = { at: "2020-01-01T09:00:00.000Z", by: "checks" };

function knownOf(
  { id, keeper, document, entries }: Pick<FleetTank, "id" | "keeper" | "document" | "entries">,
  today: string,
): KnownOfTank {
  const row: TankRow = {
    ...{ id, demonstration: false, version: 1, stamp: STAMP, kept: true },
    keeper: { id: keeper, name: keeper, addedAt: STAMP.at },
    facts: document as unknown as Json,
  };
  const read = readTankFile(JSON.stringify(document), { today, findAnimal });
  if (!read.ok) throw new Error(read.findings[0]?.message.text);
  const { facts, notices } = read;
  const told = { facts, document: document as TankFile, notices };
  const known = knownFrom(row, told, rowsOf(id, entries), today);
  return { ...known, facts: { ...facts, present: presentWith(facts.present, known.record, "2020-01-01") } };
}

const rowsOf = (tankId: string, entries: readonly NewEntry[]): EntryRow[] =>
  entries
    .map((entry) => ({ ...entry, tankId, version: 1, stamp: STAMP, kept: true }))
    .sort((a, b) => a.on.localeCompare(b.on) || a.id.localeCompare(b.id));

export const rankOf = (tanks: readonly FleetTank[], today: string): readonly RoundRow[] =>
  filtered(
    tanks.map((tank) => {
      const { id, keeper, document } = tank;
      const summary = summaryOf(knownOf(tank, today));
      const head = { id, keeper, name: String(document.name), demonstration: false, engine: [] };
      return rowOf({ ...summary, ...head }, today);
    }),
    NO_FILTER,
    () => "",
  );
