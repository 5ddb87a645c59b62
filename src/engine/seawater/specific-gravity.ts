/**
 * Specific gravity: density of the sample over density of pure water, each at a stated temperature.
 * The same printed 1.025 is anything from 32.6 to 37.2 of salinity, so no reading is taken without its scale.
 * Equations: docs/model/seawater.md, "Specific gravity".
 */
import { findRoot } from "../numeric/root.ts";
import {
  type Celsius,
  celsius,
  type PracticalSalinity,
  practicalSalinity,
  type SpecificGravity,
  specificGravity,
} from "../units/quantity.ts";
import { OutOfRange, type Range, requireRange } from "../units/range.ts";
import { density, densityPerSalinity, pureWaterDensity } from "./density.ts";

/** The two temperatures printed on an instrument: sample over pure water. */
export interface GravityScale {
  readonly sample: Celsius;
  readonly water: Celsius;
}

const SIXTY_F = celsius((60 - 32) / 1.8);

const scale = (sample: number, water: number): GravityScale => ({
  sample: celsius(sample),
  water: celsius(water),
});

/** Scales in use, by what is printed on the instrument. */
export const GRAVITY_SCALES = {
  "25/25": scale(25, 25),
  "20/20": scale(20, 20),
  "60F/60F": scale(SIXTY_F, SIXTY_F),
  "15/15": scale(15, 15),
  "25/4": scale(25, 4),
  "20/4": scale(20, 4),
  "15/4": scale(15, 4),
} as const satisfies Readonly<Record<string, GravityScale>>;

export type GravityScaleName = keyof typeof GRAVITY_SCALES;

/** Volume expansion of glass per °C; plastic arms have none that is known. @source handbook figure, from memory */
const GLASS_EXPANSION_PER_C = 25e-6;

/** The most salinity that is looked for: ten more than any sea keepers copy. */
const SALTIEST = practicalSalinity(50);

const GRAVITY: Range = {
  ...{ name: "specific gravity", unit: "", min: 1, max: 1.045, source: "millero-poisson-1981" },
  wayOut: (value) => {
    if (value >= 1000 && value <= 1045) return `if the point was left out, it is ${value / 1000}`;
    if (value >= 5 && value <= 45) return "if that was a salinity in psu or ppt, give it as salinity";
    if (value > 45 && value <= 70) return "if that was a conductivity in mS/cm, give it as conductivity";
    return null;
  },
};

/**
 * Specific gravity on a scale, as a correcting refractometer or probe should show it whatever the water's own
 * temperature. Error: that of the density, 1e-8 of arithmetic.
 * @throws OutOfRange beyond the limits of the density
 * @source millero-poisson-1981
 */
export function gravityOf(salinity: PracticalSalinity, on: GravityScale): SpecificGravity {
  return specificGravity(density(on.sample, salinity) / pureWaterDensity(on.water));
}

/**
 * Specific gravity as a floating glass hydrometer shows it in water of `temperature`: not corrected, but for the
 * glass, which is a little larger in water warmer than it was marked at.
 * @throws OutOfRange beyond the limits of the density
 * @source millero-poisson-1981; glass from memory
 */
export function floatingGravityOf(
  temperature: Celsius,
  salinity: PracticalSalinity,
  on: GravityScale,
  expansion: number = GLASS_EXPANSION_PER_C,
): SpecificGravity {
  const bare = density(temperature, salinity) / pureWaterDensity(on.water);
  return specificGravity(bare * glassFactor(temperature, on, expansion));
}

/**
 * Salinity from a specific gravity on a scale. Inverse of `gravityOf`; 0.0001 of gravity is 0.13 of salinity.
 * @throws OutOfRange for a gravity outside 1.000 to 1.045, naming the unit it probably was, and for salinity over 50
 * @source millero-poisson-1981
 */
export function salinityFromGravity(gravity: SpecificGravity, on: GravityScale): PracticalSalinity {
  requireRange("work out salinity from specific gravity", [GRAVITY, gravity]);
  return salinityOfDensity(gravity * pureWaterDensity(on.water), on.sample);
}

/**
 * Salinity from what a floating glass hydrometer shows in water of `temperature`. Inverse of `floatingGravityOf`.
 * @throws OutOfRange as `salinityFromGravity`
 * @source millero-poisson-1981; glass from memory
 */
export function salinityFromFloatingGravity(
  gravity: SpecificGravity,
  temperature: Celsius,
  on: GravityScale,
  expansion: number = GLASS_EXPANSION_PER_C,
): PracticalSalinity {
  requireRange("work out salinity from a hydrometer", [GRAVITY, gravity]);
  const bare = gravity / glassFactor(temperature, on, expansion);
  return salinityOfDensity(bare * pureWaterDensity(on.water), temperature);
}

function glassFactor(temperature: Celsius, on: GravityScale, expansion: number): number {
  return 1 + expansion * (temperature - on.sample);
}

/** Density rises with salinity throughout, so the answer is one or none. */
function salinityOfDensity(sought: number, temperature: Celsius): PracticalSalinity {
  const excess = (salinity: number) => ({
    value: density(temperature, practicalSalinity(salinity)) - sought,
    slope: densityPerSalinity(temperature, practicalSalinity(salinity)),
  });
  const fresh = excess(0).value;
  if (fresh > 0 || excess(SALTIEST).value < 0) {
    const lightest = { name: "density of the sample", unit: "kg/m3", source: "millero-poisson-1981" };
    const [min, max] = [excess(0).value + sought, excess(SALTIEST).value + sought];
    throw new OutOfRange(
      "work out salinity from specific gravity",
      {
        ...lightest,
        min,
        max,
        wayOut: () =>
          fresh > 0
            ? "lighter than fresh water at that temperature: check the scale printed on the instrument"
            : "saltier than 50 psu: measure again",
      },
      sought,
    );
  }
  return practicalSalinity(findRoot(excess, 0, SALTIEST, 1e-11));
}
