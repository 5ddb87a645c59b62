/**
 * How an animal fits a tank, in sentences, from the answers as data: what a page or a list says of it.
 * Limits: knows what `animals --json` holds, and nothing of the plan behind it.
 */
import type { AnimalsOutput } from "../../contract/output/animals.ts";
import { linked, maybeTold, plain, type Sentence } from "../sentence.ts";
import { chance, counted, dateWords, rationsADay, withDates } from "../words.ts";

export type AnimalRow = AnimalsOutput["animals"][number];
export type FitRow = NonNullable<AnimalRow["fit"]>;
type FitReason = FitRow["reasons"][number];

/** One sentence of the engine's that is told by itself: a full stop, a capital, dates in words. */
export const inFull = (text: string): string => withDates(`${capital(text).replace(/[.\s]+$/, "")}.`);

const reasonWords = ({ text, until, figure }: FitReason): Sentence => [
  ...linked(inFull(text), figure),
  ...(until === null ? [] : [` That passes ${withDates(until)}.`]),
];

/** The first sentence: what becomes of it here. */
function verdictWords({ name }: Pick<AnimalRow, "name">, fit: FitRow): Sentence {
  const untils = fit.reasons.flatMap(({ code, until }) => (until === null ? [] : [{ code, until }]));
  // A date, where there is one, is what a keeper asks for.
  const dated = untils.find(({ code }) => code === "age");
  const when = dated === undefined ? untils[0]?.until : `at the earliest ${dated.until}`;
  switch (fit.status) {
    case "lives_here":
      return [
        maybeTold(counted(fit.heads_here, name), fit.figures.heads_here),
        ` ${fit.heads_here === 1 ? "lives" : "live"} here`,
        ...plannedWords(fit, ", and the plan adds "),
        ".",
      ];
    case "in_plan":
      return ["It fits: the plan brings ", ...plannedWords(fit, ""), "."];
    case "fits":
      return [`It fits and is not in the plan. ${inFull(fit.not_needed ?? "others eat what it would")}`];
    case "not_yet":
      return [withDates(`Not yet${when === undefined ? "" : `: ${when}`}.`)];
    case "never":
      return ["Never in this tank."];
  }
}

function plannedWords({ planned }: FitRow, start: string): Sentence {
  return planned.flatMap(({ wave, from, to, count, figure }, i) => [
    i === 0 ? start : ", ",
    maybeTold(String(count), figure),
    ` in wave ${wave} (${dateWords(from)} to ${dateWords(to)})`,
  ]);
}

/** Everything that there is to say of it in this tank. */
export function fitWords(animal: Pick<AnimalRow, "name">, fit: FitRow): Sentence[] {
  const against = fit.status === "lives_here" ? ["Against it here: "] : [];
  const { binding, alive_of_20, short_by_mg_c_per_day, figures } = fit;
  return [
    verdictWords(animal, fit),
    ...fit.reasons.map((reason): Sentence => [...against, ...reasonWords(reason)]),
    ...(binding === null
      ? []
      : [["No more of them because of ", ...linked(withDates(binding.text), binding.figure), "."]]),
    ...(alive_of_20 === null
      ? []
      : [["Half or more alive after 90 days: ", maybeTold(chance(alive_of_20), figures.alive), "."]]),
    ...(short_by_mg_c_per_day === 0
      ? []
      : [
          [
            "Together they go short by ",
            maybeTold(rationsADay(short_by_mg_c_per_day), figures.short_by),
            " in the leaner runs: feed by hand, or give some away.",
          ],
        ]),
  ];
}

/** The reason that decides: of those that last for ever the first, else the first. */
const deciding = ({ status, reasons }: FitRow): FitReason | undefined =>
  (status === "never" ? reasons.find(({ until }) => until === null) : undefined) ?? reasons[0];

/** What is said of it in a list: the reason that decides, the same words for all that share it. */
export function lineWords(animal: Pick<AnimalRow, "name" | "role">, fit: FitRow): Sentence {
  const reason = deciding(fit);
  if (reason?.code === "role") {
    return [
      animal.role === "hitchhiker"
        ? "Comes by itself with rock or other animals; nobody buys it."
        : "Does little for a tank's upkeep; listed for whom it gets on with.",
    ];
  }
  if (fit.status === "not_yet" || fit.status === "never") {
    return reason === undefined ? verdictWords(animal, fit) : reasonWords(reason);
  }
  if (fit.status === "fits") return [inFull(fit.not_needed ?? "others eat what it would")];
  const more = fit.status === "lives_here" && reason !== undefined ? [" ", ...reasonWords(reason)] : [];
  return [...verdictWords(animal, fit), ...more];
}

export interface Grouped {
  readonly reason: Sentence;
  readonly rows: readonly AnimalRow[];
}

/** Animals that stand so in this tank, by the reason that decides: the reason that most share first. */
export function byReason(
  rows: readonly AnimalRow[],
  status: FitRow["status"],
  among: (row: AnimalRow) => boolean = () => true,
): Grouped[] {
  const groups = new Map<string, { reason: Sentence; rows: AnimalRow[] }>();
  for (const row of rows) {
    if (row.fit?.status !== status || !among(row)) continue;
    const reason = lineWords(row, row.fit);
    const key = plain(reason);
    const group = groups.get(key) ?? { reason, rows: [] };
    group.rows.push(row);
    groups.set(key, group);
  }
  return [...groups.values()].sort((a, b) => b.rows.length - a.rows.length);
}

export const capital = (text: string): string => (text === "" ? "" : text[0]!.toUpperCase() + text.slice(1));
