import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { keptIo } from "../../checks/kit/io.ts";
import { addDemonstration } from "../server/demonstration/add.ts";
import { openStore } from "../store/open.ts";
import { CliError, EXIT } from "./io.ts";
import { type TankSource, tankFrom } from "./tank-source.ts";

const { io } = keptIo();
const folder = mkdtempSync(join(tmpdir(), "tank-source-"));
const store = join(folder, "store.db");
const file = join(import.meta.dirname, "../../examples/first-reef.yaml");
let id = "";

beforeAll(async () => {
  const opened = await openStore(store);
  await addDemonstration(opened, io.today, "2026-06-15T09:00:00.000Z");
  id = (await opened.tanks()).find(({ facts }) => facts["name"] === "Cellar tank (invented)")!.id;
  await opened.close();
});
afterAll(() => rmSync(folder, { recursive: true }));

async function refusal(named: string | undefined, source: TankSource): Promise<CliError> {
  try {
    await tankFrom(named, source, io);
  } catch (error) {
    if (error instanceof CliError) return error;
    throw error;
  }
  throw new Error("was not refused");
}

test("a tank of the store, by its id or its name, with the last of its readings and what they taught", async () => {
  const byName = await tankFrom(undefined, { tank: "Hallway reef (invented)", store }, io, { quiet: true });
  expect(byName.readings.some(({ on }) => on === "2026-06-14")).toBe(true);
  expect(byName.learned?.names.length).toBeGreaterThan(0);
  expect((await tankFrom(undefined, { tank: id, store }, io, { quiet: true })).name).toBe(
    "Cellar tank (invented)",
  );
});

test("a file has no daybook to learn from", async () => {
  expect((await tankFrom(file, {}, io, { quiet: true })).learned).toBeUndefined();
});

test("a file as before", async () => {
  expect((await tankFrom(file, {}, io, { quiet: true })).name).toBe("First reef");
});

test("a file and a tank, or neither, is a call to mend", async () => {
  expect((await refusal(file, { tank: "x", store })).exitCode).toBe(EXIT.usage);
  expect((await refusal(undefined, {})).exitCode).toBe(EXIT.usage);
});

test("an unknown tank names those there are", async () => {
  const { exitCode, lines } = await refusal(undefined, { tank: "Hallway", store });
  expect(exitCode).toBe(EXIT.inputMissing);
  expect(lines.join("\n")).toContain("Hallway reef (invented), kept by Ada (invented)");
  expect(lines).toHaveLength(5);
});

test("a store that is not there is not made", async () => {
  const missing = join(folder, "missing.db");
  expect((await refusal(undefined, { tank: "x", store: missing })).lines.join(" ")).toContain("missing.db");
  await expect(openStore(missing, { use: "existing" })).rejects.toThrow();
});
