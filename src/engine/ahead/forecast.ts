/**
 * Weeks ahead: every member of the ensemble run with whole deaths drawn, rows kept by the week, and each week's peak.
 * Advances member by member, so that a caller can show progress and stop. docs/model/ahead.md.
 */
import type { TankEvent } from "../balance/events.ts";
import { dawnOxygen } from "../balance/oxygen.ts";
import { D, FF, FG, FR, FS, headsAt, NO2, NO3, PO4, reserveAt, TAN } from "../balance/pools.ts";
import { ENSEMBLE_STEPS, run } from "../balance/run.ts";
import type { World } from "../balance/world.ts";
import type { Member } from "../larder/members.ts";
import { RandomStream } from "../numeric/random.ts";
import { oxygenSaturation } from "../seawater/oxygen.ts";
import type { TankFacts } from "../types/tank.ts";
import { nToNitrate, pToPhosphate } from "../units/nutrients.ts";
import { celsius, practicalSalinity } from "../units/quantity.ts";
import { awayDays, careAround, feedAround } from "./away.ts";
import { careEvents } from "./care.ts";
import { type CrewKind, standingOf, worldOf } from "./start.ts";

export const ROW_DAYS = 7;

/** Quantities of the water and its growths, one value a member and week. */
export const QUANTITIES = {
  tan: { label: "total ammonia", unit: "mg N/L" },
  nh3: { label: "un-ionised ammonia", unit: "mg N/L" },
  no2: { label: "nitrite", unit: "mg N/L" },
  no3: { label: "nitrate", unit: "mg/L as NO3" },
  po4: { label: "phosphate", unit: "mg/L as PO4" },
  film_glass: { label: "film on glass", unit: "mg C/m2" },
  film_rock: { label: "film on rock", unit: "mg C/m2" },
  film_sand: { label: "film on sand", unit: "mg C/m2" },
  hair_algae: { label: "hair algae", unit: "mg C/m2" },
  detritus_sand: { label: "detritus on sand", unit: "mg C/m2" },
} as const;
export type QuantityId = keyof typeof QUANTITIES;
const QUANTITY_IDS = Object.keys(QUANTITIES) as QuantityId[];

/** Sand below this is none at all, m2. */
const NO_SAND_M2 = 1e-3;

/** Members by weeks: value of member m in week w is at `m * weeks + w`. */
export interface Sheaf {
  readonly weeks: number;
  readonly values: Float32Array;
}

export interface KindOutlook {
  readonly id: string;
  readonly heads: Sheaf;
  /** Reserve level, 0 to 1; not a number where none is left. */
  readonly condition: Sheaf;
}

export interface Forecast {
  readonly days: number;
  readonly weeks: number;
  readonly members: number;
  readonly quantities: Readonly<Record<QuantityId, Sheaf>>;
  /** Greatest midnight value of the week that ends with the row; the first row has the start alone. */
  readonly peaks: Readonly<Record<QuantityId, Sheaf>>;
  readonly kinds: readonly KindOutlook[];
  /** Oxygen at dawn, mg/L; not a number while the tank is dry; null unless asked for. A diagnostic: nothing in the runs depends on it. */
  readonly dawnOxygen: Sheaf | null;
}

export interface ForecastPlan {
  readonly facts: TankFacts;
  readonly members: readonly Member[];
  readonly kinds: readonly CrewKind[];
  /** Additions and whatever else the plan or a what-if brings, besides the usual care. */
  readonly events: readonly TankEvent[];
  readonly days: number;
  readonly seed: number;
  /** What the keeper gives from now on, where that changes; the start stays as `facts` and `members` have it. */
  readonly later?: Later;
  /** Also oxygen at dawn: a few per cent more work. */
  readonly withOxygen?: boolean;
  /** The first members of this very plan, run already over as many days or more: they are taken over, not run again. */
  readonly known?: Forecast | undefined;
}

/** Care of a tank and its members that holds from the plan's day on: feed, light, water changes. */
export interface Later {
  readonly facts: TankFacts;
  /** Drawn with the same count and seed as the plan's, so that one member differs in what changed alone. */
  readonly members: readonly Member[];
}

