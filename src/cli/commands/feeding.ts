/**
 * `grazewell feeding`: what a day's feed brings and where it goes, what the fish need, what portions hold, fasting days;
 * with --from and --to, leaving home: what to pack, and what twenty versions of the tank come to.
 */
import { Command, Option } from "commander";
import { feedingOf } from "../../answers/feeding/feeding.ts";
import { feedingOutputOf } from "../../answers/feeding/output.ts";
import { holidayDates } from "../../answers/holiday/care-dates.ts";
import { type HolidayOutput, holidayOf, WAY_WORDS } from "../../answers/holiday/holiday.ts";
import { holidayJsonOf } from "../../answers/holiday/output.ts";
import { type HolidaySpan, packingOf } from "../../answers/holiday/packing.ts";
import { readSpan, SITTER_EVERY, USUAL_EVERY } from "../../answers/holiday/read-span.ts";
import { plain } from "../../answers/sentence.ts";
import { workingsById } from "../../answers/told-workings.ts";
import { dateWords, wrap } from "../../answers/words.ts";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { addTankOptions, type TankSource, tankFrom } from "../tank-source.ts";
import { numbersText } from "../wrong/text.ts";

interface Flags extends TankSource {
  readonly from?: string;
  readonly to?: string;
  readonly every: string;
  readonly json?: true;
}

const EXAMPLES = `Examples:
  grazewell feeding examples/first-reef.yaml
  grazewell feeding --tank "Hallway reef (invented)" --from "1 Jul" --to "15 Jul"
  grazewell feeding tank.yaml --from 2026-07-01 --to 2026-07-15 --every 3
  grazewell feeding tank.yaml --json
`;

/** Twenty runs, as on the page. */
const CHOICE = { members: 20, seed: 1 };

export function command(io: Io): Command {
  const feeding = new Command("feeding")
    .summary("feeding: what it brings, what fish need, portions, fasting, leaving home")
    .description(
      "What a day's feed brings and where it goes, what the fish need, what portions hold, fasting days. With --from and --to: leaving home, three ways of feeding over twenty runs.",
    )
    .argument("[file]", "tank file (YAML or JSON), or - for standard input; or --tank")
    .option("--from <day>", "leaving, a date")
    .option("--to <day>", "coming back, a date")
    .addOption(
      new Option("--every <days>", "a sitter feeds on every so many days")
        .choices([...SITTER_EVERY])
        .default(USUAL_EVERY),
    );
  return addTankOptions(feeding)
    .addHelpText("beforeAll", EXAMPLES)
    .option("--json", "data for programs: docs/schemas/feeding.schema.json, or holiday.schema.json")
    .action(async (file: string | undefined, flags: Flags) => {
      const facts = await tankFrom(file, flags, io, { quiet: true });
      if (flags.from !== undefined || flags.to !== undefined) return holiday(facts, flags, io);
      const feeding = feedingOf(facts);
      if (flags.json === true) return io.out(JSON.stringify(feedingOutputOf(facts, feeding), null, 2));
      io.out(`${plain(feeding.lead)}\n\n${numbersText(feeding.parts, io)}`);
    });
}

function holiday(facts: TankFacts, flags: Flags, io: Io): void {
  const { span, doubts } = readSpan(flags, { preferences: NO_PREFERENCES, today: io.today });
  if (span === null)
    throw new CliError(
      EXIT.badData,
      doubts.map(({ text }) => text),
    );
  const { output, figures } = holidayOf(facts, span, CHOICE);
  if (flags.json === true) {
    const json = holidayJsonOf(facts, output, workingsById(figures), io.today);
    io.out(JSON.stringify(json, null, 2));
  } else io.out(holidayText(facts, span, output, io));
}

function holidayText(facts: TankFacts, span: HolidaySpan, output: HolidayOutput, io: Io): string {
  const packing = packingOf(facts, span);
  const days = packing.feedOn.map(dateWords).join(", ");
  return [
    `Away ${output.days} days, ${dateWords(span.from)} to ${dateWords(span.to)}`,
    ...waysText(output, io),
    "",
    wrap(
      `Pack ${packing.bags.text} of ${packing.weighed ? `${packing.portion.text} (${packing.food})` : "a usual day's food"}${days === "" ? "" : `: ${days}`}.`,
      io.width,
    ),
    ...packing.short.map(({ name, lasts }) => wrap(`May not last unfed: ${name}, ${lasts.text}.`, io.width)),
    "",
    ...holidayDates(span, packing, io.today).map(({ on, do: sentence }) =>
      wrap(`${dateWords(on)}: ${plain(sentence)}`, io.width, "", "  "),
    ),
    "",
    wrap(
      "A page for a sitter to print: feeding, Leaving home, in the tank's pages (grazewell serve).",
      io.width,
    ),
  ].join("\n");
}

const waysText = ({ finding, ways }: HolidayOutput, { width }: Io): string[] => [
  wrap(plain(finding), width),
  ...ways.map(({ way, nitrate, phosphate, ammonia, film, lost }) =>
    wrap(
      `${WAY_WORDS[way]}: nitrate ${nitrate.text} mg/L, phosphate ${phosphate.text} mg/L, ammonia that harms ${ammonia.text}, film ${film.text} mg C/m2, crew lost ${lost.text}`,
      width,
      "  ",
      "    ",
    ),
  ),
];
