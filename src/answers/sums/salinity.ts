/** One salinity from whatever instrument was read, its own error taken off, and what every other would show. */
import type { Amount } from "../../contract/quantity/outcome.ts";
import { type MeasureContext, type MeasureRule, spellingsOf } from "../../contract/quantity/rule.ts";
import { readSalinity } from "../../contract/quantity/salinity.ts";
import { READING_DOUBT } from "../../contract/tank-file/assumptions.ts";
import { gramsOfSaltPerKg } from "../../engine/seawater/composition.ts";
import { density } from "../../engine/seawater/density.ts";
import {
  type Calibration,
  corrected,
  type Instrument,
  salinityShown,
  shownBy,
} from "../../engine/seawater/instruments.ts";
import { GRAVITY_SCALES, type GravityScaleName } from "../../engine/seawater/specific-gravity.ts";
import { fitConfidence } from "../../engine/seawater/validity.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { celsius, practicalSalinity } from "../../engine/units/quantity.ts";
import { conductivityBand, densityBand, gravityBand } from "../water/bands.ts";
import { figuresOf, linkTo, middle, number, row, stated } from "./parts.ts";
import { independently } from "./spread.ts";
import type { AmountField, ChoiceField, Given, Sum, SumAnswer } from "./sum.ts";
import { TEMPERATURE } from "./tank-fields.ts";
import { readWith } from "./water-fields.ts";

const SHOWN_UNITS = ["", "psu", "sg", "mS/cm", "uS/cm"];
/** What an instrument shows, whatever is printed behind the number: which instrument it is has been said beside it. */
const SHOWN: MeasureRule<MeasureContext> = {
  ...{ label: "What it shows", unit: "", example: "1.025", plain: SHOWN_UNITS, offered: [""] },
  spellings: {
    "": [""],
    ...spellingsOf(SHOWN_UNITS.slice(1), { psu: ["ppt", "‰"], sg: ["specific gravity"] }),
  },
  toCanonical: (value, unit) => (unit === "uS/cm" ? value / 1000 : value),
  hard: { min: 0, max: 1100 },
};

const field = (name: string, label: string, hint: string, empty: AmountField["empty"]): AmountField => ({
  ...{ name, label, hint, input: "amount", empty, read: readWith(SHOWN), example: "1.025", units: [] },
});

const INSTRUMENT: ChoiceField = {
  ...{ name: "instrument", label: "Instrument", hint: "", input: "choice", usual: null },
  choices: [
    { text: "gravity", label: "Refractometer or probe that shows specific gravity" },
    { text: "floating", label: "Floating glass hydrometer" },
    { text: "conductivity_25", label: "Conductivity meter that corrects to 25 C" },
    { text: "conductivity", label: "Conductivity meter that does not correct" },
    { text: "salinity", label: "One that shows psu or ppt" },
  ],
};

const UNKNOWN = "unknown";
const SCALE: ChoiceField = {
  ...{
    name: "scale",
    label: "Temperatures printed beside specific gravity",
    input: "choice",
    usual: UNKNOWN,
  },
  hint: "Sample over pure water. Of psu and conductivity it does not matter.",
  choices: [
    { text: UNKNOWN, label: "None printed: the usual ones are tried, and it is less sure" },
    ...Object.keys(GRAVITY_SCALES).map((name) => ({ text: name, label: name })),
  ],
};

/** Scales that an instrument without any printed is likely to have; common practice, no source. */
const LIKELY: Readonly<Record<"gravity" | "floating", readonly GravityScaleName[]>> = {
  gravity: ["20/20", "25/25"],
  floating: ["60F/60F", "20/20", "25/25"],
};

const REFERENCE: AmountField = {
  ...{ name: "reference", label: "Salinity of a reference water", input: "amount", empty: "optional" },
  hint: "A standard of known salinity, freshly opened.",
  ...{ read: readSalinity, example: "35 psu", units: ["psu"] },
};

/** Doubt of a salinity, psu, by what the instrument was tried in; judgement. */
const DOUBT = { untried: READING_DOUBT.salinity_psu, reference: 0.5 } as const;

const figure = figuresOf("salinity");

