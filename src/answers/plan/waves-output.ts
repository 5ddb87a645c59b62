/** The plan as `waves --json` prints it. */
import type { WavesOutput } from "../../contract/output/waves.ts";
import { explained, type Plan } from "../../engine/stocking/plan.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { SHELVES } from "../../engine/types/shelf.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { TODAY } from "../figures/prefix.ts";
import { STATEMENT } from "../statement.ts";
import { ENGINE_VERSION } from "../version.ts";
import type { EnsembleChoice } from "./plan-tank.ts";

/** The plan of the tank as it is, beside one with changes. */
export interface Beside {
  readonly changes: readonly string[];
  readonly today: Plan;
}

/** Heads to add in all, by kind. */
export function toAdd(plan: Plan): { id: string; name: string; count: number }[] {
  const sum = new Map<string, { id: string; name: string; count: number }>();
  for (const { animal, count } of plan.waves.flatMap(({ animals }) => animals)) {
    const had = sum.get(animal.id)?.count ?? 0;
    sum.set(animal.id, { id: animal.id, name: animal.commonName, count: had + count });
  }
  return [...sum.values()];
}

export function wavesOutputOf(
  plan: Plan,
  facts: TankFacts,
  choice: EnsembleChoice,
  beside: Beside | null,
): WavesOutput {
  const spread = ({ low, central, high }: { low: number; central: number; high: number }) => ({
    low,
    central,
    high,
  });
  return {
    schema: "grazewell.waves/1",
    engine: ENGINE_VERSION,
    seed: choice.seed,
    members: choice.members,
    tank: {
      name: facts.name,
      as_of: facts.asOf,
      water_l: spread(facts.waterL),
      age_days: spread(facts.ageDays),
      assumed: [...facts.assumed],
      unknown_animals: [...facts.unknownAnimals],
      figures: { water: figureId.tank("waterL"), age: figureId.tank("ageDays") },
    },
    kind: plan.kind,
    because: [...plan.because],
    because_figures: [...plan.becauseFigures],
    look_again_on: plan.lookAgain,
    look_again_figure: plan.lookAgain === null ? null : figureId.lookAgain(),
    proven_optimal: plan.proven,
    to_add: toAdd(plan).map((row) => ({ ...row, figure: figureId.count(row.id) })),
    waves: plan.waves.map(({ number, from, to, plannedShare, gate, animals, draft }) => ({
      number,
      from,
      to,
      planned_share: plannedShare,
      only_if: [...gate.onlyIf],
      sooner_if: gate.soonerIf,
      stop_if: gate.stopIf,
      animals: animals.map(({ animal, count, eats, binding, cautions, spareShells }) => ({
        id: animal.id,
        name: animal.commonName,
        count,
        eats: [...eats],
        binding: { kind: binding.kind, text: binding.text, figure: binding.figure },
        cautions: [...cautions],
        only_if: [...animal.onlyIf],
        spare_shells: spareShells,
        figures: {
          count: figureId.waveCount(number, animal.id),
          spare_shells: spareShells > 0 ? figureId.waveShells(number, animal.id) : null,
        },
      })),
      supply_pessimistic_mg_c_per_day: { ...draft.supply.pessimistic },
      supply_central_mg_c_per_day: { ...draft.supply.central },
      eaten_central_mg_c_per_day: { ...draft.answer.eatenCentral },
      figures: {
        from: figureId.waveFrom(number),
        planned_share: figureId.plannedShare(number),
        shelves: Object.fromEntries(
          SHELVES.map((shelf) => [
            shelf,
            {
              pessimistic: figureId.waveShelf(number, shelf, "pessimistic"),
              central: figureId.waveShelf(number, shelf, "central"),
              eaten: figureId.waveShelf(number, shelf, "eaten"),
            },
          ]),
        ),
      },
    })),
    residents: plan.residents.map(({ animal, heads, warnings }) => ({
      id: animal.id,
      name: animal.commonName,
      heads,
      figure: figureId.present(animal.id),
      warnings: warnings.map(({ code, text, until, figure }) => ({
        code,
        text,
        until,
        figure: figure ?? null,
      })),
    })),
    refused: plan.refused.map(({ animal, status, reasons }) => ({
      id: animal.id,
      name: animal.commonName,
      status,
      reasons: reasons.map(({ text }) => text),
      until: reasons.flatMap(({ until }) => (until === null ? [] : [until])),
      codes: reasons.map(({ code }) => code),
      figures: reasons.map(({ figure }) => figure ?? null),
    })),
    fits_but_not_needed: plan.spare.map(({ animal, why, figure }) => ({
      id: animal.id,
      name: animal.commonName,
      why,
      figure,
    })),
    left_to_hand: plan.handWork.map(({ shelf, leftMgC, text }) => ({
      shelf,
      mg_c_per_day: leftMgC,
      text,
      figure: figureId.handWork(shelf),
    })),
    fed_by_hand: plan.fedByHand.map(({ animal, standing, mgC, dryFeedMg }) => ({
      id: animal.id,
      name: animal.commonName,
      standing,
      mg_c_per_day: mgC,
      dry_feed_mg_per_day: dryFeedMg,
      figures: { food: figureId.fedByHand(animal.id), dry_feed: figureId.dryFeed(animal.id) },
    })),
    wishes: plan.wishes.map(({ animal, status, costs }) => ({
      id: animal.id,
      name: animal.commonName,
      status,
      costs: costs.map((cost) => ({ id: cost.animal.id, fewer: cost.fewer })),
      figure: status === "refused" ? null : figureId.wishCost(animal.id),
    })),
    check: (plan.check?.kinds ?? []).map((kind) => ({
      id: kind.id,
      heads: kind.heads,
      resident: kind.resident,
      day: kind.day,
      alive_of_20: kind.aliveOf20,
      aged_of_20: kind.agedOf20,
      condition: kind.condition,
      explained: explained(kind, plan.fedByHand),
      figures: {
        alive: figureId.checkAlive(kind.id),
        aged: figureId.checkAged(kind.id),
        condition: kind.condition === null ? null : figureId.checkCondition(kind.id),
      },
    })),
    mends: plan.mends.map(({ id, from, to, fedOf20 }) => ({
      id,
      from,
      to,
      fed_of_20: fedOf20,
      figure: figureId.mend(id),
    })),
    would_change: plan.wouldChange.map(({ unknown, headsIfLow, headsIfHigh }) => ({
      fact: unknown.fact,
      label: unknown.label,
      ask: unknown.ask,
      weight: unknown.weight,
      larder_if_low_mg_c_per_day: unknown.larderIfLow,
      larder_if_high_mg_c_per_day: unknown.larderIfHigh,
      heads_if_low: headsIfLow,
      heads_if_high: headsIfHigh,
      figure: figureId.wouldChange(unknown.fact),
    })),
    limit_costs: plan.limitCosts.map((cost) => ({
      limit: cost.limit,
      text: cost.text,
      heads: cost.heads,
      heads_without: cost.headsWithout,
      uneaten_mg_c_per_day: cost.uneaten,
      uneaten_without_mg_c_per_day: cost.uneatenWithout,
      changes: [...cost.changes],
      figure: figureId.limitCost(cost.limit),
    })),
    what_if:
      beside === null
        ? null
        : {
            changes: [...beside.changes],
            today: {
              kind: beside.today.kind,
              animals: toAdd(beside.today).map(({ id, count }) => ({
                id,
                count,
                figure: TODAY + figureId.count(id),
              })),
            },
          },
    statement: STATEMENT,
  };
}
