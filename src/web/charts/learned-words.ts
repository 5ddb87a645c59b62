/** What was learned of a quantity, in words. */
import type { LearnedQuantity } from "../../answers/learned/output.ts";

/** In two figures: none of them is known better. "0.16 a day (0.08 to 0.3)" */
export const bandWords = ({ low, central, high }: LearnedQuantity["before"], unit: string): string =>
  `${two(central)} ${UNIT_WORDS[unit] ?? unit} (${two(low)} to ${two(high)})`;

const two = (value: number): string => String(Number(value.toPrecision(2)));

/** A rate is told as what happens in a day. */
const UNIT_WORDS: Readonly<Record<string, string>> = { "1/d": "a day" };

export const SEEN_WORDS = { well: "well seen", partly: "partly seen", hardly: "hardly seen" } as const;
