/** Heater power for a tank in a room, in two heaters, and how long the first warming takes. */

import { readMeasure } from "../../contract/quantity/measure.ts";
import { convertible } from "../../contract/quantity/plain.ts";
import { HOLDING, holdingWatts, hoursToWarm } from "../../engine/care/changes/setting-up.ts";
import { settlesAboveRoom } from "../../engine/care/trouble/warmth.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { linkTo } from "../../engine/types/link.ts";
import { careFigures, ROOM, rowOf, WORK } from "./change-parts.ts";
import { middle, refusal } from "./parts.ts";
import { cornersOf, inputOf } from "./spread.ts";
import type { Given, Sum, SumAnswer, SumRefusal } from "./sum.ts";
import { TEMPERATURE, WATER } from "./tank-fields.ts";

/** Each of two heaters holds most of the need: one that fails off leaves the tank cool, one that sticks on warms it slowly. */
const EACH_SHARE = 0.6;

export const HEATER_CAUTIONS = [
  "Mains by water: each heater on a socket behind a residual-current device (RCD, GFCI), drip loops, unplug before hands go in. Fixed wiring is for a licensed electrician and the local code.",
  "A heater that runs dry cracks or burns: under water before it is plugged in, unplugged a while before water is taken out.",
];

const WATTS = convertible({
  label: "Power",
  quantity: "mass",
  unit: "g",
  example: "150 W",
  hard: { min: 1, max: 20_000 },
});
const WATT_RULE = {
  ...WATTS,
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
    {
      ...{
        name: "power",
        label: "Heaters at hand, together",
        hint: "To see how warm a stuck one would make it.",
        input: "amount",
      },
      empty: "optional",
      ...{ read: (text, context) => readMeasure(text, WATT_RULE, context), example: "200 W", units: ["W"] },
    },
  ],
  examples: [
    { water: "200 L", temperature: "25 C", room: "18 C" },
    { water: "55 US gal", temperature: "78 F", room: "62 F", power: "300 W" },
  ],
  work,
};

function work(given: Given): SumAnswer | SumRefusal {
  const [water, wanted, room] = [given.amount("water"), given.amount("temperature"), given.amount("room")];
  const power = given.maybe("power");
  const rise = wanted.central - room.central;
  if (rise <= 0)
    return refusal(["The room is as warm as that: no heater is needed, but cooling may be."], "room");
  const inputs = [
    inputOf("water", water),
    inputOf("temperature wanted", wanted),
    inputOf("coldest room", room),
  ];
  const loss = {
    label: "loss through the outside of the tank",
    value: "8 W for each m2 and degree (5 to 14)",
    origin: "assumed" as const,
  };
  const amounts: readonly Spread[] = [water, wanted, room];
  const need = figure({
    ...{ name: "need", label: "heat to hold the temperature", unit: "W", at: "heat", judged: true },
    spread: cornersOf([...amounts, HOLDING], ([w = 1, t = 25, r = 18, l = 8]) => holdingWatts(w, t - r, l)),
    formula: "outside of a box of that volume, m2 × loss × degrees above the room",
    inputs: [...inputs, loss],
    references: [WORK.memory],
    wouldChange: ["the coldest room", "a lid: evaporation is the larger half of the loss"],
  });
  const each = figure({
    ...{ name: "each", label: "each of two heaters", unit: "W", at: "heat", judged: true },
    spread: {
      low: EACH_SHARE * need.spread.central,
      central: EACH_SHARE * need.spread.high,
      high: need.spread.high,
    },
    formula:
      "0.6 of the need's upper end: two of them hold the coldest night, and one that sticks on warms slowly",
    inputs: [linkTo(need)],
    references: [WORK.practice],
    wouldChange: ["the coldest room"],
  });
  const watts = power?.central ?? 2 * each.spread.central;
  const bought = power === null ? linkTo(each, "two heaters, each") : inputOf("heaters at hand", power);
  const hours = hoursToWarm(watts, water.central, rise, HOLDING.central);
  const warming =
    hours === null
      ? null
      : figure({
          ...{ name: "hours", label: "hours to warm it first", unit: "h", at: "heat", judged: true },
          spread: cornersOf(
            [water, HOLDING],
            ([w = 1, l = 8]) => hoursToWarm(watts, w, rise, l) ?? hours * 3,
          ),
          formula: "degrees × heat of the water ÷ (power less the mean loss on the way)",
          inputs: [...inputs, bought, loss],
          references: [WORK.memory],
        });
  const stuck = figure({
    ...{ name: "stuck", label: "where it ends if they never stop", unit: "C", at: "heat", judged: true },
    spread: cornersOf([water, room, HOLDING], ([w = 1, r = 18, l = 8]) => r + settlesAboveRoom(watts, w, l)),
    formula: "room + power ÷ (outside × loss)",
    inputs: [...inputs, bought, loss],
    references: [WORK.memory],
  });
  return {
    kind: "answer",
    lead: ["To hold it takes about ", middle(need), ": two heaters of about ", middle(each), " each."],
    rows: [
      rowOf("Heat to hold the temperature", need),
      rowOf("Each of two heaters, about", each),
      ...(warming === null ? [] : [rowOf("First warming takes", warming)]),
      rowOf("If both stuck on, in the coldest room", stuck),
    ],
    tables: [],
    cautions: HEATER_CAUTIONS,
    notes: [
      ...(warming === null
        ? ["Those heaters can't bring it there in that room: the loss is as large as they are."]
        : []),
      "Two smaller heaters are better than a large one; a separate controller that cuts both off is better still.",
      "A box nearly as wide as high, in still air; a lid less, a cold outer wall or a fan more.",
    ],
    wouldChange: ["The temperature that the room really falls to, read at night."],
    figures: [need, each, ...(warming === null ? [] : [warming]), stuck],
  };
}
