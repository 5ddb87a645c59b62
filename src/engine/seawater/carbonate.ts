/**
 * The carbonate system: from any two of alkalinity, pH, dissolved inorganic carbon and CO2 to all of it.
 * Phosphate and silicate are left out (0.1 mg/L of phosphate is 1 µmol/kg of alkalinity), and so are organic acids.
 * Equations: docs/model/seawater.md, "Carbonate system". Why to trust them: docs/validation.md.
 */
import { log10 } from "../numeric/elementary.ts";
import { findRoot, type Slope } from "../numeric/root.ts";
import {
  type Celsius,
  type Microatmosphere,
  type MicromolePerKilogram,
  microatmosphere,
  micromolePerKilogram,
  type PhTotal,
  type PracticalSalinity,
  phTotal,
} from "../units/quantity.ts";
import { OutOfRange, type Range, requireRange } from "../units/range.ts";
import { type CarbonateConstants, carbonateConstants } from "./carbonate-constants.ts";

export interface Water {
  readonly temperature: Celsius;
  readonly salinity: PracticalSalinity;
}

/** What was measured: two of the four, whichever. Of CO2 it is the fugacity. */
export type CarbonatePair =
  | { readonly alkalinity: MicromolePerKilogram; readonly ph: PhTotal }
  | { readonly alkalinity: MicromolePerKilogram; readonly dic: MicromolePerKilogram }
  | { readonly alkalinity: MicromolePerKilogram; readonly fco2: Microatmosphere }
  | { readonly ph: PhTotal; readonly dic: MicromolePerKilogram }
  | { readonly ph: PhTotal; readonly fco2: Microatmosphere }
  | { readonly dic: MicromolePerKilogram; readonly fco2: Microatmosphere };

export interface CarbonateState {
  readonly alkalinity: MicromolePerKilogram;
  readonly ph: PhTotal;
  /** Dissolved inorganic carbon: the three below. */
  readonly dic: MicromolePerKilogram;
  readonly bicarbonate: MicromolePerKilogram;
  readonly carbonate: MicromolePerKilogram;
  readonly co2: MicromolePerKilogram;
  readonly fco2: Microatmosphere;
  /** Parts of the alkalinity that are not carbonate. */
  readonly borateAlkalinity: MicromolePerKilogram;
  readonly hydroxide: MicromolePerKilogram;
}

const TASK = "work out the carbonate system";
/** Ten times a reef's. */
const MOST = 25_000;
const range = (name: string, unit: string, min: number, max: number): Range => ({
  ...{ name, unit, min, max, source: "lueker-2000" },
});
const ALKALINITY = range("alkalinity", "µmol/kg", 1, MOST);
const DIC = range("dissolved inorganic carbon", "µmol/kg", 1, MOST);
const FCO2 = range("CO2", "µatm", 1, 200_000);
const PH: Range = {
  ...range("pH on the total scale", "", 4, 11),
  wayOut: (value) => (value > 40 && value < 110 ? `did you mean ${value / 10}?` : null),
};
/** Every water within the ranges above lies between. */
const PH_BRACKET = [1, 13] as const;
const LN_10 = Math.LN10;

/**
 * All of the carbonate system from two parts of it; exact but for rounding: what is unsure are the constants and the
 * tests. Against an independent program: docs/validation-seawater.md.
 * @throws OutOfRange beyond salinity 5 to 45, 0 to 45 °C, for values no water has, and for two that can't go together
 * @source lueker-2000 and the constants' other sources
 */
export function carbonateFrom(pair: CarbonatePair, { temperature, salinity }: Water): CarbonateState {
  const k = carbonateConstants(temperature, salinity);
  if ("alkalinity" in pair) requireRange(TASK, [ALKALINITY, pair.alkalinity]);
  if ("dic" in pair) requireRange(TASK, [DIC, pair.dic]);
  if ("fco2" in pair) requireRange(TASK, [FCO2, pair.fco2]);
  if ("ph" in pair) requireRange(TASK, [PH, pair.ph]);
  const { ph, dic } = solved(pair, k);
  const h = 10 ** -ph;
  const alkalinity = alkalinityAt(h, dic, k).value;
  const co2 = dic / (1 + k.k1 / h + (k.k1 * k.k2) / h ** 2);
  return {
    alkalinity: micro(alkalinity),
    ph: phTotal(ph),
    dic: micro(dic),
    bicarbonate: micro((co2 * k.k1) / h),
    carbonate: micro((co2 * k.k1 * k.k2) / h ** 2),
    co2: micro(co2),
    fco2: microatmosphere((1e6 * co2) / k.k0),
    borateAlkalinity: micro((k.totalBoron * k.borate) / (k.borate + h)),
    hydroxide: micro(k.water / h),
  };
}

