/** A value from any unit that keepers use into another, or into all that measure the same. */
import { readUnitAlone, readWithUnit } from "../../contract/quantity/any-unit.ts";
import type { Amount } from "../../contract/quantity/outcome.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { round3, tellingApart } from "../../engine/types/link.ts";
import { told } from "../sentence.ts";
import { CONVERT_UNITS, type ConvertUnit, type Kind, unitsSpelled } from "./convert-units.ts";
import { figuresOf, refusal, stated } from "./parts.ts";
import type { AmountField, ChoiceField, Given, Sum, SumAnswer, SumRefusal } from "./sum.ts";
import { SALINITY, TEMPERATURE } from "./tank-fields.ts";
import { mapped, waterInputs, waterOf } from "./water-fields.ts";

const KINDS: readonly Kind[] = [...new Set(CONVERT_UNITS.map(({ kind }) => kind))];

const VALUE: AmountField = {
  ...{ name: "value", label: "Value with its unit", hint: "", input: "amount", empty: "needed" },
  ...{ read: readWithUnit, example: "8 dKH", units: [] },
};
const TO: AmountField = {
  ...{
    name: "to",
    label: "Into which unit",
    hint: "Empty: into all that measure the same.",
    input: "amount",
  },
  ...{ empty: "optional", read: readUnitAlone, example: "mg/L as CaCO3", units: [] },
};
const OF: ChoiceField = {
  ...{ name: "of", label: "Of what", hint: "", input: "choice", usual: "any" },
  choices: [
    { text: "any", label: "The unit says it" },
    ...KINDS.map((kind) => ({ text: kind, label: kind.charAt(0).toUpperCase() + kind.slice(1) })),
  ],
};
/** Water that is taken where nothing is said; told only where it enters. */
const TAKEN: Readonly<Record<"temperature" | "salinity", Amount>> = {
  temperature: { low: 25, central: 25, high: 25, unit: "C", censored: null },
  salinity: { low: 35, central: 35, high: 35, unit: "psu", censored: null },
};

const figure = figuresOf("convert");

interface Pair {
  readonly from: ConvertUnit;
  /** Null: into all of its kind. */
  readonly to: ConvertUnit | null;
}

function work(given: Given): SumAnswer | SumRefusal {
  const value = given.amount("value");
  const chosen = given.choice("of");
  const kind = chosen === "any" ? null : (chosen as Kind);
  const to = given.maybe("to");
  const froms = unitsSpelled(value.unit, kind);
  const targets = to === null ? null : unitsSpelled(to.unit, kind);
  if (froms.length === 0) return refusal([unknownWords(value.unit, kind)], "value");
  if (targets !== null && targets.length === 0) return refusal([unknownWords(to?.unit ?? "", kind)], "to");
  // A target that only one kind has settles which kind is meant.
  const pairs: readonly Pair[] = froms.flatMap((from): readonly Pair[] =>
    targets === null
      ? [{ from, to: null }]
      : targets.filter((one) => one.kind === from.kind).map((one) => ({ from, to: one })),
  );
  const [pair, other] = pairs;
  if (pair === undefined) {
    const words = `${froms[0]?.kind} can't be turned into ${targets?.[0]?.kind}: they measure different things`;
    return refusal([`${words.charAt(0).toUpperCase()}${words.slice(1)}.`], "to");
  }
  if (other !== undefined) {
    const field = pairs.every(({ from }) => from.kind === pair.from.kind) ? "value" : "of";
    const names = [...new Set(pairs.map(({ from, to: target }) => meant(field, from, target)))];
    return refusal([`That unit can mean ${names.join(" or ")}: say which.`], field);
  }
  const temperature = given.maybe("temperature") ?? TAKEN.temperature;
  const salinity = given.maybe("salinity") ?? TAKEN.salinity;
  const water = waterOf(temperature.central, salinity.central);
  const canonical = mapped(value, (one) => pair.from.to(one, water));
  const others = CONVERT_UNITS.filter((one) => one.kind === pair.from.kind && one !== pair.from);
  const units = pair.to === null ? others : [pair.to];
  const figures = units.map((unit) =>
    figure({
      ...{ name: nameOf(unit), label: `the same in ${unit.unit}`, unit: unit.unit, at: "units" },
      spread: ordered(mapped(canonical, (one) => unit.from(one, water))),
      formula:
        unit.ofWater || pair.from.ofWater
          ? "by the water's own density and salinity"
          : "by definition, or by molar masses",
      inputs: [
        stated("value", value, pair.from.unit),
        ...(unit.ofWater || pair.from.ofWater ? waterInputs({ temperature, salinity }) : []),
      ],
      sources:
        unit.kind === "salinity" ? ["unesco-44", "millero-poisson-1981", "millero-2008"] : ["iupac-weights"],
    }),
  );
  const shown = figures.map(({ id, spread, unit }) => told(long(spread, unit), id));
  const [first] = shown;
  if (first === undefined) return refusal(["That is the only unit of its kind here."], "value");
  return {
    kind: "answer",
    lead: [`${long(value, pair.from.unit)} is `, first, "."],
    rows: figures.map(({ label }, i) => ({
      label: label.charAt(0).toUpperCase() + label.slice(1),
      value: [shown[i] ?? ""],
    })),
    ...{ tables: [], cautions: [] },
    notes: [
      ...(NOTES[pair.from.kind] ?? []),
      ...(units.some(({ ofWater }) => ofWater) || pair.from.ofWater
        ? [
            `By mass, scale or saturation: for water of ${round3(salinity.central)} psu at ${round3(temperature.central)} C.`,
          ]
        : []),
    ],
    wouldChange: ["Nothing but the value itself, and the water where it enters."],
    figures,
  };
}

