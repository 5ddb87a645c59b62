/** `grazewell next --tank ID`: what to do next for a kept tank, and why; the list that its bench shows. */
import { Command, Option } from "commander";
import type { Advice } from "../../answers/advice.ts";
import type { RankedAdvice } from "../../answers/bench/next.ts";
import { nextOutputOf } from "../../answers/bench/output.ts";
import { DEFAULT_ENSEMBLE } from "../../answers/plan/plan-tank.ts";
import { plain } from "../../answers/sentence.ts";
import { STATEMENT } from "../../answers/statement.ts";
import { dateWords, wrap } from "../../answers/words.ts";
import type { Io } from "../io.ts";
import { memberCount, seedNumber } from "../plan/options.ts";
import { rankedFor } from "../plan/ranked.ts";
import { STORE_OPTION } from "../store/open.ts";
import { withKeptTank } from "../tank-source.ts";

const EXAMPLES = `Examples:
  grazewell next --tank "Hallway reef (invented)"
  grazewell next --tank Kitchen --no-plan
  grazewell next --tank Kitchen --json
`;

interface Flags {
  readonly tank: string;
  readonly store?: string;
  readonly plan: boolean;
  readonly members: number;
  readonly seed: number;
  readonly json?: true;
}

export function command(io: Io): Command {
  return new Command("next")
    .summary("what to do next for a tank of the store, and why")
    .description(
      "One ranked list from answers, daybook and plan: what to do, why, by when, what would change it. Waiting is among it. How it is ranked: docs/model/next.md.",
    )
    .addHelpText("beforeAll", EXAMPLES)
    .requiredOption("--tank <id>", "a tank of the store, by its id or name")
    .option(...STORE_OPTION)
    .addOption(
      new Option("--members <n>", "runs of the ensemble behind the plan")
        .argParser(memberCount)
        .default(DEFAULT_ENSEMBLE.members),
    )
    .addOption(
      new Option("--seed <n>", "seed of the draws").argParser(seedNumber).default(DEFAULT_ENSEMBLE.seed),
    )
    .option("--no-plan", "at once, from answers and daybook alone")
    .option("--json", "data for programs: docs/schemas/next.schema.json")
    .action(async ({ tank, store: where, plan, members, seed, json }: Flags) => {
      const { loadTank } = await import("../../server/load-tank.ts");
      const loaded = await withKeptTank(tank, where, (store, row) => loadTank(store, row.id, io.today));
      if (loaded === null) return;
      const ranked = await rankedFor(loaded, plan ? { members, seed } : null, io);
      const { id, name } = loaded.head;
      io.out(
        json === true
          ? JSON.stringify(nextOutputOf({ id, name, as_of: io.today }, ranked, plan), null, 2)
          : textOf(name, ranked, io),
      );
    });
}

const URGENCY_WORDS: Readonly<Record<Advice["urgency"], string>> = {
  today: "Today",
  this_week: "This week",
  next_visit: "Next visit",
  cannot_tell: "Can't tell yet",
};

function textOf(name: string, { standing, declined }: RankedAdvice, io: Io): string {
  const part = (words: string) => wrap(words, io.width, "   ", "     ");
  const one = (advice: Advice, i: number): string =>
    [
      wrap(`${i + 1}. ${URGENCY_WORDS[advice.urgency]}: ${io.bold(plain(advice.do))}`, io.width, "", "   "),
      ...advice.why.map((why) => part(plain(why))),
      part(`By when: ${plain(advice.byWhen)}`),
      part(`What would change this: ${plain(advice.wouldChange)}`),
      part(`Or: ${advice.wait.words}.`),
      part(`Its name: ${advice.id}`),
    ].join("\n");
  return [
    wrap(`What next for ${io.bold(name)}?`, io.width),
    ...standing.map(one),
    ...(declined.length === 0
      ? []
      : [
          [
            "Declined:",
            ...declined.map(({ advice, reason, on }) =>
              part(`${plain(advice.do)} Declined on ${dateWords(on)}: ${reason}`),
            ),
          ].join("\n"),
        ]),
    ...(standing.length === 0
      ? []
      : [
          wrap(
            'To decline one, with its name: grazewell log decline --tank ... advice=NAME reason="why not"',
            io.width,
          ),
        ]),
    wrap(STATEMENT, io.width),
  ].join("\n\n");
}
