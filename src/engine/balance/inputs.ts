/**
 * What a tank is and gets, constant between events: its surfaces, light, water, feed, fish and devices.
 * Names are those of docs/model/balance.md; units stand beside them.
 */
export const INPUT_SYMBOLS = [
  "V", // water, L
  "Ag", // glass open to film, m2
  "Ar", // lit rock open to algae, m2
  "As", // sand, m2
  "Ac", // surface that nitrifiers can colonise, m2
  "rockKg", // rock, kg
  "parG", // daytime light at the glass, µmol photons m-2 s-1
  "parR", // at the rock
  "parS", // at the sand
  "hours", // light hours a day
  "light", // dimmer, 0 black-out to 1
  "T", // temperature, °C
  "S", // practical salinity
  "pH",
  "feed", // feed as fed, g/d
  "feedC", // carbon of the feed, mg per g as fed
  "feedN",
  "feedP",
  "fish", // fish, g wet
  "filterOn", // mechanical filter, 0 or 1
  "skimOn", // skimmer, 0 or 1
  "macLight", // refugium light, 0 to 1
  "macMax", // most macroalgae, mg C
  "kLa", // gas exchange, 1/h
] as const;

export type InputSymbol = (typeof INPUT_SYMBOLS)[number];
/** Inputs of one stretch between events. Only `V`, surfaces and water facts are needed by a caller's own units. */
export type Inputs = Record<InputSymbol, number>;
