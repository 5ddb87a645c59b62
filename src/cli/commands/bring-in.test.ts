/** Bringing in and taking out at the command line: words, data and exit codes, over a store of the examples. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { fillWithExamples } from "../../../checks/http/kit/example-store.ts";
import { keptIo } from "../../../checks/kit/io.ts";
import { openStore } from "../../store/open.ts";
import { CliError, EXIT } from "../io.ts";
import { command as bringIn } from "./bring-in.ts";
import { command as takeOut } from "./take-out.ts";

const TANK = "Kitchen (invented)";

async function kitchen() {
  const folder = mkdtempSync(join(tmpdir(), "gw-bring-in-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const place = join(folder, "store.db");
  const store = await openStore(place);
  await fillWithExamples(store);
  // Of that name there is one: the other was taken away.
  await store.close();
  const file = (name: string, text: string) => {
    writeFileSync(join(folder, name), text);
    return join(folder, name);
  };
  const run = async (of: typeof bringIn, words: readonly string[], ends: number = EXIT.done) => {
    const { io, printed, said } = keptIo();
    const all = [...words, "--tank", TANK, "--store", place];
    let code: number = EXIT.done;
    try {
      await of(io).parseAsync(all, { from: "user" });
    } catch (error) {
      if (!(error instanceof CliError)) throw error;
      code = error.exitCode;
      said.push(...error.lines);
    }
    expect([code, ends, said.join("\n")]).toEqual([ends, ends, said.join("\n")]);
    return { out: printed.join("\n"), said: said.join("\n") };
  };
  return { file, run, folder };
}

test("rows of a sheet are counted apart from the entries that they hold", async () => {
  const { file, run } = await kitchen();
  const sheet = file("wide.csv", "date,nitrate [mg/L as NO3],ph\n2026-06-01,10,8.1\n2026-06-02,11,8.2\n");
  const { out } = await run(bringIn, [sheet], EXIT.done);
  expect(out).toContain("2 rows, 4 entries: 4 new,");
});

test("looked at, answered, added, undone", async () => {
  const { file, run } = await kitchen();
  const sheet = file("june.csv", "date;NO3 (mg/l)\n01.06.2026;10,5\n02.06.2026;trace\n10.06.2026;15\n");
  const column = ["--answer", "column.2=reading:no3_mg_per_l:mg/L as NO3"];
  const asked = await run(bringIn, [sheet], EXIT.badData);
  expect(asked.said).toContain("--answer 'column.2=reading:no3_mg_per_l:mg/L as NO3'");
  const open = await run(bringIn, [sheet, ...column], EXIT.badData);
  expect(open.out).toContain("3 rows: 1 new, 0 already here, 1 at odds, 0 deleted before, 1 to mend.");
  expect(open.said).toMatch(/june\.csv:3: .*"trace"[\s\S]*--answer 'cell\.3\.2=[\s\S]*clash=mine/);
  // Nobody is asked: what is open holds it up, --yes or not.
  expect((await run(bringIn, [sheet, ...column, "--yes"], EXIT.badData)).said).toContain(
    "Nothing was added.",
  );
  const answers = [...column, "--answer", "cell.3.2=<2", "--answer", "clash=both"];
  const done = await run(bringIn, [sheet, ...answers, "--yes"]);
  expect(done.out).toBe("june.csv: 3 added, 0 already here.");
  // The column is remembered, and all of it is here.
  const again = await run(bringIn, [sheet, "--answer", "cell.3.2=<2", "--yes"]);
  expect(again.out).toBe("june.csv: 0 added, 3 already here.");
  const act = /--undo (\S+)/.exec(done.said)?.[1] ?? "";
  expect((await run(bringIn, ["--undo", act])).out).toBe("3 taken away, 0 as before, 0 left as they are.");
  expect((await run(bringIn, ["--undo", act])).said).toContain("undone already");
  await run(bringIn, ["--undo", "no-such-act"], EXIT.inputMissing);
});

test("what can't be read ends with its reason", async () => {
  const { file, run, folder } = await kitchen();
  expect((await run(bringIn, [file("empty.csv", "")], EXIT.badData)).said).toBe(
    "empty.csv: The file is empty",
  );
  await run(bringIn, [join(folder, "none.csv")], EXIT.inputMissing);
  await run(bringIn, [], EXIT.usage);
  await run(bringIn, [file("a.csv", "date,ph"), "--answer", "nonsense"], EXIT.usage);
});

test("taken out, and brought in again: all of it is here", async () => {
  const { file, run, folder } = await kitchen();
  for (const format of ["csv", "json"]) {
    const { out } = await run(takeOut, ["--format", format]);
    const again = await run(bringIn, [file(`daybook.${format}`, out), "--yes"]);
    expect(again.out).toMatch(/: 0 added, \d already here\.$/);
  }
  expect((await run(takeOut, ["--format", "readings"])).out).toContain("2026-06-10,10");
  const to = join(folder, "out.csv");
  expect((await run(takeOut, ["-o", to])).said).toContain(`written to ${to}`);
  await run(takeOut, ["-o", to], EXIT.cannotWrite);
  await run(takeOut, ["--format", "xlsx"], EXIT.usage);
  await run(takeOut, ["--from", "31/02/2026"], EXIT.badData);
});
