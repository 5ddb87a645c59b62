/**
 * Where in its nitrogen cycle a tank stands, by its own tests: which of ammonia and nitrite could be read, what was dosed
 * and what was left of it the day after. Quick: nothing here runs the balance. Limits: what a test can't tell from
 * nothing is nothing here; a nought in a tank that was never given ammonia says nothing, and that is said.
 */
import { addDays, daysBetween } from "../../contract/quantity/calendar.ts";
import { START_UP } from "../../engine/care/start-up/judgement.ts";
import type { Dosed } from "../../engine/types/record.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { type KnownOfTank, type Valued, valuesOf } from "../bench/known.ts";
import { isUnreadable } from "../bench/water.ts";
import type { RecordScene } from "../record-scene.ts";

export const STAGES = [
  "not_filled",
  "no_data",
  "waiting",
  "ammonia",
  "both",
  "nitrite",
  "clear",
  "proven",
  "past",
] as const;
export type Stage = (typeof STAGES)[number];

/** A dose, and what a test of the next day found. */
export interface DoseTest {
  readonly dose: Dosed;
  /** Day on which it is to be looked at. */
  readonly lookOn: string;
  /** Null: not tested on that day. */
  readonly gone: boolean | null;
}

export interface StageFound {
  readonly stage: Stage;
  readonly stocked: boolean;
  /** The latest tests that are fresh enough to count; null where there is none. */
  readonly tan: Valued | null;
  readonly no2: Valued | null;
  /** The one before, for which way it goes. */
  readonly no2Before: Valued | null;
  /** Doses of the daybook, oldest first. */
  readonly doses: readonly DoseTest[];
  /** The dose that proved it; null without one. */
  readonly proof: DoseTest | null;
}

/** A dose below this says little of what the tank will be given, mg N/L. */
const LEAST_DOSE = START_UP.testDoseMgNPerL / 4;
/** A stocked tank of this age whose tests read nothing is past it, days. */
const SETTLED_FROM = 60;

/** Something lives there, as was told: a fish that a usual tank of the size has is no telling. */
const isTold = (facts: TankFacts): boolean =>
  (facts.fishWetG.central > 0 && facts.fishWetG.origin !== "assumed") ||
  facts.present.some(({ count }) => count > 0);

export const knownIn = ({ facts, record, today }: RecordScene): KnownOfTank => ({
  ...{ facts, record, today, latest: [], answeredOn: null },
});

type Poison = "tan_mg_n_per_l" | "no2_mg_n_per_l";

export function stageOf(scene: RecordScene): StageFound {
  const { facts, record, today } = scene;
  const known = knownIn(scene);
  const stocked = isTold(facts);
  const all = (quantity: Poison) => valuesOf(known, quantity).filter(({ on }) => on <= today);
  const fresh = (quantity: Poison) =>
    all(quantity).filter(({ on }) => daysBetween(on, today) <= START_UP.freshDays);
  const tan = fresh("tan_mg_n_per_l").at(-1) ?? null;
  const no2 = fresh("no2_mg_n_per_l").at(-1) ?? null;
  // Of one day there may be two, one of them as the answers have it: the one before is of an earlier day.
  const no2Before = all("no2_mg_n_per_l").findLast(({ on }) => no2 !== null && on < no2.on) ?? null;
  const doses = record.happenings
    .filter((one): one is Dosed => one.kind === "dosed")
    .map((dose) => doseTest(dose, known));
  const proof = doses.findLast(({ gone }) => gone === true) ?? null;
  const reads = (value: Valued | null, quantity: Poison) => value !== null && !isUnreadable(value, quantity);
  const [ammonia, nitrite] = [reads(tan, "tan_mg_n_per_l"), reads(no2, "no2_mg_n_per_l")];
  const everRead = (["tan_mg_n_per_l", "no2_mg_n_per_l"] as const).some((quantity) =>
    all(quantity).some((value) => reads(value, quantity)),
  );
  return { stage: stage(), stocked, tan, no2, no2Before, doses, proof };

  function stage(): Stage {
    const age = facts.ageDays.central;
    if (age < 0) return "not_filled";
    if (age > START_UP.longestDays) return "past";
    // A test after the proof that reads something again takes the proof back.
    if (proof !== null && !ammonia && !nitrite) return stocked ? "past" : "proven";
    if (stocked && age > SETTLED_FROM && !ammonia && !nitrite) return "past";
    if (ammonia && nitrite) return "both";
    if (ammonia) return "ammonia";
    if (nitrite) return "nitrite";
    if (tan === null || no2 === null) return "no_data";
    return everRead || doses.length > 0 ? "clear" : "waiting";
  }
}

function doseTest(dose: Dosed, known: KnownOfTank): DoseTest {
  const lookOn = addDays(dose.on, 1);
  const found = (["tan_mg_n_per_l", "no2_mg_n_per_l"] as const).map((quantity) => {
    const value = valuesOf(known, quantity).findLast(({ on }) => on === lookOn);
    return value === undefined ? null : isUnreadable(value, quantity);
  });
  const small = dose.mgNPerL !== null && dose.mgNPerL < LEAST_DOSE;
  const gone = found.includes(false) ? false : found.includes(null) || small ? null : true;
  return { dose, lookOn, gone };
}
