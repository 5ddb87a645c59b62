import { expect, test } from "vitest";
import type { ReadingBody } from "../../contract/daybook/reading.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import { type KeptReading, latestReadings, saidOf } from "./latest.ts";
import { missingReadings } from "./missing.ts";

const file: TankFile = {
  grazewell_tank: 1,
  readings: [{ on: "2026-06-01", tan_mg_n_per_l: "1.2" }],
  temperature_c: "31.5",
};
const danger = (path: string) => ({
  path,
  label: "Ammonia",
  line: null,
  kind: "DANGER" as const,
  text: 'Ammonia "1.2": 1.2 mg/L: act today',
});
const kept = (on: string, text: string, flag: ReadingBody["flag"] = null): KeptReading => ({
  id: `${on} ${text}`,
  on,
  body: { quantity: "tan_mg_n_per_l", text, flag, said: null } as ReadingBody,
});
const latest = (readings: readonly KeptReading[]) =>
  latestReadings(
    readings,
    file,
    [danger("readings[0].tan_mg_n_per_l"), danger("temperature_c")],
    "2026-06-15",
  );

test("a danger told in the questions stands until a later reading replaces it", () => {
  expect(latest([]).find(({ label }) => label === "Ammonia")).toMatchObject({ flag: "danger", ageDays: 14 });
  const [ammonia] = latest([kept("2026-06-14", "0.05"), kept("2026-05-01", "2", "danger")]).filter(
    ({ label }) => label === "Ammonia",
  );
  expect(ammonia).toMatchObject({ flag: null, text: "0.05", count: 3, entry: "2026-06-14 0.05" });
});

test("an earlier reading of the daybook does not replace it", () => {
  expect(latest([kept("2026-05-01", "0")]).find(({ label }) => label === "Ammonia")?.flag).toBe("danger");
});

test("a fact without a day counts, and is not called stale", () => {
  const all = latest([]);
  expect(all.find(({ label }) => label === "Temperature")).toMatchObject({ flag: "danger", ageDays: null });
  expect(missingReadings(all).map(({ label }) => label)).toEqual([
    "Nitrate",
    "Phosphate",
    "Alkalinity",
    "Salinity",
  ]);
});

test("what was said is shown without the label and the text that stand beside it", () => {
  expect(saidOf('Ammonia "1.2": 1.2 mg/L: act today')).toBe("1.2 mg/L: act today");
});
