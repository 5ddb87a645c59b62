/**
 * `grazewell sum`: the water sums there are; `grazewell sum NAME --field value ...`: one worked out. Options and help are
 * made from the sum's own fields, so that command, page and interface can't differ.
 */
import { Command, Option } from "commander";
import { type AskedSum, askSum } from "../../answers/sums/ask.ts";
import { isNeeded, type SumText, usualOf } from "../../answers/sums/given.ts";
import { sumOutputOf, sumsOutputOf } from "../../answers/sums/output.ts";
import type { Sum, SumField } from "../../answers/sums/sum.ts";
import { SUMS } from "../../answers/sums/table.ts";
import { workingOutputOf } from "../../answers/working.ts";
import { nearest } from "../../contract/tank-file/suggest.ts";
import { sumContextOf } from "../../server/sum-context.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { STORE_OPTION } from "../store/open.ts";
import { answerText, doubtLines, listText } from "../sum/text.ts";
import { withKeptTank } from "../tank-source.ts";
import { workingText } from "../working-text.ts";

const EXAMPLES = `Examples:
  grazewell sum
  grazewell sum oxygen --help
  grazewell sum oxygen --salinity "35 psu" --temperature 77F
  grazewell sum oxygen --tank "Hallway reef (invented)"
  grazewell sum oxygen --salinity "35 psu" --temperature 25C --why saturation
`;

export function command(io: Io): Command {
  const all = new Command("sum")
    .summary("water sums: each question with its fields, answered with range and working")
    .description(
      'Lists the water sums, or works one out: grazewell sum NAME --field value. Values take a unit as typed: 77F, "1.0264 sg 25/25". With --tank, fields that are left out are filled from the tank\'s readings and facts. Nothing is saved.',
    )
    .addHelpText("beforeAll", EXAMPLES)
    .argument("[name]", "the sum, by the name that the list gives")
    .option("--json", "data for programs: docs/schemas/sums.schema.json, or sum.schema.json")
    .action((name: string | undefined, { json }: { readonly json?: true }) => {
      if (name !== undefined) throw noSum(name);
      io.out(json === true ? JSON.stringify(sumsOutputOf(SUMS), null, 2) : listText(SUMS, io));
    });
  for (const sum of SUMS) all.addCommand(ofSum(sum, io), { hidden: true });
  return all;
}

function noSum(name: string): CliError {
  const near = nearest(
    name,
    SUMS.map(({ id }) => id),
  );
  return new CliError(EXIT.usage, [
    `"${name}": there is no sum of that name.${near === null ? "" : ` Did you mean ${near}?`}`,
    "grazewell sum lists them.",
  ]);
}

interface Flags {
  readonly tank?: string;
  readonly store?: string;
  readonly why?: string;
  readonly json?: true;
}

function ofSum(sum: Sum, io: Io): Command {
  const options = sum.fields.map((field) => ({ field, option: optionOf(field) }));
  const one = new Command(sum.id)
    .summary(sum.question)
    .description(sum.question)
    .addHelpText("beforeAll", `Example (invented):\n  ${exampleOf(sum)}\n`)
    .exitOverride();
  for (const { option } of options) one.addOption(option);
  return one
    .option("--tank <id>", "a tank of the store, by its id or name: what it knows fills what is left out")
    .option(...STORE_OPTION)
    .option("--why <figure>", "how that number came about, by its name or id in the answer")
    .option("--json", "data for programs: docs/schemas/sum.schema.json")
    .action(async (flags: Flags & Readonly<Record<string, string>>) => {
      const typed: Record<string, string> = {};
      for (const { field, option } of options) {
        const text = flags[option.attributeName()];
        if (text !== undefined) typed[field.name] = text;
      }
      const asked = await askedOf(sum, typed, flags, io);
      // A parent command that has an option of the same name takes it.
      const json = flags.json === true || one.parent?.opts()["json"] === true;
      if (flags.why !== undefined) return why(sum, asked, flags.why, json, io);
      io.out(json ? JSON.stringify(sumOutputOf(sum, asked, io.today), null, 2) : answerText(sum, asked, io));
    });
}

/** @throws CliError with every doubt at once */
async function askedOf(
  sum: Sum,
  typed: SumText,
  { tank, store }: Flags,
  io: Io,
): Promise<Extract<AskedSum, { ok: true }>> {
  const context = await contextOf(tank, store, io);
  const asked = askSum(sum, typed, context);
  if (asked.ok) return asked;
  throw new CliError(EXIT.badData, [
    ...asked.doubts.flatMap((doubt) => doubtLines(doubt)),
    `grazewell sum ${sum.id} --help tells what each field is.`,
  ]);
}

async function contextOf(tank: string | undefined, store: string | undefined, io: Io) {
  if (tank === undefined) return sumContextOf(null, io.today);
  const { loadTank } = await import("../../server/load-tank.ts");
  return await withKeptTank(tank, store, async (kept, row) =>
    sumContextOf(await loadTank(kept, row.id, io.today), io.today),
  );
}

function why(
  sum: Sum,
  { answer }: Extract<AskedSum, { ok: true }>,
  wanted: string,
  json: boolean,
  io: Io,
): void {
  const figure = answer.figures.find(({ id }) => id === wanted || id === `sum.${sum.id}.${wanted}`);
  if (figure === undefined) {
    const names = answer.figures.map(({ id }) => id.slice(`sum.${sum.id}.`.length));
    throw new CliError(EXIT.badData, [
      `--why "${wanted}": this answer has no number of that name.`,
      names.length === 0 ? "It has none at all." : `It has ${names.join(", ")}.`,
    ]);
  }
  io.out(
    json
      ? JSON.stringify(workingOutputOf(figure, []), null, 2)
      : workingText(figure, (id) => `--why ${id.slice(`sum.${sum.id}.`.length)}`, io),
  );
}

export const flagOf = (field: Pick<SumField, "name">): string => `--${field.name.replaceAll("_", "-")}`;

function optionOf(field: SumField): Option {
  const option = new Option(`${flagOf(field)} <value>`, helpOf(field));
  return field.input === "choice" ? option.choices(field.choices.map(({ text }) => text)) : option;
}

function helpOf(field: SumField): string {
  const usual = usualOf(field);
  const empty =
    usual !== null
      ? `left out: ${usual.text}${field.input === "choice" ? "" : `, ${usual.how}`}`
      : isNeeded(field)
        ? "needed, or filled from --tank"
        : "may be left out";
  const example = field.input === "choice" ? "" : `such as ${field.example.replaceAll("\n", " / ")}`;
  const lines = field.input === "series" ? "one a line, or with ; between" : "";
  return [field.label, field.hint.replace(/\.$/, ""), lines, example, empty]
    .filter((text) => text !== "")
    .join("; ");
}

function exampleOf(sum: Sum): string {
  const flags = Object.entries(sum.examples[0] ?? {}).map(
    ([name, text]) =>
      `${flagOf({ name })} ${/[^\w.%-]/.test(text) ? `"${text.replaceAll("\n", "; ")}"` : text}`,
  );
  return ["grazewell sum", sum.id, ...flags].join(" ");
}
