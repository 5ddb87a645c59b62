/** The three fields of a holiday, read: dates as the keeper writes them, from today on, at most six weeks away. */
import { readDate } from "../../contract/quantity/date.ts";
import { isKept } from "../../contract/quantity/outcome.ts";
import type { Preferences } from "../../contract/quantity/preferences.ts";
import { shown } from "../../contract/quantity/show.ts";
import { type FieldDoubt, withText } from "../questions/doubts.ts";
import { dateWords } from "../words.ts";
import { daysBetween, type HolidaySpan } from "./packing.ts";

export interface HolidayTyped {
  readonly from?: string;
  readonly to?: string;
  readonly every?: string;
}

export const SITTER_EVERY = ["1", "2", "3", "4", "5", "6", "7"] as const;
export const USUAL_EVERY = "2";
/** Longer away is a matter for somebody who keeps the tank, not for packed portions. */
const LONGEST_AWAY_DAYS = 42;
const LATEST_LEAVING_DAYS = 120;

interface Context {
  readonly preferences: Preferences;
  /** ISO date. */
  readonly today: string;
}

/** Null where nothing was typed yet. */
export function readSpan(
  typed: HolidayTyped,
  { preferences, today }: Context,
): { readonly span: HolidaySpan | null; readonly doubts: readonly FieldDoubt[] } {
  if ((typed.from ?? "").trim() === "" && (typed.to ?? "").trim() === "") return { span: null, doubts: [] };
  const doubts: FieldDoubt[] = [];
  const day = (field: "from" | "to", label: string): string | null => {
    const outcome = readDate(typed[field] ?? "", { preferences, today, label, future: "planned" });
    if (isKept(outcome)) return outcome.value;
    doubts.push({ field, text: outcome.message.text, choices: withText(outcome.choices) });
    return null;
  };
  const [from, to] = [day("from", "Leaving"), day("to", "Coming back")];
  const every = typed.every ?? USUAL_EVERY;
  const refuse = (field: string, text: string) => doubts.push({ field, text, choices: [] });
  if (!(SITTER_EVERY as readonly string[]).includes(every))
    refuse("every", `The sitter feeds "${shown(every)}": must be ${SITTER_EVERY.join(", ")}`);
  if (from !== null && (from < today || daysBetween(today, from) > LATEST_LEAVING_DAYS))
    refuse(
      "from",
      `Leaving "${shown(typed.from ?? "")}": must be today, ${dateWords(today)}, or up to ${LATEST_LEAVING_DAYS} days later`,
    );
  if (from !== null && to !== null && (to <= from || daysBetween(from, to) > LONGEST_AWAY_DAYS))
    refuse(
      "to",
      `Coming back "${shown(typed.to ?? "")}": must be 1 to ${LONGEST_AWAY_DAYS} days after leaving, ${dateWords(from)}`,
    );
  if (from === null || to === null || doubts.length > 0) return { span: null, doubts };
  return { span: { from, to, sitterEvery: Number(every) }, doubts };
}

/** The same in an address. */
export const spanQuery = ({ from, to, sitterEvery }: HolidaySpan): string =>
  `from=${from}&to=${to}&every=${sitterEvery}`;
