/** Which quantity to test when: what is dangerous or near a limit first, what nobody measured, then what readings allow. */

import { MEASURES } from "../../contract/daybook/read-reading.ts";
import type { Measured } from "../../contract/daybook/reading.ts";
import type { QuantityTrend } from "../../contract/output/trends.ts";
import { addDays, daysBetween } from "../../contract/quantity/calendar.ts";
import { earliestMeeting, MOST_DAYS, testAgainIn } from "../../engine/care/dated/test-days.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { exact, workedOut } from "../../engine/types/link.ts";
import { type Sentence, told } from "../sentence.ts";
import { withUnit } from "../trends/amounts.ts";
import { counted, dateWords, lowered } from "../words.ts";
import type { CareDate } from "./care-date.ts";
import { type AlmanacScene, almanacFigure, type Dated, duty, later, shownFigure } from "./scene.ts";

/** What plan and forecast rest on, and what each tells. */
const WANTED: readonly (readonly [Measured, string])[] = [
  ["no3_mg_per_l", "how fast algae grow"],
  ["po4_mg_per_l", "whether algae are held back"],
  ["alkalinity_dkh", "whether shells can be built"],
  ["salinity_psu", "whether the water suits the animals"],
  ["temperature_c", "how much animals eat"],
];
/** Facts of the plan that a reading settles. */
const FACT_OF: Readonly<Partial<Record<Measured, string>>> = {
  no3_mg_per_l: "no3_mg_n_per_l",
  po4_mg_per_l: "po4_mg_p_per_l",
  temperature_c: "temperatureC",
};
/** Tests within so many days of each other are one evening's work. */
const ONE_EVENING_DAYS = 3;
/** Not measured for so long: nobody follows it. */
const FORGOTTEN_DAYS = 120;
/** First tests that are asked for at once: those that would change the plan most go first. */
const MOST_FIRST = 2;
/** Without a danger, ammonia and nitrite of a settled tank are left to the start-up's part. */
const SETTLED_DAYS = 60;

export function testDates(scene: AlmanacScene): Dated {
  const { trends, facts, today } = scene;
  const followed = trends.quantities.filter((trend) => isFollowed(trend, facts.ageDays.central, today));
  const read = new Set(trends.quantities.map(({ id }) => id));
  const unread = WANTED.filter(([id]) => !read.has(id));
  const asked = unread.toSorted((a, b) => weightOf(b[0], scene) - weightOf(a[0], scene));
  const [first, rest] = [asked.slice(0, MOST_FIRST), asked.slice(MOST_FIRST)];
  const dates = [
    ...followed.map((trend) => again(trend, scene)),
    ...first.map(([id, tells]) => never(id, tells, scene)),
  ];
  return {
    dates: oneEvening(dates),
    undated: rest.map(([id, tells]) => ({
      ...{ id: `test.${id}`, what: `First test of ${lowered(MEASURES[id].label)}`, figures: [] },
      why: [`Never measured here; it tells ${tells}. It is asked for once the first tests are done.`],
    })),
  };
}

function isFollowed({ id, latest, danger }: QuantityTrend, ageDays: number, today: string): boolean {
  if (danger?.stands === true || latest.danger) return true;
  const poison = id === "tan_mg_n_per_l" || id === "no2_mg_per_l";
  if (poison && ageDays > SETTLED_DAYS) return false;
  return daysBetween(latest.on, today) <= FORGOTTEN_DAYS || WANTED.some(([wanted]) => wanted === id);
}

function again(trend: QuantityTrend, scene: AlmanacScene): CareDate {
  const { id, label, latest, danger, enough } = trend;
  const { today } = scene;
  const common = {
    ...{ id: `test.${id}`, kind: "test" as const, restsOn: `${latest.on} ${latest.value} ${trend.readings}` },
    do: [`Test ${lowered(label)}.`],
    done: { kind: "reading" as const, fields: { quantity: id } },
    leads: "trends" as const,
    wouldChange: ["A reading: the next date follows from it."],
  };
  if (danger?.stands === true) {
    return duty({
      ...common,
      on: today,
      why: [["The last reading was dangerous, and nothing later says otherwise."]],
      byWhen: ["Today, and each day until two readings are in order."],
    });
  }
  if (trend.today === null || trend.per_week === null) {
    const soonest = enough === null ? addDays(latest.on, 7) : enough.not_before;
    return duty({
      ...common,
      on: later(soonest, today),
      why: [
        [
          enough === null
            ? `The last reading is of ${dateWords(latest.on)}: it says little of today.`
            : `${counted(trend.readings, "reading")} can't tell which way it goes; ${counted(enough.readings, "more")} could.`.replace(
                /(\d+) mores?/,
                "$1 more",
              ),
        ],
        ...planWants(id, scene),
      ],
      byWhen: ["When you next test the water; nothing is lost by waiting."],
    });
  }
  const figure = againFigure(trend);
  const on = later(addDays(latest.on, figure.spread.central), today);
  return duty({
    ...common,
    on,
    why: [whyAgain(trend, figure), ...planWants(id, scene)],
    byWhen: [`By ${dateWords(on)}, give or take two days.`],
    figures: [figure],
  });
}

