/**
 * Calibration: the ensemble learns a tank from its record. Members are run through the daybook's days with what really
 * happened, their days are compared with what was observed, and the scores that they were drawn by are moved (smoother.ts).
 * Advances member by member, so that a caller can show progress and stop. docs/model/calibration.md.
 */
import { type CrewKind, crewKind } from "../ahead/crew.ts";
import type { Progress } from "../ahead/forecast.ts";
import { runWindow } from "../ahead/window.ts";
import type { HeadRates } from "../heads/rates.ts";
import { drawMembers, type Member, type ParameterTable } from "../larder/members.ts";
import { scores } from "../numeric/draws.ts";
import { isCrew } from "../stocking/waves.ts";
import type { Animal } from "../types/animal.ts";
import type { Learned, LearnedWindow } from "../types/learned.ts";
import type { TankRecord } from "../types/record.ts";
import type { TankFacts } from "../types/tank.ts";
import { bystanders, takenByCoincidence } from "./bystanders.ts";
import { errorsHolding, stillApart } from "./catching-up.ts";
import { allowedErrors, censoredAs, type Errors, widened } from "./errors.ts";
import { grouped } from "./grouped.ts";
import { informed } from "./informed.ts";
import { JUDGEMENT } from "./judgement.ts";
import { dot, type Matrix, meanOf, zeros } from "./matrix.ts";
import { learnableNames, TODAY_NAMES } from "./names.ts";
import { hairSeenIn, type Observed, observedIn } from "./observed.ts";
import { runsThatAgree } from "./resample.ts";
import { type Assimilation, assimilated, PASSES } from "./smoother.ts";
import { offsetsToday } from "./today.ts";
import { unseenLossesToday } from "./unseen-losses.ts";
import { windowOf } from "./window-of.ts";

export interface CalibrationPlan {
  /** As of the record's day: its additions, losses and changes are in them. */
  readonly facts: TankFacts;
  readonly record: TankRecord;
  readonly table: ParameterTable;
  readonly rates: HeadRates;
  readonly animals: readonly Animal[];
  readonly members: number;
  readonly seed: number;
}

export interface Calibration {
  /** Without rows where nothing was learned. */
  readonly learned: Learned;
  /** Null where there was too little to learn from. */
  readonly taught: Taught | null;
  /** Observations that could teach. */
  readonly observed: readonly Observed[];
}

/** What the runs were before and after, for telling how far each reading moved them. */
export interface Taught {
  readonly names: readonly string[];
  readonly kinds: readonly CrewKind[];
  readonly before: {
    readonly members: readonly Member[];
    readonly scores: Matrix;
    readonly predicted: Matrix;
  };
  readonly after: {
    readonly members: readonly Member[];
    readonly scores: Matrix;
    readonly predicted: Matrix;
  };
  /** Standard deviation that each observation was given in the end, and how far it stood out. */
  readonly errors: Matrix;
  readonly outlying: readonly number[];
}

const NOTHING = (seed: number): Learned => ({
  ...{ names: [], scores: [], seed },
  window: {
    ...{ from: "", days: 0, events: [], heads: {}, observed: [] },
    first: { feed: 1, fish: 1, hours: 1, light: 1, skimmer: null },
  },
});

