/** Printed tables and worked examples of seawater, each beside what Grazewell makes of the same water. */
import {
  ammoniumPKaPerWater,
  unionisedAmmoniaFraction,
  unionisedAmmoniaSecondOpinion,
} from "../../src/engine/seawater/ammonia.ts";
import {
  aragoniteProduct,
  carbonateConstants,
  co2Solubility,
} from "../../src/engine/seawater/carbonate-constants.ts";
import { naturalMgPerKg, SALT_FRACTIONS, type SaltPart } from "../../src/engine/seawater/composition.ts";
import {
  conductivityOf,
  STANDARD_CONDUCTIVITY,
  salinityFromConductivity,
  salinityFromRatio,
} from "../../src/engine/seawater/conductivity.ts";
import { density } from "../../src/engine/seawater/density.ts";
import {
  oxygenSaturation,
  oxygenSaturationPerKg,
  oxygenSaturationSecondOpinion,
} from "../../src/engine/seawater/oxygen.ts";
import { bisulfateConstant, totalLessSeawaterScale } from "../../src/engine/seawater/ph-scale.ts";
import { celsius, millisiemensPerCentimetre, practicalSalinity } from "../../src/engine/units/quantity.ts";
import { toKelvin } from "../../src/engine/units/temperature.ts";
import { type Comparison, type LeftOut, type Pair, readBlocks } from "../comparison.ts";

type Point = Readonly<Record<string, number>>;
interface Named {
  readonly name: string;
  readonly value: number;
}

export const blocks = readBlocks("published/seawater.json");

const points = <P = Point>(block: string) => (blocks[block]?.points ?? []) as P[];
/** The Guide's value of one constant, by name. */
const guide = (wanted: string) =>
  points<Named>("guide_2007_constants_check_values")
    .filter(({ name }) => name === wanted)
    .map(({ value }) => value);
const take = (point: Point, key: string): number => {
  const value = point[key];
  if (value === undefined) throw new TypeError(`no ${key} in ${JSON.stringify(point)}`);
  return value;
};
const salinity = (point: Point) => practicalSalinity(take(point, "practical_salinity"));
/** The old tables are on the temperature scale of 1968. */
const from68 = (point: Point) => celsius(take(point, "temperature_c_ipts68") / 1.00024);
const today = (point: Point) => celsius(take(point, "temperature_c"));

function pairs(block: string, key: string, ours: (point: Point) => number): Pair[] {
  return points(block).map((point) => {
    const { [key]: theirs = Number.NaN, ...at } = point;
    return { at: JSON.stringify(at), theirs, ours: ours(point) };
  });
}

const GUIDE = "Dickson, Sabine & Christian 2007, chapter 5 (in copies)";
const AT_25 = [celsius(25), practicalSalinity(35)] as const;
const at25 = carbonateConstants(...AT_25);
/** The Guide brings the ionisation of water to the total scale by a fixed step, ours does exactly. */
const GUIDE_STEP = 0.015;
const guideValue = (name: string, quantity: string, tolerance: number, ours: number): Comparison => ({
  ...{
    block: "guide_2007_constants_check_values",
    quantity,
    unit: "",
    source: GUIDE,
    tolerance,
    relative: false,
  },
  pairs: guide(name).map((theirs) => ({ at: "S 35, 25 °C", theirs, ours })),
});

/** The names that the check file gives the parts of sea salt. */
const PARTS: Readonly<Record<string, SaltPart>> = {
  borate_ion_boh4: "borate",
  boric_acid_boh3: "boricAcid",
  carbon_dioxide: "carbonDioxide",
};
interface PartPoint {
  readonly species: string;
  readonly mass_fraction_of_sea_salt: number;
  readonly grams_per_kg_seawater: number;
  readonly grams_per_kg_second_copy: number | null;
}
const composition = points<PartPoint>("reference_composition_salinity_35").map((point) => ({
  ...point,
  part: PARTS[point.species] ?? (point.species as SaltPart),
}));

const UNESCO = "Fofonoff & Millard 1983, UNESCO Technical Papers in Marine Science 44";

