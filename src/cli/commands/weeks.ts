/** `grazewell weeks FILE`: weeks 1 to 26 of a tank, week by week: expect, test, do, don't, buy. */
import { Command } from "commander";
import { DEFAULT_ENSEMBLE } from "../../answers/plan/plan-tank.ts";
import { plain } from "../../answers/sentence.ts";
import { STATEMENT } from "../../answers/statement.ts";
import { answersOf } from "../../answers/tank-answers.ts";
import { flowsFor } from "../../answers/trends/flows.ts";
import { WEEK_LISTS, type WeekList } from "../../answers/weeks/item.ts";
import { weeksOutputOf } from "../../answers/weeks/output.ts";
import { type WeekRow, type Weeks, weeksOf } from "../../answers/weeks/weeks.ts";
import { dateWords, wrap } from "../../answers/words.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { almanacOfFile } from "../almanac/of-file.ts";
import type { Io } from "../io.ts";
import { loadedSolver, progressOf } from "../plan/plan-of.ts";
import { addTankOptions, type TankSource, tankFrom } from "../tank-source.ts";

const EXAMPLES = `Examples:
  grazewell weeks examples/first-reef.yaml
  grazewell weeks --tank "Hallway reef (invented)"
  grazewell weeks examples/first-reef.yaml --json
`;

interface Flags extends TankSource {
  readonly json?: true;
}

export function command(io: Io): Command {
  return addTankOptions(
    new Command("weeks")
      .summary("weeks 1 to 26 on one page: expect, test, do, don't, buy")
      .description(
        "The plan, the weeks ahead and dated care, week by week. A line stands in the week in which it first holds.",
      )
      .argument("[file]", "tank file (YAML or JSON), or - for standard input; or --tank"),
  )
    .addHelpText("beforeAll", EXAMPLES)
    .option("--json", "data for programs: docs/schemas/weeks.schema.json")
    .action(async (file: string | undefined, { json, ...source }: Flags) => {
      const facts = await tankFrom(file, source, io, { quiet: true });
      const weeks = await weeksFor(facts, source, io);
      io.out(
        json === true
          ? JSON.stringify(weeksOutputOf(facts.name, weeks), null, 2)
          : textOf(facts.name, weeks, io),
      );
    });
}

async function weeksFor(facts: TankFacts, { tank, store }: TankSource, io: Io): Promise<Weeks> {
  const means = { solve: await loadedSolver(), progress: progressOf(io) };
  const answers = answersOf(facts, DEFAULT_ENSEMBLE, means);
  io.progress(null);
  if (tank === undefined) {
    const flows = flowsFor(facts).output;
    return weeksOf(answers, almanacOfFile(facts, { ...answers, flows }, facts.asOf).dates);
  }
  const { withTank } = await import("../store/tank-of-store.ts");
  const { almanacFor } = await import("../../server/almanac/almanac-of.ts");
  return await withTank(store, tank, io, async (kept) =>
    weeksOf(answers, almanacFor(kept, answers, io.today).dates),
  );
}

function textOf(name: string, { finding, counted, rows, later }: Weeks, io: Io): string {
  return [
    wrap(`${io.bold(`Weeks 1 to 26 of ${name}`)}. ${plain(finding)}`, io.width),
    ...rows.map((row) => rowText(row, counted, io)),
    ...(later === null ? [] : [wrap(plain(later), io.width)]),
    wrap(`Dates are the middle of a band: what you see goes first. ${STATEMENT}`, io.width),
  ].join("\n\n");
}

function rowText(
  { from, to, starts, ends, lists, more }: WeekRow,
  counted: Weeks["counted"],
  io: Io,
): string {
  const weeks = from === to ? `Week ${from}` : `Weeks ${from} to ${to}`;
  const title = `${io.bold(weeks)}${counted === "ahead" ? " from today" : ""}, ${dateWords(starts)} to ${dateWords(ends)}`;
  const lines = (Object.keys(WEEK_LISTS) as WeekList[]).flatMap((list) =>
    lists[list].map((sentence) => wrap(`${WEEK_LISTS[list]}: ${plain(sentence)}`, io.width, "  ", "    ")),
  );
  const rest = more === 0 ? [] : [`  And ${more} more: grazewell almanac.`];
  return [title, ...lines, ...rest].join("\n");
}
