/** When to change water: the keeper's rhythm, sooner where nitrate or phosphate come in faster than it takes them out. */
import type { QuantityTrend } from "../../contract/output/trends.ts";
import { lastDone } from "../../engine/care/dated/film-days.ts";
import {
  daysToLimit,
  incomePerDay,
  longestBetweenChanges,
} from "../../engine/care/dated/water-change-days.ts";
import { daysBetween } from "../../engine/stocking/suitability.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { exact, factInput, parametersOf, workedOut } from "../../engine/types/link.ts";
import { TABLE } from "../figures/table.ts";
import { type Sentence, told } from "../sentence.ts";
import { two, withUnit } from "../trends/amounts.ts";
import { trendQuantities } from "../trends/quantities.ts";
import { counted, dateWords, lowered } from "../words.ts";
import {
  type AlmanacScene,
  almanacFigure,
  type Dated,
  dated,
  dueAfter,
  duty,
  shownFigure,
  undated,
} from "./scene.ts";

/** More often than this a larger change is meant. Judgement. */
const LEAST_DAYS = 2;
/** What is asked for a year ahead is not asked for. */
const MOST_DAYS = 60;

export function waterDates(scene: AlmanacScene): Dated {
  const { facts, record, today } = scene;
  const share = facts.waterChangeFraction;
  const last = lastDone(record, "water_change");
  const told_ = share.origin === "stated" || facts.waterChangeEveryDays.origin === "stated" || last !== null;
  if (share.central <= 0)
    return undated("water_change", "Water change", [
      "You said that no water is changed; trends watch what comes in.",
    ]);
  const asked = ["no3_mg_per_l", "po4_mg_per_l"].flatMap((id) => askedBy(id, scene));
  const strictest = asked.toSorted((a, b) => a.days - b.days)[0];
  const usual = Math.max(1, Math.round(facts.waterChangeEveryDays.central));
  const bound = strictest !== undefined && strictest.days < usual ? strictest : null;
  if (!told_ && bound === null)
    return undated("water_change", "Water change", [
      "Nobody said how water is changed, none is logged, and no trend asks for it. Say it in the questions, or log one.",
    ]);
  const every = Math.max(LEAST_DAYS, bound === null ? usual : Math.floor(bound.days));
  const beyond = asked.some(({ inDays }) => inDays === 0);
  const on = beyond ? today : dueAfter(last?.on ?? null, every, today);
  const percent = Math.round(100 * share.central);
  return dated(
    duty({
      ...{ id: "water_change", kind: "water_change", on, every },
      do: [`Change ${percent} % of the water, new water matched in salinity and temperature.`],
      why: [
        bound === null
          ? [`Your own rhythm, every ${counted(usual, "day")}, holds what the readings show.`]
          : bound.why,
        ...(bound === null ? asked.map(({ why }) => why) : []),
        [last === null ? "No change is logged yet." : `Last changed on ${dateWords(last.on)}.`],
      ],
      byWhen: [
        beyond
          ? "Soon: by its readings it could be over its limit already. In several smaller changes rather than one large."
          : "Within a few days of its day; nothing turns on one day.",
      ],
      wouldChange: ["Two more readings of nitrate and phosphate, or less feed."],
      figures: asked.map(({ figure }) => figure),
      restsOn: `${every} ${percent} ${last?.entry ?? ""} ${beyond}`,
      done: { kind: "chore", fields: { chore: "water_change", amount: `${percent} %` } },
    }),
  );
}

interface Asks {
  readonly days: number;
  /** Until the limit if nothing is changed. */
  readonly inDays: number;
  readonly figure: Figure;
  readonly why: Sentence;
}

const NEW_WATER = { no3_mg_per_l: "newWaterNo3NMgPerL", po4_mg_per_l: "newWaterPo4PMgPerL" } as const;

function askedBy(id: string, scene: AlmanacScene): Asks[] {
  const { facts, record, trends, shown } = scene;
  const trend = trends.quantities.find((one) => one.id === id);
  const limit = trend?.limits.find(({ side }) => side === "above");
  const quantity = trendQuantities(shown).find((one) => one.id === id);
  if (trend?.today == null || trend.per_week === null || limit === undefined || quantity === undefined)
    return [];
  const field = NEW_WATER[id as keyof typeof NEW_WATER];
  const newWater = facts[field].central * quantity.scale.factor;
  const share = facts.waterChangeFraction.central;
  const shares = record.happenings.flatMap((one) =>
    one.kind === "chore" &&
    one.chore === "water_change" &&
    one.on >= trend.window.from &&
    one.on <= trend.window.to
      ? [one.share ?? share]
      : [],
  );
  const days = Math.max(1, daysBetween(trend.window.from, trend.window.to));
  const level = trend.today.central;
  const income = incomePerDay({ level, perDay: trend.per_week.central / 7, shares, days, newWater });
  const longest = Math.min(MOST_DAYS, longestBetweenChanges({ limit: limit.value, newWater, share, income }));
  const inDays = daysToLimit(level, limit.value, income);
  const figure = figureOf({ trend, limit, longest, income, shares, field, scene, newWater });
  return [{ days: longest, inDays, figure, why: whyOf(trend, limit, longest, income, figure) }];
}

type Limit = QuantityTrend["limits"][number];

function whyOf(
  trend: QuantityTrend,
  limit: Limit,
  longest: number,
  income: number,
  figure: Figure,
): Sentence {
  const name = lowered(trend.label);
  const held = told(withUnit(String(limit.value), trend.unit), limit.figures.limit);
  if (income <= 0) return [`Nothing of ${name} builds up as read: it asks for no change.`];
  const often =
    longest >= MOST_DAYS ? `${MOST_DAYS} days or more` : counted(Math.max(1, Math.floor(longest)), "day");
  return [
    `About ${withUnit(two(income * 7), trend.unit)} of ${name} come in a week; a change every `,
    told(often, figure.id),
    " holds it below ",
    held,
    ".",
  ];
}

interface Parts {
  readonly trend: QuantityTrend;
  readonly limit: Limit;
  readonly longest: number;
  readonly income: number;
  readonly shares: readonly number[];
  readonly field: (typeof NEW_WATER)[keyof typeof NEW_WATER];
  readonly scene: AlmanacScene;
  readonly newWater: number;
}

function figureOf({ trend, limit, longest, income, shares, field, scene, newWater }: Parts): Figure {
  const { facts } = scene;
  const inUnit = (value: number) => withUnit(two(value), trend.unit);
  return almanacFigure(`water_days.${trend.id}`, {
    ...{
      label: `Longest time between water changes that holds ${lowered(trend.label)}`,
      spread: exact(longest),
      unit: "d",
    },
    formulaKey: "almanac.md#water",
    formula: "share changed times (limit less new water), over what would come in a day",
    inputs: [
      ...(trend.figures.slope === null || trend.per_week === null
        ? []
        : [
            shownFigure({
              id: trend.figures.slope,
              label: "slope as read",
              spread: trend.per_week,
              unit: `${trend.unit}/week`,
            }),
          ]),
      workedOut("water changes in those days", String(shares.length)),
      workedOut("would come in, the changes taken out", `${inUnit(income)} a day`),
      { label: "limit", value: inUnit(limit.value), origin: "figure", figure: limit.figures.limit },
      factInput(facts, "waterChangeFraction", "share of a change", "1"),
      { ...factInput(facts, field, "new water", "mg/L"), value: inUnit(newWater) },
    ],
    parameters: limit.parameter === null ? [] : parametersOf([limit.parameter], TABLE),
    wouldChange: ["two more readings, some days apart", "how much is fed"],
  });
}
