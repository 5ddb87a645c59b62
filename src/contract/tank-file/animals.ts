/** The animals of a tank file: which, how many, since when; and the fish among them by weight. */
import type { Spread } from "../../engine/types/estimate.ts";
import type { AnimalCount } from "../../engine/types/tank.ts";
import { readCount } from "../quantity/count.ts";
import { readDate } from "../quantity/date.ts";
import type { FindAnimal, FoundAnimal } from "../quantity/find-animal.ts";
import { refused } from "../quantity/outcome.ts";
import { readPlain } from "../quantity/plain.ts";
import { shown } from "../quantity/show.ts";
import { readSpecies } from "../quantity/species.ts";
import { FISH_FORM, FISH_SIZE_G } from "./assumptions.ts";
import { product, spread } from "./bands.ts";
import type { Entries } from "./entries.ts";
import type { Path } from "./finding.ts";
import type { TankFile } from "./schema.ts";
import type { Stated, Told, ToldFish } from "./stated.ts";

type AnimalEntry = NonNullable<TankFile["animals_present"]>[number];
type FishEntry = NonNullable<TankFile["fish"]>[number];

interface Scene {
  readonly entries: Entries;
  readonly find: FindAnimal;
  readonly waterL: number | null;
  readonly firstSeawaterOn: string | undefined;
}

export interface ReadAnimals extends Pick<Stated, "present" | "planned" | "fish" | "unknownAnimals"> {
  /** Heads of those there that live in sand: a floor said to have none is asked about. */
  readonly sandDwellers: number;
}

/** Tiny ones that nobody counts: `many` is taken as this many, which no figure hangs on. */
const MANY = 1000;

export function readAnimals(file: TankFile, scene: Scene): ReadAnimals {
  const unknown: string[] = [];
  const fish: ToldFish[] = [];
  let sandDwellers = 0;
  const list = (key: "animals_present" | "animals_planned" | "fish"): AnimalCount[] =>
    (file[key] ?? []).flatMap((entry: AnimalEntry | FishEntry, i) => {
      const path: Path = [key, i];
      const future = key === "animals_planned" ? ("planned" as const) : ("refuse" as const);
      const animal = animalOf(entry.animal, [...path, "animal"], scene, unknown);
      const count = countOf(entry.count, [...path, "count"], scene);
      const notBefore = future === "planned" ? null : (scene.firstSeawaterOn ?? null);
      const on = scene.entries.read([...path, "on"], entry.on, (text, context) =>
        readDate(text, { ...context, today: scene.entries.context.today, future, notBefore }),
      );
      const isFish = key === "fish" || (key === "animals_present" && animal?.group === "fish");
      const eachG = isFish ? weightOf(entry, animal, path, scene) : undefined;
      if (isFish && count > 0) fish.push({ count, eachG });
      if (key === "animals_present" && (animal?.needs?.sandDepthMmMin ?? 0) > 0) sandDwellers += count;
      return animal === undefined || count === 0 ? [] : [{ id: animal.id, count, on: on ?? null }];
    });
  const present = [...list("animals_present"), ...list("fish")];
  const planned = list("animals_planned");
  twice(file, present, scene);
  const saidFish = file.fish !== undefined || fish.length > 0;
  return {
    present,
    planned,
    fish: saidFish ? fish : undefined,
    unknownAnimals: [...new Set(unknown)],
    sandDwellers,
  };
}

function animalOf(
  name: string | undefined,
  path: Path,
  { entries, find }: Scene,
  unknown: string[],
): FoundAnimal | undefined {
  if (name === undefined || name === "") return undefined;
  const species = entries.read(path, name, (text, { label }) => readSpecies(text, find, label));
  if (species === undefined) return undefined;
  if (species.kind === "known") return species.animal;
  unknown.push(species.name);
  return undefined;
}

function countOf(value: number | string | undefined, path: Path, { entries, waterL }: Scene): number {
  const head = entries.read(path, value, (text, context) => readCount(text, { ...context, waterL }));
  if (head === undefined) return 1;
  return head.kind === "many" ? MANY : head.count;
}

function weightOf(
  entry: FishEntry,
  animal: FoundAnimal | undefined,
  path: Path,
  { entries }: Scene,
): Told | undefined {
  const weight = entries.told([...path, "weight_g"], entry.weight_g, (text, context) =>
    readPlain("mass_g", text, { ...context, unit: "g" }),
  );
  if (weight !== undefined) return weight;
  const length = entries.told([...path, "length_cm"], entry.length_cm, (text, context) =>
    readPlain("length_cm", text, { ...context, unit: "cm" }),
  );
  if (length !== undefined)
    return { ...product(FISH_FORM, length, length, length), how: `${length.how} long` };
  const usual: Spread | undefined = animal?.liveWetMassG;
  if (entry.size !== undefined) {
    const said = FISH_SIZE_G[entry.size];
    return { ...(usual === undefined ? said : within(usual, entry.size)), how: `${entry.size}` };
  }
  return usual === undefined ? undefined : { ...usual, how: `usual weight of a ${animal?.commonName}` };
}

/** Small, medium or large for its kind: the lower, middle or upper part of the kind's range. */
function within({ low, central, high }: Spread, size: "small" | "medium" | "large"): Spread {
  const between = (a: number, b: number) => Math.sqrt(a * b);
  if (size === "small") return spread(0.7 * low, between(low, central), central);
  if (size === "medium") return spread(between(low, central), central, between(central, high));
  return spread(central, between(central, high), 1.3 * high);
}

/** The same animal under `fish` and under `animals_present` would be counted twice. */
function twice(file: TankFile, present: readonly AnimalCount[], { entries }: Scene): void {
  const names = new Set((file.fish ?? []).map(({ animal }) => animal?.trim().toLowerCase()));
  file.animals_present?.forEach(({ animal }, i) => {
    if (!names.has(animal.trim().toLowerCase()) || present.length === 0) return;
    const text = `Animal "${shown(animal)}": listed under fish too. Keep it in one place`;
    entries.take(
      ["animals_present", i, "animal"],
      refused({ text: animal, unit: null }, { kind: "DUPLICATE", text }),
    );
  });
}