function instrumentsOf(given: Given): readonly Instrument[] {
  const kind = given.choice("instrument") as Instrument["kind"];
  if (kind !== "gravity" && kind !== "floating") return [{ kind }];
  const scale = given.choice("scale");
  const names = scale === UNKNOWN ? LIKELY[kind] : [scale as GravityScaleName];
  return names.map((name) => ({ kind, scale: GRAVITY_SCALES[name] }));
}

function calibrationOf(given: Given): Calibration {
  const [fresh, reference, shown] = ["in_fresh", "reference", "in_reference"].map((name) =>
    given.maybe(name),
  );
  return {
    inFresh: fresh?.central ?? null,
    inReference:
      reference == null || shown == null
        ? null
        : { shown: shown.central, salinity: practicalSalinity(reference.central) },
  };
}

function work(given: Given): SumAnswer {
  const reading = given.amount("reading");
  const temperature = given.amount("temperature");
  const calibration = calibrationOf(given);
  const instruments = instrumentsOf(given);
  const doubt = calibration.inReference === null ? DOUBT.untried : DOUBT.reference;
  const truth = (instrument: Instrument, shown: number, t: number): number =>
    salinityShown(instrument, corrected(instrument, shown, calibration, celsius(t)), celsius(t));
  // Where no scale is printed each likely one is worked out: the answer lies between the outer two.
  const each = instruments.map((instrument) =>
    independently(
      [reading, temperature, { low: -doubt, central: 0, high: doubt }],
      ([x = 0, t = 0, off = 0]) => truth(instrument, x, t) + off,
    ),
  );
  const ends = each.map(({ central }) => central);
  const spread: Spread = {
    low: Math.max(0, Math.min(...each.map(({ low }) => low))),
    central: (Math.min(...ends) + Math.max(...ends)) / 2,
    high: Math.max(...each.map(({ high }) => high)),
  };
  const salinity = figure({
    ...{ name: "salinity", label: "salinity", unit: "psu", at: "instruments", spread },
    formula: "what the instrument shows, its own error taken off, through its scale",
    inputs: [
      stated("what it shows", reading, ""),
      stated("temperature of the water", temperature, "C"),
      ...(["in_fresh", "reference", "in_reference"] as const).flatMap((name) => {
        const amount = given.maybe(name);
        return amount === null ? [] : [stated(TRIED[name], amount, name === "reference" ? "psu" : "")];
      }),
    ],
    sources: ["unesco-44", "millero-poisson-1981"],
    wouldChange:
      calibration.inReference === null ? ["trying it in water of known salinity"] : ["a truer reading"],
    judged: true,
  });
  const others = othersOf(spread, temperature).map(({ name, label, unit, of, sources }) =>
    figure({
      ...{ name, label, unit, spread: of, at: "instruments", formula: "the same water through that scale" },
      ...{ inputs: [linkTo(salinity)], sources },
    }),
  );
  const error =
    instruments.length === 1 ? errorOf(instruments[0] as Instrument, calibration, temperature) : null;
  return {
    kind: "answer",
    lead: ["The water has a salinity of ", middle(salinity), "."],
    rows: [row(salinity)],
    tables: [
      {
        title: "The same water on every other instrument",
        columns: ["Instrument", "Shows"],
        rows: others.map((one) => [[one.label], [number(one)]]),
      },
    ],
    cautions: [],
    notes: [
      ...(error === null ? [] : [error]),
      ...(instruments.length > 1
        ? [
            "No scale is printed: each usual one was tried, and the range holds them all. Look on the stem or in the leaflet.",
          ]
        : []),
      ...noteOn(calibration),
      ...(fitConfidence("density", celsius(temperature.central), practicalSalinity(spread.central)) === "low"
        ? ["Beyond the water that the equations were made for: rougher than it looks."]
        : []),
      "A refractometer made for table salt reads sea water about 1.5 psu high (from memory): only a reference of sea salt shows it.",
      "A scale in ppm of dissolved solids can't be turned into salinity: its factor is not known.",
    ],
    wouldChange: [
      "Trying the instrument in fresh water and in a reference of known salinity makes it surer.",
    ],
    figures: [salinity, ...others],
  };
}

const TRIED = {
  in_fresh: "what it shows in fresh water",
  reference: "salinity of the reference",
  in_reference: "what it shows in the reference",
} as const;

