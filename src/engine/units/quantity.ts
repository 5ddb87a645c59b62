/**
 * Numbers that know their unit, and the one way to make each.
 * Arithmetic on them yields a bare number: wrap it again, on purpose. What is checked of a value is its
 * range, where it is used (range.ts). Conversions of what keepers type: convert.ts.
 */

declare const unit: unique symbol;

/** A number that knows its unit: passing Celsius where Kelvin is due does not compile. */
type Quantity<Unit extends string> = number & { readonly [unit]: Unit };

export type Celsius = Quantity<"C">;
export type Kelvin = Quantity<"K">;
export type Fahrenheit = Quantity<"F">;
/** Salinity on the practical scale of 1978; has no unit, "psu" and "ppt" on instruments mean this. */
export type PracticalSalinity = Quantity<"psu">;
export type MilligramPerLitre = Quantity<"mg/L">;
export type MicromolePerKilogram = Quantity<"umol/kg">;
/** Fugacity or partial pressure of a gas. */
export type Microatmosphere = Quantity<"uatm">;
export type MillisiemensPerCentimetre = Quantity<"mS/cm">;
export type KilogramPerCubicMetre = Quantity<"kg/m3">;
export type Atmosphere = Quantity<"atm">;
export type Metre = Quantity<"m">;
/** Ratio of two densities; means nothing without its reference temperature. */
export type SpecificGravity = Quantity<"sg">;
/** pH as an electrode set with low-salt buffers shows it. */
export type PhNbs = Quantity<"pH NBS">;
/** pH on the total hydrogen ion scale, the one seawater constants are made for. */
export type PhTotal = Quantity<"pH total">;

const as =
  <Q extends number>() =>
  (value: number): Q =>
    value as Q;

export const celsius = as<Celsius>();
export const kelvin = as<Kelvin>();
export const fahrenheit = as<Fahrenheit>();
export const practicalSalinity = as<PracticalSalinity>();
export const milligramPerLitre = as<MilligramPerLitre>();
export const micromolePerKilogram = as<MicromolePerKilogram>();
export const microatmosphere = as<Microatmosphere>();
export const millisiemensPerCentimetre = as<MillisiemensPerCentimetre>();
export const kilogramPerCubicMetre = as<KilogramPerCubicMetre>();
export const atmosphere = as<Atmosphere>();
export const metre = as<Metre>();
export const specificGravity = as<SpecificGravity>();
export const phNbs = as<PhNbs>();
export const phTotal = as<PhTotal>();