export function* calibrate(plan: CalibrationPlan): Generator<Progress, Calibration> {
  const { facts, record, table, rates, animals, members: count, seed } = plan;
  const known = windowOf(facts, record, animals, []);
  const kinds = known === null ? [] : crewIn(facts, known, animals);
  const counting = { kinds, rates, lightHours: facts.lightHours.central };
  const observed = known === null ? [] : observedIn(record, known, counting);
  const told = observed.reduce((sum, { of }) => sum + of, 0);
  if (known === null || told < JUDGEMENT.leastObservations)
    return { learned: NOTHING(seed), taught: null, observed };
  const window: LearnedWindow = {
    ...known,
    observed: [...new Set(observed.map(quantityOf))].sort(),
    ...hairSeenIn(record, known),
    unseenLosses: unseenLossesToday(facts, record, kinds, rates),
  };
  const names = learnableNames();
  const values = Float64Array.from(observed, ({ value }) => value);
  const { passes, times } = JUDGEMENT.catchingUp;
  const of = (1 + PASSES.length + passes) * count;
  let done = 0;
  let drawnBy: readonly number[] = Array.from({ length: count }, (_, m) => m);

  function* predictions(z: Matrix, chosen: readonly string[]): Generator<Progress, Runs> {
    const learned = learnedFrom(chosen, z, { count, seed, drawnBy, window });
    const members = drawMembers({ ...facts, learned }, table, { count, seed });
    const predicted = zeros(observed.length, count);
    for (let m = 0; m < count; m += 1) {
      shownBy(members[m]!, kinds, { ...facts, learned }, window, observed, (i, value) => {
        predicted[i]![m] = value;
      });
      done += 1;
      yield { done, of };
    }
    return { members, predicted };
  }

  const prior = names.map((name) => scores(name, count, seed));
  const first = yield* predictions(prior, names);
  const allowed = allowedErrors(observed);
  const shownAtFirst = censoredAs(observed, first.predicted);
  const chosen = informed(prior, shownAtFirst, allowed);
  const learnedNames = chosen.map((k) => names[k]!);
  const before = chosen.map((k) => prior[k]!);
  let z: Matrix = before;
  let beside: Matrix = bystanders(count, seed);
  let runs: Runs = first;
  let errors: Errors = { covariance: allowed, outlying: [] };
  /** Scores moved once by what the runs showed, kept as they will be kept, and run again. `last`: none after it takes all in. */
  function* pass(name: string, { last, ...how }: Pick<Assimilation, "times" | "errors" | "held"> & Last) {
    const all = assimilated({
      ...{ scores: [...z, ...beside], predicted: censoredAs(observed, runs.predicted) },
      ...{ observed: values, noise: `calibration ${name}`, seed, ...how },
    });
    const [moved, stoodBy] = [all.slice(0, z.length), all.slice(z.length)];
    // What the next pass draws together again is given back; after the last, what was observed best would be loosened.
    const back = last ? 1 : takenByCoincidence(stoodBy);
    z = moved.map((row) => spreadOut(row, back).map(rounded));
    beside = stoodBy.map((row) => spreadOut(row, back));
    runs = yield* predictions(z, learnedNames);
  }
  for (const [k, times] of PASSES.entries()) {
    const predicted = censoredAs(observed, runs.predicted);
    errors = widened(observed, predicted, allowed);
    const { most, keep } = JUDGEMENT.agreeing;
    const weighed = { predicted, observed: values, errors: errors.covariance, most: most / times, keep };
    const { share, rows } = runsThatAgree(weighed);
    z = inRows(z, rows);
    beside = inRows(beside, rows);
    runs = { ...runs, predicted: inRows(runs.predicted, rows) };
    drawnBy = rows.map((row) => drawnBy[row]!);
    const last = k === PASSES.length - 1;
    yield* pass(`${k}`, { times: 1 / (1 / times - share), errors: errors.covariance, last });
  }
  for (let k = 0; k < passes; k += 1) {
    const predicted = censoredAs(observed, runs.predicted);
    errors = widened(observed, predicted, allowed);
    const apart = stillApart(observed, shownAtFirst, predicted, errors.covariance);
    if (!apart.includes(true)) break;
    const held = apart.map((is) => !is);
    const holding = errorsHolding(errors.covariance, apart, times);
    yield* pass(`catching up ${k}`, { times, errors: holding, held, last: true });
  }
  const today = offsetsToday(observed, runs.predicted, errors, window.days, count, seed);
  const rows = [...z, ...TODAY_NAMES.map((name) => today[name].map(rounded))];
  const learned = learnedFrom([...learnedNames, ...TODAY_NAMES], rows, { count, seed, drawnBy, window });
  return {
    ...{ learned, observed },
    taught: {
      ...{ names: learnedNames, kinds, errors: errors.covariance, outlying: errors.outlying },
      before: { members: first.members, scores: before, predicted: first.predicted },
      after: { members: runs.members, scores: z, predicted: runs.predicted },
    },
  };
}

interface Last {
  readonly last: boolean;
}

interface Runs {
  readonly members: readonly Member[];
  readonly predicted: Matrix;
}

/** Members in another order, some of them twice. */
const inRows = (matrix: Matrix, rows: readonly number[]): Matrix =>
  matrix.map((of) => Float64Array.from(rows, (row) => of[row]!));

/** Scores about their mean, so many times as far from it, and never all alike. */
function spreadOut(row: Float64Array, wider: number): Float64Array {
  const mean = meanOf(row);
  const around = row.map((value) => value - mean);
  const spread = Math.sqrt(dot(around, around) / Math.max(1, row.length - 1));
  const times = Math.max(wider, JUDGEMENT.leastSpread / Math.max(spread, 1e-9));
  return around.map((off) => mean + times * off);
}

/** To hundredths; never -0, which text does not keep. */
const rounded = (value: number): number => Math.round(value * 100) / 100 + 0;

const learnedFrom = (
  names: readonly string[],
  z: Matrix,
  { count, ...learnedBy }: Pick<Learned, "seed" | "drawnBy" | "window"> & { readonly count: number },
): Learned => ({
  ...{ names, ...learnedBy },
  scores: Array.from({ length: count }, (_, m) => z.map((row) => row[m]!)),
});

/** What a member's run would have shown of each observation. */
function shownBy(
  member: Member,
  kinds: readonly CrewKind[],
  facts: TankFacts,
  window: LearnedWindow,
  observed: readonly Observed[],
  put: (observation: number, value: number) => void,
): void {
  const { own } = member.learned!;
  const onDay = grouped(observed.keys(), (i) => observed[i]!.day);
  runWindow(member, kinds, facts, window, (day, state, world) => {
    for (const i of onDay.get(day) ?? []) put(i, observed[i]!.shown(state, world, own));
  });
}

/** Everybody of the crew that lived there at some time of the window. */
function crewIn(facts: TankFacts, window: LearnedWindow, animals: readonly Animal[]): CrewKind[] {
  const today = new Map<string, number>();
  for (const { id, count } of facts.present) today.set(id, (today.get(id) ?? 0) + count);
  const there = new Set([
    ...today.keys(),
    ...Object.keys(window.heads),
    ...window.events.flatMap((event) => (event.kind === "arrive" ? [event.animal] : [])),
  ]);
  return animals
    .filter((animal) => isCrew(animal) && there.has(animal.id))
    .map((animal) => crewKind(animal, today.get(animal.id) ?? 0));
}

/** As facts name it: a reading's quantity, or a growth. */
const quantityOf = ({ group }: Observed): string =>
  group === "tan" || group === "no2"
    ? `${group}_mg_n_per_l`
    : group === "no3"
      ? "no3_mg_n_per_l"
      : group === "po4"
        ? "po4_mg_p_per_l"
        : group;
