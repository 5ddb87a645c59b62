/** The weeks ahead as figures: a quantity and oxygen at dawn, each with the band of every week. docs/model/ahead.md. */
import type { Spread } from "../types/estimate.ts";
import type { Figure, WorkingInput } from "../types/figure.ts";
import { figureId } from "../types/figure-id.ts";
import { factInput, parametersOf, spreadText, workedOut } from "../types/link.ts";
import type { Parameter } from "../types/parameter.ts";
import type { TankFacts } from "../types/tank.ts";
import { QUANTITIES, type QuantityId } from "./forecast.ts";

export interface AheadScene {
  readonly facts: TankFacts;
  readonly table: ReadonlyMap<string, Parameter>;
  readonly members: number;
  readonly days: number;
  /** ISO date of a week. */
  readonly dateOf: (week: number) => string;
}

/** Band of each week as shown; null where too few runs have any. */
export type WeekBands = readonly (Spread | null)[];

/** Parameters and facts that a quantity hangs on most, of the balance's 141 symbols; judgement. */
export const RESTS_ON: Readonly<
  Record<QuantityId, readonly [parameters: readonly string[], facts: readonly FactRow[]]>
> = (() => {
  const water: FactRow = ["waterL", "water", "L"];
  const feed: FactRow = ["feedGPerDay", "feed", "g/d"];
  const change: FactRow = ["waterChangeFraction", "share of water changed", "of 1"];
  const fish: FactRow = ["fishWetG", "fish", "g wet"];
  const hours: FactRow = ["lightHours", "light", "h/d"];
  const wiping: FactRow = ["wipeGlassEveryDays", "days between wiping the glass", "d"];
  const film = ["muFilm", "kapFilm", "epsFilm", "Ik", "rFilm", "sFilm", "KNfilm", "KPfilm"];
  const ammonia = ["muA", "KT", "gamA", "bA", "oN", "kW", "kK", "colonised"];
  return {
    tan: [ammonia, [water, feed, fish]],
    nh3: [ammonia, [water, feed, ["ph", "pH", "1"], ["temperatureC", "temperature", "C"]]],
    no2: [
      ["muN", "KI", "gamN", "bN", "muA", "colonised"],
      [water, feed, fish],
    ],
    no3: [
      ["dRock", "dSand", "Kdn", "oN", "gN", "qNfilm"],
      [water, feed, change],
    ],
    po4: [
      ["kRock", "capRock", "KRock", "sorbentRate", "gP", "qPfilm"],
      [water, feed, change],
    ],
    film_glass: [
      [...film, "cG", "disl"],
      [["glassM2", "lit glass", "m2"], hours, wiping],
    ],
    film_rock: [
      [...film, "cR", "disl"],
      [["litRockM2", "lit rock", "m2"], hours],
    ],
    film_sand: [
      [...film, "epsSand", "cS"],
      [["sandM2", "open sand", "m2"], hours],
    ],
    hair_algae: [
      ["muFil", "kapFil", "rFil", "sFil", "KNfil", "KPfil", "cF", "Besc"],
      [hours, feed],
    ],
    detritus_sand: [
      ["fC", "kD", "kSet", "shD", "kRes", "cD"],
      [feed, ["sandM2", "open sand", "m2"]],
    ],
  };
})();
export type FactRow = readonly [field: keyof TankFacts, label: string, unit: string];

export const factsOf = (facts: TankFacts, rows: readonly FactRow[]): WorkingInput[] =>
  rows.map(([field, label, unit]) => factInput(facts, field, label, unit));

/** The value on the last day of the runs; its inputs have the band of every week. */
export function quantityFigure(
  id: QuantityId,
  bands: WeekBands,
  scene: AheadScene,
  wouldChange: readonly string[],
): Figure {
  const { label, unit } = QUANTITIES[id];
  const [parameters, facts] = RESTS_ON[id];
  return {
    id: figureId.quantity(id),
    label: `${label} on the last day of the runs, ${scene.dateOf(bands.length - 1)}`,
    spread: bands.at(-1)!,
    unit,
    working: {
      formulaKey: "ahead.md#runs",
      formula: "the balance of the tank, run day by day for every version of it; then the band over the runs",
      inputs: [
        ...factsOf(scene.facts, facts),
        workedOut("runs", String(scene.members)),
        ...weekRows(bands, unit, scene),
      ],
      parameters: parametersOf(parameters, scene.table),
      ...{ animals: [], confidence: "computed", wouldChange },
    },
  };
}

export const weekRows = (bands: WeekBands, unit: string, { dateOf }: AheadScene): WorkingInput[] =>
  bands.map((band, week) =>
    workedOut(dateOf(week), band === null ? "too few runs have any" : spreadText(band, unit)),
  );

export function oxygenFigure(
  bands: WeekBands,
  scene: AheadScene,
  wouldChange: readonly string[],
): Figure | null {
  const last = bands.findLast((band) => band !== null);
  if (last === undefined || last === null) return null;
  return {
    id: figureId.dawnOxygen(),
    label: `oxygen at dawn on ${scene.dateOf(bands.lastIndexOf(last))}`,
    spread: last,
    unit: "mg/L",
    working: {
      formulaKey: "balance.md#oxygen",
      formula:
        "what the water holds at its warmth and salinity - what all that lives uses by night / gas exchange",
      inputs: [
        ...factsOf(scene.facts, [
          ["temperatureC", "temperature", "C"],
          ["salinityPsu", "salinity", "psu"],
          ["fishWetG", "fish", "g wet"],
          ["feedGPerDay", "feed", "g/d"],
        ]),
        ...weekRows(bands, "mg/L", scene),
      ],
      parameters: parametersOf(["gas.kLa_tank", "gas.fish_routine", "dec.O2_per_C"], scene.table),
      ...{ animals: [], confidence: "judgement", wouldChange },
    },
  };
}
