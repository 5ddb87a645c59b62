/** `grazewell arrivals`: what to look at before paying, who is kept apart, a quarantine plan with dates, medicines, a fallow time. */
import { Command, Option } from "commander";
import { FALLOW } from "../../answers/arrivals/fallow.ts";
import { arrivalsOutputOf } from "../../answers/arrivals/output.ts";
import { QUARANTINED, type Quarantined } from "../../answers/arrivals/quarantine.ts";
import { answersOf } from "../../answers/tank-answers.ts";
import { whatIf } from "../../answers/what-if.ts";
import { counted, dateWords, wrap } from "../../answers/words.ts";
import type { ArrivalsOutput } from "../../contract/output/arrivals.ts";
import { readDate } from "../../contract/quantity/date.ts";
import { isKept } from "../../contract/quantity/outcome.ts";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { loadedSolver, progressOf } from "../plan/plan-of.ts";
import { addTankOptions, type TankSource, tankFrom, withKeptTank } from "../tank-source.ts";

const EXAMPLES = `Examples:
  grazewell arrivals examples/first-reef.yaml
  grazewell arrivals --tank "Hallway reef (invented)" --group corals --from "1 Jul"
  grazewell arrivals examples/first-reef.yaml --fallow --json
`;

interface Flags extends TankSource {
  readonly group: Quarantined;
  readonly from?: string;
  readonly fallow?: true;
  readonly json?: true;
}

/** Twenty runs, as on the page. */
const CHOICE = { members: 20, seed: 1 };

export function command(io: Io): Command {
  const arrivals = new Command("arrivals")
    .summary("arrivals: before you pay, quarantine with dates, medicines, a fallow time")
    .description(
      "What to look at before paying, who is kept apart by the daybook, a quarantine plan with dates, medicines in the water or lately. With --fallow: who of the crew goes hungry without fish and feed. Steps or a drip for a bag: grazewell sum acclimation.",
    )
    .argument("[file]", "tank file (YAML or JSON), or - for standard input; or --tank")
    .addOption(
      new Option("--group <who>", "whose quarantine plan").choices(Object.keys(QUARANTINED)).default("fish"),
    )
    .option("--from <day>", "its first day, a date; today where left out")
    .option("--fallow", "also who goes hungry in a fallow time (some seconds)");
  return addTankOptions(arrivals)
    .addHelpText("beforeAll", EXAMPLES)
    .option("--json", "data for programs: docs/schemas/arrivals.schema.json")
    .action(async (file: string | undefined, flags: Flags) => {
      const facts = await tankFrom(file, flags, io, { quiet: true });
      const from = flags.from === undefined ? io.today : dayOf(flags.from, io);
      const record = flags.tank === undefined ? { happenings: [] } : await recordKept(flags.tank, flags, io);
      const asked = { facts, record, today: io.today, from, group: flags.group };
      const output = arrivalsOutputOf(asked, flags.fallow === true ? await fallowOf(facts, io) : null);
      io.out(flags.json === true ? JSON.stringify(output, null, 2) : arrivalsText(output, io));
    });
}

function dayOf(text: string, io: Io): string {
  const context = {
    preferences: NO_PREFERENCES,
    today: io.today,
    label: "--from",
    future: "planned",
  } as const;
  const outcome = readDate(text, context);
  if (isKept(outcome)) return outcome.value;
  throw new CliError(EXIT.badData, [outcome.message.text]);
}

async function recordKept(tank: string, { store: where }: TankSource, io: Io) {
  const { loadTank } = await import("../../server/load-tank.ts");
  const loaded = await withKeptTank(tank, where, (store, row) => loadTank(store, row.id, io.today));
  return loaded?.record ?? { happenings: [] };
}

async function fallowOf(facts: TankFacts, io: Io) {
  const means = { solve: await loadedSolver(), progress: progressOf(io) };
  const answers = answersOf(facts, CHOICE, means, whatIf(FALLOW, facts));
  io.progress(null);
  return answers;
}

function arrivalsText(output: ArrivalsOutput, io: Io): string {
  const { tank, medicines, apart, before_paying, quarantine, fallow } = output;
  const line = (text: string) => wrap(text, io.width, "  ", "    ");
  const block = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : [[io.bold(title), ...lines.map(line)].join("\n")];
  return [
    io.bold(`Arrivals of ${tank.name}, ${dateWords(tank.as_of)}`),
    ...block("Medicine in this tank", medicines.map(medicineWords)),
    ...block("Kept apart by the daybook", apart.map(apartWords)),
    ...before_paying.map(({ name, look, leave }) =>
      [io.bold(`Before you pay: ${name}`), ...[...look, leave].map(line)].join("\n"),
    ),
    ...block(
      `Quarantine of ${QUARANTINED[quarantine.group].name}, from ${dateWords(quarantine.from)}`,
      quarantine.days.map(({ day, on, do: words }) => `${dateWords(on)}, day ${day}: ${words}`),
    ),
    ...block("Day three, and it refuses food", output.refuses_food),
    ...block("Signs of disease in a fish", output.signs_of_disease),
    ...block("Hospital tank", output.hospital_tank),
    ...(fallow === null ? [] : block(`A fallow time of ${fallow.days} days`, fallowLines(fallow))),
    wrap(`Days are common practice, no source; a vet's word overrules them. ${output.statement}`, io.width),
  ].join("\n\n");
}

const medicineWords = ({ typed, ended_on, crew_back_on, left }: ArrivalsOutput["medicines"][number]) =>
  `${typed}: ${ended_on === null ? "not said to have ended" : `ended on ${dateWords(ended_on)}`}; water changes leave ${left.text} of what was dissolved; ${crew_back_on === null ? "nothing is added while it is in the water" : `no crew before ${dateWords(crew_back_on)}`}.`;

const apartWords = ({ what, words, group, from, until }: ArrivalsOutput["apart"][number]) =>
  what === "fallow"
    ? `The tank lies fallow: no fish from ${dateWords(from)} until ${dateWords(until)}.`
    : `In quarantine since ${dateWords(from)}, until ${dateWords(until)} at the earliest: ${words === "" ? QUARANTINED[group].name : words}.`;

const fallowLines = ({ crew, fed_by_hand }: NonNullable<ArrivalsOutput["fallow"]>) =>
  crew.length === 0
    ? ["No crew lives here that could go hungry."]
    : [
        ...crew.map(
          ({ name, heads, half_starve }) =>
            `${counted(heads, name)}: half or more starve, ${half_starve.text}`,
        ),
        ...fed_by_hand.map(
          ({ name, dry_feed_a_day }) => `To feed by hand, a day: ${name}, ${dry_feed_a_day.text} of dry food`,
        ),
      ];
