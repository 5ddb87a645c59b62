/**
 * What to expect in the weeks ahead, from the runs: when a limit is likely crossed, when a growth is at its most. Nothing
 * is told that the middle of the runs doesn't show; chances stand beside their number.
 */
import type { AheadOutput } from "../../contract/output/ahead.ts";
import { daysBetween } from "../../contract/quantity/calendar.ts";
import { joined, told } from "../sentence.ts";
import { chance } from "../words.ts";
import type { WeekItem } from "./item.ts";

type Outlook = AheadOutput["as_it_is"];

/** Growths whose rise and fall a keeper can see. */
const SEEN: Readonly<Record<string, string>> = {
  film_glass: "film on the glass",
  film_rock: "film on the rock",
  hair_algae: "hair algae",
};
/** A hump is told when its top is this many times both ends of the run. */
const HUMP = 1.5;
const DAYS_A_WEEK = 7;
/** Above the limit in so many more of the twenty runs than today, and it is told. */
const TOLD_OF_20 = 3;

export function expected({ as_it_is, tank }: AheadOutput): readonly WeekItem[] {
  return [...crossings(as_it_is, tank.as_of), ...humps(as_it_is), ...clearings(as_it_is)];
}

/** What more feed drives up. */
const FED: readonly string[] = ["tan", "nh3", "no2", "no3", "po4"];

function crossings({ chances }: Outlook, today: string): WeekItem[] {
  const crossed = chances.flatMap((one) =>
    one.first_on === null || one.of_20 - one.already_of_20 < TOLD_OF_20
      ? []
      : [
          {
            ...one,
            inDays: daysBetween(today, one.first_on.middle),
            name: NAMES[one.quantity] ?? one.quantity,
          },
        ],
  );
  const items = crossed.map(({ inDays, name, limit, unit, of_20, figures }): WeekItem => {
    const most = unit.startsWith("mg C")
      ? `${name} past where it is a nuisance`
      : `${name} above ${Number(limit.toPrecision(2))} ${unit}`;
    const text = [`${capital(most)}: `, told(chance(of_20), figures.chance), "."];
    return { inDays, list: "expect", weight: 40 + of_20, text };
  });
  const fed = crossed.filter(({ quantity }) => FED.includes(quantity));
  if (fed.length === 0) return items;
  const names = joined(fed.map(({ name, figures }) => told(name, figures.chance)));
  const inDays = Math.min(...fed.map((one) => one.inDays));
  const text = ["No more feed than now: ", ...names, " would rise with it."];
  return [...items, { inDays, list: "dont", weight: 30, text }];
}

function humps({ quantities }: Outlook): WeekItem[] {
  return quantities.flatMap(({ id, q50, figure }) => {
    const seen = SEEN[id];
    const top = Math.max(...q50);
    const week = q50.indexOf(top);
    const ends = Math.max(q50[0] ?? top, q50.at(-1) ?? top);
    if (seen === undefined || week === 0 || week === q50.length - 1 || top < HUMP * ends) return [];
    const text = [told(`${capital(seen)} at its most`, figure), ", then less: the middle of the runs."];
    return { inDays: week * DAYS_A_WEEK, list: "expect" as const, weight: 30, text };
  });
}

/** A kit shows nothing below this, mg N/L. */
const CLEAR_MG_N_PER_L = 0.05;
const MAJORITY_OF_20 = 14;

/** Ammonia and nitrite both out of a kit's sight, in 14 or more of the 20 runs, for the first time. */
function clearings({ quantities }: Outlook): WeekItem[] {
  const [tan, no2] = ["tan", "no2"].map((id) => quantities.find((quantity) => quantity.id === id));
  if (tan === undefined || no2 === undefined) return [];
  const clearRuns = (week: number) =>
    tan.runs.filter(
      (run, i) =>
        Math.max(run[week] ?? Number.POSITIVE_INFINITY, no2.runs[i]?.[week] ?? Number.POSITIVE_INFINITY) <
        CLEAR_MG_N_PER_L,
    ).length;
  if (clearRuns(0) >= MAJORITY_OF_20) return [];
  const week = tan.q50.findIndex((_, i) => clearRuns(i) >= MAJORITY_OF_20);
  if (week < 1) return [];
  const text = [
    "No ammonia and no nitrite that a kit can see: ",
    told(chance(clearRuns(week)), no2.figure),
    ".",
  ];
  return [{ inDays: week * DAYS_A_WEEK, list: "expect", weight: 70, text }];
}

const NAMES: Readonly<Record<string, string>> = {
  ...SEEN,
  ...{ tan: "total ammonia", nh3: "un-ionised ammonia", no2: "nitrite", no3: "nitrate", po4: "phosphate" },
};

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
