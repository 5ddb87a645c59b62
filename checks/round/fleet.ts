/**
 * An invented fleet: tanks as a shop's adviser might look after, with the noise of ordinary keeping, and ten planted
 * emergencies. Written from what befalls tanks, not from what the round weighs: past troubles that are over, odd
 * readings that are usual there, small losses, short outages and weeks of silence are among the ordinary ones.
 * Everything is typed text, read by the one reader. Limits: a fleet of our invention is no fleet of keepers.
 */
import { findAnimal } from "../../src/catalogue/index.ts";
import type { EntryKind } from "../../src/contract/daybook/kinds.ts";
import { type EntryText, readEntry } from "../../src/contract/daybook/read-entry.ts";
import { addDays } from "../../src/contract/quantity/calendar.ts";
import { NO_PREFERENCES } from "../../src/contract/quantity/preferences.ts";
import type { TankFile } from "../../src/contract/tank-file/schema.ts";
import type { Json, NewEntry } from "../../src/store/store.ts";
import { Chance } from "../kit/chance.ts";

export const EMERGENCIES = [
  "ammonia",
  "temperature",
  "salinity slip",
  "several kinds at the waterline",
  "several found dead",
  "copper with invertebrates",
  "many feared lost",
  "nitrite in a stocked tank",
  "silence after trouble",
  "power outage",
] as const;
export type Emergency = (typeof EMERGENCIES)[number];

export interface FleetTank {
  readonly id: string;
  readonly keeper: string;
  readonly document: TankFile;
  readonly entries: readonly NewEntry[];
  /** Of a planted one; else null. */
  readonly emergency: Emergency | null;
  /** Something goes on in it that an adviser would want to hear of now; planted ones too. */
  readonly worthActing: boolean;
}

const SNAILS = ["trochus-snail", "nassarius-snail", "dwarf-cerith-snail", "blue-legged-hermit"].filter(
  (id) => findAnimal(id).kind === "one",
);
const STREETS = ["Harbour", "Mill", "Orchard", "Station", "Chapel", "Quarry", "Meadow", "Canal"];
const ROOMS = ["hall", "kitchen", "office", "window", "stairs", "shop", "cellar", "school"];

interface Draft {
  readonly chance: Chance;
  readonly today: string;
  readonly heads: Map<string, number>;
  readonly lines: { readonly kind: EntryKind; readonly typed: EntryText; readonly daysAgo: number }[];
  /** Days since the keeper last wrote. */
  readonly lastAgo: number;
  readonly salinity: number;
  worth: boolean;
  /** Nothing lives in it, fish neither. */
  empty: boolean;
}

export function fleet(seed: number, today: string, count = 400): FleetTank[] {
  const chance = new Chance(seed, 77);
  const order = Array.from({ length: count }, (_, i) => i).sort((a, b) => hash(seed, a) - hash(seed, b));
  const planted = new Map(order.slice(0, EMERGENCIES.length).map((at, i) => [at, EMERGENCIES[i]!]));
  return Array.from({ length: count }, (_, at) => oneTank(at, chance, today, planted.get(at) ?? null));
}

/** A place in a shuffled row, the same for a seed. */
const hash = (seed: number, at: number): number => new Chance(seed * 1009 + at, 5).between(0, 1);

function oneTank(at: number, chance: Chance, today: string, emergency: Emergency | null): FleetTank {
  const heads = new Map(SNAILS.map((id): [string, number] => [id, chance.is(0.7) ? chance.whole(2, 6) : 0]));
  // What is planted has to have somebody to befall.
  if (emergency !== null) for (const id of SNAILS.slice(0, 2)) heads.set(id, chance.whole(4, 6));
  const lapsed = emergency === null && chance.is(0.12);
  const every = chance.whole(3, 12);
  const draft: Draft = {
    ...{ chance, today, heads, lines: [], worth: emergency !== null, empty: false },
    lastAgo:
      emergency === "silence after trouble"
        ? chance.whole(38, 60)
        : lapsed
          ? chance.whole(28, 120)
          : chance.whole(0, Math.min(every, 9)),
    salinity: chance.between(34, 35.6),
  };
  usualReadings(draft, every);
  const looksLike = emergency === null && chance.is(0.06) ? chance.pick(EMERGENCIES) : null;
  if (looksLike !== null) lookAlike(draft, looksLike);
  else if (emergency === null) ordinaryEvents(draft);
  else plant(draft, emergency);
  const age = chance.whole(150, 1500);
  return {
    id: `tank-${String(at).padStart(3, "0")}`,
    keeper: `${"ABCDEFGHIJKLMNOPQRST"[at % 20]}. Invented`,
    document: documentOf(at, draft, age),
    entries: draft.lines.map((line, i) => entryOf(line, `${at}-${i}`, draft)),
    emergency,
    worthActing: draft.worth,
  };
}

