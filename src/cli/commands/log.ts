/** `grazewell log`: one entry into a kept tank's daybook, read as the page would read it; all that is doubtful at once. */
import { Command } from "commander";
import type { RankedAdvice } from "../../answers/bench/next.ts";
import { DEFAULT_ENSEMBLE } from "../../answers/plan/plan-tank.ts";
import { entryContext } from "../../answers/record/entry-context.ts";
import { wrap } from "../../answers/words.ts";
import { ENTRY_FIELDS, KIND_LABELS } from "../../contract/daybook/fields.ts";
import { ENTRY_KINDS } from "../../contract/daybook/kinds.ts";
import { type EntryDoubt, type EntryText, entryKind, readEntry } from "../../contract/daybook/read-entry.ts";
import type { LoadedTank } from "../../server/route.ts";
import type { Json } from "../../store/store.ts";
import { daybookOutputOf } from "../daybook/output.ts";
import { entryLines } from "../daybook/print.ts";
import { CliError, EXIT, type Io, localDate } from "../io.ts";
import { rankedFor } from "../plan/ranked.ts";
import { STORE_OPTION } from "../store/open.ts";
import { nameOf, withKeptTank } from "../tank-source.ts";

const EXAMPLES = `Examples:
  grazewell log growth --tank Kitchen growth=film_glass score=2
  grazewell log head_count --tank Kitchen animal="trochus snail" seen=4 torch=yes hours_from_lights_out=2
  grazewell log addition --tank Kitchen animal=nassarius-snail count=3 sold_as="mud snail"
  grazewell log move --tank Kitchen animal="trochus snail" count=3 to=Hallway
  grazewell log chore --tank Kitchen chore=water_change amount="20 L" observed=yesterday
  grazewell log reading --tank Kitchen quantity=no3_mg_per_l text=5 unit="mg/L as NO3" kit_step=2
`;

interface Flags {
  readonly tank: string;
  readonly store?: string;
  readonly json?: true;
}

export function command(io: Io): Command {
  return new Command("log")
    .summary("an entry into a tank's daybook")
    .description(
      "Keeps one entry in the daybook of a tank of the store. Each field is given as name=text, the text as you would type it on the page; the day is observed=..., today where left out. Where a text can mean two things, nothing is kept and all questions are printed with what to type instead.",
    )
    .addHelpText("beforeAll", EXAMPLES)
    .argument("<kind>", "what kind of entry; all kinds stand below")
    .argument("[fields...]", "its fields, each as name=text")
    .requiredOption("--tank <id>", "a tank of the store, by its id or name")
    .option(...STORE_OPTION)
    .option("--json", "data for programs: docs/schemas/daybook.schema.json")
    .addHelpText(
      "after",
      () => `\nKinds and their fields; those in brackets may be left out:\n${kindLines(io).join("\n")}`,
    )
    .addHelpText(
      "after",
      "\nEnds with 0 when it was kept, 65 when something is to mend, 66 when there is no such tank.",
    )
    .action((kind: string, fields: readonly string[], flags: Flags) => log(kind, fields, flags, io));
}

async function log(named: string, fields: readonly string[], { tank, store: where, json }: Flags, io: Io) {
  const kind = entryKind(named);
  if (typeof kind !== "string") throw new CliError(EXIT.usage, [kind.message.text]);
  const typed = textsOf(fields);
  const { loadTank } = await import("../../server/load-tank.ts");
  const { newId } = await import("../../server/new-id.ts");
  const { isChecked, keepEntry } = await import("../../server/moves/keep.ts");
  const { adviceAsked } = await import("../../server/moves/advice-asked.ts");
  const { otherTanks } = await import("../../server/moves/other-tanks.ts");
  await withKeptTank(tank, where, async (store, row) => {
    const loaded = await loadTank(store, row.id, io.today);
    if (loaded === null) throw new CliError(EXIT.inputMissing, [`--tank "${tank}": it was taken away.`]);
    const clock = new Date();
    // A day that was set by hand has no hour.
    const now = localDate(clock) === io.today ? clock.toISOString() : null;
    const load = (id: string) => loadTank(store, id, io.today);
    const findTank = await otherTanks(kind, typed, loaded, { store, loadTank: load, now });
    const rank = (id: string) => rankedWith(id, loaded, io);
    const asked = await adviceAsked(kind, typed, loaded, rank);
    const read = readEntry(kind, typed, entryContext(loaded, { today: io.today, now }, { findTank, asked }));
    if (!read.ok) {
      const count = read.doubts.length;
      const heading = `${count} ${count === 1 ? "thing" : "things"} to mend. Nothing was kept.`;
      throw new CliError(EXIT.badData, [...read.doubts.flatMap(doubtLines), heading]);
    }
    const entry = { id: newId(), kind, on: read.on, body: read.body as Json };
    const stamp = { at: clock.toISOString(), by: "command line" };
    const hand = { stamp, newId, today: io.today, beyondRecord: isChecked(typed["count"] ?? "") };
    const added = await store.together((desk) => keepEntry(desk, row.id, entry, hand));
    if (added.kind === "refused")
      throw new CliError(EXIT.badData, [`${added.because}.`, "Nothing was kept."]);
    const kept = added.row;
    if (json === true) {
      io.out(JSON.stringify(daybookOutputOf(row, [kept], read.said), null, 2));
      return;
    }
    for (const { text } of read.said) io.talk(wrap(text, io.width, "", "  "));
    io.out(`${nameOf(row)}, ${kept.on}: ${(await entryLines(kept)).join(" ")}`);
  });
}

/** Waits for the plan only where the advice is not among what is known without it. */
async function rankedWith(id: string, loaded: LoadedTank, io: Io): Promise<RankedAdvice> {
  const { isAmong } = await import("../../server/bench-scene.ts");
  const ranked = await rankedFor(loaded, null, io);
  return isAmong(ranked, id) ? ranked : await rankedFor(loaded, DEFAULT_ENSEMBLE, io);
}

/** `name=text` each; a name twice is a slip. */
function textsOf(fields: readonly string[]): EntryText {
  const texts: Record<string, string> = Object.create(null);
  for (const field of fields) {
    const at = field.indexOf("=");
    if (at < 1) {
      throw new CliError(EXIT.usage, [`"${field}": each field is given as name=text, such as score=2`]);
    }
    const name = field.slice(0, at);
    if (name in texts) throw new CliError(EXIT.usage, [`"${name}" is given twice; keep one`]);
    texts[name] = field.slice(at + 1);
  }
  return { ...texts };
}

function doubtLines({ field, message, choices }: EntryDoubt): string[] {
  const offered = choices.flatMap(({ label, text }) =>
    text === null ? [`  or ${label}`] : [`  ${field}=${quoted(text)}${label === text ? "" : `   ${label}`}`],
  );
  return [message.text, ...offered];
}

/** As a shell takes it. */
const quoted = (text: string): string =>
  /^[\w.%/+-]+$/.test(text) ? text : `'${text.replaceAll("'", "'\\''")}'`;

function kindLines(io: Io): string[] {
  return ENTRY_KINDS.flatMap((kind) => {
    const names = ENTRY_FIELDS[kind]
      .map(({ name, input, needed }) => (input === "traits" ? "[trait.ID]" : needed ? name : `[${name}]`))
      .join(" ");
    return [`  ${kind}: ${KIND_LABELS[kind].toLowerCase()}`, wrap(names, io.width, "    ")];
  });
}
