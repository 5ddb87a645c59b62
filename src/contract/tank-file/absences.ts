/** When its keeper is away from home: days of leaving and of coming back, who feeds meanwhile. */
import type { Absence } from "../../engine/types/tank.ts";
import { LONGEST_AWAY_DAYS } from "../daybook/kinds/care.ts";
import { daysBetween, inWordsDate } from "../quantity/calendar.ts";
import { readDate } from "../quantity/date.ts";
import { isKept, type Outcome, refused } from "../quantity/outcome.ts";
import { readPlain } from "../quantity/plain.ts";
import type { Preferences } from "../quantity/preferences.ts";
import { shown } from "../quantity/show.ts";
import type { Entries } from "./entries.ts";
import type { Path } from "./finding.ts";
import type { TankFile } from "./schema.ts";

interface Said {
  readonly preferences: Preferences;
  readonly label: string;
}

/** As a sitter feeds who is told nothing else; as in the daybook. */
const USUAL_EVERY_DAYS = 2;

/** Those that are not over, the first first; undefined where there are none. */
export function readAbsences(file: TankFile, entries: Entries): readonly Absence[] | undefined {
  const { today } = entries.context;
  const all = (file.absences ?? []).flatMap(({ from, to, fed_by, every_days }, i): Absence[] => {
    const path: Path = ["absences", i];
    // That a day lies ahead goes without saying here.
    const planned = (text: string, c: Said): Outcome<string> => {
      const read = readDate(text, { ...c, today, future: "planned" });
      return isKept(read) && read.message?.text.includes("planned for") ? { ...read, message: null } : read;
    };
    const leave = entries.read([...path, "from"], from, planned);
    const back = entries.read([...path, "to"], to, (text, c): Outcome<string> => {
      const read = planned(text, c);
      if (leave === undefined || !isKept(read)) return read;
      const days = daysBetween(leave, read.value);
      if (days >= 1 && days <= LONGEST_AWAY_DAYS) return read;
      const words = `must be 1 to ${LONGEST_AWAY_DAYS} days after leaving, ${inWordsDate(leave)}`;
      return refused({ text, unit: null }, { kind: "RANGE", text: `${c.label} "${shown(text)}": ${words}` });
    });
    const every = entries.read([...path, "every_days"], every_days, (text, c) =>
      readPlain("days", text, { ...c, unit: "d" }),
    );
    if (leave === undefined || back === undefined || back <= today) return [];
    const everyDays = Math.max(1, Math.round(every?.central ?? USUAL_EVERY_DAYS));
    return [{ from: leave, to: back, fedBy: fed_by ?? "nobody", everyDays }];
  });
  return all.length === 0 ? undefined : all.toSorted((a, b) => (a.from < b.from ? -1 : 1));
}
