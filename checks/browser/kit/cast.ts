/**
 * The tanks that the checks walk through, put into the store before the program starts: the invented ones that come
 * with it, and others in the states that pages have to bear. All of it is invented.
 */
import { addDemonstration } from "../../../src/server/demonstration/add.ts";
import { openStore } from "../../../src/store/open.ts";
import type { Json, Store } from "../../../src/store/store.ts";
import { PNG } from "../../kit/pictures.ts";
import { addCounted } from "./counted-tank.ts";

export interface Cast {
  /** A demonstration tank that comes with the program, with two months of readings. */
  readonly demo: string;
  /** Only the first question answered. */
  readonly first: string;
  /** Copper in the water: no animal is proposed. */
  readonly nothingYet: string;
  /** A reading that kills. */
  readonly danger: string;
  /** Names that are long, of other scripts, and of a page's own signs. */
  readonly longNames: string;
  readonly removed: string;
  /** Trouble told, and its advice declined with a reason. */
  readonly declined: string;
  /** Heads counted, losses, more seen than on record, bare glass. */
  readonly counted: string;
  /** A loss of the counted tank, with a picture. */
  readonly pictured: string;
  /** A reading of the demonstration tank. */
  readonly reading: string;
}

/** The day the checks run on, as `ENVIRONMENT` tells the program. */
export const TODAY = "2026-06-15";
const STAMP = { at: `${TODAY}T09:00:00.000Z`, by: "checks" };

const OWN: Readonly<
  Record<Exclude<keyof Cast, "demo" | "reading" | "counted" | "pictured">, { keeper: string; facts: Json }>
> = {
  first: { keeper: "Nell", facts: { name: "Window tank", water_l: "113" } },
  nothingYet: {
    keeper: "Nell",
    facts: {
      name: "Quarantine box",
      water_l: "60 L",
      first_seawater_on: "2026-02-01",
      medicines: ["copper"],
      trouble: "copper treatment since Monday",
    },
  },
  danger: {
    keeper: "Oke",
    facts: {
      name: "Stairs reef",
      water_l: "240 L",
      first_seawater_on: "2025-03-01",
      fish: [{ animal: "clownfish", count: 2 }],
      animals_present: [{ animal: "trochus-snail", count: 4 }],
      readings: [
        { on: "2026-06-14", tan_mg_n_per_l: "1.5", ph: "8.2", temperature_c: "26", no3_mg_per_l: "12 NO3" },
      ],
    },
  },
  longNames: {
    keeper: "<script>window.planted = 1</script> Überwasserström-Nordmann von und zu Hohenlohe",
    facts: {
      name: "水槽 ‮حوض‬ Pneumonoultramicroscopicsilicovolcanoconiosis <img src=x onerror=window.planted=1> \"'&",
      note: "<b>not bold</b> ".repeat(20),
      water_l: "200 L",
      first_seawater_on: "2025-09-01",
      floor: { kind: "sand", depth_mm: "40 mm", grain: "fine" },
      fish: [{ animal: "clownfish", count: 2 }],
    },
  },
  declined: {
    keeper: "Oke",
    facts: { name: "Loft tank", water_l: "120 L", trouble: "one shrimp not seen since Friday" },
  },
  removed: { keeper: "Oke", facts: { name: "Sold tank", water_l: "90 L" } },
};

const DECLINE = {
  ...{ id: "00000000-0000-4000-8000-0000000000d1", kind: "decline", on: "2026-06-13" },
  body: {
    ...{ observed_text: "", observed_at: null, note: null, advice: "trouble" },
    ...{ reason: "It hides after every moult.", rests_on: "one shrimp not seen since Friday" },
  },
};

async function addOwn(store: Store): Promise<Record<keyof typeof OWN, string>> {
  const ids = Object.keys(OWN).map(
    (name, i) => [name, `00000000-0000-4000-8000-00000000000${i + 1}`] as const,
  );
  for (const [name, id] of ids) {
    const { keeper, facts } = OWN[name as keyof typeof OWN];
    const { id: keeperId } = await store.keeperNamed(keeper, `keeper-${name}`, STAMP);
    await store.addTank(
      { id, keeperId, demonstration: false, facts: { grazewell_tank: 1, ...facts } },
      STAMP,
    );
  }
  return Object.fromEntries(ids) as Record<keyof typeof OWN, string>;
}

/** Gives a tank's last loss a picture. */
async function addPictured(store: Store, tank: string): Promise<string> {
  const [loss] = await store.entries(tank, { kind: "loss", limit: 1 });
  if (loss === undefined) throw new Error("the counted tank has no loss");
  const size = { type: "image/png", widthPx: 24, heightPx: 16 };
  const picture = { id: "picture-of-the-cast", entryId: loss.id, ...size, shows: "", image: PNG };
  await store.addPicture(picture, 4, STAMP);
  return loss.id;
}

/** Makes the store at `place` with the cast in it, and closes it. */
export async function makeCast(place: string): Promise<Cast> {
  const store = await openStore(place);
  try {
    await addDemonstration(store, TODAY, STAMP.at);
    const own = await addOwn(store);
    const counted = await addCounted(store, STAMP);
    const pictured = await addPictured(store, counted);
    await store.setKept(own.removed, 1, false, STAMP);
    await store.addEntries(own.declined, [DECLINE], STAMP);
    for (const { id, demonstration } of await store.tanks()) {
      const [reading] = demonstration ? await store.entries(id, { kind: "reading", limit: 1 }) : [];
      if (reading !== undefined) return { ...own, counted, pictured, demo: id, reading: reading.id };
    }
    throw new Error("no demonstration tank has readings");
  } finally {
    await store.close();
  }
}
