/** The round as `round --json` prints it. */
import type { RoundOutput } from "../../contract/output/next.ts";
import { plain } from "../sentence.ts";
import { STATEMENT } from "../statement.ts";
import { ENGINE_VERSION } from "../version.ts";
import { type RoundRow, urgencyOf } from "./round.ts";
import { byWhen, whatToDo, whyNow } from "./words.ts";

export const roundOutputOf = (rows: readonly RoundRow[], all: number, today: string): RoundOutput => ({
  schema: "grazewell.round/1",
  engine: ENGINE_VERSION,
  as_of: today,
  all,
  tanks: rows.map((row, i) => ({
    ...{ place: i + 1, id: row.id, name: row.name, keeper: row.keeper, invented: row.demonstration },
    ...{ urgency: urgencyOf(row), why: plain(whyNow(row)), do: plain(whatToDo(row)) },
    ...{ by_when: byWhen(row, today), more: row.more, data_days: row.dataDays },
  })),
  statement: STATEMENT,
});
