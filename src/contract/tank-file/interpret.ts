/** From a file of the right shape to what it says: every entry through its reader, findings and notices gathered. */

import { readCoverage } from "../quantity/coverage.ts";
import { readDate } from "../quantity/date.ts";
import { readFeedAmount } from "../quantity/feeding.ts";
import type { FindAnimal } from "../quantity/find-animal.ts";
import { readPh } from "../quantity/ph.ts";
import { type PlainKey, readPlain } from "../quantity/plain.ts";
import { readSalinity } from "../quantity/salinity.ts";
import { readSandDepth } from "../quantity/sand-depth.ts";
import { readSpecies } from "../quantity/species.ts";
import { readTemperature } from "../quantity/temperature.ts";
import { readName, readNote } from "../quantity/text.ts";
import { readAbsences } from "./absences.ts";
import { readAnimals } from "./animals.ts";
import { readBoxes } from "./boxes.ts";
import { askAboutConflicts } from "./conflicts.ts";
import { Entries, type EntryContext } from "./entries.ts";
import type { Finding, Notice, Path } from "./finding.ts";
import { readReadings } from "./readings.ts";
import type { TankFile } from "./schema.ts";
import { readShop } from "./shop.ts";
import type { AmountField, Stated, Told, ToldFood } from "./stated.ts";

/** What a tank without a name is called. */
export const UNNAMED = "Unnamed tank";

interface Interpretation {
  readonly stated: Stated;
  readonly findings: readonly Finding[];
  readonly notices: readonly Notice[];
}

type Amountish = string | number | undefined;

