/**
 * The ensemble: many versions of one tank, each a draw of every parameter and every fact from its band.
 * A member is what the larder is worked out from and what the balance runs.
 */
import type { Inputs } from "../balance/inputs.ts";
import { PARAMETER_SYMBOLS, type ParameterValues } from "../balance/parameters.ts";
import { scores, valueAt } from "../numeric/draws.ts";
import { normalQuantile } from "../numeric/normal.ts";
import type { Spread } from "../types/estimate.ts";
import { type Learned, OWN_NAMES, type OwnName } from "../types/learned.ts";
import type { Parameter } from "../types/parameter.ts";
import type { Reading, TankFacts } from "../types/tank.ts";
import { SIZING_SYMBOLS, type SizingValues } from "./sizing.ts";

/** Nutrients in the water, mg/L of N or P. */
export interface Nutrients {
  readonly tanMgNPerL: number;
  readonly no2MgNPerL: number;
  readonly no3MgNPerL: number;
  readonly po4MgPPerL: number;
}

export interface Member {
  readonly parameters: ParameterValues;
  readonly sizing: SizingValues;
  readonly inputs: Inputs;
  readonly nutrients: Nutrients;
  /** Days since first seawater, on the day the plan is made. */
  readonly ageDays: number;
  /** Food given by hand to the crew, mg C/d. */
  readonly handFedMgC: number;
  /** Of a member that a daybook has taught: what its run through the daybook's days needs besides. */
  readonly learned?: MemberLearned;
}

export interface MemberLearned {
  /** Nutrients on the first of the days learned from. */
  readonly startNutrients: Nutrients;
  readonly own: Readonly<Record<OwnName, number>>;
  /** By animal, how many of the heads on the keeper's list live no longer. */
  readonly unseenLosses: Readonly<Record<string, number>>;
}

export type ParameterTable = ReadonlyMap<string, Parameter>;

export interface EnsembleOptions {
  readonly count: number;
  readonly seed: number;
}

/** Facts that a draw varies: the number fields of a tank that stand for an unknown. */
const DRAWN_FACTS = [
  "waterL",
  "ageDays",
  "glassM2",
  "litRockM2",
  "sandM2",
  "rockKg",
  "parGlass",
  "parRock",
  "parSand",
  "lightHours",
  "temperatureC",
  "salinityPsu",
  "ph",
  "feedGPerDay",
  "feedCMgPerG",
  "feedNMgPerG",
  "feedPMgPerG",
  "uneatenShare",
  "handFedMgCPerDay",
  "fishWetG",
] as const satisfies readonly (keyof TankFacts)[];
export type DrawnFact = (typeof DRAWN_FACTS)[number];

/** Every name that a draw has a score for, without those of readings and those of the daybook. */
export const drawnNames = (): string[] => [
  ...PARAMETER_SYMBOLS,
  ...SIZING_SYMBOLS,
  ...new Set(DRAWN_FACTS.map((field) => DRAWN_TOGETHER[field] ?? field)),
];

/** Light at several surfaces comes from one lamp: one draw moves all three. */
const DRAWN_TOGETHER: Readonly<Partial<Record<DrawnFact, string>>> = {
  parGlass: "lamp",
  parRock: "lamp",
  parSand: "lamp",
};

/** Shares, of parameters and of feed left over: a draw stays below one. */
const MOST_SHARE = 0.95;

/** Shares of one whole: drawn apart, they must leave something for the rest. */
const SHARES_OF_ONE = [
  ["domW", "crumbW"],
  ["domK", "crumbK"],
  ["domD", "refD"],
  ["fC", "gC"],
  ["fN", "gN"],
  ["fP", "gP"],
  ["detSand", "detCrevice"],
] as const;

const LEAST_M2 = 1e-6;
const GAS_EXCHANGE_PER_H = 0.8; // gas.kLa_tank, central; a diagnostic only

