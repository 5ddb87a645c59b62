/** `grazewell round`: every tank of a store, the neediest first. */
import { Command, Option } from "commander";
import { URGENCY_ORDER } from "../../answers/advice.ts";
import { roundOutputOf } from "../../answers/round/output.ts";
import {
  filtered,
  NO_FILTER,
  ROUND_SORTS,
  type RoundFilter,
  type RoundRow,
  type RoundSort,
  rowOf,
  urgencyOf,
} from "../../answers/round/round.ts";
import {
  byWhen,
  dataAge,
  roundFinding,
  roundText,
  stillReadingWords,
  whatToDo,
  whyNow,
} from "../../answers/round/words.ts";
import { plain } from "../../answers/sentence.ts";
import { wrap } from "../../answers/words.ts";
import type { Io } from "../io.ts";
import { STORE_OPTION, saying } from "../store/open.ts";

const EXAMPLES = `Examples:
  grazewell round
  grazewell round --urgency today --keeper "A. Invented"
  grazewell round --words ammonia --json
`;

interface Flags {
  readonly store?: string;
  readonly keeper?: string;
  readonly urgency?: Exclude<RoundFilter["urgency"], null>;
  readonly words?: string;
  readonly sort: RoundSort;
  readonly all?: true;
  readonly json?: true;
}

/** Tanks of which trends, heads and growths are read too: some seconds at most. */
const READ_CLOSER = 100;

/** Tanks shown, unless all are asked for. */
const SHOWN = 20;

export function command(io: Io): Command {
  return new Command("round")
    .summary("every tank of the store, the neediest first")
    .description(
      "Who needs you today, this week, at the next visit: why now, what to do, by when, how old the data are. Judged from answers and daybook alone, without waiting for plans. How it is ranked: docs/model/next.md.",
    )
    .addHelpText("beforeAll", EXAMPLES)
    .option(...STORE_OPTION)
    .option("--keeper <name>", "tanks of that keeper alone")
    .addOption(
      new Option("--urgency <when>", "that urgency alone").choices([...URGENCY_ORDER, "nothing_due"]),
    )
    .option("--words <words>", "tanks whose row has all of these words")
    .addOption(new Option("--sort <order>", "order of the list").choices(ROUND_SORTS).default("need"))
    .option("--all", `every tank, not the first ${SHOWN}`)
    .option("--json", "data for programs, every tank: docs/schemas/round.schema.json")
    .action(async ({ store: where, keeper, urgency, words, sort, all, json }: Flags) => {
      const { openStore } = await import("../../store/open.ts");
      const { readCloser, roundTanks } = await import("../../server/round/round-tanks.ts");
      const rows = await saying(async () => {
        const store = await openStore(where, { use: "existing" });
        try {
          const look = async () => (await roundTanks(store, io.today)).map((tank) => rowOf(tank, io.today));
          const first = filtered(await look(), NO_FILTER, roundText);
          // Trends, heads and growths take a few hundredths of a second a tank: of a long round the neediest alone.
          const closer = first.slice(0, READ_CLOSER).map(({ id }) => id);
          await readCloser(store, closer, io.today);
          return await look();
        } finally {
          await store.close();
        }
      });
      const filter = { keeper: keeper ?? null, urgency: urgency ?? null, words: words ?? "", sort };
      const found = filtered(rows, filter, roundText);
      io.out(
        json === true
          ? JSON.stringify(roundOutputOf(found, rows.length, io.today), null, 2)
          : textOf(rows, found, all === true ? found.length : SHOWN, io),
      );
    });
}

const URGENCY_WORDS: Readonly<Record<ReturnType<typeof urgencyOf>, string>> = {
  today: "Today",
  this_week: "This week",
  next_visit: "Next visit",
  cannot_tell: "Can't tell yet",
  nothing_due: "Nothing due",
};

/** A command that has ended reads no further. */
const notRead = (rows: readonly RoundRow[], width: number): string[] =>
  stillReadingWords(rows) === null
    ? []
    : [
        wrap(
          `Of ${rows.filter(({ stillReading }) => stillReading).length} tanks further down trends, heads and growths were not read; dangers are here all the same.`,
          width,
        ),
      ];

function textOf(rows: readonly RoundRow[], found: readonly RoundRow[], most: number, io: Io): string {
  const part = (words: string) => wrap(words, io.width, "   ", "     ");
  const shown = found.slice(0, most);
  return [
    wrap(io.bold(`Round: ${roundFinding(rows)}`), io.width),
    ...shown.map((row, i) => {
      const when = urgencyOf(row) === "nothing_due" ? "" : `${byWhen(row, io.today)}; `;
      return [
        wrap(
          `${i + 1}. ${URGENCY_WORDS[urgencyOf(row)]}: ${io.bold(row.name)}, kept by ${row.keeper}`,
          io.width,
          "",
          "   ",
        ),
        part(plain(whyNow(row))),
        part(`${plain(whatToDo(row))}${row.more > 0 ? ` And ${row.more} more.` : ""}`),
        part(`${when}data: ${dataAge(row)}`),
      ].join("\n");
    }),
    ...notRead(rows, io.width),
    found.length === rows.length && shown.length === rows.length
      ? "How it is ranked: docs/model/next.md"
      : wrap(`${shown.length} of ${found.length} found shown, of ${rows.length} tanks.`, io.width),
  ].join("\n\n");
}