const bound = ({ limits }: QuantityTrend, side: "above" | "below") =>
  limits.find((limit) => limit.side === side) ?? null;

function meeting(trend: QuantityTrend): number | null {
  const { today, per_week: week } = trend;
  if (today === null || week === null) return null;
  const perDay = { low: week.low / 7, central: week.central / 7, high: week.high / 7 };
  const above = bound(trend, "above")?.value ?? null;
  const below = bound(trend, "below")?.value ?? null;
  return earliestMeeting({ today, perDay, above, below });
}

function againFigure(trend: QuantityTrend): Figure {
  const { id, label, unit, figures } = trend;
  const earliest = meeting(trend);
  return almanacFigure(`test_days.${id}`, {
    ...{
      label: `Days from a test of ${lowered(label)} to the next`,
      spread: exact(testAgainIn(earliest)),
      unit: "d",
    },
    formulaKey: "almanac.md#tests",
    formula: "half of the time in which the outermost version of the line could meet a limit; 1 to 28 days",
    inputs: [
      ...(figures.today === null || trend.today === null
        ? []
        : [
            shownFigure({
              id: figures.today,
              label: "level today",
              spread: trend.today,
              unit: unit === "" ? "1" : unit,
            }),
          ]),
      ...(figures.slope === null || trend.per_week === null
        ? []
        : [
            shownFigure({
              id: figures.slope,
              label: "slope",
              spread: trend.per_week,
              unit: unit === "" ? "a week" : `${unit}/week`,
            }),
          ]),
      ...trend.limits.map((limit) => ({
        ...{ label: `limit ${limit.side}`, value: withUnit(String(limit.value), unit) },
        ...{ origin: "figure" as const, figure: limit.figures.limit },
      })),
      workedOut(
        "could meet one at the earliest",
        earliest === null ? `not within ${2 * MOST_DAYS} days` : `in ${counted(Math.floor(earliest), "day")}`,
      ),
    ],
    wouldChange: ["a reading today", "a kit with a finer step"],
  });
}

function whyAgain(trend: QuantityTrend, figure: Figure): Sentence {
  const earliest = meeting(trend);
  const door = told(counted(figure.spread.central, "day"), figure.id);
  if (earliest === null)
    return ["As it was read, no limit could be met within eight weeks; once in ", door, " keeps that so."];
  if (earliest === 0)
    return ["By its readings it could be beyond a limit already: a test again after ", door, "."];
  return [
    `By its readings it could meet a limit in ${counted(Math.max(1, Math.floor(earliest)), "day")} at the earliest: a test after half of that, `,
    door,
    ", sees it in time.",
  ];
}

/** Share of the plan's doubt that a reading of it would settle. */
const weightOf = (id: Measured, { waves }: AlmanacScene): number =>
  waves.would_change.find(({ fact }) => fact === FACT_OF[id])?.weight ?? 0;

/** That the plan hangs on it. */
function planWants(id: string, { waves }: AlmanacScene): Sentence[] {
  const fact = FACT_OF[id as Measured];
  const place = waves.would_change.findIndex((one) => one.fact === fact);
  const found = fact === undefined ? undefined : waves.would_change[place];
  if (found === undefined) return [];
  return [[`It is ${place === 0 ? "what" : "among what"} would change the plan most.`]];
}

function never(id: Measured, tells: string, scene: AlmanacScene): CareDate {
  return duty({
    ...{ id: `test.${id}`, kind: "test", on: scene.today, restsOn: "never measured" },
    do: [`Test ${lowered(MEASURES[id].label)} for the first time.`],
    why: [[`It was never measured here. It tells ${tells}.`], ...planWants(id, scene)],
    byWhen: ["When you next test the water; the wide range stands meanwhile."],
    wouldChange: ["A reading, even from a rough kit."],
    done: { kind: "reading", fields: { quantity: id } },
    leads: "readings",
  });
}

/** Tests of days that lie close together are taken on the first of them. */
function oneEvening(dates: readonly CareDate[]): CareDate[] {
  let evening: string | null = null;
  return dates
    .toSorted((a, b) => a.on.localeCompare(b.on))
    .map((one) => {
      if (evening === null || daysBetween(evening, one.on) > ONE_EVENING_DAYS) evening = one.on;
      return evening === one.on ? one : { ...one, on: evening };
    });
}