/**
 * @param table parameters by symbol, each with its band
 * @throws RangeError when a symbol is missing from the table
 */
export function drawMembers(
  facts: TankFacts,
  table: ParameterTable,
  { count, seed }: EnsembleOptions,
): Member[] {
  const drawn = new Map<string, Float64Array>();
  const learned = taught(facts);
  const scoreOf = (name: string): Float64Array => {
    const known = drawn.get(name);
    if (known !== undefined) return known;
    const made = learned === null ? scores(name, count, seed) : learnedScores(learned, name, count);
    drawn.set(name, made);
    return made;
  };
  // Deaths that nobody saw: no run was weighed by them, so each row draws its own, whichever run stands in it.
  const lossScores = new Map(
    Object.keys(learned?.window.unseenLosses ?? {}).map((animal) => [
      animal,
      scores(`unseen losses ${animal}`, learned!.scores.length, learned!.seed),
    ]),
  );
  const parameterScores = [...PARAMETER_SYMBOLS, ...SIZING_SYMBOLS].map((symbol) => {
    const parameter = table.get(symbol);
    if (parameter === undefined) throw new RangeError(`Cannot draw members: no parameter "${symbol}"`);
    return { symbol, parameter, z: scoreOf(symbol) };
  });
  const factScores = DRAWN_FACTS.map((field) => ({ field, z: scoreOf(DRAWN_TOGETHER[field] ?? field) }));
  return Array.from({ length: count }, (_, m) => {
    const values: Record<string, number> = {};
    for (const { symbol, parameter, z } of parameterScores) {
      const value = valueAt(parameter.spread, z[m]!);
      values[symbol] = parameter.unit === "fraction" ? Math.min(MOST_SHARE, value) : value;
    }
    for (const shares of SHARES_OF_ONE) {
      const sum = shares.reduce((all, symbol) => all + values[symbol]!, 0);
      if (sum > MOST_SHARE)
        for (const symbol of shares) values[symbol] = (values[symbol]! * MOST_SHARE) / sum;
    }
    const fact: Record<string, number> = {};
    for (const { field, z } of factScores) fact[field] = valueAt(facts[field], z[m]!);
    return memberFrom(
      facts,
      fact as Record<DrawnFact, number>,
      values,
      (name) => scoreOf(name)[m]!,
      unseenLosses(learned, (animal) => lossScores.get(animal)![m % learned!.scores.length]!),
    );
  });
}

/** What the daybook taught, or null where it taught nothing. */
const taught = ({ learned }: TankFacts): Learned | null =>
  learned === undefined || learned.scores.length === 0 ? null : learned;

/** Learned rows, and for names that were not learned the draw that the rows were learned beside. */
function learnedScores(
  { names, scores: rows, seed, drawnBy }: Learned,
  name: string,
  count: number,
): Float64Array {
  const at = names.indexOf(name);
  const prior = at < 0 ? scores(name, rows.length, seed) : null;
  return Float64Array.from({ length: count }, (_, m) => {
    const row = m % rows.length;
    return prior === null ? rows[row]![at]! : prior[drawnBy?.[row] ?? row]!;
  });
}

/** The member in the middle of every band: for a single run, and for workings. */
export function centralMember(facts: TankFacts, table: ParameterTable): Member {
  const values: Record<string, number> = {};
  for (const symbol of [...PARAMETER_SYMBOLS, ...SIZING_SYMBOLS]) {
    const parameter = table.get(symbol);
    if (parameter === undefined)
      throw new RangeError(`Cannot take the central member: no parameter "${symbol}"`);
    values[symbol] = parameter.spread.central;
  }
  const fact = Object.fromEntries(DRAWN_FACTS.map((field) => [field, facts[field].central]));
  return memberFrom(
    facts,
    fact as Record<DrawnFact, number>,
    values,
    () => 0,
    unseenLosses(taught(facts), () => 0),
  );
}

