/** Answers of general oceanographic libraries, each beside what Grazewell makes of the same water. */
import {
  ammoniumPKa,
  ammoniumPKaPerWater,
  unionisedAmmoniaFraction,
  unionisedAmmoniaSecondOpinion,
} from "../../src/engine/seawater/ammonia.ts";
import { aragoniteSaturation } from "../../src/engine/seawater/aragonite.ts";
import {
  type CarbonatePair,
  type CarbonateState,
  carbonateFrom,
} from "../../src/engine/seawater/carbonate.ts";
import {
  aragoniteProduct,
  type CarbonateConstants,
  carbonateConstants,
  referenceCalcium,
} from "../../src/engine/seawater/carbonate-constants.ts";
import { conductivityOf, salinityFromConductivity } from "../../src/engine/seawater/conductivity.ts";
import { density } from "../../src/engine/seawater/density.ts";
import {
  oxygenSaturation,
  oxygenSaturationPerKg,
  oxygenSaturationSecondOpinion,
} from "../../src/engine/seawater/oxygen.ts";
import {
  bisulfateConstant,
  fluorideConstant,
  nbsLessTotal,
  nbsToTotal,
  totalFluoride,
  totalLessSeawaterScale,
  totalSulfate,
} from "../../src/engine/seawater/ph-scale.ts";
import {
  floatingGravityOf,
  GRAVITY_SCALES,
  type GravityScale,
  gravityOf,
  salinityFromFloatingGravity,
  salinityFromGravity,
} from "../../src/engine/seawater/specific-gravity.ts";
import {
  celsius,
  micromolePerKilogram,
  millisiemensPerCentimetre,
  phNbs,
  phTotal,
  practicalSalinity,
  specificGravity,
} from "../../src/engine/units/quantity.ts";
import { toKelvin } from "../../src/engine/units/temperature.ts";
import { type Comparison, type LeftOut, type Pair, readBlocks } from "../comparison.ts";

type Values = Readonly<Record<string, number>>;
interface Point {
  readonly input: Values;
  readonly expected: Values;
  readonly second_opinion?: Values;
}

export const blocks = readBlocks("recorded/seawater.json");

const take = (values: Values, key: string): number => {
  const value = values[key];
  if (value === undefined) throw new TypeError(`no ${key} in ${JSON.stringify(values)}`);
  return value;
};
const salinity = (input: Values) => practicalSalinity(take(input, "practical_salinity"));
const TEMPERATURES = ["temperature_c_its90", "sample_temperature_c_its90", "temperature_c"];
const temperature = (input: Values) => celsius(take(input, TEMPERATURES.find((key) => key in input) ?? ""));

function pairs(
  block: string,
  theirs: (point: Point) => number,
  ours: (input: Values, point: Point) => number,
): Pair[] {
  return ((blocks[block]?.points ?? []) as Point[]).map((point) => ({
    at: JSON.stringify(point.input),
    theirs: theirs(point),
    ours: ours(point.input, point),
  }));
}

const expected = (key: string) => (point: Point) => take(point.expected, key);
const second = (key: string) => (point: Point) => take(point.second_opinion ?? {}, key);

const GSW = "GSW-Python 3.6.16";
const EOS = "python-seawater c297a781 (EOS-80)";
const CO2 = "PyCO2SYS 1.8.3.4";

const absolute = { relative: false } as const;
const relative = { relative: true } as const;

/** The library knows no glass, so neither do the floating readings here. */
const STILL_GLASS = 0;
const GRAVITY_KEYS: readonly { key: string; scale: GravityScale; floating: boolean }[] = [
  { key: "apparent_sg_of_sample_over_water_at_60f", scale: GRAVITY_SCALES["60F/60F"], floating: true },
  { key: "apparent_sg_of_sample_over_water_at_20c", scale: GRAVITY_SCALES["20/20"], floating: true },
  { key: "apparent_sg_of_sample_over_water_at_25c", scale: GRAVITY_SCALES["25/25"], floating: true },
  { key: "apparent_sg_of_sample_over_water_at_4c", scale: GRAVITY_SCALES["20/4"], floating: true },
  { key: "sg_temperature_corrected_20c_20c", scale: GRAVITY_SCALES["20/20"], floating: false },
  { key: "sg_temperature_corrected_25c_25c", scale: GRAVITY_SCALES["25/25"], floating: false },
  { key: "sg_temperature_corrected_60f_60f", scale: GRAVITY_SCALES["60F/60F"], floating: false },
];