export const comparisons: readonly Comparison[] = [
  {
    block: "pss78_check_rows",
    quantity: "salinity from the ratio Rt",
    unit: "psu",
    source: `${UNESCO}, page 9 (from the printed Rt: two rows are at depth)`,
    tolerance: 2e-6,
    relative: false,
    pairs: pairs("pss78_check_rows", "practical_salinity", (p) =>
      salinityFromRatio(take(p, "salinity_ratio_rt_capital"), take(p, "temperature_c_ipts68")),
    ),
  },
  {
    block: "pss78_salinity_table_surface",
    quantity: "salinity from conductivity",
    unit: "psu",
    source: `${UNESCO}, page 13, surface rows`,
    tolerance: 1e-4,
    relative: false,
    pairs: pairs("pss78_salinity_table_surface", "practical_salinity", (p) =>
      salinityFromConductivity(
        millisiemensPerCentimetre(take(p, "conductivity_ratio") * STANDARD_CONDUCTIVITY),
        from68(p),
      ),
    ),
  },
  {
    block: "pss78_conductivity_ratio_table_surface",
    quantity: "conductivity ratio from salinity",
    unit: "",
    source: `${UNESCO}, page 14, surface rows`,
    tolerance: 1e-6,
    relative: false,
    pairs: pairs(
      "pss78_conductivity_ratio_table_surface",
      "conductivity_ratio",
      (p) => conductivityOf(from68(p), salinity(p)) / STANDARD_CONDUCTIVITY,
    ),
  },
  {
    block: "eos80_density_check_values",
    quantity: "density",
    unit: "kg/m3",
    source: `${UNESCO}, page 19`,
    tolerance: 1e-5,
    relative: false,
    pairs: pairs("eos80_density_check_values", "density_kg_per_m3", (p) => density(from68(p), salinity(p))),
  },
  {
    block: "eos80_density_anomaly_table_surface",
    quantity: "density less 1000",
    unit: "kg/m3",
    source: `${UNESCO}, page 23, surface rows`,
    tolerance: 1e-4,
    relative: false,
    pairs: pairs(
      "eos80_density_anomaly_table_surface",
      "density_minus_1000_kg_per_m3",
      (p) => density(from68(p), salinity(p)) - 1000,
    ),
  },
  {
    block: "oxygen_teos10_site_example",
    quantity: "oxygen saturation",
    unit: "µmol/kg",
    source: "TEOS-10 site, manual page of the oxygen function (Garcia & Gordon 1992)",
    tolerance: 1e-9,
    relative: false,
    pairs: pairs("oxygen_teos10_site_example", "oxygen_saturation_umol_per_kg", (p) =>
      oxygenSaturationPerKg(celsius(take(p, "potential_temperature_c_its90")), salinity(p)),
    ),
  },
  {
    block: "oxygen_garcia_gordon_check_value",
    quantity: "oxygen saturation",
    unit: "µmol/kg",
    source: "Garcia & Gordon 1992, check value (from memory; on the temperature scale of 1968)",
    tolerance: 0.001,
    relative: false,
    pairs: pairs("oxygen_garcia_gordon_check_value", "oxygen_saturation_umol_per_kg", (p) =>
      oxygenSaturationPerKg(celsius(take(p, "temperature_c_as_printed") / 1.00024), salinity(p)),
    ),
  },
  {
    block: "oxygen_fresh_water_table",
    quantity: "oxygen saturation, second opinion",
    unit: "mg/L",
    source: "Standard Methods, table 4500-O:I (from memory)",
    tolerance: 0.002,
    relative: false,
    pairs: pairs("oxygen_fresh_water_table", "oxygen_saturation_mg_per_l", (p) =>
      oxygenSaturationSecondOpinion(today(p), salinity(p)),
    ),
  },
  {
    block: "oxygen_fresh_water_table",
    quantity: "oxygen saturation in fresh water",
    unit: "mg/L",
    source: "Standard Methods, table 4500-O:I (from memory; made with another equation than ours)",
    tolerance: 0.002,
    relative: false,
    pairs: pairs("oxygen_fresh_water_table", "oxygen_saturation_mg_per_l", (p) =>
      oxygenSaturation(today(p), salinity(p)),
    ),
  },
  {
    block: "guide_2007_constants_check_values",
    quantity: "ln of the bisulfate constant",
    unit: "",
    source: "Dickson, Sabine & Christian 2007, chapter 5 (in copies)",
    tolerance: 0.006,
    relative: false,
    pairs: guide("ln_k_hso4_free_scale").map((theirs) => ({
      at: "S 35, 25 °C",
      theirs,
      ours: Math.log(bisulfateConstant(toKelvin(celsius(25)), practicalSalinity(35))),
    })),
  },
  guideValue("ln_k0", "ln of the solubility of CO2", 6e-5, Math.log(at25.k0)),
  guideValue("log10_k1", "log of the first constant of carbonic acid", 6e-5, Math.log10(at25.k1)),
  guideValue("log10_k2", "log of the second constant of carbonic acid", 6e-5, Math.log10(at25.k2)),
  guideValue("ln_kb", "ln of the constant of boric acid", 6e-5, Math.log(at25.borate)),
  guideValue(
    "ln_kw_total_scale_guide_form",
    "ln of the ionisation of water, by the Guide's step",
    6e-4,
    Math.log(at25.water) + Math.LN10 * totalLessSeawaterScale(...AT_25) - GUIDE_STEP,
  ),
  {
    block: "co2_solubility_weiss_1974_table_3",
    quantity: "solubility of CO2, times 100",
    unit: "mol/kg/atm",
    source: "Weiss 1974, table III (in a copy)",
    tolerance: 5.01e-4,
    relative: false,
    pairs: pairs(
      "co2_solubility_weiss_1974_table_3",
      "k0_times_100_mol_per_kg_atm",
      (p) => 100 * co2Solubility(today(p), salinity(p)),
    ),
  },
  {
    block: "aragonite_solubility_anchor",
    quantity: "solubility product of aragonite",
    unit: "mol²/kg²",
    source: "Mucci 1983, the value as measured (from memory; the equation is his fit to more of them)",
    tolerance: 0.05,
    relative: true,
    pairs: pairs("aragonite_solubility_anchor", "ksp_aragonite_mol2_per_kg2", (p) =>
      aragoniteProduct(today(p), salinity(p)),
    ),
  },
  {
    block: "reference_composition_salinity_35",
    quantity: "parts of sea salt by mass",
    unit: "",
    source: "Millero et al. 2008, Reference Composition (in a copy)",
    tolerance: 1e-12,
    relative: false,
    pairs: composition.map(({ species, part, mass_fraction_of_sea_salt }) => ({
      ...{ at: species, theirs: mass_fraction_of_sea_salt, ours: SALT_FRACTIONS[part] },
    })),
  },
  {
    block: "reference_composition_salinity_35",
    quantity: "parts of seawater at salinity 35",
    unit: "g/kg",
    source: "Millero et al. 2008, Reference Composition (in a second copy)",
    tolerance: 1e-5,
    relative: false,
    pairs: composition.flatMap(({ species, part, grams_per_kg_second_copy: theirs }) =>
      theirs === null
        ? []
        : [{ at: species, theirs, ours: naturalMgPerKg(part, practicalSalinity(35)) / 1000 }],
    ),
  },
  {
    block: "unionised_ammonia_clegg_whitfield_examples",
    quantity: "un-ionised share, total scale, constant per kg of water",
    unit: "",
    source: "manual page of the R package wq 0.2-9, Clegg & Whitfield 1995",
    tolerance: 6e-5,
    relative: false,
    pairs: pairs(
      "unionised_ammonia_clegg_whitfield_examples",
      "fraction_unionised_total_scale",
      (p) => 1 / (1 + 10 ** (ammoniumPKaPerWater(today(p), salinity(p)) - take(p, "ph"))),
    ),
  },
  {
    block: "unionised_ammonia_seawater_percent_table",
    quantity: "un-ionised share, NBS reading",
    unit: "%",
    source: "Bower & Bidwell 1978, seawater table (a band check of the whole chain)",
    tolerance: 0.15,
    relative: true,
    pairs: pairs(
      "unionised_ammonia_seawater_percent_table",
      "percent_unionised",
      (p) => 100 * unionisedAmmoniaFraction(today(p), salinity(p), take(p, "ph"), "nbs"),
    ),
  },
  {
    block: "unionised_ammonia_epa_1989_equation",
    quantity: "un-ionised share, second opinion",
    unit: "%",
    source: "US EPA 1989, EPA 440/5-88-004, its equation evaluated apart",
    tolerance: 1e-5,
    relative: true,
    pairs: pairs(
      "unionised_ammonia_epa_1989_equation",
      "percent_unionised",
      (p) => 100 * unionisedAmmoniaSecondOpinion(today(p), salinity(p), take(p, "ph_as_measured")),
    ),
  },
  {
    block: "salinity_from_specific_conductance_usgs",
    quantity: "salinity from conductivity at 25 °C, another polynomial",
    unit: "psu",
    source: "Wagner et al. 2006, US Geological Survey TM 1-D3 (another method: agreement, not identity)",
    tolerance: 0.05,
    relative: false,
    pairs: pairs("salinity_from_specific_conductance_usgs", "salinity_usgs_polynomial", (p) =>
      salinityFromConductivity(
        millisiemensPerCentimetre(take(p, "specific_conductance_at_25c_ms_per_cm")),
        celsius(25),
      ),
    ),
  },
];

/** Every block no comparison reads, and the parts left out of those that are read. */
export const leftOut: readonly LeftOut[] = [
  {
    block: "pss78_subprogram_check_value",
    what: "all",
    why: "at 10,000 dbar: needs the pressure factor, which no tank does",
  },
  {
    block: "guide_2007_constants_check_values",
    what: "hydrogen fluoride, phosphate and silicate",
    why: "another equation than ours for the first; the others are left out of the alkalinity",
  },
  {
    block: "unionised_ammonia_clegg_whitfield_examples",
    what: "fraction_unionised_free_scale",
    why: "free-scale pH is no scale a keeper meets; nothing here computes it",
  },
];
