/**
 * Kinds that starve, in twins' tanks: on the daybook's eighth day far too many snails are added, and every week the
 * program is asked, with what the keeper knows by then, who goes hungry. Beside it a quiet twin, where few are added to
 * a tank that feeds them. `node checks/twins/hunger.ts [TANKS] [FIRST_SEED]`.
 */
import { TABLE } from "../../src/answers/figures/table.ts";
import { diagnosis } from "../../src/catalogue/diagnosis.ts";
import { animalById, animals, modelParameters } from "../../src/catalogue/index.ts";
import { survivalOf } from "../../src/engine/ahead/chances.ts";
import { acrossMembers, finish, forecast } from "../../src/engine/ahead/forecast.ts";
import type { TankEvent } from "../../src/engine/balance/events.ts";
import { calibrate } from "../../src/engine/calibration/calibrate.ts";
import { hungryKinds, type KindAhead } from "../../src/engine/care/diagnosis/hunger.ts";
import { headRates } from "../../src/engine/heads/rates.ts";
import { drawMembers } from "../../src/engine/larder/members.ts";
import { quantile } from "../../src/engine/numeric/quantile.ts";
import type { TankRecord } from "../../src/engine/types/record.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";
import { withLatest } from "./forecasts.ts";
import { dayOn, recordOfKeeper } from "./keeper.ts";
import { OWN } from "./other-truths.ts";
import { crewOf, DAYBOOK_DAYS, factsBefore, twinFacts } from "./tank.ts";
import { FUTURE_DAYS, type Truth, truthOf } from "./truth.ts";

const MEMBERS = 60;
const KIND = "trochus-snail";
const ADDED_ON = 7;
const LOOKED_AHEAD_DAYS = 42;
/** Asked on these days of the daybook. */
const ASKED = [14, 21, 28, 35, 42, 49, 56];
/** Reserve at which an animal is dying of hunger. */
const DYING_AT = 0.15;

export interface HungerTwin {
  readonly seed: number;
  /** Day of the first death of a starving kind, of the daybook and the weeks after; null where none starves. */
  readonly diesOn: number | null;
  /** Day on which it was first named; null where never. */
  readonly namedOn: number | null;
  /** Lowest reserve of the kind, share of full, while any lives. */
  readonly lowest: number;
}

export function hungerTwin(seed: number, heads: number): HungerTwin {
  const base = twinFacts(seed);
  const facts: TankFacts = {
    ...base,
    present: [
      ...base.present.filter(({ id }) => id !== KIND),
      { id: KIND, count: heads, on: dayOn(ADDED_ON) },
    ],
  };
  const added: TankEvent = { t: ADDED_ON, kind: "addAnimals", species: KIND, count: heads, condition: 0.6 };
  const truth = truthOf(facts, seed, OWN, [added]);
  const record = recordOfKeeper(truth, seed, OWN);
  const namedOn = ASKED.find((day) => named(facts, record, day, seed)) ?? null;
  const s = truth.kinds.findIndex(({ animal }) => animal.id === KIND);
  const reserves = truth.days.map(({ condition }) => condition[s]!).filter((level) => level > 0);
  return { seed, diesOn: diesOn(truth), namedOn, lowest: Math.min(...reserves) };
}

function diesOn({ days, kinds }: Truth): number | null {
  const s = kinds.findIndex(({ animal }) => animal.id === KIND);
  const most = DAYBOOK_DAYS + FUTURE_DAYS;
  for (let day = ADDED_ON + 1; day <= most; day += 1) {
    const fewer = days[day]!.heads[s]! < days[day - 1]!.heads[s]!;
    if (fewer && days[day - 1]!.condition[s]! < DYING_AT) return day;
  }
  return null;
}

/** Whether the kind is called hungry, by what is known on that day. */
function named(facts: TankFacts, whole: TankRecord, day: number, seed: number): boolean {
  const known: TankRecord = {
    observations: whole.observations.filter(({ on }) => on <= dayOn(day)),
    happenings: whole.happenings.filter(({ on }) => on <= dayOn(day)),
    ...{ declined: [], asOf: dayOn(day) },
  };
  const then = withLatest(factsBefore(facts, DAYBOOK_DAYS - day), known);
  const { learned } = finish(
    calibrate({
      facts: then,
      record: known,
      table: modelParameters,
      rates: headRates(TABLE),
      animals,
      members: MEMBERS,
      seed,
    }),
  );
  const now = { ...then, learned };
  const ahead = aheadOf(now, seed);
  const scene = { facts: now, record: known, animals: animalById, diagnosis };
  return hungryKinds(scene, ahead).some(({ animal }) => animal.id === KIND);
}

function aheadOf(facts: TankFacts, seed: number): KindAhead[] {
  const kinds = crewOf(facts);
  const { kinds: outlooks } = finish(
    forecast({
      ...{ facts, kinds, events: [], days: LOOKED_AHEAD_DAYS, seed },
      members: drawMembers(facts, modelParameters, { count: MEMBERS, seed }),
    }),
  );
  const weeks = LOOKED_AHEAD_DAYS / 7;
  return outlooks.map(({ id, heads, condition }, s): KindAhead => {
    const by = (share: number) =>
      Array.from({ length: weeks + 1 }, (_, week) => {
        const alive = acrossMembers(condition, week).filter((value) => !Number.isNaN(value));
        return alive.length === 0 ? null : quantile(alive, share);
      });
    const { species } = kinds[s]!;
    const survival = survivalOf(heads, weeks, {
      ...{ came: 0, deathRate: species.m0, days: LOOKED_AHEAD_DAYS },
    });
    return {
      ...{ id, conditionByWeek: by(0.5), lowConditionByWeek: by(0.1), starvesOf20: survival.starvesOf20 },
    };
  });
}

/** A kind whose reserve never fell below this was never hungry. */
const WELL_FED = 0.4;

export interface HungerFigures {
  readonly starving: number;
  readonly namedBefore: number;
  readonly quiet: number;
  readonly falseAlarms: number;
}

export function hungerFigures(twins: readonly HungerTwin[]): HungerFigures {
  const starving = twins.filter(({ diesOn: day }) => day !== null);
  const quiet = twins.filter(({ diesOn: day, lowest }) => day === null && lowest >= WELL_FED);
  return {
    starving: starving.length,
    namedBefore: starving.filter(({ diesOn: day, namedOn }) => namedOn !== null && namedOn < day!).length,
    quiet: quiet.length,
    falseAlarms: quiet.filter(({ namedOn }) => namedOn !== null).length,
  };
}

if (process.argv[1] === import.meta.filename) {
  const [tanks = "10", first = "1"] = process.argv.slice(2);
  const twins: HungerTwin[] = [];
  for (let seed = Number(first); seed < Number(first) + Number(tanks); seed += 1) {
    const litres = twinFacts(seed).waterL.central;
    twins.push(hungerTwin(seed, Math.round(litres / 5)), hungerTwin(seed, 2));
    process.stderr.write(`${JSON.stringify(twins.slice(-2))}\n`);
  }
  console.log(JSON.stringify(hungerFigures(twins)));
}