const gravities: readonly Comparison[] = GRAVITY_KEYS.flatMap(({ key, scale, floating }) => [
  {
    ...absolute,
    block: "specific_gravity",
    quantity: key.replaceAll("_", " "),
    unit: "",
    source: EOS,
    tolerance: 2e-8,
    pairs: pairs("specific_gravity", expected(key), (input) =>
      floating
        ? floatingGravityOf(temperature(input), salinity(input), scale, STILL_GLASS)
        : gravityOf(salinity(input), scale),
    ),
  },
  {
    ...absolute,
    block: "specific_gravity",
    quantity: `salinity back from ${key.replaceAll("_", " ")}`,
    unit: "psu",
    source: EOS,
    tolerance: 1e-4,
    pairs: pairs(
      "specific_gravity",
      ({ input }) => take(input, "practical_salinity"),
      (input, point) => {
        const gravity = specificGravity(take(point.expected, key));
        return floating
          ? salinityFromFloatingGravity(gravity, temperature(input), scale, STILL_GLASS)
          : salinityFromGravity(gravity, scale);
      },
    ),
  },
]);

const CONSTANTS: readonly (readonly [
  key: string,
  quantity: string,
  unit: string,
  of: keyof CarbonateConstants,
])[] = [
  ["k0_mol_per_kg_atm", "solubility of CO2 (Weiss 1974)", "mol/kg/atm", "k0"],
  ["k1_mol_per_kg_total_scale", "first constant of carbonic acid (Lueker et al. 2000)", "mol/kg", "k1"],
  ["k2_mol_per_kg_total_scale", "second constant of carbonic acid (Lueker et al. 2000)", "mol/kg", "k2"],
  ["kb_mol_per_kg_total_scale", "constant of boric acid (Dickson 1990)", "mol/kg", "borate"],
  ["kw_mol2_per_kg2_total_scale", "ionisation of water (Millero 1995)", "mol²/kg²", "water"],
];

const constants: readonly Comparison[] = [
  ...CONSTANTS.map(([key, quantity, unit, of]) => ({
    ...{ ...relative, block: "equilibrium_constants", quantity, unit, source: CO2, tolerance: 1e-6 },
    pairs: pairs(
      "equilibrium_constants",
      expected(key),
      (input) => carbonateConstants(temperature(input), salinity(input))[of],
    ),
  })),
  {
    ...{
      ...relative,
      block: "equilibrium_constants",
      quantity: "solubility product of aragonite",
      unit: "mol²/kg²",
    },
    ...{ source: `${CO2} (Mucci 1983)`, tolerance: 1e-6 },
    pairs: pairs("equilibrium_constants", expected("ksp_aragonite_mol2_per_kg2"), (input) =>
      aragoniteProduct(temperature(input), salinity(input)),
    ),
  },
  {
    ...{ ...relative, block: "equilibrium_constants", quantity: "total boron", unit: "µmol/kg" },
    ...{ source: `${CO2} (Uppstrom 1974)`, tolerance: 1e-6 },
    pairs: pairs(
      "equilibrium_constants",
      expected("total_boron_umol_per_kg"),
      (input) => 1e6 * carbonateConstants(temperature(input), salinity(input)).totalBoron,
    ),
  },
  {
    ...{
      ...relative,
      block: "equilibrium_constants",
      quantity: "calcium of natural seawater",
      unit: "µmol/kg",
    },
    ...{ source: `${CO2} (Riley & Tongudai 1967)`, tolerance: 1e-6 },
    pairs: pairs(
      "equilibrium_constants",
      expected("reference_calcium_umol_per_kg"),
      (input) => 1e6 * referenceCalcium(salinity(input)),
    ),
  },
];