function memberFrom(
  facts: TankFacts,
  fact: Readonly<Record<DrawnFact, number>>,
  values: Readonly<Record<string, number>>,
  score: (name: string) => number,
  losses: MemberLearned["unseenLosses"],
): Member {
  const sizing = values as unknown as SizingValues;
  const learned = taught(facts);
  const parameters = {
    ...(values as unknown as ParameterValues),
    u0: Math.min(MOST_SHARE, fact.uneatenShare),
    // The table's own values stand for a tank without a sorbent.
    ...(facts.phosphateSorbentMgP === null
      ? {}
      : { kSorb: sizing.sorbentRate, capSorb: facts.phosphateSorbentMgP }),
  };
  const inputs: Inputs = {
    V: fact.waterL,
    Ag: Math.max(LEAST_M2, fact.glassM2),
    Ar: Math.max(LEAST_M2, fact.litRockM2),
    As: fact.sandM2,
    Ac:
      learned === null
        ? colonisedM2(facts, fact, sizing, parameters)
        : colonisedM2({ ...facts, readings: [] }, atStartOf(learned, fact), sizing, parameters),
    rockKg: fact.rockKg,
    parG: fact.parGlass,
    parR: fact.parRock,
    parS: fact.parSand,
    hours: Math.min(24, fact.lightHours),
    light: 1,
    T: fact.temperatureC,
    S: fact.salinityPsu,
    pH: fact.ph,
    ...asDryFeed(fact),
    fish: fact.fishWetG,
    filterOn: facts.filterChangeDays === null ? 0 : 1,
    skimOn: facts.skimmer.value ? 1 : 0,
    macLight: facts.refugium?.light ?? 0,
    macMax: facts.refugium?.maxMgC ?? 1,
    kLa: GAS_EXCHANGE_PER_H,
  };
  const nutrientsOf = (readings: readonly Reading[], scored: typeof score): Nutrients => ({
    tanMgNPerL: concentration(readings, "tan_mg_n_per_l", sizing.tanUsual, scored),
    no2MgNPerL: concentration(readings, "no2_mg_n_per_l", 0, scored),
    no3MgNPerL: concentration(readings, "no3_mg_n_per_l", sizing.no3Usual, scored),
    po4MgPPerL: concentration(readings, "po4_mg_p_per_l", sizing.po4Usual, scored),
  });
  return {
    parameters,
    sizing,
    inputs,
    nutrients: nutrientsOf(facts.readings, score),
    ageDays: fact.ageDays,
    handFedMgC: fact.handFedMgCPerDay,
    ...(learned === null
      ? {}
      : {
          learned: {
            startNutrients: nutrientsOf(readingsBefore(facts, learned.window.from), (quantity) =>
              score(firstOf(quantity)),
            ),
            own: Object.fromEntries(OWN_NAMES.map((name) => [name, score(name)])) as Record<OwnName, number>,
            unseenLosses: losses,
          },
        }),
  };
}

/** By animal, how many of the heads on the keeper's list live no longer, at a score each. */
const unseenLosses = (
  learned: Learned | null,
  scoreOf: (animal: string) => number,
): MemberLearned["unseenLosses"] =>
  Object.fromEntries(
    Object.entries(learned?.window.unseenLosses ?? {}).map(([animal, chances]) => [
      animal,
      countAt(chances, scoreOf(animal)),
    ]),
  );

/** The count at a standard normal score, of the chances of none, one, two ... */
function countAt(chances: readonly number[], score: number): number {
  let below = 0;
  for (const [count, chance] of chances.entries()) {
    below += chance;
    if (below >= 1 - CHANCE_LEFT || (below > 0 && score <= normalQuantile(below))) return count;
  }
  return chances.length - 1;
}
const CHANCE_LEFT = 1e-6;

/** Name of the score of a reading that the days learned from began with. */
const firstOf = (quantity: string): string => `first ${quantity}`;

