/**
 * Deaths that nobody finds, in twins' tanks: a fish dies on an unknown day, the keeper's next ammonia tests come every
 * second day, and the program is asked on the day of each test. `node checks/twins/deaths.ts [TANKS] [FIRST_SEED]`.
 * Beside each tank its quiet twin, in which nothing dies: what is named there is a false alarm.
 */
import { diagnosis } from "../../src/catalogue/diagnosis.ts";
import { animalById, modelParameters } from "../../src/catalogue/index.ts";
import { careEvents } from "../../src/engine/ahead/care.ts";
import { standingOf, worldOf } from "../../src/engine/ahead/start.ts";
import type { TankEvent } from "../../src/engine/balance/events.ts";
import { TAN } from "../../src/engine/balance/pools.ts";
import { DISPLAY_STEPS, run } from "../../src/engine/balance/run.ts";
import { unfoundDeath } from "../../src/engine/care/diagnosis/unfound-death.ts";
import { drawMembers } from "../../src/engine/larder/members.ts";
import type { ReadingSeen, TankRecord } from "../../src/engine/types/record.ts";
import { Chance } from "../kit/chance.ts";
import { dayOn } from "./keeper.ts";
import { crewOf, DAYBOOK_DAYS, factsBefore, twinFacts } from "./tank.ts";

/** A shared kit's step and scatter of total ammonia, mg N/L. */
const STEP = 0.1;
const SCATTER = 0.03;
/** A rise that such a kit shows beyond its step and scatter, where a test falls on it. */
const VISIBLE = 0.3;
const TESTS = [5, 12, 19, 26, 33, 40, 46, 48, 50, 52, 54];
const DIES_ON = 44;

export interface DeathTwin {
  readonly seed: number;
  /** Greatest rise of the truth's ammonia over its day of death on a day of a test, mg N/L. */
  readonly rise: number;
  /** Day, after the first test that showed it, on which it was named; null where never within the daybook. */
  readonly namedAfterDays: number | null;
  readonly falseAlarm: boolean;
}

export function deathTwin(seed: number): DeathTwin {
  const facts = twinFacts(seed);
  const chance = new Chance(seed, 21);
  // A fish of a hand in two hundred litres, or a small one in sixty.
  const grams = facts.waterL.central * chance.between(0.1, 0.4);
  const dies: TankEvent = { t: DIES_ON, kind: "fishDeath", grams, found: false };
  const tan = ammoniaOf(seed, [dies]);
  const quiet = ammoniaOf(seed, []);
  const later = TESTS.filter((day) => day > DIES_ON);
  const rise = Math.max(...later.map((day) => tan[day]!)) - tan[DIES_ON]!;
  const shown = testsOf(tan, new Chance(seed, 22));
  const shownQuiet = testsOf(quiet, new Chance(seed, 22));
  const firstShown = later.find((day) => tan[day]! - tan[DIES_ON]! >= VISIBLE);
  const named = askedDays(shown).find(
    ({ day, readings }) => day > DIES_ON && namedOn(readings, day, facts) !== null,
  );
  return {
    ...{ seed, rise },
    namedAfterDays:
      named === undefined || firstShown === undefined ? null : Math.max(0, named.day - firstShown),
    falseAlarm: askedDays(shownQuiet).some(
      ({ day, readings }) => day > DIES_ON && namedOn(readings, day, facts) !== null,
    ),
  };
}

function ammoniaOf(seed: number, more: readonly TankEvent[]): number[] {
  const then = factsBefore(twinFacts(seed), DAYBOOK_DAYS);
  const kinds = crewOf(then);
  const [drawn] = drawMembers(then, modelParameters, { count: 1, seed: 7_000_000 + seed });
  const { member, state } = standingOf(drawn!, kinds, then);
  const tan: number[] = [];
  const events = [...careEvents(then, DAYBOOK_DAYS), ...more].sort((a, b) => a.t - b.t);
  const world = worldOf(member, kinds, then.phScale, "expected");
  run(world, state, events, {
    days: DAYBOOK_DAYS,
    steps: DISPLAY_STEPS,
    rowEvery: 1,
    onRow: (_, y) => tan.push(y[TAN]! / member.inputs.V),
  });
  return tan;
}

function testsOf(tan: readonly number[], chance: Chance): ReadingSeen[] {
  return TESTS.map((day, i) => {
    const noise = (chance.between(-1, 1) + chance.between(-1, 1) + chance.between(-1, 1)) * SCATTER;
    const central = Math.max(0, Math.round((tan[day]! + noise) / STEP) * STEP);
    const value = { low: Math.max(0, central - STEP), central, high: central + STEP };
    const seen = {
      kind: "reading",
      entry: `test-${i}`,
      on: dayOn(day),
      value,
      step: STEP,
      flag: null,
    } as const;
    return { ...seen, quantity: "tan_mg_n_per_l", censored: central === 0 ? "below" : null };
  });
}

const askedDays = (tests: readonly ReadingSeen[]) =>
  tests.map((test, i) => ({ day: dayOf(test.on), readings: tests.slice(0, i + 1) }));
const dayOf = (on: string): number => Math.round((Date.parse(on) - Date.parse(dayOn(0))) / 86_400_000);

function namedOn(readings: readonly ReadingSeen[], day: number, facts: ReturnType<typeof twinFacts>) {
  const record: TankRecord = { observations: readings, happenings: [], declined: [], asOf: dayOn(day) };
  const found = unfoundDeath({ facts, record, animals: animalById, diagnosis });
  return found?.named === true ? found : null;
}

export interface DeathFigures {
  /** Tanks in which the kit could show the rise at all. */
  readonly visible: number;
  /** Of those, named within two days of the first test that showed it. */
  readonly namedInTime: number;
  readonly falseAlarms: number;
  readonly tanks: number;
}

export function deathFigures(twins: readonly DeathTwin[]): DeathFigures {
  const visible = twins.filter(({ rise }) => rise >= VISIBLE);
  return {
    tanks: twins.length,
    visible: visible.length,
    namedInTime: visible.filter(({ namedAfterDays }) => namedAfterDays !== null && namedAfterDays <= 2)
      .length,
    falseAlarms: twins.filter(({ falseAlarm }) => falseAlarm).length,
  };
}

if (process.argv[1] === import.meta.filename) {
  const [tanks = "50", first = "1"] = process.argv.slice(2);
  const twins = Array.from({ length: Number(tanks) }, (_, i) => deathTwin(Number(first) + i));
  console.log(JSON.stringify(deathFigures(twins)));
}