/** Inputs that a keeper gives day by day. */
const GIVEN = ["feed", "feedC", "feedN", "feedP", "hours", "parG", "parR", "parS"] as const;

function withLater(member: Member, later: Member | undefined): Member {
  if (later === undefined) return member;
  const given = Object.fromEntries(GIVEN.map((input) => [input, later.inputs[input]]));
  return { ...member, inputs: { ...member.inputs, ...given } };
}

export interface Progress {
  readonly done: number;
  readonly of: number;
}

/** Runs the ensemble; yields after every member. */
export function* forecast(plan: ForecastPlan): Generator<Progress, Forecast> {
  const { facts, members, kinds, days, later } = plan;
  const weeks = Math.floor(days / ROW_DAYS) + 1;
  const sheaf = (): Sheaf => ({ weeks, values: new Float32Array(members.length * weeks) });
  const sheaves = () =>
    Object.fromEntries(QUANTITY_IDS.map((id) => [id, sheaf()])) as Record<QuantityId, Sheaf>;
  const quantities = sheaves();
  const peaks = sheaves();
  const outlooks = kinds.map(
    ({ animal }): KindOutlook => ({ id: animal.id, heads: sheaf(), condition: sheaf() }),
  );
  const oxygen = plan.withOxygen === true ? sheaf() : null;
  oxygen?.values.fill(Number.NaN);
  // A tank that is yet to be filled begins on its own first day: until then nothing lives and nothing is crossed.
  const dry = Math.max(0, Math.round(-facts.ageDays.central));
  const wetDays = Math.max(0, days - dry);
  const brought = plan.events.map((event) => ({ ...event, t: Math.max(0, event.t - dry) }));
  const away = awayDays(facts).map((one) => ({ ...one, leave: one.leave - dry, back: one.back - dry }));
  const usualCare = careAround(careEvents(later?.facts ?? facts, wetDays), away);
  const shared = [...usualCare, ...brought].sort((a, b) => a.t - b.t);
  const ran = taken(plan, { quantities, peaks, outlooks, oxygen });
  for (let m = ran; m < members.length; m += 1) {
    const { member: standing, state: start } = standingOf(members[m]!, kinds, facts);
    const member = withLater(standing, later?.members[m]);
    const world = worldOf(member, kinds, facts.phScale, "drawn");
    const fed = feedAround(member.inputs.feed, away, wetDays);
    const events = fed.length === 0 ? shared : [...shared, ...fed].sort((a, b) => a.t - b.t);
    const areas = { FG: member.inputs.Ag, FR: member.inputs.Ar };
    // A member without sand has nothing lying or growing on it.
    const perSand = member.inputs.As > NO_SAND_M2 ? 1 / member.inputs.As : 0;
    run(world, start, events, {
      days: wetDays,
      steps: ENSEMBLE_STEPS,
      rowEvery: 1,
      random: new RandomStream(plan.seed, m),
      onRow: (wetDay, y) => {
        const day = wetDay + dry;
        const week = Math.ceil(day / ROW_DAYS);
        if (week >= weeks) return;
        const at = m * weeks + week;
        const endsWeek = day % ROW_DAYS === 0;
        const perL = 1 / world.inputs.V;
        const put = (id: QuantityId, value: number): void => {
          peaks[id].values[at] = Math.max(peaks[id].values[at]!, value);
          if (endsWeek) quantities[id].values[at] = value;
        };
        put("tan", y[TAN]! * perL);
        put("nh3", y[TAN]! * perL * world.unionisedShare(world.inputs.T, world.inputs.S, world.inputs.pH));
        put("no2", y[NO2]! * perL);
        put("no3", nToNitrate(y[NO3]! * perL));
        put("po4", pToPhosphate(y[PO4]! * perL));
        put("film_glass", y[FG]! / areas.FG);
        put("film_rock", y[FR]! / areas.FR);
        put("film_sand", y[FS]! * perSand);
        put("hair_algae", y[FF]! / areas.FR);
        put("detritus_sand", y[D]! * perSand);
        if (!endsWeek) return;
        if (oxygen !== null) oxygen.values[at] = dawnOxygen(world, y, saturationIn(world)).dawnMgPerL;
        outlooks.forEach((outlook, s) => {
          const heads = y[headsAt(s)]!;
          outlook.heads.values[at] = heads;
          const full = heads * kinds[s]!.species.eFull;
          outlook.condition.values[at] = heads > 0 ? y[reserveAt(s, kinds.length)]! / full : Number.NaN;
        });
      },
    });
    yield { done: m + 1, of: members.length };
  }
  return { days, weeks, members: members.length, quantities, peaks, kinds: outlooks, dawnOxygen: oxygen };
}

