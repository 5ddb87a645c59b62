/** How much oxygen the water holds at most: the shortest of the sums, and the pattern for the others. */

import { readMeasure } from "../../contract/quantity/measure.ts";
import { convertible } from "../../contract/quantity/plain.ts";
import { SEAWATER_SOURCES } from "../../engine/seawater/sources.ts";
import { fitConfidence } from "../../engine/seawater/validity.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { exact, spreadText, workedOut } from "../../engine/types/link.ts";
import { celsius, practicalSalinity } from "../../engine/units/quantity.ts";
import { told } from "../sentence.ts";
import { oxygenBand, WEATHER } from "../water/bands.ts";
import { inputOf } from "./spread.ts";
import type { Sum } from "./sum.ts";
import { SALINITY, TEMPERATURE } from "./tank-fields.ts";

const ALTITUDE_RULE = convertible({
  ...{ label: "Altitude", quantity: "length", unit: "m", example: "250 m" },
  hard: { min: -430, max: 5500 },
});

export const OXYGEN: Sum = {
  id: "oxygen",
  group: "chemistry",
  name: "Oxygen when saturated",
  question: "How much oxygen does this water hold when it is full?",
  fields: [
    SALINITY,
    TEMPERATURE,
    {
      ...{ name: "altitude", label: "Height above the sea", hint: "", input: "amount" },
      empty: { text: "0 m", how: "taken to be at the sea" },
      read: (text, context) => readMeasure(text, ALTITUDE_RULE, context),
      ...{ example: "250 m", units: ["m", "ft"] },
    },
  ],
  examples: [
    { salinity: "35 psu", temperature: "25 C" },
    { salinity: "1.0264 sg 25/25", temperature: "79 F", altitude: "1500 m" },
  ],
  work: (given) => {
    const [temperature, salinity, altitude] = [
      given.amount("temperature"),
      given.amount("salinity"),
      given.amount("altitude"),
    ];
    const spread = oxygenBand({ temperature, salinity }, altitude);
    const fitted = fitConfidence("oxygen", celsius(temperature.central), practicalSalinity(salinity.central));
    const figure: Figure = {
      id: figureId.sum("oxygen", "saturation"),
      ...{ label: "oxygen when saturated", spread, unit: "mg/L" },
      working: {
        formulaKey: "seawater.md#oxygen",
        formula: "balance of seawater with moist air at this height",
        inputs: [
          inputOf("salinity", salinity),
          inputOf("temperature", temperature),
          inputOf("height above the sea", altitude),
          workedOut("weather moves air pressure by", spreadText(exact(100 * WEATHER), "%")),
        ],
        ...{ parameters: [], animals: [], confidence: "computed" },
        references: [SEAWATER_SOURCES["garcia-gordon-1992"], SEAWATER_SOURCES["icao-atmosphere"]],
        wouldChange: ["the temperature", "the height above the sea"],
      },
    };
    const value = spreadText(spread, "mg/L");
    return {
      kind: "answer",
      lead: ["Full of oxygen this water holds ", told(value, figure.id), "."],
      rows: [{ label: "Oxygen when saturated", value: [told(value, figure.id)] }],
      tables: [],
      cautions: [],
      notes:
        fitted === "low" ? ["Beyond the range that the equation was fitted on: rougher than it looks."] : [],
      wouldChange: ["Warmer or saltier water holds less; so does thinner air."],
      figures: [figure],
    };
  },
};
