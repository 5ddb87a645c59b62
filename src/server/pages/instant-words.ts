/** When something was written, for a list: the minute is enough, and its zone is said. */
import { dateWords } from "../../answers/words.ts";

/** "15 Jun 2026, 12:04 UTC" of an instant in UTC. */
export const instantWords = (at: string): string => `${dateWords(at.slice(0, 10))}, ${at.slice(11, 16)} UTC`;