/** Takes over what is known; returns how many members that is. */
function taken(
  { known, members, days, withOxygen }: ForecastPlan,
  into: {
    readonly quantities: Readonly<Record<QuantityId, Sheaf>>;
    readonly peaks: Readonly<Record<QuantityId, Sheaf>>;
    readonly outlooks: readonly KindOutlook[];
    readonly oxygen: Sheaf | null;
  },
): number {
  const lacks =
    known === undefined || known.days < days || (withOxygen === true && known.dawnOxygen === null);
  if (lacks || known.members > members.length) return 0;
  for (const id of QUANTITY_IDS) {
    copyRuns(known.quantities[id], into.quantities[id]);
    copyRuns(known.peaks[id], into.peaks[id]);
  }
  into.outlooks.forEach(({ heads, condition }, k) => {
    copyRuns(known.kinds[k]!.heads, heads);
    copyRuns(known.kinds[k]!.condition, condition);
  });
  if (into.oxygen !== null) copyRuns(known.dawnOxygen!, into.oxygen);
  return known.members;
}

/** Runs of one sheaf into another of as many weeks or fewer, from the first member on. */
function copyRuns(from: Sheaf, to: Sheaf): void {
  const runs = Math.min(from.values.length / from.weeks, to.values.length / to.weeks);
  for (let m = 0; m < runs; m += 1) {
    to.values.set(from.values.subarray(m * from.weeks, m * from.weeks + to.weeks), m * to.weeks);
  }
}

/** The first days of a forecast: what it would have been if run no further. */
export function cutTo(whole: Forecast, days: number): Forecast {
  if (days > whole.days) throw new RangeError(`Cannot cut a forecast of ${whole.days} days to ${days}`);
  const weeks = Math.floor(days / ROW_DAYS) + 1;
  const cut = (from: Sheaf): Sheaf => {
    const to = { weeks, values: new Float32Array(whole.members * weeks) };
    copyRuns(from, to);
    return to;
  };
  const all = (sheaves: Readonly<Record<QuantityId, Sheaf>>) =>
    Object.fromEntries(QUANTITY_IDS.map((id) => [id, cut(sheaves[id])])) as Record<QuantityId, Sheaf>;
  return {
    ...{ days, weeks, members: whole.members },
    quantities: all(whole.quantities),
    peaks: all(whole.peaks),
    kinds: whole.kinds.map(({ id, heads, condition }) => ({
      ...{ id, heads: cut(heads), condition: cut(condition) },
    })),
    dawnOxygen: whole.dawnOxygen === null ? null : cut(whole.dawnOxygen),
  };
}

/** Oxygen that the water holds in balance with air, mg/L, within the range that its equation serves. */
const saturationIn = ({ inputs: { T, S } }: World): number =>
  oxygenSaturation(celsius(clamp(T, 0, 40)), practicalSalinity(clamp(S, 0, 42)));
const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** Drives a stepwise work to its end at once. */
export function finish<Result>(work: Generator<Progress, Result>): Result {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}

/** Values of all members in one week. */
export function acrossMembers({ weeks, values }: Sheaf, week: number): Float64Array {
  const members = values.length / weeks;
  return Float64Array.from({ length: members }, (_, m) => values[m * weeks + week]!);
}

/** A share of the members as grains: in how many of 20 runs. */
export const ofTwenty = (share: number): number => Math.round(share * 20);
