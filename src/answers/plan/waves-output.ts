/** The plan as `waves --json` prints it. */
import type { WavesOutput } from "../../contract/output/waves.ts";
import { explained, type Plan } from "../../engine/stocking/plan.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
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
    },
    kind: plan.kind,
    because: [...plan.because],
    look_again_on: plan.lookAgain,
    proven_optimal: plan.proven,
    waves: plan.waves.map(({ number, from, to, safeStart, gate, animals, draft }) => ({
      number,
      from,
      to,
      safe_start_share: safeStart,
      only_if: [...gate.onlyIf],
      sooner_if: gate.soonerIf,
      stop_if: gate.stopIf,
      animals: animals.map(({ animal, count, eats, binding, cautions, spareShells }) => ({
        id: animal.id,
        name: animal.commonName,
        count,
        eats: [...eats],
        binding: { kind: binding.kind, text: binding.text },
        cautions: [...cautions],
        only_if: [...animal.onlyIf],
        spare_shells: spareShells,
      })),
      supply_pessimistic_mg_c_per_day: { ...draft.supply.pessimistic },
      supply_central_mg_c_per_day: { ...draft.supply.central },
      eaten_central_mg_c_per_day: { ...draft.answer.eatenCentral },
    })),
    refused: plan.refused.map(({ animal, status, reasons }) => ({
      id: animal.id,
      name: animal.commonName,
      status,
      reasons: reasons.map(({ text }) => text),
      until: reasons.flatMap(({ until }) => (until === null ? [] : [until])),
      codes: reasons.map(({ code }) => code),
    })),
    fits_but_not_needed: plan.spare.map(({ animal, why }) => ({
      id: animal.id,
      name: animal.commonName,
      why,
    })),
    left_to_hand: plan.handWork.map(({ shelf, leftMgC, text }) => ({ shelf, mg_c_per_day: leftMgC, text })),
    fed_by_hand: plan.fedByHand.map(({ animal, standing, mgC, dryFeedMg }) => ({
      id: animal.id,
      name: animal.commonName,
      standing,
      mg_c_per_day: mgC,
      dry_feed_mg_per_day: dryFeedMg,
    })),
    wishes: plan.wishes.map(({ animal, status, costs }) => ({
      id: animal.id,
      name: animal.commonName,
      status,
      costs: costs.map((cost) => ({ id: cost.animal.id, fewer: cost.fewer })),
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
    })),
    mends: plan.mends.map(({ id, from, to, fedOf20 }) => ({ id, from, to, fed_of_20: fedOf20 })),
    would_change: plan.wouldChange.map(({ unknown, headsIfLow, headsIfHigh }) => ({
      fact: unknown.fact,
      label: unknown.label,
      ask: unknown.ask,
      weight: unknown.weight,
      larder_if_low_mg_c_per_day: unknown.larderIfLow,
      larder_if_high_mg_c_per_day: unknown.larderIfHigh,
      heads_if_low: headsIfLow,
      heads_if_high: headsIfHigh,
    })),
    limit_costs: plan.limitCosts.map((cost) => ({
      limit: cost.limit,
      text: cost.text,
      heads: cost.heads,
      heads_without: cost.headsWithout,
      uneaten_mg_c_per_day: cost.uneaten,
      uneaten_without_mg_c_per_day: cost.uneatenWithout,
      changes: [...cost.changes],
    })),
    what_if:
      beside === null
        ? null
        : {
            changes: [...beside.changes],
            today: {
              kind: beside.today.kind,
              animals: toAdd(beside.today).map(({ id, count }) => ({ id, count })),
            },
          },
    statement: STATEMENT,
  };
}
