/** Every sum there is. A sum that is not in it is on no page, in no command and behind no address. */
import { ACCLIMATION } from "./acclimation.ts";
import { AMMONIA } from "./ammonia.ts";
import { ARAGONITE } from "./aragonite.ts";
import { CARBONATE } from "./carbonate.ts";
import { CO2 } from "./co2.ts";
import { MINERALS_SUM } from "./minerals.ts";
import { NITRATE_CHANGES } from "./nitrate-changes.ts";
import { OXYGEN } from "./oxygen.ts";
import { REACH_VALUE } from "./reach-value.ts";
import { SALT_MIX } from "./salt-mix.ts";
import type { Sum } from "./sum.ts";
import { WATER_CHANGE } from "./water-change.ts";

export const SUMS: readonly Sum[] = [CARBONATE, CO2, ARAGONITE, MINERALS_SUM, AMMONIA, OXYGEN, ACCLIMATION];

export const sumOf = (id: string): Sum | null => SUMS.find((sum) => sum.id === id) ?? null;