const SPECIES: readonly (readonly [key: string, quantity: string, unit: string, of: keyof CarbonateState])[] =
  [
    ["dic_umol_per_kg", "dissolved inorganic carbon", "µmol/kg", "dic"],
    ["bicarbonate_umol_per_kg", "bicarbonate", "µmol/kg", "bicarbonate"],
    ["carbonate_umol_per_kg", "carbonate", "µmol/kg", "carbonate"],
    ["aqueous_co2_umol_per_kg", "CO2 in the water", "µmol/kg", "co2"],
    ["fco2_uatm", "fugacity of CO2", "µatm", "fco2"],
    ["borate_alkalinity_umol_per_kg", "alkalinity of borate", "µmol/kg", "borateAlkalinity"],
    ["hydroxide_umol_per_kg", "hydroxide", "µmol/kg", "hydroxide"],
  ];
/** Blocks of the carbonate grid: what it is worked out from, and the tolerance that the file gives it. */
const GRIDS: readonly (readonly [
  block: string,
  from: string,
  tolerance: number,
  pair: (input: Values) => CarbonatePair,
])[] = [
  [
    "carbonate_from_alkalinity_and_ph_total",
    "alkalinity and total pH",
    1e-6,
    (input) => ({
      alkalinity: alkalinity(input),
      ph: phTotal(take(input, "ph_total_scale")),
    }),
  ],
  [
    "carbonate_from_alkalinity_and_ph_nbs",
    "alkalinity and NBS pH",
    1e-6,
    (input) => ({
      alkalinity: alkalinity(input),
      ph: nbsToTotal(phNbs(take(input, "ph_nbs_scale")), temperature(input), salinity(input)),
    }),
  ],
  [
    "ph_from_alkalinity_and_dic",
    "alkalinity and carbon",
    5e-6,
    (input) => ({
      alkalinity: alkalinity(input),
      dic: micromolePerKilogram(take(input, "dic_umol_per_kg")),
    }),
  ],
];
const alkalinity = (input: Values) => micromolePerKilogram(take(input, "total_alkalinity_umol_per_kg"));
const water = (input: Values) => ({ temperature: temperature(input), salinity: salinity(input) });

const carbonate: readonly Comparison[] = GRIDS.flatMap(([block, from, tolerance, pair]) => {
  const state = (input: Values) => carbonateFrom(pair(input), water(input));
  const known = block === "ph_from_alkalinity_and_dic" ? SPECIES.slice(1) : SPECIES;
  return [
    ...known.map(([key, quantity, unit, of]) => ({
      ...{ ...relative, block, quantity: `${quantity}, from ${from}`, unit, source: CO2, tolerance },
      pairs: pairs(block, expected(key), (input) => state(input)[of]),
    })),
    {
      ...{
        ...relative,
        block,
        quantity: `saturation of aragonite, from ${from}`,
        unit: "",
        source: CO2,
        tolerance,
      },
      pairs: pairs(block, expected("aragonite_saturation"), (input) =>
        aragoniteSaturation(
          state(input),
          water(input),
          micromolePerKilogram(take(input, "calcium_umol_per_kg")),
        ),
      ),
    },
  ];
});

