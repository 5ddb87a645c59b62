/**
 * The tanks beside its own that a move can name, and the one it names, loaded: its record, its first day, and what the
 * receiving one of the two says of newcomers. Asked before the entry is read, as its reader waits for nothing.
 */
import { type MovingTank, movingSaid, whyNotNow } from "../../answers/arrivals/moved-in.ts";
import { entryContext } from "../../answers/record/entry-context.ts";
import { findAnimal } from "../../catalogue/index.ts";
import type { EntryKind } from "../../contract/daybook/kinds.ts";
import type { FindTank, FoundTank, OtherTank } from "../../contract/daybook/other-tank.ts";
import type { EntryText } from "../../contract/daybook/read-entry.ts";
import type { Choice } from "../../contract/quantity/outcome.ts";
import type { Store, TankRow } from "../../store/store.ts";
import { nameOf } from "../name-of.ts";
import { knownTank } from "../round/known-tank.ts";
import type { LoadedTank } from "../route.ts";
import { otherHalf } from "./keep.ts";

export interface OtherTanksScene {
  readonly store: Pick<Store, "tanks" | "addedBeside">;
  readonly loadTank: (id: string) => Promise<LoadedTank | null>;
  /** Instant, UTC; null where there is no clock. */
  readonly now: string | null;
}

/** Most tanks that are offered where none of that name was found. */
const MOST_OFFERED = 12;

/** Tanks of the store but this one, by keeper and name. */
export async function tanksBeside(store: Pick<Store, "tanks">, id: string): Promise<readonly TankRow[]> {
  return (await store.tanks()).filter((row) => row.id !== id);
}

/** For entries that name another tank; undefined for other kinds. `correcting`: id of an entry that was judged before. */
export async function otherTanks(
  kind: EntryKind,
  typed: EntryText,
  own: LoadedTank,
  scene: OtherTanksScene,
  correcting: string | null = null,
): Promise<FindTank | undefined> {
  if (kind !== "move") return undefined;
  const { to = "", from = "" } = typed;
  const named = to.trim() || from.trim();
  const found = await find(named, own, scene);
  if (found.kind !== "loaded") return () => found;
  const { other } = found;
  const half = correcting === null ? null : await otherHalf(scene.store, correcting);
  const [giving, receiving] = to.trim() === "" ? [other, own] : [own, other];
  const animal = idOf(typed["animal"] ?? "");
  const [leaving, entered] = [movingTank(giving), movingTank(receiving)];
  const one: FoundTank = {
    kind: "one",
    tank: asOther(other, scene.now, half?.id ?? null),
    receiving: {
      said: (id) => (correcting !== null ? [] : movingSaid(leaving, entered, id)),
      gateNotMet: correcting !== null ? null : whyNotNow(entered, animal),
    },
  };
  return () => one;
}

type Found = Exclude<FoundTank, { kind: "one" }> | { readonly kind: "loaded"; readonly other: LoadedTank };

async function find(named: string, own: LoadedTank, { store, loadTank }: OtherTanksScene): Promise<Found> {
  const tanks = await store.tanks();
  const byId = tanks.filter(({ id }) => id === named);
  const key = named.toLowerCase();
  const all = byId.length > 0 ? byId : tanks.filter((row) => nameOf(row).trim().toLowerCase() === key);
  const [only, ...others] = all.filter(({ id }) => id !== own.row.id);
  if (only === undefined && all.length > 0) return { kind: "itself" };
  if (only !== undefined && others.length > 0)
    return { kind: "several", choices: [only, ...others].map(choice) };
  const other = only === undefined ? null : await loadTank(only.id);
  if (other !== null) return { kind: "loaded", other };
  const offered = tanks.filter(({ id }) => id !== own.row.id).slice(0, MOST_OFFERED);
  return { kind: "none", choices: offered.map(choice) };
}

const choice = (row: TankRow): Choice => ({
  label: `${nameOf(row)}, kept by ${row.keeper.name}`,
  text: row.id,
});

function idOf(typed: string): string | null {
  const found = findAnimal(typed.trim());
  return found.kind === "one" ? found.animal.id : null;
}

const movingTank = (tank: LoadedTank): MovingTank => ({
  name: tank.head.name,
  known: knownTank(tank, tank.today),
});

/** `correcting`: the half there that is being corrected; null for a new one. */
function asOther(other: LoadedTank, now: string | null, correcting: string | null): OtherTank {
  const moment = { today: other.today, now };
  const { notBefore, onRecord, knownAs, toldOn } = entryContext(other, moment, { correcting });
  return {
    ...{ id: other.row.id, name: other.head.name.slice(0, 200), notBefore, onRecord },
    knownAs: (animal, on) => (knownAs === undefined ? animal : knownAs(animal, on)),
    toldOn: (animal) => toldOn?.(animal) ?? null,
  };
}
