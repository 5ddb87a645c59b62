/**
 * Entries kept and changed at every door, whatever their kind: of a move both halves, in both daybooks, in one write.
 * Halves are joined by the act that added them. One that was brought in from a file stands alone and is changed alone:
 * the other tank's own file tells the other half.
 */
import { animalById } from "../../catalogue/index.ts";
import { type DaybookEntry, type EntryBody, entryOfRow } from "../../contract/daybook/kinds.ts";
import type { Desk, EntryRow, Json, NewEntry, Saved, Stamp, TankRow } from "../../store/store.ts";
import { nameOf } from "../name-of.ts";
import { headsRecord } from "./record.ts";

/** Kind of the act that joins the halves of a move. */
const MOVED = "move";

export interface Hand {
  readonly stamp: Stamp;
  readonly newId: () => string;
  /** ISO date. */
  readonly today: string;
  /** Of a move: the keeper has looked again, and more were there than the record of the tank they leave has. */
  readonly beyondRecord?: boolean;
}

/** Why a move, its correction or its undoing can't be: one sentence or two, without an end stop. */
export interface Refused {
  readonly kind: "refused";
  readonly because: string;
}
export type Added = { readonly kind: "added"; readonly row: EntryRow } | Refused;
export type Changed = Saved<EntryRow> | Refused;

type Change = Pick<EntryRow, "on" | "body" | "kept">;

/** A count as typed by who has looked again: it is meant, whatever the record says. */
export const isChecked = (count: string): boolean => /\(checked\)\s*$/i.test(count);

/** Inside one write. */
export async function keepEntry(desk: Desk, tankId: string, entry: NewEntry, hand: Hand): Promise<Added> {
  if (entry.kind === MOVED) return await keepMove(desk, tankId, entry, hand);
  return { kind: "added", row: only(await desk.addEntries(tankId, [entry], hand.stamp)) };
}

/** Corrects an entry, takes it away or brings it back; inside one write. `from`: the version this was made from. */
export async function changeEntry(
  desk: Desk,
  row: Pick<EntryRow, "id" | "kind">,
  from: number,
  change: Change,
  hand: Omit<Hand, "newId">,
): Promise<Changed> {
  const other = row.kind === MOVED ? await otherHalf(desk, row.id) : null;
  if (other === null) return await desk.correctEntry(row.id, from, change, hand.stamp);
  return await changeMove(desk, row.id, other, from, change, hand);
}

/** The half in the other tank's daybook, also where it was taken away; null where this one stands alone. */
export async function otherHalf(desk: Pick<Desk, "addedBeside">, id: string): Promise<EntryRow | null> {
  const [other] = await desk.addedBeside(id, MOVED);
  return other ?? null;
}

async function keepMove(desk: Desk, tankId: string, entry: NewEntry, hand: Hand): Promise<Added> {
  const { body } = moveIn(entry);
  const otherId = body.to ?? body.from ?? "";
  await desk.holdTanks([tankId, otherId]);
  const [tank, other] = [await desk.tank(tankId), await desk.tank(otherId)];
  if (tank === null || other === null || !tank.kept || !other.kept) return GONE;
  const half = { ...entry, id: hand.newId(), body: mirrored(body, tank) as Json };
  const because = await overdrawn(desk, [halfIn(tank, entry, hand), halfIn(other, half, hand)], hand.today);
  if (because !== null) return { kind: "refused", because };
  const row = only(await desk.addEntries(tank.id, [entry], hand.stamp));
  await desk.addEntries(other.id, [half], hand.stamp);
  const halves = [entry, half].map(({ id }) => ({ entryId: id, version: 1 }));
  await desk.addAct({ id: hand.newId(), tankId, kind: MOVED, about: {} }, halves, hand.stamp);
  return { kind: "added", row };
}

