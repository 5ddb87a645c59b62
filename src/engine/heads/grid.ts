/**
 * How likely each whole number of heads is, under one set of rates: settled heads by doomed newcomers, unnormalised.
 * What happens to heads moves the grid, what is seen of them weighs it. Exact on whole numbers: docs/model/heads.md,
 * "Whole numbers". `onRecord` are the heads that came, less those found dead or moved out: the living and the hidden dead.
 */
import { betaBinomial, choose } from "./chances.ts";

export interface Grid {
  /** Most settled heads, and most doomed newcomers. */
  readonly settled: number;
  readonly doomed: number;
  readonly onRecord: number;
  /** Place of (settled o, doomed d): o x (doomed + 1) + d. */
  readonly mass: Float64Array;
}

/** Mass under this, against all, is let go: it is of no account, and powers of small chances take time. */
const LEAST = 1e-15;

export const gridOf = (heads: number): Grid => {
  const mass = new Float64Array(heads + 1);
  mass[heads] = 1;
  return { settled: heads, doomed: 0, onRecord: heads, mass };
};

function mapped(
  grid: Grid,
  to: { readonly settled: number; readonly doomed: number; readonly onRecord: number },
  each: (
    settled: number,
    doomed: number,
    mass: number,
    put: (o: number, d: number, mass: number) => void,
  ) => void,
): Grid {
  const width = to.doomed + 1;
  const mass = new Float64Array((to.settled + 1) * width);
  const put = (o: number, d: number, part: number): void => {
    const at = o * width + d;
    mass[at] = mass[at]! + part;
  };
  const least = LEAST * total(grid);
  for (let o = 0; o <= grid.settled; o += 1) {
    for (let d = 0; d <= grid.doomed; d += 1) {
      const part = grid.mass[o * (grid.doomed + 1) + d]!;
      if (part > least) each(o, d, part, put);
    }
  }
  return { ...to, mass };
}

export function total({ mass }: Grid): number {
  let sum = 0;
  for (let i = 0; i < mass.length; i += 1) sum += mass[i]!;
  return sum;
}

/** The same heads, every mass times a number. */
export function scaled(grid: Grid, by: number): Grid {
  const mass = new Float64Array(grid.mass.length);
  for (let i = 0; i < mass.length; i += 1) mass[i] = grid.mass[i]! * by;
  return { ...grid, mass };
}

/** Two grids of one shape, each with its share. */
export function mixed(one: Grid, share: number, other: Grid, ofOther: number): Grid {
  const mass = new Float64Array(one.mass.length);
  for (let i = 0; i < mass.length; i += 1) mass[i] = one.mass[i]! * share + other.mass[i]! * ofOther;
  return { ...one, mass };
}

/** What one head of a span can come to, with the chance of each; the rest, found and written down, did not happen. */
export interface HeadFate {
  readonly lives: number;
  /** Dead, and not found up to the end. */
  readonly hidden: number;
  /** A body that was there before is not found. */
  readonly staysHidden: number;
}

/** A span in which nothing was found: settled heads live or die unseen, and older bodies stay unfound. */
export function passed(grid: Grid, { lives, hidden, staysHidden }: HeadFate): Grid {
  const { settled: most, doomed, onRecord } = grid;
  const width = doomed + 1;
  const mass = new Float64Array(grid.mass.length);
  const least = LEAST * total(grid);
  const alive = powers(lives, most);
  const unfound = powers(staysHidden, onRecord);
  const odds = hidden / lives;
  for (let o = 0; o <= most; o += 1) {
    for (let d = 0; d < width; d += 1) {
      const part = grid.mass[o * width + d]!;
      if (part <= least) continue;
      let chance = part * unfound[onRecord - o - d]! * alive[o]!;
      // From all alive downwards: past the likeliest number each death more is rarer, and the rest is of no account.
      for (let dead = 0; dead <= o; dead += 1) {
        const at = (o - dead) * width + d;
        mass[at] = mass[at]! + chance;
        chance *= ((o - dead) / (dead + 1)) * odds;
        if (chance < least && dead > o * odds) break;
      }
    }
  }
  return { ...grid, mass };
}

function powers(base: number, most: number): Float64Array {
  const all = new Float64Array(most + 1);
  all[0] = 1;
  for (let i = 1; i <= most; i += 1) all[i] = all[i - 1]! * base;
  return all;
}

/** Doomed newcomers die with chance `dies` on this day, those that die unfound with chance 1 - `found`. */
export function newcomersDied(grid: Grid, dies: number, found: number): Grid {
  if (grid.doomed === 0) return grid;
  return mapped(grid, grid, (o, d, mass, put) => {
    for (let dead = 0; dead <= d; dead += 1) {
      put(o, d - dead, mass * choose(d, dead) * (dies * (1 - found)) ** dead * (1 - dies) ** (d - dead));
    }
  });
}

/** Room for no more heads than are on record. */
const atMost = ({ settled, doomed }: Grid, onRecord: number) => ({
  ...{ settled: Math.min(settled, onRecord), doomed: Math.min(doomed, onRecord), onRecord },
});

