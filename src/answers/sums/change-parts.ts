/** What the sums of water changes and setting up share: fields, figures with their heading, a change in per cent or litres. */

import { readMeasure } from "../../contract/quantity/measure.ts";
import { type Amount, kept, type Outcome } from "../../contract/quantity/outcome.ts";
import { convertible, readPlain } from "../../contract/quantity/plain.ts";
import type { MeasureContext, MeasureRule } from "../../contract/quantity/rule.ts";
import { readSalinity } from "../../contract/quantity/salinity.ts";
import { readVolume } from "../../contract/quantity/volume.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figuresOf, number } from "./parts.ts";
import type { AmountField, SumRow } from "./sum.ts";

export const careFigures = (sum: string) => figuresOf(sum, "water-changes.md");

export const rowOf = (label: string, figure: Figure, after = ""): SumRow => ({
  label,
  value: after === "" ? [number(figure)] : [number(figure), after],
});

/** Works that are no catalogue's: conservation itself needs none, the rest is named. */
export const WORK = {
  mixing: "Conservation of mass in a well mixed vessel: a textbook's equation, no single source",
  millero: "Millero et al. 2008, Reference Composition of seawater: 35.16504 g of salt a kg at salinity 35",
  eos80: "Millero & Poisson 1981, one-atmosphere equation of state of seawater (EOS-80)",
  memory: "From memory, no source opened",
  practice: "Common practice, no source",
} as const;

/** "20 %" or "15 L": a share of the water, or so much of it. */
function readChange(text: string, context: MeasureContext): Outcome<Amount> {
  const volume = /[a-z]/i.test(text.replace(/\b(?:per ?cent|percent|pct|about|checked|to|ca)\b/gi, ""));
  const unit = context.unit ?? null;
  return volume || (unit !== null && unit !== "%" && !text.includes("%"))
    ? readVolume(text, context)
    : readPlain("percent", text, { ...context, unit: "%" });
}

export const CHANGE: AmountField = {
  ...{ name: "change", label: "Changed each time", hint: "A share of the water, or so many litres." },
  ...{ input: "amount", empty: "needed", read: readChange, example: "10 %" },
  units: ["%", "L", "US gal", "imp gal"],
};

/** Share of the water that a change is, at most all of it. */
export const shareOf = (change: number, unit: string, waterL: number): number =>
  Math.min(1, unit === "%" ? change / 100 : change / waterL);

const numberRule = (
  label: string,
  hard: MeasureRule<MeasureContext>["hard"],
  example: string,
): MeasureRule<MeasureContext> => ({
  ...{ label, unit: "", example, spellings: {}, toCanonical: (value: number) => value },
  ...{ plain: [""], offered: [""], hard },
  refuseUnit: () => "Type the number alone, in the same unit in every field: it is not changed here.",
});

/** A bare number: a level in whatever unit the keeper's test has. */
export const readLevel = (text: string, context: MeasureContext): Outcome<Amount> =>
  readMeasure(text, numberRule("Level", { min: 0, max: 1e6 }, "20"), context);

/** Salinity of water that is no tank's: none at all is nothing to ask about. */
export const readOtherWater = (text: string, context: MeasureContext): Outcome<Amount> =>
  /^\s*0+([.,]0*)?\s*(psu|ppt|g\/kg)?\s*$/i.test(text)
    ? kept("accept", { ...NO_SALT, censored: null }, { text, unit: context.unit ?? null })
    : readSalinity(text, context);
const NO_SALT = { low: 0, central: 0, high: 0, unit: "psu" };

/** How many times. */
export const readTimes = (text: string, context: MeasureContext): Outcome<Amount> =>
  readMeasure(text, numberRule("Times", { min: 1, max: 365 }, "4"), context);

/** A length from a millimetre to ten metres. */
export const readLength = (text: string, context: MeasureContext): Outcome<Amount> =>
  readMeasure(text, LENGTH, context);
const LENGTH = convertible({
  ...{ label: "Length", quantity: "length", unit: "cm", example: "60" },
  hard: { min: 0, max: 1000, open: true },
});

export const TIMES: AmountField = {
  ...{ name: "times", label: "How many changes", hint: "", input: "amount", read: readTimes },
  ...{ empty: { text: "1", how: "one change" }, example: "4", units: [] },
};

const ROOM_RULE = convertible({
  ...{ label: "Temperature of the room", quantity: "temperature", unit: "C", example: "21 C" },
  hard: { min: -20, max: 45 },
});

/** Air around the tank: any temperature that a room has. */
export const ROOM: AmountField = {
  ...{ name: "room", label: "Temperature of the room", hint: "", input: "amount" },
  empty: { text: "21 C", how: "taken to be a living room's" },
  read: (text, context) => readMeasure(text, ROOM_RULE, context),
  ...{ example: "21 C", units: ["C", "F"] },
};

export const HUMIDITY: AmountField = {
  ...{ name: "humidity", label: "Humidity of the room", hint: "", input: "amount" },
  empty: { text: "40-60 %", how: "taken to be a living room's" },
  read: (text, context) => readPlain("percent", text, { ...context, label: "Humidity of the room" }),
  ...{ example: "50 %", units: ["%"] },
};