export function interpret(
  file: TankFile,
  context: EntryContext & { readonly findAnimal: FindAnimal },
): Interpretation {
  const asOf = new Entries(context);
  const { findAnimal } = context;
  const today =
    asOf.read(["as_of"], file.as_of, (text, c) =>
      readDate(text, { ...c, today: context.today, future: "refuse" }),
    ) ?? context.today;
  // All else in the file is judged from the day it speaks of.
  const entries = new Entries({ ...context, today });
  const plain = (path: Path, value: Amountish, key: PlainKey, unit: string): Told | undefined =>
    entries.told(path, value, (text, c) => readPlain(key, text, { ...c, unit }));
  const boxes = readBoxes(file, entries);
  const waterL = boxes.waterL?.central ?? boxes.display.waterL?.central ?? null;
  const firstSeawaterOn = entries.read(["first_seawater_on"], file.first_seawater_on, (text, c) =>
    readDate(text, { ...c, today, future: "planned" }),
  );
  const foods = (path: Path, list: NonNullable<TankFile["feeding"]>["foods"]): ToldFood[] =>
    (list ?? []).map(({ kind, g_per_day }, i) => ({
      kind,
      gPerDay: entries.told([...path, i, "g_per_day"], g_per_day, (text, c) =>
        readFeedAmount(text, { ...c, waterL }),
      ),
    }));
  const ids = (key: "wishes" | "exclusions" | "stock_list"): string[] =>
    (file[key] ?? []).flatMap((name, i) => {
      const species =
        name === ""
          ? undefined
          : entries.read([key, i], name, (text, { label }) => readSpecies(text, findAnimal, label));
      return species?.kind === "known" ? [species.animal.id] : [];
    });
  const { sandDwellers, ...animals } = readAnimals(file, {
    entries,
    find: findAnimal,
    waterL,
    firstSeawaterOn,
  });
  const stocked = animals.present.length > 0 || (animals.fish?.length ?? 0) > 0;
  const { rock, floor, light, feeding, equipment, care } = file;
  const amounts: Partial<Record<AmountField, Told>> = defined({
    rockKg: plain(["rock", "rock_kg"], rock?.rock_kg, "rock_kg", "kg"),
    sandDepthMm: entries.told(["floor", "depth_mm"], floor?.depth_mm, (t, c) =>
      readSandDepth(t, { ...c, unit: "mm", sandDwellers }),
    ),
    sandM2: plain(["floor", "area_m2"], floor?.area_m2, "area_m2", "m2"),
    lightHours: plain(["light", "hours_per_day"], light?.hours_per_day, "hours", "h"),
    par: plain(["light", "par_umol_m2_s"], light?.par_umol_m2_s, "par", "PAR"),
    temperatureC: entries.told(["temperature_c"], file.temperature_c, (t, c) =>
      readTemperature(t, { ...c, unit: "C" }),
    ),
    salinityPsu: entries.told(["salinity_psu"], file.salinity_psu, (t, c) =>
      readSalinity(t, { ...c, unit: "psu" }),
    ),
    ph: entries.told(["ph"], file.ph, readPh),
    filterChangeDays: plain(["equipment", "filter_change_days"], equipment?.filter_change_days, "days", "d"),
    phosphateRemoverG: plain(
      ["equipment", "phosphate_remover_g"],
      equipment?.phosphate_remover_g,
      "mass_g",
      "g",
    ),
    waterChangePercent: plain(["care", "water_change_percent"], care?.water_change_percent, "percent", "%"),
    waterChangeEveryDays: plain(
      ["care", "water_change_every_days"],
      care?.water_change_every_days,
      "days",
      "d",
    ),
    wipeGlassEveryDays: plain(["care", "wipe_glass_every_days"], care?.wipe_glass_every_days, "days", "d"),
  });
  const refugium = equipment?.refugium;
  const stated: Stated = {
    name: entries.read(["name"], file.name, (text) => readName(text, "Name")) ?? UNNAMED,
    asOf: today,
    ...boxes,
    firstSeawaterOn,
    rockStart: rock?.start,
    floorKind: floor?.kind,
    grain: floor?.grain,
    amounts,
    lightStrength: light?.strength,
    phScale: file.ph_scale,
    foods: feeding?.foods === undefined ? undefined : foods(["feeding", "foods"], feeding.foods),
    leftAfterTwoMinutes: feeding?.left_after_two_minutes,
    handFed: foods(["feeding", "hand_fed_to_crew"], feeding?.hand_fed_to_crew),
    ...animals,
    mechanicalFilter:
      equipment?.mechanical_filter === undefined
        ? undefined
        : equipment.mechanical_filter === "none"
          ? "none"
          : "some",
    refugium:
      refugium === undefined
        ? null
        : {
            lightHours: plain(
              ["equipment", "refugium", "light_hours_per_day"],
              refugium.light_hours_per_day,
              "hours",
              "h",
            )?.central,
            mostG: plain(
              ["equipment", "refugium", "macroalgae_most_g"],
              refugium.macroalgae_most_g,
              "mass_g",
              "g",
            )?.central,
          },
    answers: defined({
      caves: yes(rock?.caves),
      secured: yes(rock?.secured),
      skimmer: yes(equipment?.skimmer),
      lid: yes(equipment?.lid),
      pumpGuards: yes(equipment?.pump_guards),
      corals: yes(file.corals),
    }),
    sourceWater: file.source_water,
    keeperLevel: file.keeper_experience,
    medicines: (file.medicines ?? []).map((name) => name.trim()).filter((name) => name !== ""),
    trouble: file.trouble?.trim() || null,
    sightings: defined(
      Object.fromEntries(
        Object.entries(file.sightings ?? {}).map(([growth, value]) => [
          growth,
          entries.read(["sightings", growth], value, readCoverage)?.cover,
        ]),
      ),
    ),
    readings: readReadings(file, entries, stocked, firstSeawaterOn),
    wishes: ids("wishes"),
    exclusions: ids("exclusions"),
    shop: readShop(file, entries, findAnimal),
    absences: readAbsences(file, entries),
    stockList: file.stock_list === undefined ? null : ids("stock_list"),
    priceBandMax: file.price_band_max ?? 4,
  };
  askAboutConflicts(file, stated, entries);
  entries.read(["note"], file.note, (text) => readNote(text, "Note"));
  return {
    stated,
    findings: [...asOf.findings, ...entries.findings],
    notices: [...asOf.notices, ...entries.notices],
  };
}

const yes = (value: boolean | "yes" | "no" | undefined): boolean | undefined =>
  value === undefined ? undefined : value === true || value === "yes";

/** Without the entries that are absent. */
function defined<T extends object>(values: T): { [K in keyof T]?: NonNullable<T[K]> } {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: NonNullable<T[K]>;
  };
}
