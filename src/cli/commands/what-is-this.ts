/** `grazewell what-is-this growth|animal|record`: a growth or an animal by its traits; what a kept tank's record says. */
import { Command } from "commander";
import { growthsOf } from "../../answers/growths/growths.ts";
import { KEYS, type KeyFound, type KeyName, keyFound } from "../../answers/growths/key.ts";
import { diagnosisOf } from "../../answers/growths/scene.ts";
import { CAUTION, STATEMENT } from "../../answers/statement.ts";
import { ENGINE_VERSION } from "../../answers/version.ts";
import { wrap } from "../../answers/words.ts";
import type { KeyOutput } from "../../contract/output/growths.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { STORE_OPTION } from "../store/open.ts";
import { withKeptTank } from "../tank-source.ts";
import { keyLines, type Line, recordLines, traitLines } from "../what-is-this/text.ts";

const EXAMPLES = `Examples:
  grazewell what-is-this growth --traits
  grazewell what-is-this growth --yes colour_brown,texture_strings --no sheets
  grazewell what-is-this animal --yes shape_dots,size_speck,moves_hops
  grazewell what-is-this record --tank "Hallway reef (invented)"
`;

interface Flags {
  readonly yes?: string;
  readonly no?: string;
  readonly tank?: string;
  readonly store?: string;
  readonly traits?: true;
  readonly json?: true;
}

export function command(io: Io): Command {
  return new Command("what-is-this")
    .summary("a growth, an animal or dots by their traits; causes of what the daybook holds")
    .description(
      "A growth or a stranger told by its traits, with n of 20, what to do and what not to do; or what the growths, signs and losses of a kept tank may come from. How it is reckoned: docs/model/diagnosis.md.",
    )
    .addHelpText("beforeAll", EXAMPLES)
    .argument("<what>", "growth, animal (dots and eggs too), or record")
    .option("--yes <traits>", "traits seen, by id, with commas between")
    .option("--no <traits>", "traits looked for and not seen")
    .option("--traits", "list the traits that the key asks for")
    .option("--tank <id>", "a tank of the store, by its id or name: its own facts answer too")
    .option(...STORE_OPTION)
    .option("--json", "data for programs: docs/schemas/key.schema.json, growths.schema.json")
    .action(async (what: string, flags: Flags) => {
      if (what === "record") return await record(flags, io);
      if (what === "growth" || what === "animal") return await key(what, flags, io);
      throw new CliError(EXIT.usage, [`"${what}": ask for growth, animal or record.`]);
    });
}

async function record({ tank, store: where, json }: Flags, io: Io): Promise<void> {
  if (tank === undefined)
    throw new CliError(EXIT.usage, ["record: name a tank of the store with --tank; a file has no daybook."]);
  const loaded = await keptTank(tank, where, io);
  if (loaded === null) return;
  const { facts, record: kept } = loaded;
  const { output } = growthsOf({ facts, record: kept, today: io.today });
  if (json === true) io.out(JSON.stringify(output, null, 2));
  else say(`What is this? ${facts.name}`, recordLines(output), io);
}

async function keptTank(tank: string, where: string | undefined, io: Io) {
  const { loadTank } = await import("../../server/load-tank.ts");
  return await withKeptTank(tank, where, (store, row) => loadTank(store, row.id, io.today));
}

async function key(name: KeyName, flags: Flags, io: Io): Promise<void> {
  const { questions } = KEYS[name];
  if (flags.traits === true) return say(`Traits of the key to ${name}s`, traitLines(questions), io);
  const known = new Set(questions.flatMap(({ options }) => options.map(({ id }) => id)));
  const seen = traitsOf(flags.yes, known, "--yes", name);
  const notSeen = traitsOf(flags.no, known, "--no", name);
  const both = seen.find((id) => notSeen.includes(id));
  if (both !== undefined)
    throw new CliError(EXIT.usage, [`"${both}": stands behind --yes and behind --no. Keep one of them.`]);
  const loaded = flags.tank === undefined ? null : await keptTank(flags.tank, flags.store, io);
  const scene =
    loaded === null ? null : diagnosisOf({ facts: loaded.facts, record: loaded.record, today: io.today });
  const said = Object.fromEntries([...seen.map((id) => [id, true]), ...notSeen.map((id) => [id, false])]);
  const found = keyFound(name, said, new Set(), scene);
  if (flags.json === true) io.out(JSON.stringify(outputOf(name, seen, notSeen, found), null, 2));
  else say(name === "growth" ? "What is this growth?" : "What is this animal?", keyLines(found), io);
}

/** @throws CliError naming the trait that the key does not have */
function traitsOf(
  text: string | undefined,
  known: ReadonlySet<string>,
  flag: string,
  name: KeyName,
): string[] {
  const traits = (text ?? "").split(/[\s,]+/).filter((id) => id !== "");
  const unknown = traits.find((id) => !known.has(id));
  if (unknown === undefined) return traits;
  const near = [...known].filter((id) => id.includes(unknown) || unknown.includes(id)).slice(0, 4);
  throw new CliError(EXIT.usage, [
    `${flag} "${unknown}": the key to ${name}s has no trait of that id.`,
    ...(near.length === 0 ? [] : [`Did you mean ${near.join(", ")}?`]),
    `grazewell what-is-this ${name} --traits lists them all.`,
  ]);
}

function outputOf(
  name: KeyName,
  seen: readonly string[],
  notSeen: readonly string[],
  { found, named, next, fromRecord }: KeyFound,
): KeyOutput {
  return {
    ...{
      schema: "grazewell.key/1",
      engine: ENGINE_VERSION,
      key: name,
      seen: [...seen],
      not_seen: [...notSeen],
    },
    ...{ from_record: fromRecord, named: named?.id ?? null, found: [...found] },
    ...{ next_question: next?.id ?? null, statement: STATEMENT },
  };
}

function say(title: string, lines: readonly Line[], io: Io): void {
  const text = lines.map(({ text: words, indent }) =>
    wrap(words, io.width, " ".repeat(indent), " ".repeat(indent + 2)),
  );
  io.out(
    [
      io.bold(title),
      ...text,
      ...[CAUTION.wounds, CAUTION.wild, STATEMENT].map((words) => wrap(words, io.width)),
    ].join("\n"),
  );
}
