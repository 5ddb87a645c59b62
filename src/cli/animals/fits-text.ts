/** All animals by what becomes of them in one tank, each with the reason that decides. */

import { type AnimalRow, byReason, type FitRow, type Grouped } from "../../answers/animals/fit-words.ts";
import { plain } from "../../answers/sentence.ts";
import { CAUTION, STATEMENT } from "../../answers/statement.ts";
import { counted, wrap } from "../../answers/words.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Io } from "../io.ts";

const VERDICTS: readonly (readonly [FitRow["status"], title: string])[] = [
  ["lives_here", "Live here"],
  ["in_plan", "Fit, and are in the plan"],
  ["fits", "Fit, and are not needed"],
  ["not_yet", "Not yet"],
  ["never", "Never in this tank"],
];

export function fitsText(rows: readonly AnimalRow[], facts: TankFacts, io: Io): string {
  const count = (...statuses: readonly FitRow["status"][]) =>
    rows.filter(({ fit }) => fit !== null && statuses.includes(fit.status)).length;
  const blocks = VERDICTS.flatMap(([status, title]) => {
    if (count(status) === 0) return [];
    const lines = byReason(rows, status).map((group) => linesOf(group, io));
    return [[io.bold(`${title} (${count(status)})`), ...lines].join("\n")];
  });
  const here = count("lives_here");
  const living =
    here === 0 ? "none lives here" : `${counted(here, "kind")} ${here === 1 ? "lives" : "live"} here`;
  const finding = `${io.bold(facts.name)}: of ${rows.length} animals ${count("in_plan", "fits")} fit, ${count("not_yet")} not yet, ${count("never")} never; ${living}. The reason that decides is given; grazewell animals ID FILE tells all.`;
  const end = [STATEMENT, CAUTION.wild].map((text) => wrap(text, io.width)).join("\n");
  return [wrap(finding, io.width), ...blocks, end].join("\n\n");
}

/** Animals with one and the same reason stand together under it. */
function linesOf({ reason, rows }: Grouped, io: Io): string {
  const names = rows.map(({ name }) => name).join(", ");
  if (rows.length === 1) return wrap(`${names}: ${plain(reason)}`, io.width, "  ", "    ");
  return [wrap(plain(reason), io.width, "  "), wrap(names, io.width, "    ")].join("\n");
}
