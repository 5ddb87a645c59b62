/** How much of the ammonia that a kit shows is the poisonous part, and where that lies against limits. */

import { READING_DOUBT } from "../../contract/tank-file/assumptions.ts";
import { SEAWATER_SOURCES } from "../../engine/seawater/sources.ts";
import { fitConfidence } from "../../engine/seawater/validity.ts";
import { exact } from "../../engine/types/link.ts";
import { celsius, practicalSalinity } from "../../engine/units/quantity.ts";
import { told } from "../sentence.ts";
import { ACT_TODAY, ammoniaLimits, isDanger } from "../water/ammonia-limits.ts";
import { ammoniaShareBand, PH_ERROR, product } from "../water/bands.ts";
import { doubted, figuresOf, linkTo, middle, number, row, stated, times } from "./parts.ts";
import { inputOf } from "./spread.ts";
import type { Given, Sum, SumAnswer } from "./sum.ts";
import { PH, SALINITY, TEMPERATURE } from "./tank-fields.ts";
import { PH_BY, PH_SCALE, phInput, phRead, TOTAL_AMMONIA } from "./water-fields.ts";

const figure = figuresOf("ammonia");
const AGAINST = { below: "below", either: "about at", above: "above" } as const;

function work(given: Given): SumAnswer {
  const [temperature, salinity, tan] = [
    given.amount("temperature"),
    given.amount("salinity"),
    given.amount("ammonia"),
  ];
  const read = phRead(given);
  // The band itself holds the error of a meter: colours add what they are worse by.
  const ph =
    given.choice("ph_by") === "kit"
      ? { ...read, ph: doubted(given.amount("ph"), READING_DOUBT.ph - PH_ERROR) }
      : read;
  const share = figure({
    ...{ name: "share", label: "share of ammonia that is un-ionised", unit: "%", at: "un-ionised-ammonia" },
    spread: times(ammoniaShareBand({ temperature, salinity }, ph), 100),
    formula:
      "pH on the total scale against the pKa of ammonium; 15 % for the equation on top of the pH's own error",
    inputs: [phInput(ph), inputOf("salinity", salinity), inputOf("temperature", temperature)],
    sources: [
      "clegg-whitfield-1995",
      "takahashi-1982",
      "dickson-1990",
      "dickson-riley-1979",
      "bower-bidwell-1978",
    ],
    wouldChange: ["the pH"],
  });
  const unionised = figure({
    ...{ name: "unionised", label: "un-ionised ammonia, as N", unit: "mg/L", at: "un-ionised-ammonia" },
    spread: times(product(share.spread, tan), 0.01),
    formula: "that share of all the ammonia",
    inputs: [linkTo(share), stated("total ammonia, as N", tan, "mg/L")],
    wouldChange: ["the pH", "the ammonia test"],
  });
  const limits = ammoniaLimits(unionised.spread);
  const limit = (name: string, label: string, value: number) =>
    figure({
      ...{ name, label, unit: "mg/L", at: "un-ionised-ammonia", spread: exact(value) },
      ...{ formula: "the agency's limit for salt water, as nitrogen", inputs: [], sources: ["epa-1989"] },
    });
  const chronic = limit("four_days", "limit over four days", limits.chronic_mg_n_per_l);
  const acute = limit("one_hour", "limit over one hour", limits.acute_mg_n_per_l);
  const rough =
    fitConfidence("ammonia", celsius(temperature.central), practicalSalinity(salinity.central)) === "low";
  return {
    kind: "answer",
    lead: [
      ...["Of this ammonia ", middle(unionised), " is un-ionised, "],
      ...[
        `${AGAINST[limits.against_chronic]} what is borne for four days (`,
        told(middle(chronic).text, chronic.id),
        ").",
      ],
    ],
    rows: [
      row(share),
      row(unionised),
      { label: "Limit over four days", value: [number(chronic), `: ${AGAINST[limits.against_chronic]}`] },
      { label: "Limit over one hour", value: [number(acute), `: ${AGAINST[limits.against_acute]}`] },
    ],
    tables: [],
    cautions: isDanger(limits) ? [ACT_TODAY] : [],
    notes: [
      "A kit also counts ammonia that a conditioner has bound; some show nothing of it. The limits are not for it.",
      "The pH scale decides more than the equation: meters set with ordinary buffers read about 0.14 higher.",
      ...(rough ? ["Beyond the water that the equation was made for: rougher than it looks."] : []),
      `Limits: ${SEAWATER_SOURCES["epa-1989"]}; the two spans of time from memory.`,
    ],
    wouldChange: ["The pH moves it most: a tenth higher makes a fifth more."],
    figures: [share, unionised, chronic, acute],
  };
}

export const AMMONIA: Sum = {
  id: "ammonia",
  group: "chemistry",
  name: "Un-ionised ammonia",
  question: "How poisonous is the ammonia in this water?",
  fields: [TOTAL_AMMONIA, PH, PH_SCALE, PH_BY, SALINITY, TEMPERATURE],
  examples: [
    { ammonia: "0.5 mg/L as N", ph: "8.2", ph_scale: "nbs", salinity: "35 psu", temperature: "25 C" },
    { ammonia: "2 mg/L as NH4", ph: "8.0", ph_by: "kit", salinity: "33 psu", temperature: "79 F" },
  ],
  work,
};