/** Begins like an emergency, and is none: over and looked after, or in a tank where it harms nobody. */
function lookAlike(draft: Draft, like: Emergency): void {
  const { chance, lines, heads, lastAgo, salinity } = draft;
  const add = (kind: EntryKind, typed: EntryText, daysAgo: number) => lines.push({ kind, typed, daysAgo });
  const fine = (daysAgo: number) =>
    add("reading", reading("temperature_c", chance.between(24.5, 25.5).toFixed(1), "C"), daysAgo);
  const kinds = [...heads].filter(([, count]) => count > 0).map(([id]) => id);
  switch (like) {
    case "ammonia":
    case "nitrite in a stocked tank": {
      // Still being started: nothing lives in it.
      heads.clear();
      draft.empty = true;
      add("reading", reading("no2_mg_per_l", "2", "mg/L as NO2"), lastAgo);
      const dose = { ...reading("tan_mg_n_per_l", "2", "mg/L as N"), note: "fishless start" };
      return void add("reading", dose, lastAgo);
    }
    case "temperature":
      add("reading", reading("temperature_c", "31.5", "C"), lastAgo + 1);
      return void fine(lastAgo);
    case "salinity slip":
      add("reading", reading("salinity_psu", (salinity - 4).toFixed(1), "psu"), lastAgo + 1);
      return void add("reading", reading("salinity_psu", salinity.toFixed(1), "psu"), lastAgo);
    case "several kinds at the waterline":
      add("sign", { sign: "waterline_snails", count: "5", kinds_seen: "2" }, lastAgo + 2);
      return void fine(lastAgo);
    case "several found dead":
      for (const kind of kinds.slice(0, 2)) {
        add("loss", { animal: kind, count: "2", certainty: "found" }, lastAgo + 21);
      }
      for (const days of [20, 13, 10, 3]) fine(lastAgo + days);
      return;
    case "copper with invertebrates":
      // A tank of fish alone, being treated.
      heads.clear();
      return void add("treatment", { substance: "copper sulfate", step: "started" }, lastAgo);
    case "many feared lost":
      for (const kind of kinds) {
        const count = heads.get(kind) ?? 0;
        add("loss", { animal: kind, count: String(count), certainty: "feared" }, lastAgo + 1);
        add("head_count", { animal: kind, seen: String(count), torch: "yes" }, lastAgo);
      }
      return;
    case "silence after trouble": {
      add("sign", { sign: "ill_animals", count: "2" }, lastAgo + 40);
      for (const days of [32, 25, 18, 4]) fine(lastAgo + days);
      return;
    }
    case "power outage":
      add("outage", { of: "power", hours: "9 h" }, lastAgo + 2);
      return void fine(lastAgo);
  }
}

function documentOf(at: number, { chance, today, heads, empty }: Draft, age: number): TankFile {
  return {
    grazewell_tank: 1,
    name: `${STREETS[at % STREETS.length]} St ${1 + Math.floor(at / 8)}, ${chance.pick(ROOMS)} (invented)`,
    water_l: `${chance.whole(60, 500)} L`,
    first_seawater_on: addDays(today, -age),
    fish: empty ? [] : [{ animal: "clownfish", count: 2 }],
    animals_present: [...heads].flatMap(([animal, count]) => (count === 0 ? [] : [{ animal, count }])),
  };
}

