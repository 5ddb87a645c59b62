/** All animals by what becomes of them in one tank, each with the reason that decides. */

import type { Fit } from "../../answers/animals/fit.ts";
import { CAUTION, STATEMENT } from "../../answers/statement.ts";
import { counted, wrap } from "../../answers/words.ts";
import type { Animal } from "../../engine/types/animal.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Io } from "../io.ts";
import { deciding, reasonText, verdict } from "./fit-text.ts";

interface Row {
  readonly animal: Animal;
  readonly fit: Fit;
}

const VERDICTS: readonly (readonly [Fit["status"], title: string])[] = [
  ["lives_here", "Live here"],
  ["in_plan", "Fit, and are in the plan"],
  ["fits", "Fit, and are not needed"],
  ["not_yet", "Not yet"],
  ["never", "Never in this tank"],
];

export function fitsText(rows: readonly Row[], facts: TankFacts, io: Io): string {
  const blocks = VERDICTS.flatMap(([status, title]) => {
    const some = rows.filter(({ fit }) => fit.status === status);
    if (some.length === 0) return [];
    return [[io.bold(`${title} (${some.length})`), ...linesOf(some, io)].join("\n")];
  });
  const count = (...statuses: readonly Fit["status"][]) =>
    rows.filter(({ fit }) => statuses.includes(fit.status)).length;
  const here = count("lives_here");
  const living =
    here === 0 ? "none lives here" : `${counted(here, "kind")} ${here === 1 ? "lives" : "live"} here`;
  const finding = `${io.bold(facts.name)}: of ${rows.length} animals ${count("in_plan", "fits")} fit, ${count("not_yet")} not yet, ${count("never")} never; ${living}. The reason that decides is given; grazewell animals ID FILE tells all.`;
  const end = [STATEMENT, CAUTION.wild].map((text) => wrap(text, io.width)).join("\n");
  return [wrap(finding, io.width), ...blocks, end].join("\n\n");
}

/** Animals with one and the same reason stand together under it. */
function linesOf(rows: readonly Row[], io: Io): string[] {
  const groups = new Map<string, Animal[]>();
  for (const row of rows) {
    const reason = lineOf(row);
    groups.set(reason, [...(groups.get(reason) ?? []), row.animal]);
  }
  return [...groups]
    .sort(([, a], [, b]) => b.length - a.length)
    .map(([reason, animals]) => {
      const names = animals.map(({ commonName }) => commonName).join(", ");
      if (animals.length === 1) return wrap(`${names}: ${reason}`, io.width, "  ", "    ");
      return [wrap(reason, io.width, "  "), wrap(names, io.width, "    ")].join("\n");
    });
}

function lineOf({ animal, fit }: Row): string {
  const reason = deciding(fit);
  if (reason?.code === "role") {
    return animal.role === "hitchhiker"
      ? "Comes by itself with rock or other animals; nobody buys it."
      : "Does little for a tank's upkeep; listed for whom it gets on with.";
  }
  if (fit.status === "not_yet" || fit.status === "never") {
    return reason === undefined ? verdict(animal, fit) : reasonText(reason);
  }
  const more = fit.status === "lives_here" && reason !== undefined ? ` ${reasonText(reason)}` : "";
  return `${verdict(animal, fit)}${more}`;
}
