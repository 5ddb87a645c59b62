/**
 * Twenty runs that stand for all: picked from the ensemble so that, counted on any week's day, they agree with the
 * bands of the whole to about one run. The first twenty of two hundred do not: they are often four or five off.
 * Limits: picked for each quantity by itself, so the n-th run of two quantities need not be one course of one tank.
 */
import type { Sheaf } from "../../engine/ahead/forecast.ts";
import { acrossMembers } from "../../engine/ahead/forecast.ts";
import { quantile } from "../../engine/numeric/quantile.ts";

const TWENTY = 20;
/** Quantiles at which runs are counted, and runs of twenty that lie at or below each. */
const SHARES = [0.05, 0.25, 0.5, 0.75, 0.95] as const;

/** Whether a member lies below and at or below each threshold: a row of flags a member. */
interface Flags {
  readonly under: Uint8Array;
  readonly upTo: Uint8Array;
  readonly thresholds: number;
}

/** Runs by which a count may be off. */
const NEAR_ENOUGH = 1;

/** Members by number, in order; all of them where there are no more than twenty. */
export function twentyOf(sheaf: Sheaf): number[] {
  const members = sheaf.values.length / sheaf.weeks;
  const all = Array.from({ length: members }, (_, m) => m);
  if (members <= TWENTY) return all;
  const flags = flagsOf(sheaf, members);
  const picked = spreadOut(sheaf, members);
  improve(picked, all, flags);
  return picked.sort((a, b) => a - b);
}

function flagsOf(sheaf: Sheaf, members: number): Flags {
  const thresholds = sheaf.weeks * SHARES.length;
  const under = new Uint8Array(members * thresholds);
  const upTo = new Uint8Array(members * thresholds);
  for (let week = 0; week < sheaf.weeks; week += 1) {
    const values = acrossMembers(sheaf, week);
    SHARES.forEach((share, s) => {
      const limit = quantile(values, share);
      for (let m = 0; m < members; m += 1) {
        const value = sheaf.values[m * sheaf.weeks + week]!;
        const at = m * thresholds + week * SHARES.length + s;
        under[at] = value < limit ? 1 : 0;
        upTo[at] = value <= limit ? 1 : 0;
      }
    });
  }
  return { under, upTo, thresholds };
}

/** The middle member of each twentieth, by its mean rank over the weeks. */
function spreadOut(sheaf: Sheaf, members: number): number[] {
  const rank = new Float64Array(members);
  for (let week = 0; week < sheaf.weeks; week += 1) {
    const order = Array.from({ length: members }, (_, m) => m).sort(
      (a, b) => sheaf.values[a * sheaf.weeks + week]! - sheaf.values[b * sheaf.weeks + week]! || a - b,
    );
    order.forEach((m, place) => {
      rank[m] = rank[m]! + place;
    });
  }
  const byRank = Array.from({ length: members }, (_, m) => m).sort((a, b) => rank[a]! - rank[b]! || a - b);
  return Array.from({ length: TWENTY }, (_, i) => byRank[Math.floor(((i + 0.5) * members) / TWENTY)]!);
}

/** Swaps a picked member for another while that brings the counts nearer; ends because each swap lowers the cost. */
function improve(picked: number[], all: readonly number[], flags: Flags): void {
  const { under, upTo, thresholds } = flags;
  const least = new Int16Array(thresholds);
  const most = new Int16Array(thresholds);
  for (const m of picked) {
    for (let t = 0; t < thresholds; t += 1) {
      least[t] = least[t]! + under[m * thresholds + t]!;
      most[t] = most[t]! + upTo[m * thresholds + t]!;
    }
  }
  const chosen = new Set(picked);
  /** What the counts would cost; anything at or above `enough` is as good as that. */
  const costWith = (out: number, into: number, enough: number): number => {
    let cost = 0;
    for (let t = 0; t < thresholds; t += 1) {
      const low = least[t]! - under[out * thresholds + t]! + under[into * thresholds + t]!;
      const high = most[t]! - upTo[out * thresholds + t]! + upTo[into * thresholds + t]!;
      const wanted = SHARES[t % SHARES.length]! * TWENTY;
      // Equal values lie on both sides of a threshold: any count between the two agrees with it.
      const off = Math.max(0, wanted - high - NEAR_ENOUGH, low - wanted - NEAR_ENOUGH);
      cost += off * off;
      if (cost >= enough) return enough;
    }
    return cost;
  };
  let cost = costWith(picked[0]!, picked[0]!, Number.POSITIVE_INFINITY);
  for (let better = true; better && cost > 0; ) {
    better = false;
    for (let place = 0; place < TWENTY; place += 1) {
      for (const into of all) {
        const out = picked[place]!;
        if (chosen.has(into)) continue;
        const swapped = costWith(out, into, cost);
        if (swapped >= cost) continue;
        for (let t = 0; t < thresholds; t += 1) {
          least[t] = least[t]! - under[out * thresholds + t]! + under[into * thresholds + t]!;
          most[t] = most[t]! - upTo[out * thresholds + t]! + upTo[into * thresholds + t]!;
        }
        chosen.delete(out);
        chosen.add(into);
        picked[place] = into;
        cost = swapped;
        better = true;
      }
    }
  }
}
