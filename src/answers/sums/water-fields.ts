/** Fields of the water's chemistry that several sums ask for, and the water they add up to. */
import { readAlkalinity } from "../../contract/quantity/alkalinity.ts";
import { readAmmonia } from "../../contract/quantity/ammonia.ts";
import { readMeasure } from "../../contract/quantity/measure.ts";
import { readCalcium, readMagnesium } from "../../contract/quantity/minerals.ts";
import type { Amount } from "../../contract/quantity/outcome.ts";
import { type MeasureContext, type MeasureRule, spellingsOf } from "../../contract/quantity/rule.ts";
import { READING_DOUBT } from "../../contract/tank-file/assumptions.ts";
import { phOnTotalScale } from "../../engine/seawater/ammonia.ts";
import type { Water } from "../../engine/seawater/carbonate.ts";
import type { PhScale } from "../../engine/seawater/ph-scale.ts";
import { fitConfidence } from "../../engine/seawater/validity.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { WorkingInput } from "../../engine/types/figure.ts";
import { celsius, type PhTotal, practicalSalinity } from "../../engine/units/quantity.ts";
import { PH_ERROR, PH_SCALE_DOUBT, type PhRead } from "../water/bands.ts";
import { doubted, stated } from "./parts.ts";
import type { AmountField, ChoiceField, Given } from "./sum.ts";
import { latestOf } from "./tank-fields.ts";

export const ALKALINITY: AmountField = {
  ...{ name: "alkalinity", label: "Alkalinity", hint: "", input: "amount", empty: "needed" },
  ...{ read: readAlkalinity, example: "8.2 dKH", units: ["dKH", "meq/L", "mg/L as CaCO3"] },
  fromTank: latestOf("alkalinity_meq_per_l", "meq/L"),
};

export const CALCIUM: AmountField = {
  ...{ name: "calcium", label: "Calcium", hint: "", input: "amount", empty: "needed" },
  ...{ read: readCalcium, example: "420 mg/L", units: ["mg/L"] },
  fromTank: latestOf("calcium_mg_per_l", "mg/L"),
};

export const MAGNESIUM: AmountField = {
  ...{ name: "magnesium", label: "Magnesium", hint: "", input: "amount", empty: "needed" },
  ...{ read: readMagnesium, example: "1300 mg/L", units: ["mg/L"] },
  fromTank: latestOf("magnesium_mg_per_l", "mg/L"),
};

export const TOTAL_AMMONIA: AmountField = {
  ...{ name: "ammonia", label: "Total ammonia", input: "amount", empty: "needed" },
  hint: "As the kit counts it: as N, as NH3 or as NH4. Say which.",
  read: (text, context) => readAmmonia(text, { ...context, form: "total", stocked: false }),
  ...{ example: "0.5 mg/L as N", units: ["mg/L as N", "mg/L as NH3", "mg/L as NH4"] },
  fromTank: latestOf("tan_mg_n_per_l", "mg/L as N"),
};

export const PH_SCALE: ChoiceField = {
  ...{ name: "ph_scale", label: "Scale of the pH", input: "choice", usual: "unknown" },
  hint: "Meters set with buffers 7 and 10 or 4, and colour kits, are on the NBS scale.",
  choices: [
    { text: "unknown", label: "Not known: taken as NBS, and less sure" },
    { text: "nbs", label: "NBS: set with ordinary buffers" },
    { text: "total", label: "Total: set with seawater buffers" },
  ],
};

export const PH_BY: ChoiceField = {
  ...{ name: "ph_by", label: "pH read with", hint: "", input: "choice", usual: "meter" },
  choices: [
    { text: "meter", label: "A meter, set within the month: to 0.1" },
    { text: "kit", label: "Colours: to 0.2" },
  ],
};

/** The pH typed, with all that it may be off by. */
export function phRead(given: Given): PhRead {
  const scale = given.choice("ph_scale");
  return {
    ph: given.amount("ph"),
    scale: (scale === "total" ? "total" : "nbs") satisfies PhScale,
    stated: scale !== "unknown",
  };
}

/** The same with the doubt of meter or colours and of the scale put into the band. */
export function phDoubted(given: Given): PhRead {
  const read = phRead(given);
  const by = given.choice("ph_by") === "kit" ? READING_DOUBT.ph : PH_ERROR;
  return { ...read, ph: doubted(read.ph as Amount, by + (read.stated ? 0 : PH_SCALE_DOUBT)) };
}

export const onTotal = (ph: number, scale: PhScale, { temperature, salinity }: Water): PhTotal =>
  phOnTotalScale(ph, scale, temperature, salinity);

export interface TestedWater {
  readonly temperature: Amount;
  readonly salinity: Amount;
}

/** The water with the doubt of thermometer and instrument. */
export const testedWater = (given: Given): TestedWater => ({
  temperature: doubted(given.amount("temperature"), READING_DOUBT.temperature_c),
  salinity: doubted(given.amount("salinity"), READING_DOUBT.salinity_psu),
});

export const waterOf = (temperature: number, salinity: number): Water => ({
  temperature: celsius(temperature),
  salinity: practicalSalinity(salinity),
});

export const middleWater = ({ temperature, salinity }: TestedWater): Water =>
  waterOf(temperature.central, salinity.central);

export const waterInputs = ({ temperature, salinity }: TestedWater): WorkingInput[] => [
  stated("salinity", salinity, "psu"),
  stated("temperature", temperature, "C"),
];

export const testedAlkalinity = (amount: Amount): Amount =>
  doubted(amount, READING_DOUBT.alkalinity_meq_per_l, 0);
export const testedCalcium = (amount: Amount): Amount => doubted(amount, READING_DOUBT.calcium_mg_per_l, 0);
export const testedMagnesium = (amount: Amount): Amount =>
  doubted(amount, READING_DOUBT.magnesium_mg_per_l, 0);

export const phInput = ({ ph, scale, stated: known }: PhRead): WorkingInput =>
  stated(`reading of pH (${scale === "total" ? "total" : known ? "NBS" : "taken as NBS"})`, ph, "");

/** Where the constants of the carbonate system are left behind. */
export function fitNotes({ temperature, salinity }: Water): string[] {
  return fitConfidence("carbonate", temperature, salinity) === "low"
    ? ["The constants were measured at salinity 19 to 43 and 2 to 35 °C: beyond that this is rough."]
    : [];
}

export const TEST_NOTE =
  "The ranges are what the tests may be off by, added as independent errors; a range typed in a field, such as " +
  "8.1-8.3, stands instead.";

/** A rule for an amount that has one unit or none, whatever it is called. */
export function plainRule(
  label: string,
  unit: string,
  words: readonly string[],
  hard: MeasureRule<MeasureContext>["hard"],
  example: string,
): MeasureRule<MeasureContext> {
  const spellings = unit === "" ? { "": [""] } : spellingsOf([unit], { [unit]: words });
  return {
    label,
    unit,
    example,
    spellings,
    toCanonical: (value) => value,
    plain: [unit],
    offered: [unit],
    hard,
  };
}

export const readWith =
  (rule: MeasureRule<MeasureContext>): AmountField["read"] =>
  (text, context) =>
    readMeasure(text, rule, context);

/** Middle, low and high of the same thing in another unit. */
export const mapped = ({ low, central, high }: Spread, of: (value: number) => number): Spread => ({
  low: of(low),
  central: of(central),
  high: of(high),
});
