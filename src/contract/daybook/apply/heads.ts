/** Heads of the daybook written into the answers' own lists; what nothing befell stays as it was typed. */
import { isKept } from "../../quantity/outcome.ts";
import { readSpecies } from "../../quantity/species.ts";
import { readVolume } from "../../quantity/volume.ts";
import { preferencesOf } from "../../tank-file/preferences-of.ts";
import type { TankFile } from "../../tank-file/schema.ts";
import type { DaybookEntry } from "../kinds.ts";
import { groupOf, type HeadsLot, idOf, lotsOf, places } from "./lots.ts";
import type { ApplyScene } from "./scene.ts";

type Present = NonNullable<TankFile["animals_present"]>[number];
type Fish = NonNullable<TankFile["fish"]>[number];

export interface AppliedHeads {
  /** Lists in the place of the answers' own; empty where nothing befell them. */
  readonly file: Pick<TankFile, "animals_present" | "fish">;
  readonly notes: readonly string[];
}

/** `firstDay`: nothing came before it; null where unknown. */
export function applyHeads(
  document: TankFile,
  entries: readonly DaybookEntry[],
  scene: ApplyScene,
  firstDay: string | null,
): AppliedHeads {
  const { lots, unexplained } = lotsOf(document, entries, scene);
  const { findAnimal } = scene;
  const told = places(document);
  const countText = countsIn(document);
  const present: Present[] = [];
  const fish: Fish[] = [];
  const notes: string[] = [];
  let changed = false;
  for (const lot of lots) {
    const place = typeof lot.from === "number" ? told[lot.from] : undefined;
    const stated = place === undefined ? undefined : document[place.list]?.[place.index];
    if (place !== undefined && stated !== undefined) {
      const same = lot.animal === idOf(stated.animal, findAnimal);
      const whole =
        same && lot.count === lot.came && lots.every((one) => one === lot || one.from !== lot.from);
      changed ||= !whole;
      const written = whole ? stated : rewritten(stated, lot, same, countText(lot.count));
      if (lot.count > 0 || whole) (place.list === "fish" ? fish : present).push(written as Present);
      continue;
    }
    changed = true;
    const name = lot.animal ?? lot.name;
    if (lot.count === 0) continue;
    if (!isKept(readSpecies(name, findAnimal))) {
      notes.push(`"${name}" of the daybook could be several animals now: not counted until it is known anew`);
      continue;
    }
    const isFish = lot.animal !== null && groupOf(lot.animal, findAnimal) === "fish";
    const added = { animal: name, count: countText(lot.count), ...dayOf(lot.on, firstDay) };
    (isFish && document.fish !== undefined ? fish : present).push(added);
  }
  for (const [kind, count] of unexplained) {
    notes.push(
      `Of ${nameOf(kind, findAnimal)} the daybook has ${count} more gone than came: none are left to take off`,
    );
  }
  if (!changed) return { file: {}, notes };
  const file = {
    ...(document.animals_present === undefined && present.length === 0 ? {} : { animals_present: present }),
    ...(document.fish === undefined ? {} : { fish }),
  };
  return { file, notes };
}

function nameOf(kind: string, find: ApplyScene["findAnimal"]): string {
  const search = find(kind);
  return search.kind === "one" ? search.animal.commonName : kind;
}

/** A size was that of another animal where it is known to be one now. */
function rewritten(
  stated: Present | Fish,
  lot: HeadsLot,
  same: boolean,
  count: number | string,
): Present | Fish {
  if (same) return { ...stated, count };
  const { on } = stated;
  return { animal: lot.animal ?? lot.name, count, ...(on === undefined ? {} : { on }) };
}

/** What a reader takes without a question, a litre; and the litres of a tank of which they are not told. */
const HEADS_PER_LITRE = 5;
const FEWEST_LITRES = 5;

/** A crowd in a small tank would be asked about: whoever logged it was asked already. */
function countsIn({ water_l, preferences }: TankFile): (count: number) => number | string {
  const read = readVolume(`${water_l ?? ""}`, { preferences: preferencesOf(preferences), unit: "L" });
  const most = HEADS_PER_LITRE * (isKept(read) ? read.value.low : FEWEST_LITRES);
  return (count) => (count > most ? `${count} (checked)` : count);
}

const dayOf = (on: string, firstDay: string | null): { readonly on?: string } =>
  on === "" || (firstDay !== null && on < firstDay) ? {} : { on };
