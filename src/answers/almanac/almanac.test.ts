/** Dated care of tanks made by hand: each duty's day, no duty twice, nothing before today, a wave with its gate. */
import { expect, test } from "vitest";
import { findAnimal } from "../../catalogue/index.ts";
import type { WavesOutput } from "../../contract/output/waves.ts";
import { readTankFile } from "../../contract/tank-file/read.ts";
import { GATE_WORDS } from "../../engine/stocking/gates.ts";
import type { Happening, Observation } from "../../engine/types/record.ts";
import { larderFor, larderOutputOf } from "../larder.ts";
import { DEFAULT_ENSEMBLE } from "../plan/plan-tank.ts";
import { recordAnswersOf } from "../record-answers.ts";
import { plain } from "../sentence.ts";
import { shownIn } from "../units-shown.ts";
import { almanacOf } from "./almanac.ts";

const TODAY = "2026-06-15";
const CHOICE = { ...DEFAULT_ENSEMBLE, members: 20 };

const WAVES = {
  kind: "waves",
  would_change: [],
  waves: [
    {
      ...{
        number: 1,
        from: "2026-06-01",
        to: "2026-06-29",
        only_if: ["film is back"],
        stop_if: "snails flee",
      },
      ...{
        sooner_if: "film thickens",
        animals: [{ id: "trochus-snail", name: "trochus snail", count: 3, figures: { count: "c" } }],
      },
      figures: { from: "f" },
    },
  ],
} as unknown as WavesOutput;

function almanac(
  observations: readonly Observation[],
  happenings: readonly Happening[],
  more = "",
  onlyIf: readonly string[] = ["film is back"],
) {
  const read = readTankFile(
    `grazewell_tank: 1
name: Try tank
water_l: 240 L
first_seawater_on: 2025-03-01
${more}`,
    { today: TODAY, findAnimal },
  );
  if (!read.ok) throw new Error(JSON.stringify(read.findings[0]));
  const { facts } = read;
  const record = { observations, happenings, declined: [], asOf: TODAY };
  const shown = shownIn(undefined);
  const { trends, heads, advice } = recordAnswersOf({ facts, record, today: TODAY }, shown);
  const larder = larderOutputOf(larderFor(facts, CHOICE), CHOICE, null);
  return almanacOf({
    ...{ facts, record, today: TODAY, trends, heads, larder, flows: null, shown },
    waves: { ...WAVES, residents: [], waves: WAVES.waves.map((one) => ({ ...one, only_if: [...onlyIf] })) },
    advice: [...advice, { about: "wave" } as never],
  });
}
const duty = (made: ReturnType<typeof almanac>, id: string) => made.dates.find((one) => one.id === id);

const wiped = (on: string): Happening => ({
  kind: "chore",
  entry: `w${on}`,
  on,
  chore: "glass_wiped",
  share: null,
});
const back = (on: string, days: number): Observation => ({ kind: "film_back", entry: `f${on}`, on, days });
const nitrate = (on: string, value: number, flag: "danger" | null = null): Observation => ({
  ...{ kind: "reading", entry: `r${on}`, on, quantity: "no3_mg_n_per_l", censored: null, step: 0.1, flag },
  value: { low: value, central: value, high: value },
});

test("the glass by the days that film took, from the last wiping", () => {
  const made = almanac(
    [back("2026-06-01", 4), back("2026-06-06", 5), back("2026-06-12", 6)],
    [wiped("2026-06-12")],
  );
  expect(duty(made, "glass")).toMatchObject({
    on: "2026-06-17",
    every: 5,
    done: { fields: { chore: "glass_wiped" } },
  });
});

test("what is overdue is due today, nothing earlier, nothing twice", () => {
  const made = almanac([back("2026-05-01", 4), back("2026-05-06", 4)], [wiped("2026-05-06")]);
  expect(duty(made, "glass")?.on).toBe(TODAY);
  expect(made.dates.every(({ on }) => on >= TODAY)).toBe(true);
  expect(new Set(made.dates.map(({ id }) => id)).size).toBe(made.dates.length);
  expect(made.dates.every(({ id }) => /^[\w.-]+$/.test(id))).toBe(true);
});

test("a filter that nobody told of has no rhythm of the keeper's", () => {
  const why = (more: string) => plain(duty(almanac([], [], more), "filter")?.why[0] ?? []);
  expect(why("")).toContain("was not said");
  expect(why("equipment: { mechanical_filter: sock, filter_change_days: 2 }")).toContain("your own rhythm");
  const deed = (more: string) => plain(duty(almanac([], [], more), "filter")?.do ?? []);
  expect(deed("")).toBe("Change or rinse the mechanical filter, if it has one.");
  expect(deed("equipment: { mechanical_filter: sock, filter_change_days: 2 }")).toMatch(/filter\.$/);
});

test("a wave waits for the day its gate could be met, as on the bench", () => {
  const lost = { kind: "lost_found", entry: "e", on: "2026-06-10", animal: "trochus-snail", count: 1 };
  const wave = (happenings: readonly object[]) =>
    duty(almanac([], happenings as readonly Happening[], "", [GATE_WORDS.testsSince]), "wave.1")?.on;
  expect(wave([lost])).toBe("2026-06-25");
  expect(wave([])).toBe(TODAY);
});

test("a wave stands with its gate, and is never a bare date", () => {
  const wave = duty(almanac([], []), "wave.1");
  expect(wave?.on).toBe(TODAY);
  expect(plain(wave?.gate ?? [])).toBe("Only if film is back. Stop if snails flee.");
});

test("a dangerous reading is tested again today; first tests come two at a time", () => {
  const made = almanac([nitrate("2026-06-14", 60, "danger")], []);
  expect(duty(made, "test.no3_mg_per_l")?.on).toBe(TODAY);
  expect(
    made.dates.filter(({ kind, restsOn }) => kind === "test" && restsOn === "never measured"),
  ).toHaveLength(2);
});

test("kinds that can't right themselves are looked at; each day once some were seen lying", () => {
  const with_ = "animals_present: [{ animal: astrea snail, count: 4 }]";
  expect(duty(almanac([], [], with_), "righting")?.every).toBe(3);
  const lying: Observation = {
    ...{ kind: "sign", entry: "s", on: "2026-06-10", sign: "fallen_snails", animal: null, count: 1 },
    ...{ kindsSeen: null, hoursFromLightsOut: null, traits: {} },
  };
  expect(duty(almanac([lying], [], with_), "righting")?.every).toBe(1);
  expect(duty(almanac([], []), "righting")).toBeUndefined();
});

test("every number of a sentence has its figure, here or in a part that it names", () => {
  const made = almanac([back("2026-06-01", 4), back("2026-06-06", 5)], [wiped("2026-06-12")]);
  const own = new Set(made.figures.map(({ id }) => id));
  const told = [
    ...made.dates.flatMap((one) => [one.do, ...one.why, one.byWhen]),
    ...made.undated.map(({ why }) => why),
  ]
    .flat()
    .flatMap((part) =>
      typeof part === "string" || !part.figure.startsWith("care.almanac.") ? [] : [part.figure],
    );
  expect(told.length).toBeGreaterThan(0);
  expect(told.filter((id) => !own.has(id))).toEqual([]);
});
