/** The sheet for a tank that is to be set up: masses, load on the floor, salt, sand, flow, evaporation, days. */

import { readMeasure } from "../../contract/quantity/measure.ts";
import { convertible } from "../../contract/quantity/plain.ts";
import { saltForNew } from "../../engine/care/changes/salt.ts";
import {
  DRY_LOSS_W_PER_M2,
  GLASS_KG_PER_M3,
  glassKg,
  holdingWatts,
  SAND_KG_PER_L,
} from "../../engine/care/changes/setting-up.ts";
import { density } from "../../engine/seawater/density.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure, WorkingInput } from "../../engine/types/figure.ts";
import { exact, linkTo } from "../../engine/types/link.ts";
import { celsius, practicalSalinity } from "../../engine/units/quantity.ts";
import { careFigures, HUMIDITY, ROOM, readLength, readTimes, rowOf, WORK } from "./change-parts.ts";
import { AIR_INPUT, EVAPORATION_FORMULA, evaporatesFrom } from "./evaporation.ts";
import { HEATER_CAUTIONS } from "./heater.ts";
import { furnished, ROCK, SAND, SIDES, SUMP } from "./new-tank-fields.ts";
import { middle } from "./parts.ts";
import { cornersOf, independently, inputOf } from "./spread.ts";
import type { AmountField, Given, Sum, SumAnswer } from "./sum.ts";
import { SALINITY, TEMPERATURE } from "./tank-fields.ts";

/** Thickness that glass of a tank so high has, mm: for a mass only, not to build by. Judgement. */
const thickFor = (heightCm: number): Spread => {
  const usual = Math.max(6, Math.round(heightCm / 5));
  return { low: Math.max(4, usual - 2), central: usual, high: usual + 3 };
};
/** Water of tank and sump pumped around an hour, in tanks; common practice, no source. */
const TURNOVER = { low: 10, central: 20, high: 40 };
/** A mix's own water. From memory. */
const BOUND = { low: 1.03, central: 1.07, high: 1.12 };

const PARTS = "Stand, sump and all else that stands there";

const figure = careFigures("new-tank");
const feet: AmountField = {
  ...{ name: "feet", label: "Feet or supports that it stands on", input: "amount" },
  hint: "Count the points that touch the floor; 1 for a plate that touches it all over.",
  empty: { text: "4", how: "a stand with four feet" },
  ...{ read: readTimes, example: "4", units: [] },
};

export const NEW_TANK: Sum = {
  id: "new-tank",
  group: "setting_up",
  name: "Sheet for a new tank",
  question: "What will it weigh, and what will it take to fill, salt, warm and move its water?",
  fields: [
    ...SIDES,
    {
      ...{ name: "glass", label: "Thickness of the glass", hint: "", input: "amount", empty: "optional" },
      ...{ read: readLength, example: "12 mm", units: ["mm", "in"] },
    },
    ROCK,
    SAND,
    SUMP,
    {
      ...{ name: "stand", label: PARTS, hint: "Empty, without water.", input: "amount" },
      empty: { text: "40 kg", how: "a wooden stand with its gear; judgement" },
      ...{ read: (text, context) => readMeasure(text, MASS, context), example: "40 kg", units: ["kg", "lb"] },
    },
    feet,
    { ...SALINITY, label: "Salinity wanted", empty: { text: "35 psu", how: "seawater" } },
    { ...TEMPERATURE, label: "Temperature wanted", empty: { text: "25 C", how: "taken to be a reef's" } },
    ROOM,
    HUMIDITY,
  ],
  examples: [
    {
      length: "100 cm",
      width: "50 cm",
      height: "50 cm",
      glass: "10 mm",
      rock: "15 kg",
      sand: "30 mm",
      sump: "40 L",
    },
    {
      length: "48 in",
      width: "24 in",
      height: "24 in",
      rock: "60 lb",
      sand: "1 in",
      stand: "70 kg",
      feet: "6",
    },
    { length: "45 cm", width: "45 cm", height: "45 cm" },
  ],
  work,
};

const MASS = convertible({
  ...{ label: "Weight", quantity: "mass", unit: "kg", example: "40 kg" },
  hard: { min: 0, max: 5000 },
});

