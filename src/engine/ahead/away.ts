/**
 * Days on which nobody at home keeps the tank, and what that changes in a forecast: feed as whoever stands in gives it, and
 * usual care moved out of that time: on the day before leaving, and on the day of coming back. docs/model/feeding.md,
 * "Leaving home". Limits: top-up goes on; nothing is known of a sitter who does more than feed.
 */
import type { TankEvent } from "../balance/events.ts";
import { daysBetween } from "../numeric/days.ts";
import type { TankFacts } from "../types/tank.ts";

export type Way = "nothing" | "sitter" | "feeder";

/** A feeder turns a little more out than it is set to and can't see leftovers. Judgement. */
export const FEEDER_GIVES = 1.25;

/** Days before leaving from which on no animal comes: what has just come would be watched by nobody. Judgement. */
export const QUIET_BEFORE_DAYS = 7;

/** Days from the facts' own: of leaving, of coming back. */
export interface AwayDays {
  readonly leave: number;
  readonly back: number;
  readonly way: Way;
  readonly everyDays: number;
}

const WAY_OF = { nobody: "nothing", sitter: "sitter", feeder: "feeder" } as const;

/** Absences that are not over, the first first. */
export const awayDays = ({ absences = [], asOf }: Pick<TankFacts, "absences" | "asOf">): AwayDays[] =>
  absences
    .map(({ from, to, fedBy, everyDays }) => ({
      ...{ leave: daysBetween(asOf, from), back: daysBetween(asOf, to), way: WAY_OF[fedBy], everyDays },
    }))
    .filter(({ back }) => back > 0)
    .toSorted((a, b) => a.leave - b.leave);

/** Share of the usual day's feed that each way gives on day `d` since leaving. */
export function fedOn(way: Way, d: number, sitterEvery: number): number {
  if (way === "nothing") return 0;
  if (way === "feeder") return FEEDER_GIVES;
  // The keeper feeds on the day of leaving.
  return d % sitterEvery === 0 && (d > 0 || sitterEvery === 1) ? 1 : 0;
}

/** Usual care with what falls into an absence done the day before it and on the day after, each kind once. */
export function careAround(events: readonly TankEvent[], away: readonly AwayDays[]): TankEvent[] {
  return away.reduce<TankEvent[]>(
    (all, { leave, back }) => {
      const within = all.filter(({ t }) => t >= leave && t < back);
      const kinds = [...new Map(within.map((event) => [event.kind, event])).values()];
      const home = all.filter((event) => !within.includes(event));
      const before = leave - 1 > 0 ? kinds.map((event) => ({ ...event, t: leave - 1 })) : [];
      const after = kinds.map((event) => ({ ...event, t: back }));
      const fresh = [...before, ...after].filter(
        ({ kind, t }) => !home.some((had) => had.kind === kind && Math.abs(had.t - t) <= 1),
      );
      return [...home, ...fresh];
    },
    [...events],
  );
}

/** Feed by day wherever it differs from the day before. @param usual of a usual day, g */
export function feedAround(usual: number, away: readonly AwayDays[], days: number): TankEvent[] {
  if (away.length === 0) return [];
  const events: TankEvent[] = [];
  let given = usual;
  for (let t = 0; t <= days; t += 1) {
    const gone = away.find(({ leave, back }) => t >= leave && t < back);
    const feed = gone === undefined ? usual : usual * fedOn(gone.way, t - gone.leave, gone.everyDays);
    if (feed !== given) events.push({ t, kind: "set", feed });
    given = feed;
  }
  return events;
}
