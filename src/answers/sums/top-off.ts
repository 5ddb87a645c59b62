/** Evaporation and topping up: how much leaves a day, what that does to salinity, and what a stuck top-off would do. */

import { readMeasure } from "../../contract/quantity/measure.ts";
import { convertible, readPlain } from "../../contract/quantity/plain.ts";
import { readSalinity } from "../../contract/quantity/salinity.ts";
import { readVolume } from "../../contract/quantity/volume.ts";
import {
  evaporationFromDrift,
  evaporationWatts,
  freshForFall,
} from "../../engine/care/changes/evaporation.ts";
import { salinityAfter } from "../../engine/care/trouble/salt.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { linkTo, round3 } from "../../engine/types/link.ts";
import { careFigures, HUMIDITY, ROOM, rowOf, WORK } from "./change-parts.ts";
import { AIR_INPUT, EVAPORATION_FORMULA, evaporatesFrom } from "./evaporation.ts";
import { middle, refusal } from "./parts.ts";
import { cornersOf, independently, inputOf } from "./spread.ts";
import type { AmountField, Given, Sum, SumAnswer, SumRefusal } from "./sum.ts";
import { SALINITY, TEMPERATURE, WATER } from "./tank-fields.ts";

/** Fall of salinity in a day that stresses invertebrates; common practice, no source. */
const FALL_PSU = 1;

const AREA = convertible({
  ...{ label: "Open surface", quantity: "area", unit: "m2", example: "0.5 m2" },
  hard: { min: 0, max: 100, open: true },
});
const optional = (
  name: string,
  label: string,
  hint: string,
  of: Pick<AmountField, "read" | "example" | "units">,
): AmountField => ({
  ...{ name, label, hint, input: "amount", empty: "optional", ...of },
});
const VOLUME = { read: readVolume, units: ["L", "US gal", "imp gal"] };

const figure = careFigures("top-off");

export const TOP_OFF: Sum = {
  id: "top-off",
  group: "changes",
  name: "Evaporation and top-off",
  question: "How much evaporates, and what would a stuck top-off do?",
  fields: [
    WATER,
    SALINITY,
    {
      ...{ name: "by", label: "Told by", hint: "", input: "choice", usual: "area" },
      choices: [
        { text: "area", label: "Open surface, room and water" },
        { text: "litres", label: "Litres topped up in some days" },
        { text: "drift", label: "Salinity that rose with nothing topped up" },
      ],
    },
    optional("area", "Open water surface, display and sump", "", {
      ...{
        read: (text, context) => readMeasure(text, AREA, context),
        example: "0.5 m2",
        units: ["m2", "cm2", "ft2"],
      },
    }),
    { ...TEMPERATURE, empty: { text: "25 C", how: "taken to be a reef's" } },
    ROOM,
    HUMIDITY,
    optional("topped_up", "Litres topped up", "Together, over the days below.", {
      ...VOLUME,
      example: "14 L",
    }),
    optional("risen_to", "Salinity it rose to", "", {
      read: readSalinity,
      example: "35.8 psu",
      units: SALINITY.units,
    }),
    optional("days", "In so many days", "", {
      ...{ read: (text, context) => readPlain("days", text, context), example: "7 d", units: ["d"] },
    }),
    optional(
      "reservoir",
      "Fresh water in the top-off vessel",
      "What would run in at once if the valve or pump stuck.",
      {
        ...{ ...VOLUME, example: "20 L" },
      },
    ),
  ],
  examples: [
    { water: "200 L", salinity: "35 psu", area: "0.5 m2", reservoir: "20 L" },
    { water: "200 L", salinity: "35 psu", by: "litres", topped_up: "14 L", days: "7 d", reservoir: "25 L" },
    { water: "200 L", salinity: "35 psu", by: "drift", risen_to: "36 psu", days: "4 d" },
  ],
  work,
};