function work(given: Given): SumAnswer {
  const tank = furnished(given);
  const { waterL, lengthCm, widthCm, heightCm, inputs } = tank;
  const [sand, rock, stand] = [given.amount("sand"), given.amount("rock"), given.amount("stand")];
  const [salinity, temperature, room] = [
    given.amount("salinity"),
    given.amount("temperature"),
    given.amount("room"),
  ];
  const [typedGlass, humidity] = [given.maybe("glass"), given.amount("humidity")];
  const thick: Spread =
    typedGlass === null
      ? thickFor(heightCm)
      : { low: 10 * typedGlass.low, central: 10 * typedGlass.central, high: 10 * typedGlass.high };
  const put = (
    name: string,
    label: string,
    unit: string,
    at: string,
    formula: string,
    spread: Spread,
    from: readonly WorkingInput[],
    more: { judged?: boolean; references?: readonly string[]; wouldChange?: readonly string[] } = {},
  ): Figure => figure({ name, label, unit, at, formula, spread, inputs: from, ...more });
  const judged = { judged: true, references: [WORK.memory] };

  const water = put(
    "water",
    "water",
    "L",
    "volume",
    "box less glass and air, rock and sand; and the sump",
    waterL,
    inputs,
    {
      ...judged,
      wouldChange: ["litres counted when it is filled"],
    },
  );
  const kgPerL = density(celsius(temperature.central), practicalSalinity(salinity.central)) / 1000;
  const waterKg = put(
    "water_kg",
    "mass of the water",
    "kg",
    "masses",
    "litres × density of seawater",
    scaled(waterL, kgPerL),
    [linkTo(water)],
    {
      references: [WORK.eos80],
    },
  );
  const glass = put(
    "glass_kg",
    "mass of the glass",
    "kg",
    "masses",
    `five panes × ${GLASS_KG_PER_M3} kg/m3`,
    cornersOf([thick], ([t = 10]) => glassKg(lengthCm, widthCm, heightCm, t)),
    [
      ...inputs.slice(0, 3),
      typedGlass === null
        ? {
            label: "thickness",
            value: `${thick.central} mm (${thick.low} to ${thick.high})`,
            origin: "assumed" as const,
          }
        : inputOf("thickness", typedGlass),
    ],
    judged,
  );
  const bed = independently([sand, SAND_KG_PER_L], ([mm = 0, kg = 1]) => tank.floorM2 * mm * kg);
  const sandKg = put(
    "sand_kg",
    "dry sand",
    "kg",
    "masses",
    "floor × depth × 1.2 to 1.7 kg a litre",
    bed,
    [...inputs.slice(0, 2), inputOf("depth of the sand", sand)],
    judged,
  );
  const total = put(
    "total",
    "all of it, filled",
    "kg",
    "masses",
    "water + glass + sand + rock + stand and gear",
    independently([waterKg.spread, glass.spread, bed, rock, stand], (parts) =>
      parts.reduce((sum, kg) => sum + kg, 0),
    ),
    [linkTo(waterKg), linkTo(glass), linkTo(sandKg), inputOf("rock", rock), inputOf("stand and gear", stand)],
    { judged: true, references: [WORK.eos80, WORK.memory], wouldChange: ["the water", "the stand"] },
  );
  const load = put(
    "load",
    "load on the floor under it",
    "kg/m2",
    "load",
    "all of it ÷ length × width",
    scaled(total.spread, 1 / tank.floorM2),
    [linkTo(total), ...inputs.slice(0, 2)],
    { judged: true },
  );
  const feetCount = Math.round(given.amount("feet").central);
  const point = put(
    "point",
    `load of each of ${feetCount} supports, shared evenly`,
    "kg",
    "load",
    "all of it ÷ supports",
    scaled(total.spread, 1 / feetCount),
    [linkTo(total), inputOf("supports", given.amount("feet"))],
    { judged: true },
  );
  const salt = put(
    "salt",
    "dry salt mix",
    "kg",
    "salt",
    "salt that the water holds × 1.03 to 1.12 for a mix's own water",
    independently(
      [waterL, BOUND],
      ([l = 1, more = 1]) =>
        more * saltForNew(l, celsius(temperature.central), practicalSalinity(salinity.central)).saltKg,
    ),
    [linkTo(water), inputOf("salinity wanted", salinity)],
    { judged: true, references: [WORK.millero, WORK.memory] },
  );
  const flow = put(
    "flow",
    "water moved around in the tank",
    "L/h",
    "flow",
    "water × 10 to 40 an hour",
    independently([waterL, TURNOVER], ([l = 1, n = 1]) => l * n),
    [linkTo(water)],
    {
      judged: true,
      references: [WORK.practice],
      wouldChange: ["which corals are kept"],
    },
  );
  const air = [
    inputOf("temperature wanted", temperature),
    inputOf("temperature of the room", room),
    inputOf("humidity of the room", humidity),
    AIR_INPUT,
  ];
  const daily = put(
    "evaporation",
    "fresh water to top up a day, open above",
    "L",
    "evaporation",
    EVAPORATION_FORMULA,
    evaporatesFrom({ areaM2: exact(tank.floorM2), temperature, room, humidity, psu: salinity.central }),
    [...inputs.slice(0, 2), ...air],
    judged,
  );
  const degrees = Math.max(0, temperature.central - room.central);
  const heat = put(
    "heat",
    "heat to hold its temperature, open above",
    "W",
    "heat",
    "outside of the tank, m2 × 4 to 10 W × degrees above the room + 2440 kJ for each litre evaporated",
    independently([waterL, DRY_LOSS_W_PER_M2, daily.spread], ([l = 1, loss = 7, vapour = 0]) =>
      holdingWatts(l, degrees, loss, vapour),
    ),
    [linkTo(water), ...air.slice(0, 2), linkTo(daily)],
    judged,
  );
  const power = put(
    "energy",
    "heating in a day",
    "kWh",
    "heat",
    "watts × 24 ÷ 1000",
    scaled(heat.spread, 0.024),
    [linkTo(heat)],
    { judged: true },
  );
  const figures = [water, waterKg, glass, sandKg, total, load, point, salt, flow, heat, power, daily];
  return {
    kind: "answer",
    lead: ["Filled it weighs about ", middle(total), ", ", middle(load), " on the floor under it."],
    rows: [
      rowOf("Water", water),
      rowOf("Mass of the water", waterKg),
      rowOf("Glass", glass),
      rowOf("Dry sand", sandKg),
      rowOf("All of it, filled", total),
      rowOf("Load on the floor under it", load),
      rowOf(`Each of ${feetCount} supports, if shared evenly`, point),
      rowOf("Dry salt mix, about", salt),
      rowOf("Water moved around in it", flow),
      rowOf("Heat to hold its temperature", heat),
      rowOf("Heating in a day", power),
      rowOf("Fresh water to top up a day", daily),
    ],
    tables: [
      {
        title: "What it costs in days",
        columns: ["When", "What"],
        rows: DAYS.map(([when, what]) => [[when], [what]]),
      },
    ],
    cautions: [
      "A floor is for a structural engineer and the local code: these figures are to take there, and prove nothing. Loads gather on few feet, floors sag between beams, and a tank slopping in an earthquake or on a soft floor asks more.",
      "Glass of that thickness is what such tanks often have, for its mass only: never build by it. Lift empty, with enough hands.",
      ...HEATER_CAUTIONS,
    ],
    notes: [
      "Rock displaces about half a litre a kilogram, and its mass is counted in full: on the heavy side.",
      "Heater size by the coldest night of the room: see heater power.",
    ],
    wouldChange: ["Litres counted when it is filled, and a scale under what can be weighed."],
    figures,
  };
}

const scaled = ({ low, central, high }: Spread, by: number): Spread => ({
  low: low * by,
  central: central * by,
  high: high * by,
});

const DAYS: readonly (readonly [string, string])[] = [
  ["Before", "Floor asked about, stand level, tank tried with water where that can be: 1 to 3 days"],
  [
    "Day 1",
    "Rock, sand rinsed as its maker says, fresh water and salt stirred in; heaters in, off until covered",
  ],
  ["Day 2", "Salinity read once clear, corrected; warm"],
  [
    "Days 3 to 40",
    "Nitrogen cycle: 3 to 6 weeks with dry rock, days to weeks with live; read, don't guess: see Start-up",
  ],
  ["After it", "First light some hours a day, then the first wave of the crew when its condition holds"],
];
