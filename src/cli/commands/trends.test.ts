/** `trends` at the command line, against a store of its own. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { keptIo } from "../../../checks/kit/io.ts";
import { readReading } from "../../contract/daybook/read-reading.ts";
import { trendsOutput } from "../../contract/output/trends.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import { openStore } from "../../store/open.ts";
import { command } from "./trends.ts";

const TODAY = "2026-06-15";
const folder = mkdtempSync(join(tmpdir(), "trends-cli-"));
const store = join(folder, "store.db");

beforeAll(async () => {
  const opened = await openStore(store);
  const stamp = { at: "2026-06-01T09:00:00.000Z", by: "test" };
  const { id: keeperId } = await opened.keeperNamed("Ada", "ada", stamp);
  const facts = {
    ...{ grazewell_tank: 1, name: "kitchen", water_l: "200 L", first_seawater_on: "2025-01-10" },
    preferences: { shown_in: { temperature: "F" } },
  };
  await opened.addTank({ id: "kitchen", keeperId, demonstration: false, facts }, stamp);
  const entries = Array.from({ length: 10 }, (_, week) => {
    const observed = addDays(TODAY, 7 * (week - 9));
    const typed = { quantity: "temperature_c", text: `${24 + week * 0.3} C`, kit_step: "0.1", observed };
    const context = {
      preferences: NO_PREFERENCES,
      today: TODAY,
      now: null,
      zone: null,
      stocked: true,
      notBefore: null,
    };
    const reading = readReading(typed, context);
    if (!reading.ok) throw new Error(reading.doubts[0]?.message.text);
    return { id: `r${week}`, kind: "reading", on: reading.on, body: reading.body };
  });
  await opened.addEntries("kitchen", entries, stamp);
  await opened.close();
});
afterAll(() => rmSync(folder, { recursive: true }));

async function run(...words: string[]): Promise<string> {
  const { io, printed } = keptIo();
  await command(io)
    .exitOverride()
    .parseAsync(["--tank", "kitchen", "--store", store, ...words], { from: "user" });
  return printed.join("\n");
}

test("lines speak in the keeper's units, with the number of 20 and the limit", async () => {
  const lines = (await run()).replaceAll(/\s+/g, " ");
  expect(lines).toContain("Temperature rises by about 0.54 °F a week");
  expect(lines).toMatch(
    /If temperature goes on as it went, it is above 84\.2 °F within 63 days: (usually|nearly always), \d+ of 20\./,
  );
  expect(lines).toContain("Not measured yet: Salinity, pH");
});

test("data are of their schema, in the units that names have", async () => {
  const output = trendsOutput.parse(JSON.parse(await run("--json")));
  expect(output.quantities[0]).toMatchObject({ id: "temperature_c", unit: "°C", way: "rising" });
  expect(output.quantities[0]!.per_week!.central).toBeCloseTo(0.3, 2);
});
