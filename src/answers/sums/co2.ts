/** CO2 of the water beside that of the air above it: why pH is low in a closed room, and where it would settle. */
import { carbonateFrom, type Water } from "../../engine/seawater/carbonate.ts";
import { fugacity, partialPressure, pressureOfAir } from "../../engine/seawater/co2.ts";
import { perKilogram } from "../../engine/seawater/composition.ts";
import { totalToNbs } from "../../engine/seawater/ph-scale.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { phTotal } from "../../engine/units/quantity.ts";
import { CARBONATE_SOURCES } from "./carbonate.ts";
import { figuresOf, linkTo, middle, number, row, stated } from "./parts.ts";
import { independently } from "./spread.ts";
import type { AmountField, Given, Sum, SumAnswer } from "./sum.ts";
import { PH, SALINITY, TEMPERATURE } from "./tank-fields.ts";
import {
  ALKALINITY,
  fitNotes,
  middleWater,
  onTotal,
  PH_BY,
  PH_SCALE,
  phDoubted,
  phInput,
  plainRule,
  readWith,
  TEST_NOTE,
  testedAlkalinity,
  testedWater,
  waterInputs,
  waterOf,
} from "./water-fields.ts";

/** CO2 outdoors in these years, ppm of dry air; from memory. */
const OUTDOORS = 425;
const OUTDOOR_AIR: Spread = { low: 415, central: OUTDOORS, high: 450 };

const AIR: AmountField = {
  ...{ name: "air", label: "CO2 of the air in the room", input: "amount" },
  hint: "A meter for rooms shows it. A closed room with people has 600 to 2000 ppm.",
  empty: { text: "400-1200 ppm", how: "a lived-in room, aired or not; common practice, no source" },
  read: readWith(
    plainRule("CO2 of the air", "ppm", ["ppmv", "umol/mol"], { min: 100, max: 50_000 }, "700 ppm"),
  ),
  ...{ example: "700 ppm", units: ["ppm"] },
};

const figure = figuresOf("co2");

function work(given: Given): SumAnswer {
  const tested = testedWater(given);
  const alkalinity = testedAlkalinity(given.amount("alkalinity"));
  const ph = phDoubted(given);
  const air = given.amount("air");
  const inputs = [tested.temperature, tested.salinity, alkalinity, ph.ph];
  const measured = [stated("alkalinity", alkalinity, "meq/L"), phInput(ph), ...waterInputs(tested)];
  const stateAt = ([t = 0, s = 0, a = 0, reading = 0]: readonly number[]) => {
    const water = waterOf(t, s);
    return {
      water,
      state: carbonateFrom(
        { alkalinity: perKilogram(a, water), ph: onTotal(reading, ph.scale, water) },
        water,
      ),
    };
  };
  const pressureAt = (values: readonly number[]) => {
    const { water, state } = stateAt(values);
    return partialPressure(state.fco2, water.temperature);
  };
  const pressure = figure({
    ...{ name: "pressure", label: "CO2 of the water, as pressure", unit: "µatm", at: "co2" },
    spread: independently(inputs, pressureAt),
    formula: "CO2 in the water, from alkalinity and pH, over its solubility",
    ...{ inputs: measured, sources: CARBONATE_SOURCES, wouldChange: ["the pH"] },
  });
  const inAir = figure({
    ...{ name: "air", label: "CO2 of the air, as pressure", unit: "µatm", at: "co2" },
    spread: independently([tested.temperature, tested.salinity, air], ([t = 0, s = 0, ppm = 0]) =>
      pressureOfAir(ppm, waterOf(t, s)),
    ),
    formula: "ppm of dry air times what water vapour leaves of one atmosphere",
    ...{ inputs: [stated("CO2 of the air", air, "ppm"), ...waterInputs(tested)], sources: ["weiss-1974"] },
  });
  const ratio = figure({
    ...{ name: "ratio", label: "CO2 of the water, times that of the air", unit: "", at: "co2" },
    spread: independently(
      [...inputs, air],
      ([t = 0, s = 0, a = 0, reading = 0, ppm = 0]) =>
        pressureAt([t, s, a, reading]) / pressureOfAir(ppm, waterOf(t, s)),
    ),
    formula: "the one pressure over the other",
    ...{ inputs: [linkTo(pressure), linkTo(inAir)], wouldChange: ["the pH", "the air of the room"] },
  });
  const balanced = (name: string, label: string, ppm: Spread) =>
    figure({
      ...{ name, label, unit: "", at: "co2" },
      spread: independently(
        [tested.temperature, tested.salinity, alkalinity, ppm],
        ([t = 0, s = 0, a = 0, x = 0]) => asRead(phInBalance(a, x, waterOf(t, s)), ph.scale, waterOf(t, s)),
      ),
      formula: "the pH at which this alkalinity holds as much CO2 as that air gives",
      inputs: [
        stated("alkalinity", alkalinity, "meq/L"),
        stated("CO2 of the air", ppm, "ppm"),
        ...waterInputs(tested),
      ],
      ...{ sources: CARBONATE_SOURCES, wouldChange: ["the CO2 of the air", "the alkalinity"] },
    });
  const here = balanced("ph_here", "pH in balance with this air", air);
  const outside = balanced("ph_outdoors", "pH in balance with air from outdoors", OUTDOOR_AIR);
  return {
    kind: "answer",
    lead: ["This water holds ", middle(ratio), " times the CO2 of the air above it", ends(ratio.spread)],
    rows: [row(pressure), row(inAir), row(ratio), row(here), row(outside)],
    ...{ tables: [], cautions: [] },
    notes: [
      ...fitNotes(middleWater(tested)),
      TEST_NOTE,
      "In a tank plants and animals move CO2 by day and night, so balance is where it tends, not where it is.",
      `Outdoors is taken as ${OUTDOORS} ppm, from memory.`,
    ],
    wouldChange: [
      "Fresh air over the water moves pH to ",
      number(outside),
      "; more alkalinity moves it up a little.",
    ],
    figures: [pressure, inAir, ratio, here, outside],
  };
}

const ends = ({ low, high }: Spread): string =>
  low > 1
    ? ": it gives CO2 off."
    : high < 1
      ? ": it takes CO2 up."
      : ": the tests can't tell which way it goes.";

function phInBalance(alkalinity: number, ppm: number, water: Water): number {
  const fco2 = fugacity(pressureOfAir(ppm, water), water.temperature);
  return carbonateFrom({ alkalinity: perKilogram(alkalinity, water), fco2 }, water).ph;
}

/** A pH of the engine's on the scale of the keeper's. */
const asRead = (ph: number, scale: "nbs" | "total", { temperature, salinity }: Water): number =>
  scale === "total" ? ph : totalToNbs(phTotal(ph), temperature, salinity);

export const CO2: Sum = {
  id: "co2",
  group: "chemistry",
  name: "CO2 of water and air",
  question: "Is my pH low because of the air in the room?",
  fields: [ALKALINITY, PH, PH_SCALE, PH_BY, AIR, SALINITY, TEMPERATURE],
  examples: [
    {
      alkalinity: "8 dKH",
      ph: "7.9",
      ph_scale: "nbs",
      air: "1200 ppm",
      salinity: "35 psu",
      temperature: "25 C",
    },
    { alkalinity: "2.9 meq/L", ph: "8.3", salinity: "34 psu", temperature: "78 F" },
  ],
  work,
};
