/** Water and surfaces: from sides where they are known, from the volume where not; rock and sand take their room. */
import type { Estimate, Spread } from "../../engine/types/estimate.ts";
import { ASSUMPTIONS, type AssumedField, assumedBand } from "./assumptions.ts";
import { exactly, less, product, scaled, spread, sum } from "./bands.ts";
import { estimate, statedAs } from "./estimates.ts";
import type { Box, Stated } from "./stated.ts";

/** Water in a brimful box measured outside: thickness of the glass, room left at the top. Geometry guess. */
const FILLED = spread(0.85, 0.92, 0.98);
/** The same with usual rock and sand in it, where neither is known. */
const FURNISHED = spread(0.7, 0.85, 0.95);
/** Litres that a kilogram of rock takes; porous rock of 1.5 to 2.2 kg a litre. From memory. */
const ROCK_L_PER_KG = spread(0.4, 0.55, 0.7);
/** Solid share of a sand bed. */
const SAND_SOLID = spread(0.5, 0.6, 0.65);
/** Share of the four walls that is lit, under water and open to film. */
const WALL_SHARE = spread(0.6, 0.85, 1);
/** Share of the floor that rock leaves open. */
const OPEN_FLOOR = spread(0.5, 0.75, 0.9);
/** Lit rock open to algae, m2 a kg. @source nic.lit_rock_area */
const LIT_ROCK_M2_PER_KG = spread(0.02, 0.04, 0.08);

/** What water and surfaces are worked out from. */
export type Furnishing = Pick<
  Stated,
  "waterL" | "display" | "otherChambers" | "rockStart" | "floorKind" | "amounts"
>;

interface Surfaces {
  readonly waterL: Estimate;
  readonly displayL: Estimate;
  readonly glassM2: Estimate;
  readonly litRockM2: Estimate;
  readonly sandM2: Estimate;
  readonly rockKg: Estimate;
  readonly sandDepthMm: Estimate;
  /** Litres that defaults are scaled by: the display. */
  readonly sizeL: number;
  readonly assumed: readonly string[];
}

export function surfacesOf(stated: Furnishing): Surfaces {
  const { display, amounts, rockStart } = stated;
  const assumed: string[] = [];
  const sides = display.sides;
  const roughL =
    display.waterL?.central ??
    (sides === undefined ? stated.waterL?.central : sides.grossL * FURNISHED.central) ??
    0;
  const assume = (field: AssumedField, how = ASSUMPTIONS[field].why): Estimate => {
    assumed.push(field);
    return estimate("assumed", assumedBand(field, roughL), how);
  };
  const nothing = (how: string) => estimate("stated", exactly(0), how);
  const rockless = rockStart === "none" || amounts.rockKg?.central === 0;
  const rockKg = rockless
    ? nothing("no rock")
    : amounts.rockKg === undefined
      ? assume("rockKg")
      : statedAs(amounts.rockKg);
  const sandM2 = sandArea(stated, assume);
  const sandDepthMm =
    stated.floorKind === "bare" || amounts.sandDepthMm?.central === 0
      ? nothing("bare floor")
      : amounts.sandDepthMm === undefined
        ? assume("sandDepthMm")
        : statedAs(amounts.sandDepthMm);
  const litRockM2 = rockless
    ? nothing("no rock")
    : amounts.rockKg === undefined
      ? assume("litRockM2")
      : estimate("derived", product(rockKg, LIT_ROCK_M2_PER_KG), "0.04 m2 of lit rock a kg");
  const displayL = displayWater(stated, rockKg, sandM2, sandDepthMm, assumed);
  return {
    waterL: totalWater(stated, displayL),
    displayL,
    glassM2:
      sides === undefined
        ? assume("glassM2", "from the volume, as a box of the usual shape")
        : estimate(
            "derived",
            scaled(WALL_SHARE, (2 * sides.heightCm * (sides.lengthCm + sides.widthCm)) / 10_000),
            `four walls of ${sides.how}`,
          ),
    litRockM2,
    sandM2,
    rockKg,
    sandDepthMm,
    sizeL: displayL.central,
    assumed,
  };
}

function sandArea(
  { display: { sides }, amounts, floorKind }: Furnishing,
  assume: (f: AssumedField, how?: string) => Estimate,
): Estimate {
  if (floorKind === "bare") return estimate("stated", exactly(0), "bare floor");
  if (amounts.sandM2 !== undefined) return statedAs(amounts.sandM2);
  const saidSand = floorKind !== undefined || amounts.sandDepthMm !== undefined;
  const from = sides === undefined ? assume("sandM2") : null;
  const open = sides === undefined ? null : scaled(OPEN_FLOOR, (sides.lengthCm * sides.widthCm) / 10_000);
  const band: Spread = open ?? from ?? exactly(0);
  if (!saidSand) {
    const how = ASSUMPTIONS.sandM2.why;
    if (sides !== undefined) assume("sandM2");
    return estimate("assumed", spread(0, band.central, band.high), how);
  }
  const low = band.low === 0 ? 0.6 * band.central : band.low;
  return estimate(
    sides === undefined ? "assumed" : "derived",
    spread(low, band.central, band.high),
    "three quarters of the floor, the rest under rock",
  );
}

function displayWater(
  stated: Furnishing,
  rockKg: Estimate,
  sandM2: Estimate,
  sandDepthMm: Estimate,
  assumed: string[],
): Estimate {
  const { display, waterL, otherChambers, amounts, floorKind } = stated;
  if (display.waterL !== undefined) return statedAs(display.waterL);
  if (display.sides !== undefined) {
    const { grossL, how } = display.sides;
    const known =
      (amounts.rockKg !== undefined || rockKg.high === 0) &&
      (floorKind === "bare" || amounts.sandDepthMm !== undefined);
    const sandL = product(sandM2, sandDepthMm, SAND_SOLID);
    const net = known
      ? less(scaled(FILLED, grossL), [product(rockKg, ROCK_L_PER_KG), sandL], 0.3 * grossL)
      : scaled(FURNISHED, grossL);
    const most =
      waterL === undefined
        ? net
        : spread(
            Math.min(net.low, waterL.low),
            Math.min(net.central, waterL.central),
            Math.min(net.high, waterL.high),
          );
    return estimate("derived", most, `${how}, less glass, air, rock and sand`);
  }
  const whole = waterL ?? exactly(0);
  const others = otherChambers.map(waterOf);
  if (others.length > 0)
    return estimate(
      "derived",
      less(whole, others, 0.2 * whole.central),
      "all the water less the other chambers",
    );
  assumed.push("displayL");
  return estimate(
    "assumed",
    spread(0.7 * whole.low, whole.central, whole.high),
    "all the water in the display: no sump was named",
  );
}

function totalWater({ waterL, otherChambers }: Furnishing, displayL: Estimate): Estimate {
  if (waterL !== undefined) return statedAs(waterL);
  if (otherChambers.length === 0) return displayL;
  return estimate(
    "derived",
    sum(displayL, ...otherChambers.map(waterOf)),
    "display and other chambers together",
  );
}

/** A sump is run part full. */
const SUMP_FILLED = spread(0.4, 0.6, 0.85);
const waterOf = ({ waterL, sides }: Box): Spread =>
  waterL ?? (sides === undefined ? exactly(0) : scaled(SUMP_FILLED, sides.grossL));