/** Read as any door would; an invented line that can't be read is a fault of the check. */
function entryOf(
  { kind, typed, daysAgo }: Draft["lines"][number],
  id: string,
  { today, empty }: Pick<Draft, "today" | "empty">,
): NewEntry {
  const on = addDays(today, -daysAgo);
  const read = readEntry(
    kind,
    { ...typed, observed: on },
    {
      ...{ preferences: NO_PREFERENCES, today, now: null, zone: null, stocked: !empty, notBefore: null },
      ...{ findAnimal, onRecord: () => 1000, waterL: 200 },
    },
  );
  if (!read.ok) throw new Error(`${kind} ${JSON.stringify(typed)}: ${read.doubts[0]?.message.text}`);
  return { id, kind, on: read.on, body: read.body as unknown as Json };
}

const reading = (quantity: string, text: string, unit: string): EntryText => ({ quantity, text, unit });

/** Months of ordinary tests, each tank on a level of its own. */
function usualReadings({ chance, lines, lastAgo, salinity }: Draft, every: number): void {
  const level = {
    no3: chance.is(0.1) ? chance.between(40, 70) : chance.between(1, 20),
    po4: chance.between(0.02, 0.15),
    alk: chance.between(7.5, 9),
    temp: chance.between(24.2, 26.4),
  };
  const tests = chance.whole(4, 22);
  for (let i = tests - 1; i >= 0; i -= 1) {
    const daysAgo = lastAgo + i * every;
    const add = (typed: EntryText) => lines.push({ kind: "reading", typed, daysAgo });
    add(reading("temperature_c", (level.temp + chance.between(-0.6, 0.6)).toFixed(1), "C"));
    add(reading("salinity_psu", (salinity + chance.between(-0.5, 0.5)).toFixed(1), "psu"));
    if (i % 2 === 0) {
      add(reading("no3_mg_per_l", (level.no3 * chance.between(0.85, 1.18)).toFixed(0), "mg/L as NO3"));
      add(reading("po4_mg_per_l", (level.po4 * chance.between(0.8, 1.2)).toFixed(2), "mg/L as PO4"));
      add(reading("alkalinity_dkh", (level.alk + chance.between(-0.4, 0.4)).toFixed(1), "dKH"));
    }
    if (i % 3 === 0) lines.push({ kind: "chore", typed: { chore: "water_change", amount: "10 %" }, daysAgo });
  }
}

/** What befalls tanks that need nobody today; some of it an adviser would still want to hear of. */
function ordinaryEvents(draft: Draft): void {
  const { chance, lines, heads, lastAgo } = draft;
  const within = (most: number) => lastAgo + chance.whole(0, most);
  const add = (kind: EntryKind, typed: EntryText, daysAgo: number) => lines.push({ kind, typed, daysAgo });
  const kinds = [...heads].filter(([, count]) => count > 1).map(([id]) => id);
  const kind = kinds[0];
  if (kind !== undefined && chance.is(0.14)) {
    const daysAgo = within(30);
    add("loss", { animal: kind, count: "1", certainty: "found" }, daysAgo);
    if (daysAgo <= 7) draft.worth = true;
  }
  if (kind !== undefined && chance.is(0.06)) {
    add("loss", { animal: kind, count: String(chance.whole(1, 2)), certainty: "feared" }, within(20));
  }
  if (chance.is(0.08)) add("sign", { sign: "waterline_snails", count: "1" }, within(10));
  if (chance.is(0.05)) add("sign", { sign: "hiding" }, within(10));
  if (chance.is(0.04)) add("sign", { sign: "white_dots" }, within(20));
  if (chance.is(0.04)) add("sign", { sign: "fallen_snails", count: "1" }, within(15));
  if (chance.is(0.12)) {
    const score = chance.whole(1, 3);
    add(
      "growth",
      { growth: chance.pick(["hair_algae", "cyanobacteria", "diatoms"]), score: String(score) },
      within(20),
    );
  }
  if (chance.is(0.06)) add("outage", { of: "power", hours: `${chance.whole(1, 3)} h` }, within(25));
  pastTroubles(draft);
}

