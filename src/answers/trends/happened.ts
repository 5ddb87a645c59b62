/** Happenings of the record as a trend names them, and those that could change the water at all. */
import { animalById } from "../../catalogue/index.ts";
import type { Happening, TankRecord } from "../../engine/types/record.ts";
import { counted } from "../words.ts";

export interface Happened {
  readonly on: string;
  readonly entry: string;
  readonly words: string;
  /** Could change a quantity for good: asked about. The rest is only shown beside the readings. */
  readonly asked: boolean;
}

/** A usual water change is part of the usual course; from this share on it is asked about. */
const LARGE_SHARE = 0.25;

export const happenedIn = ({ happenings }: TankRecord): readonly Happened[] =>
  happenings.map((one) => ({ on: one.on, entry: one.entry, ...wordsOf(one) }));

const CHORES: Readonly<Record<Extract<Happening, { kind: "chore" }>["chore"], string>> = {
  water_change: "water change",
  glass_wiped: "glass wiped",
  sand_siphoned: "sand siphoned",
  sand_stirred: "sand stirred",
  algae_removed: "algae pulled",
  filter_changed: "filter changed",
  sorbent_renewed: "sorbent renewed",
  refugium_harvested: "refugium harvested",
  fallen_snails_righted: "fallen snails righted",
};
const ROUTINE: ReadonlySet<string> = new Set([
  "glass_wiped",
  "fallen_snails_righted",
  "filter_changed",
  "sand_stirred",
]);
const CHANGED = {
  feed: "feed changed",
  light_hours: "hours of light changed",
  light_strength: "strength of light changed",
  skimmer: "skimmer changed",
  other: "something changed",
} as const;

function wordsOf(one: Happening): Pick<Happened, "words" | "asked"> {
  const heads = (animal: string, count: number) =>
    counted(count, animalById.get(animal)?.commonName ?? animal);
  switch (one.kind) {
    case "added":
      return { words: `${heads(one.animal, one.count)} added`, asked: true };
    case "lost_found":
      return { words: `${heads(one.animal, one.count)} found dead`, asked: true };
    case "lost_feared":
      return { words: `${heads(one.animal, one.count)} missing`, asked: true };
    case "moved_out":
      return { words: `${heads(one.animal, one.count)} moved out`, asked: true };
    case "chore": {
      const share = one.share === null ? "" : `, ${Math.round(100 * one.share)} %`;
      const large = one.chore !== "water_change" || (one.share ?? 0) >= LARGE_SHARE;
      return { words: `${CHORES[one.chore]}${share}`, asked: large && !ROUTINE.has(one.chore) };
    }
    case "changed":
      return { words: CHANGED[one.what], asked: true };
    case "treated":
      return { words: `treatment with ${one.substance} ${one.step}`, asked: true };
    case "apart":
      return { words: `${one.what} ${one.step}`, asked: one.what === "fallow" };
    case "dosed":
      return { words: "ammonia dosed", asked: true };
    case "outage":
      return { words: `${one.of === "power" ? "power" : one.of} out for ${one.hours} h`, asked: true };
  }
}
