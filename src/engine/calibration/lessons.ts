/**
 * How far the daybook moved the ensemble, as plain data: each quantity's band before and after, how well it is seen, and
 * what each group of observations and each observation had to do with it. Shares and pulls are those of one linear step
 * from the first runs (its gain), not of the passes that learned: they tell who pulled, not the last decimal.
 */
import type { Member } from "../larder/members.ts";
import { log } from "../numeric/elementary.ts";
import { bandOf } from "../numeric/quantile.ts";
import type { Spread } from "../types/estimate.ts";
import type { Calibration } from "./calibrate.ts";
import { censoredAs } from "./errors.ts";
import { cholesky, covariances, deviations, dot, type Matrix, meanOf, solve } from "./matrix.ts";
import { GROUPS, type Group, type Observed } from "./observed.ts";
import { QUANTITIES_LEARNED, type Quantity } from "./quantities.ts";

/** Spread left of the prior's, up to which a quantity counts as well or partly seen. Judgement. */
const WELL_SEEN = 0.5;
const PARTLY_SEEN = 0.8;
/** What is exactly known has nothing to be learned of. */
const NO_SPREAD = 1e-9;
export type Seen = "well" | "partly" | "hardly";

export interface Lesson {
  readonly id: string;
  readonly before: Spread;
  readonly after: Spread;
  /** Standard deviation after over before, on the scale that it is compared on. */
  readonly spreadLeft: number;
  readonly seen: Seen;
  /** Each group's pull on it, in standard deviations of before; groups that pull nowhere are left out. */
  readonly pulls: Readonly<Partial<Record<Group, number>>>;
}

export interface GroupLesson {
  readonly group: Group;
  readonly observations: number;
  /** Of all that was learned, the share that would be missing without this group, 0 to 1. */
  readonly share: number;
}

export interface ReadingLesson {
  readonly entry: string;
  readonly on: string;
  readonly group: Group;
  /** The quantity that it moved most, and by how many standard deviations of before. */
  readonly moved: string;
  readonly by: number;
  /** Times its error was widened because it lies off every run; 1 for most. */
  readonly outlying: number;
}

export interface Lessons {
  readonly quantities: readonly Lesson[];
  readonly groups: readonly GroupLesson[];
  readonly readings: readonly ReadingLesson[];
}

/** Null where nothing was taught. */
export function lessonsOf({ taught, observed }: Calibration): Lessons | null {
  if (taught === null) return null;
  const { before, after, errors, outlying } = taught;
  const asked = QUANTITIES_LEARNED.filter(
    (quantity) =>
      (quantity.has === undefined || before.members.some(quantity.has)) &&
      spreadOf(valuesOf(quantity, before.members)) > NO_SPREAD,
  );
  const old = asked.map((quantity) => valuesOf(quantity, before.members));
  const now = asked.map((quantity) => valuesOf(quantity, after.members));
  const gain = linearGain(old.map(standard), censoredAs(observed, before.predicted), observed, errors);
  const groupOf = observed.map(({ group }) => group);
  const present = GROUPS.filter((group) => groupOf.includes(group));
  const all = gain.told();
  const total = all.reduce((sum, told) => sum + told, 0);
  return {
    quantities: asked.map(({ id, of }, k) => {
      const left = spreadOf(now[k]!) / Math.max(spreadOf(old[k]!), 1e-12);
      const pulls = present.map((group) => [
        group,
        gain.pulls[k]!.reduce((sum, pull, i) => (groupOf[i] === group ? sum + pull : sum), 0),
      ]);
      return {
        id,
        before: bandOf(before.members.map(of)),
        after: bandOf(after.members.map(of)),
        spreadLeft: left,
        seen: left < WELL_SEEN ? "well" : left < PARTLY_SEEN ? "partly" : "hardly",
        pulls: Object.fromEntries(pulls) as Lesson["pulls"],
      };
    }),
    groups: present.map((group) => {
      const without = gain.told((i) => groupOf[i] !== group).reduce((sum, told) => sum + told, 0);
      return {
        group,
        observations: observed.reduce((sum, one) => sum + (one.group === group ? one.of : 0), 0),
        share: total > 0 ? Math.max(0, (total - without) / total) : 0,
      };
    }),
    readings: observed.map(({ entry, on, group }, i) => {
      const most = asked.reduce(
        (best, _, k) => (Math.abs(gain.pulls[k]![i]!) > Math.abs(gain.pulls[best]![i]!) ? k : best),
        0,
      );
      const by = gain.pulls[most]![i]!;
      return { entry, on, group, moved: asked[most]!.id, by, outlying: outlying[i]! };
    }),
  };
}

const valuesOf = ({ of, ratio }: Quantity, members: readonly Member[]): Float64Array =>
  Float64Array.from(members, (member) => (ratio ? log(Math.max(of(member), 1e-12)) : of(member)));

const spreadOf = (values: Float64Array): number => {
  const mean = meanOf(values);
  const around = values.map((value) => value - mean);
  return Math.sqrt(dot(around, around) / Math.max(1, values.length - 1));
};

/** In standard deviations about the mean. */
const standard = (values: Float64Array): Float64Array => {
  const mean = meanOf(values);
  const spread = Math.max(spreadOf(values), 1e-12);
  return values.map((value) => (value - mean) / spread);
};

interface Gain {
  /** A row a quantity, a column an observation: how far it pulled. */
  readonly pulls: readonly Float64Array[];
  /** Of each quantity, the share of its variance that the observations asked for explain. */
  readonly told: (asked?: (observation: number) => boolean) => number[];
}

function linearGain(
  quantities: Matrix,
  predicted: Matrix,
  observed: readonly Observed[],
  errors: Matrix,
): Gain {
  const d = deviations(predicted);
  const spread = covariances(d, d);
  const shared = covariances(quantities, d);
  const all = observed.map((_, i) => i);
  const factorOf = (at: readonly number[]) =>
    cholesky(at.map((i) => Float64Array.from(at, (j) => spread[i]![j]! + errors[i]![j]!)));
  const weights = solve(
    factorOf(all),
    Float64Array.from(observed, ({ value }, i) => value - meanOf(predicted[i]!)),
  );
  return {
    pulls: shared.map((row) => row.map((covariance, i) => covariance * weights[i]!)),
    told: (asked = () => true) => {
      const at = all.filter(asked);
      if (at.length === 0) return quantities.map(() => 0);
      const factor = factorOf(at);
      return shared.map((row) => {
        const here = Float64Array.from(at, (i) => row[i]!);
        return dot(here, solve(factor, here));
      });
    },
  };
}