/** Troubles that are over, as the entries after them show; and slips of the pen. */
function pastTroubles({ chance, lines, heads, lastAgo }: Draft): void {
  const add = (kind: EntryKind, typed: EntryText, daysAgo: number) => lines.push({ kind, typed, daysAgo });
  const clear = reading("tan_mg_n_per_l", "<0.05", "mg/L as N");
  if (chance.is(0.04)) {
    add("reading", reading("tan_mg_n_per_l", chance.between(0.4, 1.2).toFixed(1), "mg/L as N"), lastAgo + 20);
    for (const days of [14, 9, 2]) add("reading", clear, lastAgo + days);
  }
  if (chance.is(0.03)) {
    const [kind] = [...heads].find(([, count]) => count > 3) ?? [];
    if (kind !== undefined) add("loss", { animal: kind, count: "3", certainty: "found" }, lastAgo + 45);
    for (const days of [44, 37, 30, 20]) add("reading", clear, lastAgo + days);
    for (const days of [30, 21, 10]) {
      add("reading", reading("temperature_c", "25.2", "C"), lastAgo + days);
    }
  }
  if (chance.is(0.04)) {
    add("treatment", { substance: "copper sulfate", step: "started" }, lastAgo + 60);
    add("treatment", { substance: "copper sulfate", step: "ended" }, lastAgo + 30);
  }
  // A reading far off that the next day's did not bear out.
  if (chance.is(0.04)) {
    add("reading", reading("salinity_psu", "31.5", "psu"), lastAgo + 2);
    add("reading", reading("salinity_psu", "34.8", "psu"), lastAgo);
  }
  // A test that a reader calls unusual, once.
  if (chance.is(0.05)) add("reading", reading("ph", chance.pick(["7.6", "8.7"]), ""), lastAgo);
}

function plant({ chance, lines, heads, lastAgo, salinity }: Draft, emergency: Emergency): void {
  const add = (kind: EntryKind, typed: EntryText, daysAgo: number) => lines.push({ kind, typed, daysAgo });
  // Not later than the last ordinary line, or on the days after it: what came last is what counts.
  const lately = chance.whole(0, Math.min(2, lastAgo));
  const kinds = [...heads].filter(([, count]) => count > 0).map(([id]) => id);
  switch (emergency) {
    case "ammonia":
      return void add(
        "reading",
        reading("tan_mg_n_per_l", chance.between(0.4, 2).toFixed(1), "mg/L as N"),
        lately,
      );
    case "temperature":
      return void add(
        "reading",
        reading("temperature_c", chance.between(30.6, 32.5).toFixed(1), "C"),
        lately,
      );
    case "salinity slip": {
      // At once, or in steps that each look small.
      const slip = chance.between(3.2, 5);
      if (chance.is(0.5)) {
        add("reading", reading("salinity_psu", (salinity - slip / 2).toFixed(1), "psu"), lately + 1);
      }
      return void add("reading", reading("salinity_psu", (salinity - slip).toFixed(1), "psu"), lately);
    }
    case "several kinds at the waterline":
      return void add(
        "sign",
        { sign: "waterline_snails", count: "6", kinds_seen: String(chance.whole(2, 3)) },
        lately,
      );
    case "several found dead":
      for (const kind of kinds.slice(0, 2)) {
        add("loss", { animal: kind, count: String(chance.whole(2, 3)), certainty: "found" }, lately);
      }
      return;
    case "copper with invertebrates":
      return void add("treatment", { substance: "copper sulfate", step: "started" }, lately);
    case "many feared lost":
      for (const kind of kinds) {
        const count = Math.ceil(0.8 * (heads.get(kind) ?? 0));
        add("loss", { animal: kind, count: String(count), certainty: "feared" }, lately);
      }
      return;
    case "nitrite in a stocked tank":
      return void add(
        "reading",
        reading("no2_mg_per_l", chance.between(0.8, 3).toFixed(1), "mg/L as NO2"),
        lately,
      );
    case "silence after trouble":
      add("loss", { animal: kinds[0] ?? "", count: "2", certainty: "found" }, lastAgo - 1);
      return void add("sign", { sign: "ill_animals", count: "2" }, lastAgo - 2);
    case "power outage":
      return void add("outage", { of: "power", hours: `${chance.whole(7, 18)} h` }, Math.max(0, lately - 1));
  }
}
