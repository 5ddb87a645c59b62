/** `grazewell ask`: eight questions, and a tank file made of the answers. */
import { existsSync } from "node:fs";
import { Command } from "commander";
import type { Entries } from "../../answers/questions/answer.ts";
import { QUESTIONS, UNSURE_WATER } from "../../answers/questions/questions.ts";
import { NO_PREFERENCES, type Preferences } from "../../contract/quantity/preferences.ts";
import { interview, isNotSure, readAnswer } from "../ask/interview.ts";
import { pipedLines, withTerminal } from "../ask/lines.ts";
import { tankFileText, writeTankFile } from "../ask/write.ts";
import { CliError, EXIT, type Io } from "../io.ts";

const EXAMPLES = `Examples:
  grazewell ask -o tank.yaml
  grazewell ask --water "30 US gal" --start "1 May 2026, dry" --floor "sand 3 cm fine"
  printf '113\\n1 May 2026, dry\\na patches\\n' | grazewell ask -o tank.yaml
`;

interface Flags extends Partial<Record<string, string | boolean>> {
  readonly output?: string;
  readonly force?: true;
  readonly json?: true;
  readonly input: boolean;
  readonly locale?: string;
  readonly gallon?: string;
}

export function command(io: Io): Command {
  const ask = new Command("ask")
    .summary("eight questions that make a tank file")
    .description(
      "Asks eight questions, each with why it is asked; 'not sure' is an answer to all of them. Says how each was read and writes a tank file. Without a terminal: answers by flag, or one line an answer on standard input, an empty line for 'not sure'.",
    )
    .addHelpText("before", EXAMPLES)
    .addHelpText(
      "after",
      "\nEnds with 0 when a file was made, 65 when an answer is to mend, 2 when nobody can be asked, 73 when the file can't be written.",
    )
    .option("-o, --output <file>", "write the tank file here; otherwise to standard output")
    .option("--force", "write over a file that is there already")
    .option("--no-input", "ask nothing: take the flags alone")
    .option("--json", "write the tank file as JSON: docs/schemas/tank-file.schema.json")
    .option("--locale <tag>", "how you write numbers, such as de-DE")
    .option("--gallon <which>", "us or imperial");
  for (const { flag, title } of QUESTIONS) ask.option(`--${flag} <answer>`, title);
  return ask.action((flags: Flags) => run(io, flags));
}

async function run(io: Io, flags: Flags): Promise<void> {
  const { output, force = false } = flags;
  // Before the first question, not after the last.
  if (output !== undefined && !force && existsSync(output)) writeTankFile(output, "", false);
  const preferences = {
    ...NO_PREFERENCES,
    locale: flags.locale ?? NO_PREFERENCES.locale,
    gallon: gallonOf(flags.gallon),
  };
  const context = { preferences, today: io.today };
  const given = Object.fromEntries(
    QUESTIONS.flatMap(({ flag }) => (typeof flags[flag] === "string" ? [[flag, flags[flag]] as const] : [])),
  );
  const answers =
    io.canAsk && flags.input
      ? await withTerminal((ask) => interview(ask, io, given, context))
      : unasked(io, flags.input ? { ...fromLines(given), ...given } : given, context);
  const text = tankFileText(answers, context, flags.json === true ? "json" : "yaml");
  if (output === undefined) return io.out(text.trimEnd());
  writeTankFile(output, text, force);
  io.talk(`Wrote ${output}. See what was made of it: grazewell check ${output}`);
}

function gallonOf(typed: string | undefined): Preferences["gallon"] {
  if (typed === undefined || typed === "us" || typed === "imperial") return typed ?? null;
  throw new CliError(EXIT.usage, [`Gallon "${typed}": must be us or imperial`]);
}

/** Lines on standard input answer the questions in order, those with a flag left out. */
function fromLines(given: Readonly<Record<string, string>>): Record<string, string> {
  const lines = pipedLines();
  const open = QUESTIONS.filter(({ flag }) => given[flag] === undefined);
  return Object.fromEntries(
    open.flatMap(({ flag }, i) => (lines[i] === undefined ? [] : [[flag, lines[i]] as const])),
  );
}

function unasked(
  io: Io,
  given: Readonly<Record<string, string>>,
  context: Parameters<typeof readAnswer>[3],
): Entries {
  if (Object.keys(given).length === 0) {
    const flags = QUESTIONS.map(({ flag }) => `--${flag}`).join(" ");
    throw new CliError(EXIT.usage, [
      `Nobody can be asked here. Give the answers by flag: ${flags}`,
      "or one line an answer on standard input",
    ]);
  }
  let all: Entries = {};
  const wrong: string[] = [];
  for (const question of QUESTIONS) {
    const text = given[question.flag] ?? "";
    if (isNotSure(text)) {
      if (question.flag === "water") all = { ...all, ...UNSURE_WATER };
      continue;
    }
    const read = readAnswer(question, text, all, context);
    if ("entries" in read) {
      for (const line of read.echo) io.talk(line);
      all = { ...all, ...read.entries };
    } else {
      for (const { message, choices } of read.doubts) {
        const fixes = choices.flatMap((choice) => (choice.text === null ? [] : [`    say: ${choice.text}`]));
        wrong.push(`--${question.flag}: ${message}`, ...fixes);
      }
    }
  }
  if (wrong.length > 0) throw new CliError(EXIT.badData, wrong);
  return all;
}
