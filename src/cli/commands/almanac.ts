/** `grazewell almanac FILE`: dated care of a tank; as a calendar file on request. */
import { writeFileSync } from "node:fs";
import { Command, InvalidArgumentError } from "commander";
import type { Almanac } from "../../answers/almanac/almanac.ts";
import { issueOf } from "../../answers/almanac/issue.ts";
import { almanacOutputOf } from "../../answers/almanac/output.ts";
import { larderFor, larderOutputOf } from "../../answers/larder.ts";
import { DEFAULT_ENSEMBLE } from "../../answers/plan/plan-tank.ts";
import { wavesOutputOf } from "../../answers/plan/waves-output.ts";
import { plain } from "../../answers/sentence.ts";
import { STATEMENT } from "../../answers/statement.ts";
import { flowsFor } from "../../answers/trends/flows.ts";
import { counted, dateWords, wrap } from "../../answers/words.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { almanacOfFile } from "../almanac/of-file.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { planOf } from "../plan/plan-of.ts";
import { addTankOptions, type TankSource, tankFrom } from "../tank-source.ts";

const EXAMPLES = `Examples:
  grazewell almanac my-tank.yaml
  grazewell almanac --tank "Hallway reef (invented)" --days 30
  grazewell almanac --tank Kitchen --ics kitchen.ics
`;

interface Flags extends TankSource {
  readonly days: number;
  readonly ics?: string;
  readonly json?: true;
}

const NEAR_DAYS = 14;
const MOST_DAYS = 400;

export function command(io: Io): Command {
  return addTankOptions(
    new Command("almanac")
      .summary("what is due when: dated care, as a calendar file on request")
      .description(
        "Dated care worked out from the tank: glass, filter, tests, water, counts, orders, waves behind their gates. How it is reckoned: docs/almanac.md.",
      )
      .argument("[file]", "tank file (YAML or JSON), or - for standard input; or --tank"),
  )
    .addHelpText("beforeAll", EXAMPLES)
    .option("--days <n>", `how many days are told in full, 1 to ${MOST_DAYS}`, daysOf, NEAR_DAYS)
    .option(
      "--ics <file>",
      "also as a calendar file (RFC 5545), written over the one of before; of a kept tank it goes on from what was given",
    )
    .option("--json", "data for programs: docs/schemas/almanac.schema.json")
    .action(async (file: string | undefined, flags: Flags) => {
      const { almanac, name, zone, calendar } =
        flags.tank === undefined ? await ofFile(file, flags, io) : await ofKept(file, flags, io);
      if (flags.ics !== undefined) writeCalendar(flags.ics, calendar ?? "", io);
      if (flags.json === true) io.out(JSON.stringify(almanacOutputOf({ name, zone }, almanac), null, 2));
      else io.out(textOf(name, almanac, flags.days, io));
    });
}

interface Made {
  readonly almanac: Almanac;
  readonly name: string;
  readonly zone: string | null;
  readonly calendar: string | null;
}

function daysOf(text: string): number {
  const days = Number(text);
  if (!Number.isInteger(days) || days < 1 || days > MOST_DAYS)
    throw new InvalidArgumentError(`must be a whole number from 1 to ${MOST_DAYS}.`);
  return days;
}

async function answersFor(facts: TankFacts, io: Io) {
  const plan = await planOf(facts, DEFAULT_ENSEMBLE, io);
  return {
    larder: larderOutputOf(larderFor(facts, DEFAULT_ENSEMBLE), DEFAULT_ENSEMBLE, null),
    waves: wavesOutputOf(plan, facts, DEFAULT_ENSEMBLE, null),
    flows: flowsFor(facts).output,
  };
}