function noteOn({ inFresh, inReference }: Calibration): string[] {
  if (inReference === null)
    return inFresh === null
      ? ["It was tried in no water of known salinity: it may be off by 1 psu or more."]
      : ["Tried in fresh water only: near 35 psu its error may be another one."];
  return inFresh === null
    ? ["Tried in one reference: the same shift is taken off everywhere, which is right near that salinity."]
    : ["Tried in both: a straight line through the two is taken off."];
}

/** How wrong it is where it was tried. */
function errorOf(instrument: Instrument, { inReference }: Calibration, temperature: Amount): string | null {
  if (inReference === null) return null;
  const right = shownBy(instrument, inReference.salinity, celsius(temperature.central));
  const digits = instrument.kind === "gravity" || instrument.kind === "floating" ? 4 : 2;
  return `In the reference it should show ${right.toFixed(digits)} and showed ${inReference.shown}.`;
}

interface Other {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly of: Spread;
  readonly sources: readonly ("unesco-44" | "millero-poisson-1981" | "millero-2008")[];
}

function othersOf(salinity: Spread, temperature: Spread): readonly Other[] {
  const water = { temperature, salinity };
  const names = Object.keys(GRAVITY_SCALES) as GravityScaleName[];
  const plain = (name: string) => name.toLowerCase().replace("/", "_");
  const gravity = ["millero-poisson-1981"] as const;
  const conductivity = ["unesco-44"] as const;
  const alone = (of: (s: number) => number): Spread => independently([salinity], ([s = 0]) => of(s));
  return [
    ...names.map((name) => ({
      ...{
        name: `sg_${plain(name)}`,
        label: `Specific gravity ${name}, corrected`,
        unit: "sg",
        sources: gravity,
      },
      of: gravityBand(water, name),
    })),
    ...LIKELY.floating.map((name) => ({
      ...{
        name: `floating_${plain(name)}`,
        label: `Floating glass marked ${name}`,
        unit: "sg",
        sources: gravity,
      },
      of: independently([temperature, salinity], ([t = 0, s = 0]) =>
        shownBy({ kind: "floating", scale: GRAVITY_SCALES[name] }, practicalSalinity(s), celsius(t)),
      ),
    })),
    {
      ...{
        name: "conductivity_25",
        label: "Conductivity, corrected to 25 C",
        unit: "mS/cm",
        sources: conductivity,
      },
      of: conductivityBand(water, "25"),
    },
    {
      ...{ name: "conductivity", label: "Conductivity, not corrected", unit: "mS/cm", sources: conductivity },
      of: conductivityBand(water, "own"),
    },
    { name: "density", label: "Density", unit: "kg/m3", of: densityBand(water), sources: gravity },
    {
      ...{
        name: "grams_per_kg",
        label: "Salt in a kilogram",
        unit: "g/kg",
        sources: ["millero-2008"] as const,
      },
      of: alone((s) => gramsOfSaltPerKg(practicalSalinity(s))),
    },
    {
      ...{ name: "grams_per_l", label: "Salt in a litre", unit: "g/L", sources: ["millero-2008"] as const },
      of: independently([temperature, salinity], ([t = 0, s = 0]) => {
        const psu = practicalSalinity(s);
        return (gramsOfSaltPerKg(psu) * density(celsius(t), psu)) / 1000;
      }),
    },
  ];
}

export const SALINITY_SUM: Sum = {
  id: "salinity",
  group: "chemistry",
  name: "Salinity from an instrument",
  question: "How salty is the water, and what would another instrument show?",
  fields: [
    INSTRUMENT,
    field("reading", "What it shows", "The number as it stands on the instrument.", "needed"),
    SCALE,
    { ...TEMPERATURE, label: "Temperature of the water" },
    field("in_fresh", "What it shows in fresh water", "Pure water, at the same temperature.", "optional"),
    REFERENCE,
    field("in_reference", "What it shows in that reference", "", "optional"),
  ],
  examples: [
    { instrument: "gravity", reading: "1.025", scale: "20/20", temperature: "25 C", in_fresh: "1.001" },
    { instrument: "floating", reading: "1.0235", scale: "60F/60F", temperature: "79 F" },
    {
      instrument: "conductivity_25",
      reading: "51.2 mS/cm",
      temperature: "25 C",
      reference: "35 psu",
      in_reference: "52.4",
    },
    { instrument: "gravity", reading: "1.026", temperature: "24 C" },
  ],
  work,
};