const micro = (molar: number): MicromolePerKilogram => micromolePerKilogram(1e6 * molar);

interface Solved {
  readonly ph: number;
  /** mol/kg. */
  readonly dic: number;
}

function solved(pair: CarbonatePair, k: CarbonateConstants): Solved {
  if ("ph" in pair) {
    const { ph } = pair;
    const h = 10 ** -ph;
    if ("dic" in pair) return { ph, dic: 1e-6 * pair.dic };
    if ("fco2" in pair) return { ph, dic: dicOfCo2(1e-6 * pair.fco2 * k.k0, h, k) };
    const other = alkalinityAt(h, 0, k).value;
    const carbon = 1e-6 * pair.alkalinity - other;
    // What borate and hydroxide hold at that pH can't be more than there is.
    if (carbon <= 0) refuse("alkalinity at that pH", 1e6 * other, pair.alkalinity);
    return { ph, dic: carbon / shareOfDic(h, k).value };
  }
  if ("alkalinity" in pair && "dic" in pair) {
    const dic = 1e-6 * pair.dic;
    return { ph: phWhere(1e-6 * pair.alkalinity, (h) => alkalinityAt(h, dic, k)), dic };
  }
  const co2 = 1e-6 * pair.fco2 * k.k0;
  if ("dic" in pair) {
    const dic = 1e-6 * pair.dic;
    if (dic <= co2) refuse("dissolved inorganic carbon at that CO2", 1e6 * co2, pair.dic);
    // CO2 (1 + K1/H + K1 K2/H²) = DIC: a quadratic in 1/H, one of whose roots is above nought.
    const [a, b, c] = [k.k1 * k.k2, k.k1, 1 - dic / co2];
    const perH = (-2 * c) / (b + Math.sqrt(b * b - 4 * a * c));
    return { ph: log10(perH), dic };
  }
  const at = (h: number): Slope => {
    const other = alkalinityAt(h, 0, k);
    const carbonate = co2 * (k.k1 / h + (2 * k.k1 * k.k2) / h ** 2);
    const slope = -co2 * (k.k1 / h ** 2 + (4 * k.k1 * k.k2) / h ** 3);
    return { value: other.value + carbonate, slope: other.slope + slope };
  };
  const ph = phWhere(1e-6 * pair.alkalinity, at);
  return { ph, dic: dicOfCo2(co2, 10 ** -ph, k) };
}

const dicOfCo2 = (co2: number, h: number, k: CarbonateConstants): number =>
  co2 * (1 + k.k1 / h + (k.k1 * k.k2) / h ** 2);

/** Alkalinity that a mole of inorganic carbon holds at this acidity, and its slope by H. */
function shareOfDic(h: number, { k1, k2 }: CarbonateConstants): Slope {
  const below = h ** 2 + k1 * h + k1 * k2;
  const above = k1 * (h + 2 * k2);
  return { value: above / below, slope: (k1 * below - above * (2 * h + k1)) / below ** 2 };
}

/** Alkalinity in mol/kg at this acidity, and its slope by H: it falls as H rises, throughout. */
function alkalinityAt(h: number, dic: number, k: CarbonateConstants): Slope {
  const carbon = shareOfDic(h, k);
  const free = 1 + k.totalSulfate / k.bisulfate;
  const hf = h / free;
  const value =
    dic * carbon.value +
    (k.totalBoron * k.borate) / (k.borate + h) +
    k.water / h -
    hf -
    (k.totalSulfate * hf) / (hf + k.bisulfate) -
    (k.totalFluoride * hf) / (hf + k.fluoride);
  const slope =
    dic * carbon.slope -
    (k.totalBoron * k.borate) / (k.borate + h) ** 2 -
    k.water / h ** 2 -
    (1 +
      (k.totalSulfate * k.bisulfate) / (hf + k.bisulfate) ** 2 +
      (k.totalFluoride * k.fluoride) / (hf + k.fluoride) ** 2) /
      free;
  return { value, slope };
}

function phWhere(alkalinity: number, at: (h: number) => Slope): number {
  const excess = (ph: number): Slope => {
    const h = 10 ** -ph;
    const { value, slope } = at(h);
    return { value: value - alkalinity, slope: -LN_10 * h * slope };
  };
  return findRoot(excess, ...PH_BRACKET, 1e-13);
}

function refuse(name: string, least: number, value: number): never {
  const wayOut = () => "the two do not go together: read both again, on the scale each is given on";
  throw new OutOfRange(TASK, { ...range(name, "µmol/kg", Number(least.toFixed(1)), MOST), wayOut }, value);
}