export const comparisons: readonly Comparison[] = [
  {
    ...absolute,
    block: "conductivity_from_salinity",
    quantity: "conductivity",
    unit: "mS/cm",
    source: GSW,
    tolerance: 1e-6,
    pairs: pairs("conductivity_from_salinity", expected("conductivity_ms_per_cm"), (input) =>
      conductivityOf(temperature(input), salinity(input)),
    ),
  },
  {
    ...absolute,
    block: "salinity_from_conductivity",
    quantity: "salinity from conductivity",
    unit: "psu",
    source: GSW,
    tolerance: 1e-6,
    pairs: pairs("salinity_from_conductivity", expected("practical_salinity"), (input) =>
      salinityFromConductivity(
        millisiemensPerCentimetre(take(input, "conductivity_ms_per_cm")),
        temperature(input),
      ),
    ),
  },
  {
    ...absolute,
    block: "density",
    quantity: "density",
    unit: "kg/m3",
    source: EOS,
    tolerance: 1e-5,
    pairs: pairs("density", expected("density_eos80_kg_per_m3"), (input) =>
      density(temperature(input), salinity(input)),
    ),
  },
  {
    ...absolute,
    block: "density",
    quantity: "density against the newer equation of state",
    unit: "kg/m3",
    source: `${GSW} (TEOS-10: another equation, agreement not identity)`,
    tolerance: 0.02,
    pairs: pairs("density", expected("density_teos10_kg_per_m3"), (input) =>
      density(temperature(input), salinity(input)),
    ),
  },
  ...gravities,
  {
    ...absolute,
    block: "oxygen_saturation",
    quantity: "oxygen saturation",
    unit: "µmol/kg",
    source: GSW,
    tolerance: 1e-4,
    pairs: pairs("oxygen_saturation", expected("oxygen_saturation_umol_per_kg"), (input) =>
      oxygenSaturationPerKg(temperature(input), salinity(input)),
    ),
  },
  {
    ...absolute,
    block: "oxygen_saturation",
    quantity: "oxygen saturation",
    unit: "mg/L",
    source: `${GSW} with ${EOS}`,
    tolerance: 1e-5,
    pairs: pairs("oxygen_saturation", expected("oxygen_saturation_mg_per_l"), (input) =>
      oxygenSaturation(temperature(input), salinity(input)),
    ),
  },
  {
    ...relative,
    block: "oxygen_saturation",
    quantity: "oxygen saturation against the second equation",
    unit: "mg/L",
    source: "Benson & Krause 1984 evaluated apart (another equation: agreement, not identity)",
    tolerance: 0.002,
    pairs: pairs("oxygen_saturation", second("benson_krause_1984_mg_per_l"), (input) =>
      oxygenSaturation(temperature(input), salinity(input)),
    ),
  },
  {
    ...absolute,
    block: "oxygen_saturation",
    quantity: "oxygen saturation, second opinion",
    unit: "mg/L",
    source: "Benson & Krause 1984 evaluated apart",
    tolerance: 1e-5,
    pairs: pairs("oxygen_saturation", second("benson_krause_1984_mg_per_l"), (input) =>
      oxygenSaturationSecondOpinion(temperature(input), salinity(input)),
    ),
  },
  {
    ...absolute,
    block: "unionised_ammonia",
    quantity: "pKa of ammonium, per kg of seawater",
    unit: "",
    source: `${CO2} (Clegg & Whitfield 1995)`,
    tolerance: 1e-7,
    pairs: pairs("unionised_ammonia", expected("pka_ammonium_total_scale_mol_per_kg_seawater"), (input) =>
      ammoniumPKa(temperature(input), salinity(input)),
    ),
  },
  {
    ...absolute,
    block: "unionised_ammonia",
    quantity: "pKa of ammonium, per kg of water",
    unit: "",
    source: `${CO2} (Clegg & Whitfield 1995)`,
    tolerance: 1e-7,
    pairs: pairs("unionised_ammonia", expected("pka_ammonium_total_scale_mol_per_kg_water"), (input) =>
      ammoniumPKaPerWater(temperature(input), salinity(input)),
    ),
  },
  {
    ...relative,
    block: "unionised_ammonia",
    quantity: "un-ionised share, total scale",
    unit: "",
    source: `${CO2} (Clegg & Whitfield 1995)`,
    tolerance: 1e-6,
    pairs: pairs("unionised_ammonia", expected("fraction_unionised"), (input) =>
      unionisedAmmoniaFraction(temperature(input), salinity(input), take(input, "ph_total_scale"), "total"),
    ),
  },
  {
    ...relative,
    block: "unionised_ammonia",
    quantity: "un-ionised share, second opinion",
    unit: "",
    source: "US EPA 1989, its equation evaluated apart",
    tolerance: 1e-5,
    pairs: pairs(
      "unionised_ammonia",
      second("fraction_unionised_epa_1989_equation_if_same_number_were_nbs_ph"),
      (input) =>
        unionisedAmmoniaSecondOpinion(temperature(input), salinity(input), take(input, "ph_total_scale")),
    ),
  },
  {
    ...relative,
    block: "equilibrium_constants",
    quantity: "bisulfate constant, free scale",
    unit: "mol/kg",
    source: `${CO2} (Dickson 1990)`,
    tolerance: 1e-6,
    pairs: pairs("equilibrium_constants", expected("k_hso4_mol_per_kg_free_scale"), (input) =>
      bisulfateConstant(toKelvin(temperature(input)), salinity(input)),
    ),
  },
  {
    ...relative,
    block: "equilibrium_constants",
    quantity: "hydrogen fluoride constant, free scale",
    unit: "mol/kg",
    source: `${CO2} (Dickson & Riley 1979)`,
    tolerance: 1e-6,
    pairs: pairs("equilibrium_constants", expected("k_hf_mol_per_kg_free_scale"), (input) =>
      fluorideConstant(toKelvin(temperature(input)), salinity(input)),
    ),
  },
  {
    ...relative,
    block: "equilibrium_constants",
    quantity: "total sulfate",
    unit: "µmol/kg",
    source: `${CO2} (Morris & Riley 1966)`,
    tolerance: 1e-6,
    pairs: pairs(
      "equilibrium_constants",
      expected("total_sulfate_umol_per_kg"),
      (input) => 1e6 * totalSulfate(salinity(input)),
    ),
  },
  {
    ...relative,
    block: "equilibrium_constants",
    quantity: "total fluoride",
    unit: "µmol/kg",
    source: `${CO2} (Riley 1965)`,
    tolerance: 1e-6,
    pairs: pairs(
      "equilibrium_constants",
      expected("total_fluoride_umol_per_kg"),
      (input) => 1e6 * totalFluoride(salinity(input)),
    ),
  },
  {
    ...absolute,
    block: "equilibrium_constants",
    quantity: "pH NBS less pH total",
    unit: "",
    source: `${CO2} (Takahashi et al. 1982)`,
    tolerance: 1e-6,
    pairs: pairs("equilibrium_constants", expected("ph_nbs_minus_ph_total"), (input) =>
      nbsLessTotal(temperature(input), salinity(input)),
    ),
  },
  {
    ...absolute,
    block: "equilibrium_constants",
    quantity: "pH total less pH seawater scale",
    unit: "",
    source: CO2,
    tolerance: 1e-6,
    pairs: pairs("equilibrium_constants", expected("ph_total_minus_ph_seawater_scale"), (input) =>
      totalLessSeawaterScale(temperature(input), salinity(input)),
    ),
  },
  {
    ...absolute,
    block: "carbonate_from_alkalinity_and_ph_nbs",
    quantity: "pH total from pH NBS",
    unit: "",
    source: `${CO2} (Takahashi et al. 1982)`,
    tolerance: 1e-6,
    pairs: pairs("carbonate_from_alkalinity_and_ph_nbs", expected("ph_total_scale"), (input) =>
      nbsToTotal(phNbs(take(input, "ph_nbs_scale")), temperature(input), salinity(input)),
    ),
  },
  ...constants,
  ...carbonate,
  {
    ...absolute,
    block: "ph_from_alkalinity_and_dic",
    quantity: "pH total, from alkalinity and carbon",
    unit: "",
    source: CO2,
    tolerance: 1e-6,
    pairs: pairs(
      "ph_from_alkalinity_and_dic",
      expected("ph_total_scale"),
      (input) =>
        carbonateFrom(
          { alkalinity: alkalinity(input), dic: micromolePerKilogram(take(input, "dic_umol_per_kg")) },
          water(input),
        ).ph,
    ),
  },
];

/** Every block no comparison reads, and the parts left out of those that are read. */
export const leftOut: readonly LeftOut[] = [];
