/**
 * How an animal fits a tank, in sentences, from the answers as data: what a page or a list says of it.
 * Limits: knows what `animals --json` holds, and nothing of the plan behind it.
 */
import type { AnimalsOutput } from "../../contract/output/animals.ts";
import { chance, counted, dateWords, rationsADay, withDates } from "../words.ts";

export type AnimalRow = AnimalsOutput["animals"][number];
export type FitRow = NonNullable<AnimalRow["fit"]>;
export type FitReason = FitRow["reasons"][number];

/** Headings in the order in which a keeper asks for them. */
export const FIT_GROUPS: readonly (readonly [FitRow["status"], title: string])[] = [
  ["lives_here", "Live here"],
  ["in_plan", "Fit, and are in the plan"],
  ["fits", "Fit, and are not needed"],
  ["not_yet", "Not yet"],
  ["never", "Never in this tank"],
];

/** One sentence of the engine's that is told by itself: a full stop, a capital, dates in words. */
export const told = (text: string): string => withDates(`${capital(text).replace(/[.\s]+$/, "")}.`);

export const reasonWords = ({ text, until }: FitReason): string =>
  until === null ? told(text) : `${told(text)} That passes ${withDates(until)}.`;

/** The first sentence: what becomes of it here. */
export function verdictWords({ name }: Pick<AnimalRow, "name">, fit: FitRow): string {
  const untils = fit.reasons.flatMap(({ code, until }) => (until === null ? [] : [{ code, until }]));
  // A date, where there is one, is what a keeper asks for.
  const dated = untils.find(({ code }) => code === "age");
  const when = dated === undefined ? untils[0]?.until : `at the earliest ${dated.until}`;
  switch (fit.status) {
    case "lives_here":
      return `${counted(fit.heads_here, name)} ${fit.heads_here === 1 ? "lives" : "live"} here${plannedWords(fit, ", and the plan adds ")}.`;
    case "in_plan":
      return `It fits: the plan brings ${plannedWords(fit, "")}.`;
    case "fits":
      return `It fits and is not in the plan. ${told(fit.not_needed ?? "others eat what it would")}`;
    case "not_yet":
      return withDates(`Not yet${when === undefined ? "" : `: ${when}`}.`);
    case "never":
      return "Never in this tank.";
  }
}

function plannedWords({ planned }: FitRow, start: string): string {
  if (planned.length === 0) return "";
  const rows = planned.map(
    ({ wave, from, to, count }) => `${count} in wave ${wave} (${dateWords(from)} to ${dateWords(to)})`,
  );
  return `${start}${rows.join(", ")}`;
}

/** Everything that there is to say of it in this tank. */
export function fitWords(animal: Pick<AnimalRow, "name">, fit: FitRow): string[] {
  const against = fit.status === "lives_here" ? "Against it here: " : "";
  return [
    verdictWords(animal, fit),
    ...fit.reasons.map((reason) => `${against}${reasonWords(reason)}`),
    ...(fit.binding === null ? [] : [`No more of them because of ${withDates(fit.binding.text)}.`]),
    ...(fit.alive_of_20 === null ? [] : [`Half or more alive after 90 days: ${chance(fit.alive_of_20)}.`]),
    ...(fit.short_by_mg_c_per_day === 0
      ? []
      : [
          `Together they go short by ${rationsADay(fit.short_by_mg_c_per_day)} in the leaner runs: feed by hand, or give some away.`,
        ]),
  ];
}

/** The reason that decides: of those that last for ever the first, else the first. */
const deciding = ({ status, reasons }: FitRow): FitReason | undefined =>
  (status === "never" ? reasons.find(({ until }) => until === null) : undefined) ?? reasons[0];

/** What is said of it in a list: the reason that decides, the same words for all that share it. */
export function lineWords(animal: Pick<AnimalRow, "name" | "role">, fit: FitRow): string {
  const reason = deciding(fit);
  if (reason?.code === "role") {
    return animal.role === "hitchhiker"
      ? "Comes by itself with rock or other animals; nobody buys it."
      : "Does little for a tank's upkeep; listed for whom it gets on with.";
  }
  if (fit.status === "not_yet" || fit.status === "never") {
    return reason === undefined ? verdictWords(animal, fit) : reasonWords(reason);
  }
  if (fit.status === "fits") return told(fit.not_needed ?? "others eat what it would");
  const more = fit.status === "lives_here" && reason !== undefined ? ` ${reasonWords(reason)}` : "";
  return `${verdictWords(animal, fit)}${more}`;
}

export interface Grouped<Row> {
  readonly reason: string;
  readonly rows: readonly Row[];
}

/** Rows with one and the same reason under it, the reason that most share first. */
export function groupedBy<Row>(rows: readonly Row[], reasonOf: (row: Row) => string): Grouped<Row>[] {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const reason = reasonOf(row);
    groups.set(reason, [...(groups.get(reason) ?? []), row]);
  }
  return [...groups]
    .map(([reason, some]) => ({ reason, rows: some }))
    .sort((a, b) => b.rows.length - a.rows.length);
}

export const capital = (text: string): string => (text === "" ? "" : text[0]!.toUpperCase() + text.slice(1));
