/** What the tank makes as food, shelf by shelf, and who eats it: worked out, and as `larder --json` prints it. */
import type { LarderOutput } from "../contract/output/larder.ts";
import type { FigureScene } from "../engine/larder/figures.ts";
import { type Mouth, mouthsOf, wantedFrom } from "../engine/larder/mouths.ts";
import { twentyOf } from "../engine/numeric/quantile.ts";
import { warmthOf } from "../engine/stocking/waves.ts";
import { figureId } from "../engine/types/figure-id.ts";
import { RATION_MG_C, SHELF_NAME, SHELVES } from "../engine/types/shelf.ts";
import type { TankFacts } from "../engine/types/tank.ts";
import { TODAY } from "./figures/prefix.ts";
import { crewThere, type EnsembleChoice, larderScene, membersOf } from "./plan/plan-tank.ts";
import { STATEMENT } from "./statement.ts";
import { ENGINE_VERSION } from "./version.ts";

/** A larder with its mouths. */
export interface LaidLarder {
  readonly facts: TankFacts;
  readonly scene: FigureScene;
  readonly mouths: readonly Mouth[];
}
export interface LarderBeside {
  readonly changes: readonly string[];
  readonly today: FigureScene;
}

export function larderFor(facts: TankFacts, choice: EnsembleChoice): LaidLarder {
  return {
    facts,
    scene: larderScene(facts, membersOf(facts, choice), 0),
    mouths: mouthsOf(crewThere(facts), warmthOf(facts)),
  };
}

export function larderOutputOf(
  { facts, scene: { larder }, mouths }: LaidLarder,
  choice: EnsembleChoice,
  beside: LarderBeside | null,
): LarderOutput {
  const { low, central, high } = larder.total;
  const { parts } = larder;
  return {
    schema: "grazewell.larder/1",
    engine: ENGINE_VERSION,
    seed: choice.seed,
    members: choice.members,
    tank: { name: facts.name, as_of: facts.asOf },
    ration_mg_c: RATION_MG_C,
    shelves: SHELVES.map((shelf) => {
      const { supply, pessimistic } = larder.shelves[shelf];
      const wanted = wantedFrom(mouths, shelf);
      return {
        id: shelf,
        name: SHELF_NAME[shelf],
        supply_mg_c_per_day: { low: supply.low, central: supply.central, high: supply.high },
        pessimistic_mg_c_per_day: pessimistic,
        supply_rations_per_day: supply.central / RATION_MG_C,
        runs_mg_c_per_day: twentyOf(parts.map((part) => part.supply[shelf])),
        wanted_mg_c_per_day: wanted,
        balance_mg_c_per_day: {
          low: supply.low - wanted,
          central: supply.central - wanted,
          high: supply.high - wanted,
        },
        figures: {
          supply: figureId.supply(shelf),
          pessimistic: figureId.pessimistic(shelf),
          wanted: figureId.wanted(shelf),
          balance: figureId.balance(shelf),
        },
      };
    }),
    total_mg_c_per_day: { low, central, high },
    total_figure: figureId.total(),
    mouths: mouths.map(({ animal, heads, needMgC, mostMgC, byShelfMgC }) => ({
      id: animal.id,
      name: animal.commonName,
      heads,
      need_mg_c_per_day: needMgC,
      most_mg_c_per_day: mostMgC,
      need_rations_per_day: needMgC / RATION_MG_C,
      by_shelf_mg_c_per_day: { ...byShelfMgC },
      figures: {
        heads: figureId.present(animal.id),
        need: figureId.mouthNeed(animal.id),
        most: figureId.mouthMost(animal.id),
        by_shelf: Object.fromEntries(
          SHELVES.filter((shelf) => animal.diet[shelf] > 0).map((shelf) => [
            shelf,
            figureId.mouthShelf(animal.id, shelf),
          ]),
        ),
      },
    })),
    what_if:
      beside === null
        ? null
        : {
            changes: [...beside.changes],
            today_central_mg_c_per_day: Object.fromEntries(
              SHELVES.map((shelf) => [shelf, beside.today.larder.shelves[shelf].supply.central]),
            ),
            today_figures: Object.fromEntries(
              SHELVES.map((shelf) => [shelf, TODAY + figureId.supply(shelf)]),
            ),
          },
    statement: STATEMENT,
  };
}
