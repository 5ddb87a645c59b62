/** Every sum there is. A sum that is not in it is on no page, in no command and behind no address. */
import { AMMONIA } from "./ammonia.ts";
import { ARAGONITE } from "./aragonite.ts";
import { CARBONATE } from "./carbonate.ts";
import { CO2 } from "./co2.ts";
import { MINERALS_SUM } from "./minerals.ts";
import { OXYGEN } from "./oxygen.ts";
import type { Sum } from "./sum.ts";

export const SUMS: readonly Sum[] = [CARBONATE, CO2, ARAGONITE, MINERALS_SUM, AMMONIA, OXYGEN];

export const sumOf = (id: string): Sum | null => SUMS.find((sum) => sum.id === id) ?? null;
