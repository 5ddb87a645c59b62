/** Air pressure where the tank stands. */
import { type Atmosphere, atmosphere, type Metre } from "../units/quantity.ts";
import { type Range, requireRange } from "../units/range.ts";

const ALTITUDE: Range = {
  ...{ name: "altitude", unit: "m", min: -430, max: 5500, source: "icao-atmosphere" },
  wayOut: (value) =>
    value <= 18000 && value > 0 ? `if that was feet, it is ${Math.round(value * 0.3048)} m` : null,
};

/**
 * Mean air pressure in atm at an altitude in metres. Weather moves it by ±3 %.
 * Valid from the lowest shore on Earth to its highest towns.
 * @throws OutOfRange outside -430 to 5500 m
 * @source icao-atmosphere
 */
export function pressureAtAltitude(altitude: Metre): Atmosphere {
  requireRange("work out air pressure", [ALTITUDE, altitude]);
  return atmosphere((1 - 2.25577e-5 * altitude) ** 5.25588);
}