/** A file has no daybook and no memory of what calendars were given. */
async function ofFile(file: string | undefined, flags: Flags, io: Io): Promise<Made> {
  const facts = await tankFrom(file, flags, io, { quiet: true });
  const almanac = almanacOfFile(facts, await answersFor(facts, io), facts.asOf);
  return {
    ...{ almanac, name: facts.name, zone: null },
    calendar: flags.ics === undefined ? null : await calendarOfFile(facts.name, almanac),
  };
}

async function calendarOfFile(name: string, almanac: Almanac): Promise<string> {
  const { textOf: calendarText, uidOf } = await import("../../server/almanac/calendar-of.ts");
  const moment = { today: almanac.today, now: new Date().toISOString(), zone: null };
  const { events } = issueOf(almanac.dates, [], moment);
  return calendarText("Grazewell almanac", events, uidOf(name), false);
}

async function ofKept(file: string | undefined, flags: Flags, io: Io): Promise<Made> {
  if (file !== undefined)
    throw new CliError(EXIT.usage, [
      `"${file}" and --tank "${flags.tank}": name one of them, a file or a tank of the store.`,
    ]);
  const { withTank } = await import("../store/tank-of-store.ts");
  const { almanacFor } = await import("../../server/almanac/almanac-of.ts");
  const { calendarOf, placeOf } = await import("../../server/almanac/calendar-of.ts");
  const facts = await tankFrom(undefined, flags, io, { quiet: true });
  const answers = await answersFor(facts, io);
  return await withTank(flags.store, flags.tank, io, async (tank, store) => {
    const almanac = almanacFor(tank, answers, io.today);
    const asked = { now: new Date().toISOString(), feed: false };
    return {
      ...{ almanac, name: tank.head.name, zone: tank.zone },
      calendar: flags.ics === undefined ? null : await calendarOf(store, placeOf(tank), almanac, asked),
    };
  });
}

function writeCalendar(file: string, text: string, io: Io): void {
  try {
    writeFileSync(file, text, { mode: 0o600 });
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? String(error);
    throw new CliError(EXIT.cannotWrite, [`--ics "${file}": can't be written (${code}). Name another file.`]);
  }
  io.talk(`Calendar written to ${file}.`);
}

function textOf(name: string, { today, dates, undated, benchFirst }: Almanac, days: number, io: Io): string {
  const last = addDays(today, days - 1);
  const near = dates.filter(({ on }) => on <= last);
  const later = dates.filter(({ on }) => on > last);
  const line = (text: string) => wrap(text, io.width, "  ", "    ");
  return [
    io.bold(`Almanac of ${name}, ${dateWords(today)}`),
    ...(benchFirst
      ? [wrap("Something is wrong now and goes before all of this: grazewell wrong.", io.width)]
      : []),
    ...(near.length === 0 ? [line(`Nothing is due within ${counted(days, "day")}.`)] : []),
    ...near.flatMap((one) => [
      wrap(
        `${dateWords(one.on)}${one.at === null ? "" : `, ${one.at}`}: ${io.bold(plain(one.do))}${one.every === null ? "" : ` Then every ${counted(one.every, "day").replace(/^1 /, "")}${one.until === null ? "" : ` to ${dateWords(one.until)}`}.`}`,
        io.width,
        "",
        "  ",
      ),
      ...(one.gate === null ? [] : [line(plain(one.gate))]),
      ...one.why.map((why) => line(plain(why))),
      line(`By when: ${plain(one.byWhen)}`),
      line(`What would change it: ${plain(one.wouldChange)}`),
    ]),
    ...(later.length === 0 ? [] : [io.bold("Later")]),
    ...later.flatMap((one) => [
      line(`${dateWords(one.on)}: ${plain(one.do)}`),
      ...(one.gate === null ? [] : [wrap(plain(one.gate), io.width, "    ", "    ")]),
    ]),
    ...(undated.length === 0 ? [] : [io.bold("Without a day")]),
    ...undated.map(({ what, why }) => line(`${what}: ${plain(why)}`)),
    wrap(STATEMENT, io.width),
  ].join("\n");
}
