/** `next` and `round` at the command line, against a store of their own. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { keptIo } from "../../../checks/kit/io.ts";
import { nextOutput, roundOutput } from "../../contract/output/next.ts";
import { openStore } from "../../store/open.ts";
import { CliError, EXIT } from "../io.ts";
import { command as next } from "./next.ts";
import { command as round } from "./round.ts";

const folder = mkdtempSync(join(tmpdir(), "round-cli-"));
const store = join(folder, "store.db");

beforeAll(async () => {
  const opened = await openStore(store);
  const stamp = { at: "2026-06-01T09:00:00.000Z", by: "test" };
  for (const [id, keeper, change] of [
    ["kitchen", "Ada", {}],
    ["hall", "Ben", { trouble: "fish gasping" }],
  ] as const) {
    const { id: keeperId } = await opened.keeperNamed(keeper, keeper, stamp);
    const facts = {
      grazewell_tank: 1,
      name: id,
      water_l: "200 L",
      first_seawater_on: "2026-01-10",
      ...change,
    };
    await opened.addTank({ id, keeperId, demonstration: false, facts }, stamp);
  }
  await opened.close();
});
afterAll(() => rmSync(folder, { recursive: true }));

async function run(command: typeof next, ...words: string[]): Promise<string> {
  const { io, printed } = keptIo();
  await command(io)
    .exitOverride()
    .configureOutput({ writeErr: () => {} })
    .parseAsync([...words, "--store", store], { from: "user" });
  return printed.join("\n");
}

describe("grazewell round", () => {
  test("the neediest first, with why, what to do and by when", async () => {
    const out = await run(round);
    // The kitchen's tank is young, and nobody knows where its start-up stands.
    expect(out).toContain("Round: Of 2 tanks, you are needed at 1 today, at 1 more this week.");
    expect(out).toMatch(/1\. Today: hall, kept by Ben[\s\S]*fish gasping[\s\S]*2\. .*kitchen/);
  });

  test("as data, by its schema", async () => {
    const { tanks } = roundOutput.parse(JSON.parse(await run(round, "--json")));
    expect(tanks.map(({ id, place, urgency }) => [place, id, urgency])).toEqual([
      [1, "hall", "today"],
      [2, "kitchen", "this_week"],
    ]);
  });

  test.each([
    [["--keeper", "Ada"], ["kitchen"]],
    [["--urgency", "today"], ["hall"]],
    [["--words", "gasping"], ["hall"]],
    [
      ["--sort", "name"],
      ["hall", "kitchen"],
    ],
    [["--words", "nowhere"], []],
  ])("%j", async (words, found) => {
    const { tanks } = roundOutput.parse(JSON.parse(await run(round, ...words, "--json")));
    expect(tanks.map(({ id }) => id)).toEqual(found);
  });

  test("a store that is not there is named", async () => {
    const { io } = keptIo();
    const asked = round(io).parseAsync(["--store", join(folder, "none.db")], { from: "user" });
    await expect(asked).rejects.toBeInstanceOf(CliError);
  });
});

describe("grazewell next", () => {
  test("the list of the bench, without waiting for a plan", async () => {
    const out = await run(next, "--tank", "hall", "--no-plan");
    expect(out).toContain("1. Today: See to what is wrong first, and add no animal.");
    expect(out).toContain("You said: fish gasping.");
    expect(out).toContain("Or: It is over: change the answer.");
  });

  test("as data, by its schema, with the plan", async () => {
    const { with_plan, advice } = nextOutput.parse(
      JSON.parse(await run(next, "--tank", "kitchen", "--members", "20", "--json")),
    );
    expect(with_plan).toBe(true);
    expect(advice.some(({ about }) => about === "wave" || about === "nothing_yet")).toBe(true);
  });

  test("a tank that is not there: those there are", async () => {
    const refused = await run(next, "--tank", "cellar").catch((error: unknown) => error);
    expect(refused).toMatchObject({ exitCode: EXIT.inputMissing });
  });
});
