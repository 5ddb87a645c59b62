/** `grazewell trends --tank ID`: which way a kept tank's readings go, how surely, what changed, when a limit could be met. */
import { Command } from "commander";
import { plain } from "../../answers/sentence.ts";
import { trendsOf } from "../../answers/trends/trends.ts";
import { shownIn } from "../../answers/units-shown.ts";
import { dateWords, wrap } from "../../answers/words.ts";
import type { TrendsOutput } from "../../contract/output/trends.ts";
import type { Io } from "../io.ts";
import { progressOf } from "../plan/plan-of.ts";
import { STORE_OPTION } from "../store/open.ts";
import { withKeptTank } from "../tank-source.ts";

const EXAMPLES = `Examples:
  grazewell trends --tank "Hallway reef (invented)"
  grazewell trends --tank Kitchen --flows
  grazewell trends --tank Kitchen --json
`;

interface Flags {
  readonly tank: string;
  readonly store?: string;
  readonly flows?: true;
  readonly json?: true;
}

export function command(io: Io): Command {
  return new Command("trends")
    .summary("which way a kept tank's readings go, and when a limit could be met")
    .description(
      "Trends of a kept tank: slope with its range, what is usual, what changed and when, limits counted of 20; the most pressing first. With --flows: what comes in, what algae take, what leaves, in mg a day. How it is reckoned: docs/model/trends.md.",
    )
    .addHelpText("beforeAll", EXAMPLES)
    .requiredOption("--tank <id>", "a tank of the store, by its id or name")
    .option(...STORE_OPTION)
    .option("--flows", "nitrogen and phosphorus in mg a day instead: some seconds of work")
    .option("--json", "data for programs: docs/schemas/trends.schema.json, or flows.schema.json")
    .action(async ({ tank, store: where, flows, json }: Flags) => {
      const { loadTank } = await import("../../server/load-tank.ts");
      const loaded = await withKeptTank(tank, where, (store, row) => loadTank(store, row.id, io.today));
      if (loaded === null) return;
      const { facts, record, document } = loaded;
      if (flows === true) {
        const { flowsFor } = await import("../../answers/trends/flows.ts");
        const { learnedOf } = await import("../../answers/learned/learned.ts");
        const { output } = flowsFor(learnedOf(facts, record, progressOf(io)).facts);
        const told = output.elements.flatMap(({ title, sentences }) => [title, ...sentences.map(plain)]);
        io.out(
          json === true ? JSON.stringify(output, null, 2) : lines(facts.name, told, output.statement, io),
        );
        return;
      }
      const scene = { facts, record, today: io.today };
      // Data are in the units of their names, whatever the keeper reads in.
      const { output } = trendsOf(scene, json === true ? {} : { shown: shownIn(document.preferences) });
      io.out(json === true ? JSON.stringify(output, null, 2) : trendsText(output, io));
    });
}

const lines = (name: string, told: readonly string[], statement: string, io: Io): string =>
  [
    io.bold(`Flows of ${name}`),
    ...told.map((text) => wrap(text, io.width, "  ")),
    wrap(statement, io.width),
  ].join("\n");

function trendsText({ tank, quantities, unread, statement }: TrendsOutput, io: Io): string {
  return [
    io.bold(`Trends of ${tank.name} on ${dateWords(tank.as_of)}`),
    ...quantities.flatMap(({ label, sentences }) => [
      io.bold(label),
      ...sentences.map((sentence) => wrap(plain(sentence), io.width, "  ")),
    ]),
    ...(unread.length === 0 ? [] : [wrap(`Not measured yet: ${unread.join(", ")}.`, io.width)]),
    wrap(statement, io.width),
  ].join("\n");
}