/** Traps that have cost keepers tanks. */
const NOTES: Readonly<Partial<Record<Kind, readonly string[]>>> = {
  nitrate: ["A kit that counts as N shows 4.4 times less than one that counts as NO3: read its leaflet."],
  phosphate: ["A meter that counts as P shows 3.1 times less than one that counts as PO4."],
  ammonia: ["This is all of the ammonia. The poisonous share of it is another sum."],
  salinity: [
    "A floating hydrometer shows another number than these: the sum on salinity has it.",
    "A specific gravity means nothing without the two temperatures printed beside it.",
  ],
};

const meant = (field: string, from: ConvertUnit, target: ConvertUnit | null): string =>
  field === "of" ? from.kind : target === null ? from.unit : `${from.unit} into ${target.unit}`;

const unknownWords = (unit: string, kind: Kind | null): string => {
  const known = CONVERT_UNITS.filter((one) => kind === null || one.kind === kind).map((one) => one.unit);
  const words = kind === null ? "a unit we know" : `a unit of ${kind} here`;
  return `"${unit}" is not ${words}. Known: ${[...new Set(known)].join(", ")}.`;
};

const nameOf = ({ unit }: ConvertUnit): string =>
  unit
    .toLowerCase()
    .replace(/%/g, "percent")
    .replace(/[^a-z0-9]+/g, "_")
    .replace(/^_|_$/g, "");

const ordered = ({ low, central, high }: Spread): Spread => ({
  ...{ low: Math.min(low, high), central, high: Math.max(low, high) },
});

/** Five figures where it is exact: a conversion is asked to be. */
function long(spread: Spread, unit: string): string {
  if (spread.low !== spread.high) {
    const { low, central, high } = tellingApart(spread);
    return `${central} ${unit} (${low} to ${high})`;
  }
  const figures = Number(spread.central.toPrecision(5));
  return `${Math.abs(figures) >= 1e-6 || figures === 0 ? figures : figures.toExponential(3)} ${unit}`;
}

export const CONVERT: Sum = {
  id: "convert",
  group: "chemistry",
  name: "Units",
  question: "What is this in another unit?",
  fields: [VALUE, TO, OF, { ...TEMPERATURE, empty: "optional" }, { ...SALINITY, empty: "optional" }],
  examples: [
    { value: "8 dKH" },
    { value: "20 ppb P", to: "mg/L as PO4" },
    { value: "10 mg/L as N", of: "nitrate", to: "mg/L as NO3" },
    { value: "1.026 sg 20/20", to: "mS/cm" },
    { value: "420 mg/kg", of: "calcium", to: "mg/L", temperature: "78 F" },
    { value: "30 US gal", to: "L" },
    { value: "78-80 F", to: "C" },
  ],
  work,
};
