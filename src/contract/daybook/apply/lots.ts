/**
 * Heads of a tank by lots that came together: those of its answers, and each coming since, under the names they are
 * known by today, less those found dead or moved out. A loss takes from lots of its last three days first, as arrivals
 * die soonest, then from the oldest. Feared losses take nothing: nothing was found.
 */

import { daysBetween } from "../../quantity/calendar.ts";
import { readCount } from "../../quantity/count.ts";
import type { FindAnimal } from "../../quantity/find-animal.ts";
import { isKept } from "../../quantity/outcome.ts";
import type { Preferences } from "../../quantity/preferences.ts";
import { readSpecies } from "../../quantity/species.ts";
import { preferencesOf } from "../../tank-file/preferences-of.ts";
import type { TankFile } from "../../tank-file/schema.ts";
import { byDay } from "../by-day.ts";
import { type Coming, type Going, isComing, isGoing } from "../comings.ts";
import type { DaybookEntry } from "../kinds.ts";
import { knownToday, type OlderLot } from "../known-today.ts";
import { type ApplyScene, type Given, isNews } from "./scene.ts";

type Heads = Coming | Going | Extract<DaybookEntry, { kind: "identification" }>;

export interface HeadsLot {
  /** Place among the answers (see `places`), or the entry it came by. */
  readonly from: number | string;
  /** Day it came; empty where it is older than the daybook. */
  readonly on: string;
  /** Null where the catalogue does not know it: then `name` tells it from others. */
  readonly animal: string | null;
  readonly name: string;
  /** As it came, and what is left of it. */
  readonly came: number;
  count: number;
}

export interface Lots {
  readonly lots: readonly HeadsLot[];
  /** Gone by the daybook, but never on record, by kind. */
  readonly unexplained: ReadonlyMap<string, number>;
}

/** An answer's animals in one row: `animals_present`, then `fish`. */
export function places(document: TankFile): {
  readonly list: "animals_present" | "fish";
  readonly index: number;
  readonly name: string | undefined;
  readonly count: number | string | undefined;
}[] {
  const of = (list: "animals_present" | "fish") =>
    (document[list] ?? []).map(({ animal: name, count }, index) => ({ list, index, name, count }));
  return [...of("animals_present"), ...of("fish")];
}

/** Tiny ones that nobody counts; as the tank file's reader takes them. */
const MANY = 1000;
const FRESH_DAYS = 3;

/** Heads of the answers, under the kinds that they name. */
export function olderLots(document: TankFile, find: FindAnimal): OlderLot[] {
  const preferences = preferencesOf(document.preferences);
  return places(document).map(({ name, count }, ref) => ({
    ref,
    animal: idOf(name, find),
    count: headsOf(count, preferences),
  }));
}

function headsOf(count: number | string | undefined, preferences: Preferences): number {
  if (count === undefined) return 1;
  const read = readCount(`${count}`, { preferences });
  if (!isKept(read)) return 0;
  return read.value.kind === "many" ? MANY : read.value.count;
}

export function idOf(name: string | undefined, find: FindAnimal): string | null {
  if (name === undefined || name.trim() === "") return null;
  const outcome = readSpecies(name, find);
  return isKept(outcome) && outcome.value.kind === "known" ? outcome.value.animal.id : null;
}

/** Heads as they stand at the end of `until`; entries after it are left out, but what they say of kinds is known. */
export function lotsOf(
  document: TankFile,
  entries: readonly DaybookEntry[],
  { today, findAnimal, since }: ApplyScene,
  until: string = today,
): Lots {
  const news = (id: string | null, entry: DaybookEntry): boolean =>
    isNews(entry, givenFor(document, { findAnimal, since }, id));
  const dated = byDay(entries).filter(
    (entry): entry is Heads =>
      entry.on <= today &&
      (isComing(entry) || isGoing(entry) || entry.kind === "identification") &&
      news(entry.kind === "identification" ? entry.body.was : entry.body.animal, entry),
  );
  const known = knownToday(dated, olderLots(document, findAnimal));
  const lots: HeadsLot[] = places(document).flatMap(({ name = "" }, ref) =>
    known.older(ref).map(({ animal, count }) => ({ from: ref, on: "", animal, name, came: count, count })),
  );
  const unexplained = new Map<string, number>();
  const present = dated.filter(({ on }) => on <= until);
  for (const entry of present) {
    if (!isComing(entry)) continue;
    const { animal_text: name } = entry.body;
    for (const { animal, count } of known.added(entry))
      lots.push({ from: entry.id, on: entry.on, animal, name, came: count, count });
  }
  // Of one day what came is counted before what went, in whatever order it was logged.
  for (const entry of present) {
    if (!isGoing(entry)) continue;
    const animal = known.of(entry, entry.body.animal);
    const over = take(lots, animal, entry.body.animal_text, entry.on, entry.body.count);
    const kind = animal ?? entry.body.animal_text;
    if (over > 0) unexplained.set(kind, (unexplained.get(kind) ?? 0) + over);
  }
  return { lots, unexplained };
}

/** When it was told of an animal's kind how many live there: fish have a list of their own. */
export function givenFor(
  document: TankFile,
  { findAnimal, since }: Pick<ApplyScene, "findAnimal" | "since">,
  animal: string | null,
): Given | undefined {
  const fish = animal !== null && document.fish !== undefined && groupOf(animal, findAnimal) === "fish";
  return fish ? since.fish : since.animals_present;
}

/** Takes heads from lots; what could not be taken is given back. */
function take(
  lots: readonly HeadsLot[],
  animal: string | null,
  name: string,
  on: string,
  count: number,
): number {
  const there = lots.filter(
    (lot) =>
      lot.on <= on &&
      (animal === null ? lot.animal === null && sameName(lot.name, name) : lot.animal === animal),
  );
  const fresh = (lot: HeadsLot) => lot.on !== "" && daysBetween(lot.on, on) <= FRESH_DAYS;
  const inTurn = [...there.filter(fresh).toReversed(), ...there.filter((lot) => !fresh(lot))];
  let left = count;
  for (const lot of inTurn) {
    const taken = Math.min(left, lot.count);
    lot.count -= taken;
    left -= taken;
  }
  return left;
}

const sameName = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

export function groupOf(id: string, find: FindAnimal): string | undefined {
  const search = find(id);
  return search.kind === "one" ? search.animal.group : undefined;
}

/** Heads of a kind at the end of a day; before the answers were given, what came since is taken off again. */
export function headsOn(
  document: TankFile,
  entries: readonly DaybookEntry[],
  scene: ApplyScene,
  animal: string,
  day: string,
): number {
  const sum = ({ lots }: Lots) =>
    lots.reduce((all, lot) => (lot.animal === animal ? all + lot.count : all), 0);
  const given = givenFor(document, scene, animal);
  if (given === undefined || day >= given.on) return sum(lotsOf(document, entries, scene, day));
  const older = olderLots(document, scene.findAnimal).reduce(
    (all, lot) => (lot.animal === animal ? all + lot.count : all),
    0,
  );
  const known = knownToday(byDay(entries));
  const since = entries.filter((entry) => entry.on > day && !isNews(entry, given));
  const back = since.reduce((all, entry) => {
    if (isComing(entry)) {
      const own = known.added(entry).reduce((n, lot) => (lot.animal === animal ? n + lot.count : n), 0);
      return all - own;
    }
    return isGoing(entry) && known.of(entry, entry.body.animal) === animal ? all + entry.body.count : all;
  }, older);
  return Math.max(0, back);
}
