/** `grazewell bring-in`: a file of readings or of a daybook into a tank's daybook; looked at first, undone as one act. */
import { readFileSync, statSync } from "node:fs";
import { basename } from "node:path";
import { Command } from "commander";
import type { FileQuestion } from "../../contract/bring-in/asked.ts";
import { MOST_FILE_BYTES, tooManyBytes } from "../../contract/bring-in/limits.ts";
import { bringIn, type Done, REST } from "../../server/bring-in/carry-out.ts";
import { type Examined, examine } from "../../server/bring-in/examine.ts";
import { UNDO_ANSWERS, undoAct } from "../../server/bring-in/undo.ts";
import { newId } from "../../server/new-id.ts";
import type { LoadedTank } from "../../server/route.ts";
import type { Store } from "../../store/store.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { readStandardInput } from "../stdin.ts";
import { STORE_OPTION } from "../store/open.ts";
import { withTank } from "../store/tank-of-store.ts";

const EXAMPLES = `Examples:
  grazewell bring-in readings.csv --tank Kitchen
  grazewell bring-in readings.csv --tank Kitchen --answer dates=dmy --yes
  grazewell bring-in readings.csv --tank Kitchen --answer clash=mine --answer rest=leave_out --yes
  grazewell bring-in --tank Kitchen --undo 01890a5d-ac96-774b-bcce-b302099a8057
`;

interface Options {
  readonly tank?: string;
  readonly store?: string;
  readonly answer: readonly string[];
  readonly yes?: true;
  readonly undo?: string;
}

const LISTED = 20;

export function command(io: Io): Command {
  return new Command("bring-in")
    .summary("a file of readings or of a daybook into a tank of the store")
    .description(
      "Shows what the file would add, and adds it with --yes, as one act. Nothing here is ever deleted by it. What the file leaves open is listed with the answers there are (--answer NAME=VALUE). CSV or JSON, up to 10 MiB and 100,000 rows; - reads standard input.",
    )
    .argument("[file]", "CSV, or a daybook that was taken out")
    .option("--tank <id>", "a tank of the store, by its id or name")
    .option(...STORE_OPTION)
    .option("--answer <name=value>", "an answer to what was asked; may be given again and again", collect, [])
    .option("--yes", "add it now")
    .option("--undo <act>", "undo what was brought in as that act; --answer changed=keep or changed=undo")
    .addHelpText("beforeAll", EXAMPLES)
    .action((file: string | undefined, options: Options) =>
      withTank(options.store, options.tank, io, async (tank, store) => {
        const answers = answersIn(options.answer);
        if (options.undo !== undefined) return await undo(options.undo, answers, tank, store, io);
        if (file === undefined) {
          throw new CliError(EXIT.usage, ["Name the file, or an act with --undo."]);
        }
        await bring(file, answers, options.yes === true, tank, store, io);
      }),
    );
}

const collect = (value: string, before: readonly string[]): readonly string[] => [...before, value];

function answersIn(given: readonly string[]): Record<string, string> {
  return Object.fromEntries(
    given.map((text) => {
      const [, name, value] = /^([\w.]+)=(.*)$/s.exec(text) ?? [];
      if (name !== undefined && value !== undefined) return [name, value];
      throw new CliError(EXIT.usage, [`--answer "${text}": must be NAME=VALUE, such as dates=dmy.`]);
    }),
  );
}

async function bring(
  file: string,
  answers: Readonly<Record<string, string>>,
  add: boolean,
  tank: LoadedTank,
  store: Store,
  io: Io,
): Promise<void> {
  const now = new Date().toISOString();
  const sent = { name: file === "-" ? "standard input" : basename(file), bytes: bytesOf(file) };
  const request = { tankId: tank.row.id, tank, today: io.today, now, file: sent, answers };
  if (!add) {
    const examined = await examine(store, request);
    const open = tell(examined, sent.name, io);
    io.talk("Nothing was added. Add it with --yes.");
    if (open.length > 0) throw new CliError(EXIT.badData, open);
    return;
  }
  const stamp = { at: now, by: tank.row.keeper.name };
  const done = await bringIn(store, request, { stamp, newId, key: null });
  if (done.kind === "open") {
    const open = tell(done.examined, sent.name, io);
    throw new CliError(EXIT.badData, ["Nothing was added.", ...open]);
  }
  io.out(doneWords(sent.name, done.about));
  if (done.kind === "done")
    io.talk(`Undo all of it: grazewell bring-in --tank ${tank.row.id} --undo ${done.act}`);
}

function doneWords(file: string, about: Done): string {
  const parts = [
    `${about.added} added`,
    about.changed === 0 ? "" : `${about.changed} changed`,
    about.brought_back === 0 ? "" : `${about.brought_back} brought back`,
    `${about.already_here} already here`,
    about.left_out === 0 ? "" : `${about.left_out} left out`,
  ];
  return `${file}: ${parts.filter((part) => part !== "").join(", ")}.`;
}

