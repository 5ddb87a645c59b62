/** Heater power for a tank in a room, in two heaters, and how long the first warming takes. */

import { readMeasure } from "../../contract/quantity/measure.ts";
import { convertible } from "../../contract/quantity/plain.ts";
import {
  DRY_LOSS_W_PER_M2,
  holdingWatts,
  hoursToWarm,
  lossPerM2,
  surfaceM2,
  UNDER_LID,
} from "../../engine/care/changes/setting-up.ts";
import { settlesAboveRoom } from "../../engine/care/trouble/warmth.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { linkTo } from "../../engine/types/link.ts";
import { careFigures, HUMIDITY, ROOM, rowOf, WORK } from "./change-parts.ts";
import { AIR_INPUT, EVAPORATION_FORMULA, evaporatesFrom } from "./evaporation.ts";
import { middle, refusal, times } from "./parts.ts";
import { independently, inputOf } from "./spread.ts";
import type { Given, Sum, SumAnswer, SumRefusal } from "./sum.ts";
import { TEMPERATURE, WATER } from "./tank-fields.ts";

/** Each of two heaters, as a share of the need's upper end. */
const EACH_SHARE = 0.6;
const REEF_PSU = 35;

export const HEATER_CAUTIONS = [
  "Mains by water: each heater on a socket behind a residual-current device (RCD, GFCI), drip loops, unplug before hands go in. Fixed wiring is for a licensed electrician and the local code.",
  "A heater that runs dry cracks or burns: under water before it is plugged in, unplugged a while before water is taken out.",
];

const WATT_RULE = {
  ...convertible({
    label: "Power",
    quantity: "mass",
    unit: "g",
    example: "150 W",
    hard: { min: 1, max: 20_000 },
  }),
  ...{ unit: "W", spellings: { w: ["W"], watt: ["W"], watts: ["W"] }, offered: ["W"], plain: ["W"] },
  toCanonical: (value: number) => value,
};

const figure = careFigures("heater");

export const HEATER: Sum = {
  id: "heater",
  group: "setting_up",
  name: "Heater power",
  question: "How strong must the heaters be for this room?",
  fields: [
    WATER,
    { ...TEMPERATURE, label: "Temperature wanted", empty: { text: "25 C", how: "taken to be a reef's" } },
    {
      ...ROOM,
      label: "Coldest that the room gets",
      empty: { text: "18 C", how: "taken to be a heated home at night" },
    },
    HUMIDITY,
    {
      ...{ name: "lid", label: "Above the water", hint: "", input: "choice", usual: "open" },
      choices: [
        { text: "open", label: "Open, or a net" },
        { text: "lid", label: "A lid that closes well" },
      ],
    },
    {
      ...{ name: "power", label: "Heaters at hand, together", input: "amount", empty: "optional" },
      hint: "To see how warm they would make it if they stuck on.",
      ...{ read: (text, context) => readMeasure(text, WATT_RULE, context), example: "200 W", units: ["W"] },
    },
  ],
  examples: [
    { water: "200 L", temperature: "25 C", room: "18 C" },
    { water: "55 US gal", temperature: "78 F", room: "62 F", lid: "lid", power: "300 W" },
  ],
  work,
};

