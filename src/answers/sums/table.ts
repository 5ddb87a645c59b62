/** Every sum there is. A sum that is not in it is on no page, in no command and behind no address. */
import { OXYGEN } from "./oxygen.ts";
import type { Sum } from "./sum.ts";

export const SUMS: readonly Sum[] = [OXYGEN];

export const sumOf = (id: string): Sum | null => SUMS.find((sum) => sum.id === id) ?? null;