function work(given: Given): SumAnswer | SumRefusal {
  const [water, salinity] = [given.amount("water"), given.amount("salinity")];
  const reservoir = given.maybe("reservoir");
  const daily = dailyOf(given);
  if ("kind" in daily) return daily;
  if (daily.spread.central <= 0)
    return refusal(["Nothing evaporates: the room's air is as wet as that over the water."], "humidity");
  const references = [WORK.mixing];
  const inputs = [inputOf("water", water), inputOf("salinity", salinity), linkTo(daily)];
  const put = (
    name: string,
    label: string,
    unit: string,
    formula: string,
    spread: Spread,
    more = inputs,
  ): Figure =>
    figure({
      ...{ name, label, unit, formula, spread, at: "evaporation", inputs: more, references },
      wouldChange: ["how much evaporates"],
    });
  const drift = put(
    "drift",
    "rise of salinity in a day without topping up",
    "psu",
    "salinity × water ÷ (water − evaporated), less salinity",
    independently(
      [water, salinity, daily.spread],
      ([w = 1, s = 0, e = 0]) => salinityAfter(s, w, -Math.min(e, 0.5 * w)) - s,
    ),
  );
  const heat = put(
    "heat",
    "heat that leaves with it",
    "W",
    "2440 kJ for each litre",
    independently([daily.spread], ([e = 0]) => evaporationWatts(e)),
    [linkTo(daily)],
  );
  const most = put(
    "most",
    `fresh water that lowers salinity by ${FALL_PSU} psu`,
    "L",
    `water × (salinity ÷ (salinity − ${FALL_PSU}) − 1)`,
    cornersOf([water, salinity], ([w = 1, s = 35]) => freshForFall(w, s, FALL_PSU)),
    inputs.slice(0, 2),
  );
  const stuck =
    reservoir === null
      ? null
      : put(
          "stuck",
          "salinity if all of the vessel ran in",
          "psu",
          "salinity × water ÷ (water + vessel)",
          cornersOf([water, salinity, reservoir], ([w = 1, s = 0, r = 0]) => salinityAfter(s, w, r)),
          [...inputs.slice(0, 2), inputOf("fresh water in the vessel", reservoir)],
        );
  const lasts =
    reservoir === null
      ? null
      : put(
          "lasts",
          "days that the vessel lasts",
          "d",
          "vessel ÷ evaporated a day",
          cornersOf([reservoir, daily.spread], ([r = 0, e = 1]) => r / e),
          [inputOf("fresh water in the vessel", reservoir), linkTo(daily)],
        );
  const falls = stuck !== null && salinity.central - stuck.spread.central > FALL_PSU;
  return {
    kind: "answer",
    lead: ["About ", middle(daily), " leaves each day: top that up with fresh water."],
    rows: [
      rowOf("Evaporates in a day", daily),
      rowOf("Salinity rises in a day without it by", drift),
      rowOf("Heat that leaves with it", heat),
      ...(stuck === null ? [] : [rowOf("If the whole vessel ran in at once, salinity", stuck)]),
      ...(lasts === null ? [] : [rowOf("The vessel lasts", lasts)]),
      rowOf(`Keep the vessel below, for a fall of at most ${FALL_PSU} psu`, most),
    ],
    tables: [],
    cautions: [
      ...(falls
        ? [
            `A stuck top-off would lower salinity by ${round3(salinity.central - (stuck?.spread.central ?? 0))} psu at once: a smaller vessel, or two switches in series, limits that.`,
          ]
        : []),
      "A float switch or pump at mains voltage: a low-voltage one, or a socket behind a residual-current device (RCD, GFCI); fixed wiring is for a licensed electrician and the local code.",
    ],
    notes: [
      "Top up with purified water, never with salt water: salt stays behind when water evaporates.",
      "What spray and wet skimming carry off is salt water: salinity then falls. Read it weekly.",
    ],
    wouldChange: ["Litres that you topped up in a week: measured beats any rule."],
    figures: [
      daily,
      drift,
      heat,
      most,
      ...(stuck === null ? [] : [stuck]),
      ...(lasts === null ? [] : [lasts]),
    ],
  };
}

/** Litres a day, by the way that was chosen. */
function dailyOf(given: Given): Figure | SumRefusal {
  const [water, salinity, days] = [given.amount("water"), given.amount("salinity"), given.maybe("days")];
  const make = (
    spread: Spread,
    formula: string,
    inputs: ReturnType<typeof inputOf>[],
    judged: boolean,
  ): Figure =>
    figure({
      ...{
        name: "daily",
        label: "water that evaporates in a day",
        unit: "L",
        at: "evaporation",
        spread,
        formula,
        inputs,
        judged,
      },
      references: judged ? [WORK.memory] : [WORK.mixing],
      wouldChange: judged ? ["air that moves over the water", "the room's humidity"] : ["a longer time"],
    });
  const way = given.choice("by");
  if (way === "area") {
    const [area, temperature, room, humidity] = [
      given.maybe("area"),
      given.amount("temperature"),
      given.amount("room"),
      given.amount("humidity"),
    ];
    if (area === null)
      return refusal(
        ["It needs the open surface: length × width of the water that the air reaches."],
        "area",
      );
    const spread = evaporatesFrom({ areaM2: area, temperature, room, humidity, psu: salinity.central });
    return make(
      spread,
      EVAPORATION_FORMULA,
      [
        inputOf("open surface", area),
        inputOf("temperature of the water", temperature),
        inputOf("temperature of the room", room),
        inputOf("humidity of the room", humidity),
        AIR_INPUT,
      ],
      true,
    );
  }
  if (days === null) return refusal(["It needs the days over which that happened."], "days");
  if (way === "litres") {
    const litres = given.maybe("topped_up");
    if (litres === null) return refusal(["It needs the litres that were topped up."], "topped_up");
    return make(
      cornersOf([litres, days], ([l = 0, d = 1]) => l / d),
      "litres topped up ÷ days",
      [inputOf("topped up", litres), inputOf("days", days)],
      false,
    );
  }
  const risen = given.maybe("risen_to");
  if (risen === null) return refusal(["It needs the salinity that it rose to."], "risen_to");
  if (risen.central <= salinity.central)
    return refusal(["Salinity did not rise: nothing can be told of evaporation from it."], "risen_to");
  return make(
    cornersOf(
      [water, salinity, risen, days],
      ([w = 1, s = 1, r = 1, d = 1]) => Math.max(0, evaporationFromDrift(w, s, r)) / d,
    ),
    "water × (1 − salinity before ÷ salinity after) ÷ days",
    [
      inputOf("water", water),
      inputOf("salinity before", salinity),
      inputOf("salinity after", risen),
      inputOf("days", days),
    ],
    false,
  );
}