function work(given: Given): SumAnswer | SumRefusal {
  const [water, wanted, room] = [given.amount("water"), given.amount("temperature"), given.amount("room")];
  const [humidity, power] = [given.amount("humidity"), given.maybe("power")];
  const rise = wanted.central - room.central;
  if (rise <= 0)
    return refusal(["The room is as warm as that: no heater is needed, but cooling may be."], "room");
  const inputs = [
    inputOf("water", water),
    inputOf("temperature wanted", wanted),
    inputOf("coldest room", room),
  ];
  const covered = given.choice("lid") === "lid";
  const open = evaporatesFrom({
    areaM2: { low: surfaceM2(water.low), central: surfaceM2(water.central), high: surfaceM2(water.high) },
    ...{ temperature: wanted, room, humidity, psu: REEF_PSU },
  });
  const evaporates = figure({
    ...{
      name: "evaporates",
      label: "water that evaporates in a day",
      unit: "L",
      at: "evaporation",
      judged: true,
    },
    spread: times(open, covered ? UNDER_LID : 1),
    formula: `${EVAPORATION_FORMULA}${covered ? "; a fifth of it under a lid" : ""}`,
    inputs: [...inputs, inputOf("humidity of the room", humidity), AIR_INPUT],
    references: [WORK.memory],
  });
  const need = figure({
    ...{ name: "need", label: "heat to hold the temperature", unit: "W", at: "heat", judged: true },
    spread: independently(
      [water, wanted, room, DRY_LOSS_W_PER_M2, evaporates.spread],
      ([w = 1, t = 25, r = 18, loss = 7, vapour = 0]) => holdingWatts(w, t - r, loss, vapour),
    ),
    formula:
      "outside of a box of that volume, m2 × loss × degrees above the room + 2440 kJ for each litre evaporated",
    inputs: [
      ...inputs,
      { label: "loss to the air", value: "7 W for each m2 and degree (4 to 10)", origin: "assumed" },
      linkTo(evaporates),
    ],
    references: [WORK.memory],
    wouldChange: ["the coldest room", "a lid"],
  });
  const each = figure({
    ...{ name: "each", label: "each of two heaters", unit: "W", at: "heat", judged: true },
    spread: times(need.spread, EACH_SHARE * (need.spread.high / need.spread.central)),
    formula: "0.6 of the need's upper end, as a band as wide as the need's",
    inputs: [linkTo(need)],
    references: [WORK.practice],
    wouldChange: ["the coldest room"],
  });
  const watts = power?.central ?? 2 * each.spread.central;
  const bought = power === null ? linkTo(each, "two heaters, each") : inputOf("heaters at hand", power);
  const hours = hoursToWarm(watts, water.central, rise, need.spread.central);
  const warming =
    hours === null
      ? null
      : figure({
          ...{ name: "hours", label: "hours to warm it first", unit: "h", at: "heat", judged: true },
          spread: spreadOf(
            need.spread,
            (holding) => hoursToWarm(watts, water.central, rise, holding) ?? 3 * hours,
          ),
          formula: "degrees × heat of the water ÷ (power less half of what holding takes)",
          inputs: [...inputs, bought, linkTo(need)],
          references: [WORK.memory],
        });
  const stuck = figure({
    ...{ name: "stuck", label: "where it ends if they never stop", unit: "C", at: "heat", judged: true },
    spread: spreadOf(
      need.spread,
      (holding) =>
        room.central + settlesAboveRoom(watts, water.central, lossPerM2(water.central, rise, holding)),
    ),
    formula: "room + power ÷ what holding takes for each degree",
    inputs: [...inputs, bought, linkTo(need)],
    references: [WORK.memory],
  });
  return {
    kind: "answer",
    lead: ["To hold it takes about ", middle(need), ": two heaters of about ", middle(each), " each."],
    rows: [
      rowOf("Heat to hold the temperature", need),
      rowOf("Each of two heaters, about", each),
      rowOf("Evaporates in a day", evaporates),
      ...(warming === null ? [] : [rowOf("First warming takes", warming)]),
      rowOf("If all stuck on, in the coldest room, it ends near", stuck),
    ],
    tables: [],
    cautions: HEATER_CAUTIONS,
    notes: [
      ...(warming === null
        ? ["Those heaters can't bring it there in that room: holding alone takes as much as they have."]
        : []),
      "Two smaller heaters: one that fails off leaves the tank cool, one that sticks on warms it slowly. A separate controller that cuts both off is better still.",
      "Pumps and lamps warm too, and are not taken off: they may stop. A box nearly as wide as high, away from a cold wall.",
    ],
    wouldChange: ["The temperature that the room really falls to, read at night."],
    figures: [need, each, evaporates, ...(warming === null ? [] : [warming]), stuck],
  };
}

/** Over the ends of one band, whichever way it runs. */
function spreadOf({ low, central, high }: Spread, of: (value: number) => number): Spread {
  const ends = [of(low), of(high)];
  return { low: Math.min(...ends), central: of(central), high: Math.max(...ends) };
}
