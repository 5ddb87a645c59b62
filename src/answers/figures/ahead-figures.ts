/** The weeks ahead as figures, from the very numbers that are shown: outlook and output side by side. */
import type { AheadOutput } from "../../contract/output/ahead.ts";
import { type AheadScene, oxygenFigure, quantityFigure, type WeekBands } from "../../engine/ahead/figures.ts";
import { acrossMembers, QUANTITIES, type QuantityId, type Sheaf } from "../../engine/ahead/forecast.ts";
import { kindFigures } from "../../engine/ahead/kind-figures.ts";
import { limitFigures } from "../../engine/ahead/limit-figures.ts";
import type { Member } from "../../engine/larder/members.ts";
import { weigher } from "../../engine/stocking/unknowns.ts";
import type { Figure } from "../../engine/types/figure.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Outlook } from "../ahead/outlook.ts";
import { TABLE } from "./table.ts";

type OutlookJson = AheadOutput["as_it_is"];

export function aheadFigures(
  outlook: Outlook,
  shown: OutlookJson,
  { facts, members, weeks }: { facts: TankFacts; members: readonly Member[]; weeks: readonly string[] },
): Figure[] {
  const { forecast } = outlook.course;
  const scene: AheadScene = {
    ...{ facts, table: TABLE, members: forecast.members, days: forecast.days },
    dateOf: (week) => weeks[week] ?? weeks.at(-1)!,
  };
  const weigh = weigher(members, facts);
  const changing = (
    sheaf: Sheaf,
    week = sheaf.weeks - 1,
    else_: readonly string[] = USUAL,
  ): readonly string[] => {
    const heaviest = weigh(acrossMembers(sheaf, week).map((value) => (Number.isFinite(value) ? value : 0)));
    return heaviest.length === 0 ? else_ : heaviest.slice(0, 2);
  };
  const oxygen = oxygenFigure(bandsOf(shown.dawn_oxygen_mg_per_l), scene, changing(forecast.dawnOxygen));
  return [
    ...shown.quantities.map(({ id, ...json }) =>
      quantityFigure(id as QuantityId, bandsOf(json), scene, changing(forecast.quantities[id as QuantityId])),
    ),
    ...(oxygen === null ? [] : [oxygen]),
    ...outlook.chances.flatMap(({ limit, of20, alreadyOf20, firstWeek, missing }) => {
      const { limit: value } = shown.chances.find(({ id }) => id === limit.id)!;
      return limitFigures(
        { ...limit, value, formula: formulaOf(limit.parameter, limit.quantity) },
        { of20, alreadyOf20, firstWeek, missing },
        scene,
        changing(forecast.quantities[limit.quantity]),
      );
    }),
    ...outlook.kinds.flatMap((kind) => {
      const { heads, condition } = forecast.kinds.find(({ id }) => id === kind.animal.id)!;
      const json = shown.kinds.find(({ id }) => id === kind.animal.id)!;
      return kindFigures(
        { ...kind, condition: json.condition },
        bandsOf(json.heads_alive),
        bandsOf(json.condition_by_week),
        scene,
        changing(condition, kind.week, changing(heads, kind.week)),
      );
    }),
  ];
}

const USUAL = ["the light", "the feed"];

interface Quantiles {
  readonly q05: readonly (number | null)[];
  readonly q50: readonly (number | null)[];
  readonly q95: readonly (number | null)[];
}

function bandsOf({ q05, q50, q95 }: Quantiles): WeekBands {
  return q50.map((central, week) =>
    central === null ? null : { low: q05[week]!, central, high: q95[week]! },
  );
}

function formulaOf(parameter: string | null, quantity: QuantityId): string {
  if (parameter === null) return "set by this program: judgement";
  if (quantity === "po4") return "the upper end of the parameter's range";
  return `the middle of the parameter, in ${QUANTITIES[quantity].unit}`;
}