/** Readings that are older than a day: those of the days learned from have taught already. */
export const readingsBefore = ({ readings }: TankFacts, day: string): readonly Reading[] =>
  readings.filter(({ on }) => on !== null && on < day);

const atStartOf = <Fact extends { readonly ageDays: number }>({ window }: Learned, fact: Fact): Fact => ({
  ...fact,
  ageDays: fact.ageDays - window.days,
});

/** From this age on a tank's nitrifiers have grown into its load, days. @source nit.startup.days_unseeded (21 to 75) */
const SETTLED_DAYS = 60;
/** A settled tank's ammonia lies at most this many times above the least that its nitrifiers can live on. Judgement. */
const ABOVE_LEAST = 1.5;

/**
 * Surface that nitrifiers have colonised, m2. In a settled tank without a reading that says otherwise it is at least
 * what its feed needs: animals live there, so the draw that would poison them is no version of this tank.
 */
function colonisedM2(
  facts: TankFacts,
  fact: Readonly<Record<DrawnFact, number>>,
  sizing: SizingValues,
  p: ParameterValues,
): number {
  const drawn = sizing.colonised * fact.rockKg + fact.glassM2 + fact.sandM2;
  const reading = latestReading(facts.readings, "tan_mg_n_per_l");
  const readable = reading !== null && reading.censored === null && reading.value.low > 0;
  if (fact.ageDays < SETTLED_DAYS || readable) return drawn;
  const warm = (q10: number) => q10 ** ((fact.temperatureC - 25) / 10);
  const need = (k: number, mu: number, loss: number, speed: number, most: number): number => {
    const growth = mu * speed;
    if (growth <= loss) return 0;
    const level = (ABOVE_LEAST * k * loss) / (growth - loss);
    const share = level / (k + level);
    const load = fact.feedGPerDay * fact.feedNMgPerG;
    return load / (speed * share) / (1 - loss / (growth * share)) / most;
  };
  const decay = warm(p.q10dec);
  return Math.max(
    drawn,
    need(p.KT, p.muA, p.bA * decay, warm(p.q10A), p.gamA),
    need(p.KI, p.muN, p.bN * decay, warm(p.q10N), p.gamN),
  );
}

/** Carbon in a gram of dry pellet, mg: what a gram of feed is reckoned in. @source feed.pellet (420 as fed) */
const DRY_FEED_C = 420;

/**
 * Feed in grams of dry pellet of the same carbon: a fish's appetite is for food, not for the water in frozen food.
 * Carbon, nitrogen and phosphorus a day stay what they were.
 */
function asDryFeed(
  fact: Readonly<Record<DrawnFact, number>>,
): Pick<Inputs, "feed" | "feedC" | "feedN" | "feedP"> {
  const perGram = fact.feedCMgPerG / DRY_FEED_C;
  return {
    feed: fact.feedGPerDay * perGram,
    feedC: DRY_FEED_C,
    feedN: fact.feedNMgPerG / perGram,
    feedP: fact.feedPMgPerG / perGram,
  };
}

/** The latest reading of a quantity, or null. */
export function latestReading(readings: readonly Reading[], quantity: Reading["quantity"]): Reading | null {
  const of = readings.filter((reading) => reading.quantity === quantity);
  return of.reduce<Reading | null>(
    (latest, reading) => (latest === null || (reading.on ?? "") >= (latest.on ?? "") ? reading : latest),
    null,
  );
}

/**
 * A concentration at a member's score: the latest reading within its kit's doubt; below a kit's step, anything
 * from a hundredth of the step up to it; without a reading, what tanks usually have.
 */
function concentration(
  readings: readonly Reading[],
  quantity: Reading["quantity"],
  usual: number,
  score: (name: string) => number,
): number {
  const reading = latestReading(readings, quantity);
  if (reading === null) return usual;
  const { value, censored } = reading;
  const band: Spread =
    censored === "below" ? { low: value.high / 100, central: value.high / 4, high: value.high } : value;
  return valueAt(band, score(quantity));
}
