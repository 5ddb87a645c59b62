/** Every sum there is. A sum that is not in it is on no page, in no command and behind no address. */
import { ACCLIMATION } from "./acclimation.ts";
import { AMMONIA } from "./ammonia.ts";
import { ARAGONITE } from "./aragonite.ts";
import { CARBONATE } from "./carbonate.ts";
import { CHANGE_SUMS } from "./change-sums.ts";
import { CO2 } from "./co2.ts";
import { CONVERT } from "./convert.ts";
import { DAILY_DOSE } from "./daily-dose.ts";
import { DEMAND_SUMS } from "./demand.ts";
import { DOSE_EFFECT } from "./dose-effect.ts";
import { FISH_FOOD } from "./fish-food.ts";
import { MEDICINE_LEFT } from "./medicine-left.ts";
import { MINERALS_SUM } from "./minerals.ts";
import { OXYGEN } from "./oxygen.ts";
import { PORTION } from "./portion.ts";
import { RAISE_SUMS } from "./raise.ts";
import { SALINITY_SUM } from "./salinity.ts";
import { STOCK } from "./stock.ts";
import type { Sum } from "./sum.ts";

export const SUMS: readonly Sum[] = [
  CARBONATE,
  CO2,
  ARAGONITE,
  MINERALS_SUM,
  AMMONIA,
  OXYGEN,
  SALINITY_SUM,
  CONVERT,
  ...DEMAND_SUMS,
  ...RAISE_SUMS,
  DAILY_DOSE,
  DOSE_EFFECT,
  STOCK,
  ACCLIMATION,
  MEDICINE_LEFT,
  PORTION,
  FISH_FOOD,
  ...CHANGE_SUMS,
];

export const sumOf = (id: string): Sum | null => SUMS.find((sum) => sum.id === id) ?? null;