/** Bodies found on one day: of settled heads that died today, of newcomers, of those dead before. */
export function bodiesFound(
  grid: Grid,
  count: number,
  chance: { readonly settled: number; readonly newcomer: number; readonly older: number },
): Grid {
  // More found than the record holds: heads were added and not written down. Those there are gone.
  const taken = Math.min(count, grid.onRecord);
  return mapped(grid, atMost(grid, grid.onRecord - taken), (o, d, mass, put) => {
    const hidden = grid.onRecord - o - d;
    for (let ofSettled = 0; ofSettled <= Math.min(taken, o); ofSettled += 1) {
      const one = mass * choose(o, ofSettled) * chance.settled ** ofSettled;
      for (let ofNew = 0; ofNew <= Math.min(taken - ofSettled, d); ofNew += 1) {
        const ofOlder = taken - ofSettled - ofNew;
        if (ofOlder > hidden) continue;
        const two = choose(d, ofNew) * chance.newcomer ** ofNew;
        const three =
          choose(hidden, ofOlder) * chance.older ** ofOlder * (1 - chance.older) ** (hidden - ofOlder);
        put(o - ofSettled, d - ofNew, one * two * three);
      }
    }
  });
}

/** Newcomers, of whom so many are doomed with the chance at that place of `doomed`. */
export function added(grid: Grid, count: number, doomed: readonly number[]): Grid {
  const to = {
    settled: grid.settled + count,
    doomed: grid.doomed + count,
    onRecord: grid.onRecord + count,
  };
  return mapped(grid, to, (o, d, mass, put) => {
    for (let of = 0; of <= count; of += 1) put(o + count - of, d + of, mass * doomed[of]!);
  });
}

/** All newcomers of the window have died or settled. */
export function settled(grid: Grid): Grid {
  if (grid.doomed === 0) return grid;
  return mapped(grid, { ...grid, doomed: 0 }, (o, _, mass, put) => put(o, 0, mass));
}

/** Weight of what goes against the record: a slip of the pen is likelier than what can't be. */
const SLIP = 1e-3;

/** Heads that left alive: so many lived. */
export function movedOut(grid: Grid, count: number): Grid {
  const taken = Math.min(count, grid.onRecord);
  return mapped(grid, atMost(grid, grid.onRecord - taken), (o, d, mass, put) => {
    const ofSettled = Math.min(taken, o);
    const ofNew = Math.min(taken - ofSettled, d);
    put(o - ofSettled, d - ofNew, ofSettled + ofNew === taken ? mass : mass * SLIP);
  });
}

/** Weighs each number of living heads, 0 to those on record. */
export function weighed(grid: Grid, weights: ArrayLike<number>): Grid {
  const mass = new Float64Array(grid.mass.length);
  const width = grid.doomed + 1;
  for (let o = 0; o <= grid.settled; o += 1) {
    for (let d = 0; d < width; d += 1) {
      // Beyond the record lies no mass.
      mass[o * width + d] = grid.mass[o * width + d]! * (weights[o + d] ?? 0);
    }
  }
  return { ...grid, mass };
}

/**
 * Counts that are plain mistakes: any number up to those there, or more than there are, each one more being rarer. Seeing
 * more is the rarer mistake by far, so that many seen never speaks for few.
 */
export interface Mistakes {
  readonly fewer: number;
  readonly more: number;
}
const MISTAKES: Mistakes = { fewer: 0.009, more: 0.001 };
const ONE_MORE = 0.3;

/** Chance that a count of `living` heads sees `most` by mistake; all above what is on record count as that. */
const overseen = (seen: number, living: number, onRecord: number): number =>
  (seen >= onRecord ? 1 : 1 - ONE_MORE) * ONE_MORE ** (seen - living - 1);

/** Weight of a count with a chance of being seen, by living heads. `about`: a quarter more or less was meant. */
export function countWeight(
  seen: number,
  about: boolean,
  onRecord: number,
  mean: number,
  strength: number,
  { fewer, more }: Mistakes = MISTAKES,
): number[] {
  const off = about ? Math.max(1, Math.round(seen / 4)) : 0;
  const most = Math.min(seen, onRecord);
  const from = Math.max(0, most - off);
  const meant = Array.from({ length: Math.min(seen + off, onRecord) - from + 1 }, (_, i) => from + i);
  const chanceOf = (k: number, living: number): number =>
    (1 - fewer - more) * betaBinomial(k, living, mean, strength) +
    (k <= living ? fewer / (living + 1) : more * overseen(k, living, onRecord));
  return Array.from(
    { length: onRecord + 1 },
    (_, living) => meant.reduce((sum, k) => sum + chanceOf(k, living), 0) / meant.length,
  );
}

/** Weight of a count that says "at least so many": those it saw live, unless it was mistaken. */
export function leastWeight(seen: number, about: boolean, onRecord: number): number[] {
  const sure = Math.min(about ? Math.floor(seen * 0.75) : seen, onRecord);
  return Array.from({ length: onRecord + 1 }, (_, living) =>
    living >= sure ? 1 : MISTAKES.more * ONE_MORE ** (sure - living - 1),
  );
}

/** Chance of each number of living heads, 0 to those on record; sums to the grid's mass. */
export function living(grid: Grid): Float64Array {
  const chances = new Float64Array(grid.onRecord + 1);
  for (let o = 0; o <= grid.settled; o += 1) {
    for (let d = 0; d <= grid.doomed; d += 1) {
      const mass = grid.mass[o * (grid.doomed + 1) + d]!;
      if (mass > 0) chances[o + d] = chances[o + d]! + mass;
    }
  }
  return chances;
}