async function changeMove(
  desk: Desk,
  id: string,
  { id: otherId, tankId: otherTankId }: EntryRow,
  from: number,
  change: Change,
  hand: Omit<Hand, "newId">,
): Promise<Changed> {
  const { stamp, today } = hand;
  const first = await desk.entry(id);
  if (first === null) return { kind: "not_found" };
  await desk.holdTanks([first.tankId, otherTankId]);
  const [row, other] = [await desk.entry(id), await desk.entry(otherId)];
  const [tank, otherTank] = [await desk.tank(first.tankId), await desk.tank(otherTankId)];
  if (row === null || other === null || tank === null || otherTank === null) return { kind: "not_found" };
  if (row.version !== from) return { kind: "conflict", current: row };
  if (!tank.kept || !otherTank.kept) return GONE;
  const entry = { id, kind: MOVED, on: change.on, body: change.body };
  const { body } = moveIn(entry);
  const before = moveIn(row).body;
  if (body.to !== before.to || body.from !== before.from) return OTHER_TANKS;
  const half = { ...entry, id: otherId, body: mirrored(body, tank) as Json };
  const halves = [halfIn(tank, entry, hand), halfIn(otherTank, half, hand)];
  const written = change.kept ? halves : halves.map((one) => ({ ...one, entry: null }));
  const because = await overdrawn(desk, written, today);
  if (because !== null) return { kind: "refused", because };
  const saved = await desk.correctEntry(id, from, change, stamp);
  const { on, kept } = change;
  const beside = await desk.correctEntry(otherId, other.version, { on, kept, body: half.body }, stamp);
  if (saved.kind !== "saved" || beside.kind !== "saved")
    throw new Error(`Cannot change a move: entry ${id} or ${otherId} changed within one write`);
  return saved;
}

const GONE: Refused = {
  kind: "refused",
  because: "The other tank was taken away. Bring it back first: a move is in both daybooks, or in none",
};
const OTHER_TANKS: Refused = {
  kind: "refused",
  because: "A move stays between its two tanks. Take it away, and log another",
};

interface Half {
  readonly tank: TankRow;
  /** As it will be; null where it is taken away. */
  readonly entry: NewEntry | null;
  /** Id of the entry that it takes the place of. */
  readonly id: string;
  /** The keeper has looked again: more than the record of this tank knows are there. */
  readonly beyondRecord: boolean;
}

/** Why it can't be: one of the records would take more than it has. Animals that the catalogue does not know count for nothing. */
async function overdrawn(desk: Desk, halves: readonly Half[], today: string): Promise<string | null> {
  for (const { tank, entry, id, beyondRecord } of halves) {
    if (beyondRecord) continue;
    const { entries, lacking } = await headsRecord(desk, tank, today);
    const others = entries.filter((one) => one.id !== id);
    const before = lacking(entries);
    for (const [animal, count] of lacking(entry === null ? others : [...others, moveIn(entry)])) {
      const more = count - (before.get(animal) ?? 0);
      if (more <= 0) continue;
      const name = animalById.get(animal)?.commonName ?? animal;
      return `The record of ${nameOf(tank)} would then have ${more} more of ${name} gone than came: other entries of its daybook have taken them. Correct or take away those first`;
    }
  }
  return null;
}

type Move = Extract<DaybookEntry, { kind: "move" }>;

function moveIn(entry: NewEntry): Move {
  const read = entryOfRow(entry);
  if (read?.kind !== "move") throw new TypeError(`Cannot move animals by an entry of kind ${entry.kind}`);
  return read;
}

const halfIn = (tank: TankRow, entry: NewEntry, { beyondRecord = false }: Omit<Hand, "newId">): Half => ({
  ...{ tank, entry, id: entry.id },
  beyondRecord: beyondRecord && moveIn(entry).body.to !== null,
});

/** As the other tank's daybook has it. */
const mirrored = (body: EntryBody<"move">, tank: TankRow): EntryBody<"move"> => {
  const [id, name] = [tank.id, nameOf(tank).slice(0, 200)];
  return body.to === null
    ? { ...body, to: id, to_text: name, from: null, from_text: null }
    : { ...body, to: null, to_text: null, from: id, from_text: name };
};

function only(rows: readonly EntryRow[]): EntryRow {
  const [row] = rows;
  if (row === undefined) throw new Error("The store kept no entry and said nothing");
  return row;
}