/** Says what was found; returns what is open, with the answers there are. @throws CliError where it can't be read */
function tell(examined: Examined, file: string, io: Io): string[] {
  if (examined.kind === "refused") throw new CliError(EXIT.badData, [`${file}: ${examined.message.text}`]);
  if (examined.kind === "asked") {
    io.talk(`${file}: read as ${examined.said.join("; ")}.`);
    return examined.questions.flatMap(askedLines);
  }
  const { file: read, comparison, plan } = examined;
  io.talk(`${file}: read as ${read.said.join("; ")}.`);
  const same = comparison.same.length + comparison.twice.length;
  const entries = comparison.fresh.length + same + plan.clashes.length + plan.deleted.length + read.faulty;
  // A row of a sheet of readings holds several.
  const rows = entries === read.rows ? `${read.rows} rows` : `${read.rows} rows, ${entries} entries`;
  io.out(
    `${rows}: ${comparison.fresh.length} new, ${same} already here, ${plan.clashes.length} at odds, ${plan.deleted.length} deleted before, ${read.faulty} to mend.`,
  );
  const open: string[] = [];
  for (const { line, label, name, message, choices } of read.faults.slice(0, LISTED)) {
    open.push(`${file}:${line}: ${label}: ${message.text}`);
    if (name === null) continue;
    const texts = choices.flatMap(({ text }) => (text === null ? [] : [text]));
    for (const text of texts.length === 0 ? ["..."] : texts) open.push(`    --answer '${name}=${text}'`);
  }
  if (read.faults.length > LISTED) open.push(`And ${read.faults.length - LISTED} more.`);
  for (const { entry, held } of plan.clashes.filter(({ answer }) => answer === null).slice(0, LISTED)) {
    const [mine, theirs] = [held.body, entry.body as Readonly<Record<string, unknown>>].map(matter);
    open.push(`${file}:${entry.line}: ${entry.on}: at odds: mine ${mine}, the file's ${theirs}`);
  }
  if (plan.undecided > 0) open.push("    --answer clash=mine, --answer clash=file or --answer clash=both");
  if (open.length > 0) open.push(`    --answer ${REST.name}=${REST.value} adds the others without these`);
  if (plan.deleted.length > 0) {
    io.talk(
      `${plan.deleted.length} were deleted here before and stay out; --answer deleted=bring_back brings them back.`,
    );
  }
  return open;
}

const matter = (body: Readonly<Record<string, unknown>>): string =>
  String(body["text"] ?? body["seen_text"] ?? body["score"] ?? JSON.stringify(body));

/** Many answers are named by the first few. */
const CHOICES_LISTED = 6;

const askedLines = ({ name, text, choices }: FileQuestion): string[] => [
  text,
  ...choices
    .slice(0, CHOICES_LISTED)
    .map(({ label, value }) => `    --answer '${name}=${value}'  (${label})`),
];

async function undo(
  act: string,
  answers: Readonly<Record<string, string>>,
  tank: LoadedTank,
  store: Store,
  io: Io,
): Promise<void> {
  const answer = UNDO_ANSWERS.find((one) => one === answers["changed"]) ?? null;
  const stamp = { at: new Date().toISOString(), by: tank.row.keeper.name };
  const undone = await store.together((desk) =>
    undoAct(desk, tank.row.id, act, answer, { stamp, today: io.today }),
  );
  switch (undone.kind) {
    case "not_found":
      throw new CliError(EXIT.inputMissing, [
        `--undo "${act}": nothing was brought into this tank as that act.`,
      ]);
    case "already":
      io.talk(`It was undone already, on ${undone.by.at.slice(0, 10)}.`);
      return;
    case "ask": {
      const count = undone.changed.length;
      throw new CliError(EXIT.badData, [
        `Nothing was undone: ${count} of its entries ${count === 1 ? "was" : "were"} changed since. Keep ${count === 1 ? "it" : "those"}?`,
        "    --answer changed=keep  (they stay as they are)",
        "    --answer changed=undo  (they go with the rest)",
      ]);
    }
    case "undone":
      io.out(`${undone.taken} taken away, ${undone.restored} as before, ${undone.left} left as they are.`);
  }
}

function bytesOf(file: string): Buffer {
  try {
    if (file === "-") return readStandardInput(MOST_FILE_BYTES);
    const { size } = statSync(file);
    if (size > MOST_FILE_BYTES)
      throw new CliError(EXIT.badData, [`${basename(file)}: ${tooManyBytes(size)}`]);
    return readFileSync(file);
  } catch (error) {
    if (error instanceof CliError) throw error;
    const { code = "unknown" } = error as NodeJS.ErrnoException;
    throw new CliError(EXIT.inputMissing, [`"${file}" can't be read (${code}).`]);
  }
}
