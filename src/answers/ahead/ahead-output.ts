/** The weeks ahead as `ahead --json` prints them. */
import type { AheadOutput } from "../../contract/output/ahead.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import {
  acrossMembers,
  QUANTITIES,
  type QuantityId,
  ROW_DAYS,
  type Sheaf,
} from "../../engine/ahead/forecast.ts";
import { quantileOfSorted } from "../../engine/numeric/quantile.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { WHAT_IF } from "../figures/prefix.ts";
import type { EnsembleChoice } from "../plan/plan-tank.ts";
import { STATEMENT } from "../statement.ts";
import { ENGINE_VERSION } from "../version.ts";
import { chanceWord } from "../words.ts";
import type { Outlook } from "./outlook.ts";
import type { AheadReport } from "./report.ts";
import { twentyOf } from "./twenty.ts";

export function aheadOutputOf(report: AheadReport, facts: TankFacts, choice: EnsembleChoice): AheadOutput {
  const { asItIs, whatIf, changes, warnings, sharpen, withPlan } = report;
  const { days, weeks } = asItIs.course.forecast;
  return {
    schema: "grazewell.ahead/1",
    engine: ENGINE_VERSION,
    seed: choice.seed,
    members: choice.members,
    days,
    tank: { name: facts.name, as_of: facts.asOf, assumed: [...facts.assumed] },
    with_plan: withPlan,
    weeks: Array.from({ length: weeks }, (_, week) => addDays(facts.asOf, week * ROW_DAYS)),
    as_it_is: outlookJson(asItIs, facts, ""),
    what_if: whatIf === null ? null : { changes: [...changes], outlook: outlookJson(whatIf, facts, WHAT_IF) },
    warnings: [...warnings],
    would_sharpen: sharpen.map(({ fact, label, ask }) => ({ fact, label, ask })),
    statement: STATEMENT,
  };
}

type OutlookJson = AheadOutput["as_it_is"];

function outlookJson(
  { course: { forecast }, chances, kinds }: Outlook,
  facts: TankFacts,
  prefix: string,
): OutlookJson {
  const on = (week: number) => addDays(facts.asOf, Math.round(week) * ROW_DAYS);
  const quantities = (Object.keys(QUANTITIES) as QuantityId[]).filter(
    (id) => facts.sandM2.central > 0 || !id.endsWith("_sand"),
  );
  const dawn = conditionsOf(forecast.dawnOxygen);
  return {
    quantities: quantities.map((id) => {
      const sheaf = forecast.quantities[id];
      return {
        id,
        ...QUANTITIES[id],
        ...quantilesOf(sheaf),
        runs: runsOf(sheaf),
        figure: prefix + figureId.quantity(id),
      };
    }),
    dawn_oxygen_mg_per_l: dawn,
    dawn_oxygen_figure: dawn.q50.some((value) => value !== null) ? prefix + figureId.dawnOxygen() : null,
    kinds: kinds.map((kind) => {
      const { heads, condition } = forecast.kinds.find(({ id }) => id === kind.animal.id)!;
      return {
        id: kind.animal.id,
        name: kind.animal.commonName,
        heads: kind.heads,
        asked_on: on(kind.week),
        alive_of_20: kind.aliveOf20,
        aged_of_20: kind.agedOf20,
        starves_of_20: kind.starvesOf20,
        condition: kind.condition === null ? null : { ...kind.condition },
        heads_alive: quantilesOf(heads),
        heads_alive_runs: runsOf(heads),
        condition_by_week: conditionsOf(condition),
        figures: {
          heads: prefix + figureId.kind(kind.animal.id, "heads"),
          alive: prefix + figureId.kind(kind.animal.id, "alive"),
          aged: prefix + figureId.kind(kind.animal.id, "aged"),
          starves: prefix + figureId.kind(kind.animal.id, "starves"),
          condition: kind.condition === null ? null : prefix + figureId.kind(kind.animal.id, "condition"),
        },
      };
    }),
    chances: chances.map(({ limit, of20, alreadyOf20, firstWeek, missing }) => ({
      id: limit.id,
      quantity: limit.quantity,
      limit: rounded(limit.value),
      unit: QUANTITIES[limit.quantity].unit,
      parameter: limit.parameter,
      why: limit.why,
      of_20: of20,
      already_of_20: alreadyOf20,
      first_on:
        firstWeek === null
          ? null
          : { early: on(firstWeek.low), middle: on(firstWeek.central), late: on(firstWeek.high) },
      word: chanceWord(of20),
      missing,
      figures: { chance: prefix + figureId.chance(limit.id), limit: prefix + figureId.limit(limit.id) },
    })),
  };
}

function quantilesOf(sheaf: Sheaf) {
  const weeks = Array.from({ length: sheaf.weeks }, (_, week) => acrossMembers(sheaf, week).sort());
  const at = (share: number) => weeks.map((values) => rounded(quantileOfSorted(values, share)));
  return { q05: at(0.05), q25: at(0.25), q50: at(0.5), q75: at(0.75), q95: at(0.95) };
}

/** The same over the runs in which any are alive, where at least half have some. */
function conditionsOf(sheaf: Sheaf) {
  const weeks = Array.from({ length: sheaf.weeks }, (_, week) => {
    const all = acrossMembers(sheaf, week);
    const living = all.filter(Number.isFinite).sort();
    return living.length * 2 < all.length ? null : living;
  });
  const at = (share: number) =>
    weeks.map((values) => (values === null ? null : rounded(quantileOfSorted(values, share))));
  return { q05: at(0.05), q50: at(0.5), q95: at(0.95) };
}

function runsOf(sheaf: Sheaf): number[][] {
  const { weeks, values } = sheaf;
  return twentyOf(sheaf).map((run) => [...values.subarray(run * weeks, (run + 1) * weeks)].map(rounded));
}

/** Five figures: what a model of this kind has no more of. */
const rounded = (value: number): number => Number(value.toPrecision(5));
