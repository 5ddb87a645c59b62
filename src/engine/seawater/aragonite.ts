/**
 * Aragonite, what shells and coral skeletons are built of: how far the water is from dissolving it.
 * Above 1 it can be built, below 1 bare shell dissolves. Equations: docs/model/seawater.md, "Aragonite".
 */
import type { MicromolePerKilogram } from "../units/quantity.ts";
import { type Range, requireRange } from "../units/range.ts";
import type { CarbonateState, Water } from "./carbonate.ts";
import { aragoniteProduct, referenceCalcium } from "./carbonate-constants.ts";

const CALCIUM: Range = {
  ...{ name: "calcium", unit: "µmol/kg", min: 0, max: 50_000, source: "mucci-1983" },
  wayOut: (value) => (value > 50_000 ? "if that was mg/kg, divide by 0.040078 once only" : null),
};

/** The product as measured lies so far from the equation, as a share. @source mucci-1983, from memory */
export const ARAGONITE_PRODUCT_ERROR = 0.025;

/**
 * Saturation of aragonite: calcium times carbonate over the solubility product.
 *
 * With hobby tests its error is theirs: 0.1 of pH is a fifth of it. The product itself: 2.5 %.
 * @param calcium measured; absent: what natural seawater of this salinity holds
 * @throws OutOfRange beyond salinity 5 to 45, 0 to 45 °C
 * @source mucci-1983; calcium riley-tongudai-1967
 */
export function aragoniteSaturation(
  { carbonate }: Pick<CarbonateState, "carbonate">,
  { temperature, salinity }: Water,
  calcium?: MicromolePerKilogram,
): number {
  if (calcium !== undefined) requireRange("work out aragonite", [CALCIUM, calcium]);
  const molar = calcium === undefined ? referenceCalcium(salinity) : 1e-6 * calcium;
  return (molar * 1e-6 * carbonate) / aragoniteProduct(temperature, salinity);
}
