/** Entries logged and listed at the command line, against a store of their own. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { keptIo } from "../../../checks/kit/io.ts";
import { makeKitchen } from "../../../checks/kit/kitchen.ts";
import { ENTRY_KINDS } from "../../contract/daybook/kinds.ts";
import { daybookOutput } from "../../contract/output/daybook.ts";
import { openStore } from "../../store/open.ts";
import { CliError, EXIT } from "../io.ts";
import { tankFrom } from "../tank-source.ts";
import { command as daybook } from "./daybook.ts";
import { command as log } from "./log.ts";

const folder = mkdtempSync(join(tmpdir(), "daybook-"));
const store = join(folder, "store.db");
const of = ["--tank", "Kitchen (invented)", "--store", store];

beforeAll(() => makeKitchen(store));
afterAll(() => rmSync(folder, { recursive: true }));

async function run(command: typeof log, ...words: string[]) {
  const { io, printed, said } = keptIo();
  await command(io)
    .exitOverride()
    .configureOutput({ writeErr: () => {} })
    .parseAsync([...words, ...of], { from: "user" });
  return { out: printed.join("\n"), talk: said.join("\n") };
}
async function refused(...words: string[]): Promise<CliError> {
  const ended = await run(log, ...words).then(
    () => null,
    (error: unknown) => error,
  );
  if (ended instanceof CliError) return ended;
  throw ended ?? new Error("was not refused");
}

describe("grazewell log", () => {
  test("keeps an entry, says how it was read, and other commands read the tank with it", async () => {
    const { out, talk } = await run(log, "addition", "animal=nassarius-snail", "count=3?", "observed=14 Jun");
    expect(out).toMatch(/^Kitchen \(invented\), 2026-06-14: 3 nassarius snails/);
    expect(talk).toContain("read as about 3");
    expect(talk).toContain("read as 14 June 2026");
    const { io } = keptIo();
    const facts = await tankFrom(undefined, { tank: "kitchen", store }, io, { quiet: true });
    expect(facts.present).toContainEqual({ id: "nassarius-snail", count: 3, on: "2026-06-14" });
  });

  test("all that is doubtful at once, each with what to type instead, and nothing kept", async () => {
    const before = (await run(daybook, "--json")).out;
    const { exitCode, lines } = await refused("head_count", "animal=turbo snail", "seen=2.5", "mood=fine");
    expect(exitCode).toBe(EXIT.badData);
    expect(lines.join("\n")).toMatch(/Field "mood".*\n.*could be .*Mexican turbo/s);
    expect(lines).toContain("  seen=2");
    expect(lines.at(-1)).toBe("3 things to mend. Nothing was kept.");
    expect((await run(daybook, "--json")).out).toBe(before);
  });

  test("animals move into another tank's daybook by its name; a tank that is not there offers those there are", async () => {
    const facts = { grazewell_tank: 1, name: "Hallway", water_l: "100 L", animals_present: [] };
    const open = await openStore(store, { use: "existing" });
    const keeperId = (await open.tanks())[0]?.keeper.id ?? "";
    const stamp = { at: "2026-05-01T09:00:00.000Z", by: "test" };
    await open.addTank({ id: "hallway", keeperId, demonstration: false, facts }, stamp);
    await open.close();
    const move = ["move", "animal=nassarius-snail", "count=1"];
    const none = await refused(...move, "to=Attic");
    expect(none.lines.join("\n")).toMatch(
      /"Attic": there is no such tank here\n {2}to=hallway {3}Hallway, kept by/,
    );
    const { out, talk } = await run(log, ...move, "to=hallway");
    expect(out).toMatch(/1 nassarius snail \(small\) moved to Hallway/);
    expect(talk).toMatch(/72 hours in Hallway/);
    const { io, printed } = keptIo();
    await daybook(io).parseAsync(["--tank", "Hallway", "--store", store], { from: "user" });
    expect(printed.join("\n")).toMatch(/1 nassarius snail \(small\) moved here from Kitchen/);
  });

  test("what is offered is taken as it is printed", async () => {
    const { lines } = await refused("head_count", "animal=trochus-snail", "seen=9");
    expect(lines).toContain("  seen='9 (checked)'   9, as typed");
    await run(log, "head_count", "animal=trochus-snail", "seen=9 (checked)");
  });

  test.each([
    ["an unknown kind", ["mood"], "must be one of these: reading, growth"],
    ["no name", ["growth", "score"], '"score": each field is given as name=text'],
    ["a name twice", ["growth", "score=1", "score=2"], '"score" is given twice'],
  ])("%s is a call to mend", async (_, words, said) => {
    const { exitCode, lines } = await refused(...words);
    expect(exitCode).toBe(EXIT.usage);
    expect(lines.join()).toContain(said);
  });

  test("its help tells every kind", () => {
    const { io } = keptIo();
    let help = "";
    log(io)
      .configureOutput({ writeOut: (text) => (help += text) })
      .outputHelp();
    for (const kind of ENTRY_KINDS) expect(help).toContain(`  ${kind}: `);
  });

  test("--json is what was kept", async () => {
    const { out } = await run(log, "growth", "growth=film_glass", "score=30 %", "--json");
    expect(daybookOutput.parse(JSON.parse(out)).entries[0]).toMatchObject({
      kind: "growth",
      body: { score: 2 },
    });
  });
});

describe("grazewell daybook", () => {
  test("lists by day, the latest first, a sentence an entry", async () => {
    await run(log, "chore", "chore=glass_wiped", "film_days=4", "observed=2026-06-02", "note=both sides");
    const { out } = await run(daybook);
    expect(out).toMatch(
      /15 June 2026\n[\s\S]*14 June 2026\n {2}3 nassarius[\s\S]*2 June 2026\n {2}Glass wiped/,
    );
    expect(out).toContain("Note: both sides");
  });

  test("some of it: by kind, by day, so many", async () => {
    expect((await run(daybook, "--kind", "chore")).out).not.toContain("nassarius");
    expect((await run(daybook, "--to", "3 Jun")).out).toContain("1 entry");
    const one = await run(daybook, "--limit", "1", "--json");
    expect(daybookOutput.parse(JSON.parse(one.out)).entries).toHaveLength(1);
    expect((await run(daybook, "--limit", "1")).out).toContain("There are earlier ones");
    expect((await run(daybook, "--from", "2026-06-15", "--kind", "outage")).out).toBe(
      "Kitchen (invented): no entries.",
    );
  });
});
