/** What was learned of a quantity, in words. */
import type { LearnedQuantity } from "../../answers/learned/output.ts";
import { round3 } from "../../engine/types/link.ts";

export const bandWords = ({ low, central, high }: LearnedQuantity["before"], unit: string): string =>
  `${round3(central)} ${unit} (${round3(low)} to ${round3(high)})`;

export const SEEN_WORDS = { well: "well seen", partly: "partly seen", hardly: "hardly seen" } as const;
