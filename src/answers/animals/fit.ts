/** How an animal fits one tank: lives there, is planned, fits, not yet, never; each with every reason. */
import { animals } from "../../catalogue/index.ts";
import type { Plan } from "../../engine/stocking/plan.ts";
import { type Reason, statusOf, suitabilityOf } from "../../engine/stocking/suitability.ts";
import { companyOf } from "../../engine/stocking/waves.ts";
import type { Animal } from "../../engine/types/animal.ts";
import type { TankFacts } from "../../engine/types/tank.ts";

export interface Fit {
  readonly status: "lives_here" | "in_plan" | "fits" | "not_yet" | "never";
  readonly headsHere: number;
  readonly planned: readonly {
    readonly wave: number;
    readonly from: string;
    readonly to: string;
    readonly count: number;
  }[];
  /** What stands against it, what lasts first. */
  readonly reasons: readonly Reason[];
  /** What keeps the plan from one more. */
  readonly binding: { readonly kind: string; readonly text: string; readonly figure: string | null } | null;
  /** Why it fits and is not in the plan. */
  readonly notNeeded: string | null;
  /** Runs of 20 with half or more alive after 90 days, where it lives here or is planned. */
  readonly aliveOf20: number | null;
  /** Food it goes short of beside the rest of the plan, mg C a day; 0 where it finds enough. */
  readonly shortMgC: number;
}

export function fitOf(animal: Animal, facts: TankFacts, plan: Plan): Fit {
  const { id } = animal;
  const headsHere = facts.present.reduce((sum, row) => sum + (row.id === id ? row.count : 0), 0);
  const planned = plan.waves.flatMap((wave) =>
    wave.animals
      .filter((row) => row.animal.id === id)
      .map(({ count }) => ({ wave: wave.number, from: wave.from, to: wave.to, count })),
  );
  const lastRow = plan.waves.flatMap((wave) => wave.animals.filter((row) => row.animal.id === id)).at(-1);
  const refused = plan.refused.find((row) => row.animal.id === id);
  const spare = plan.spare.find((row) => row.animal.id === id);
  const today = suitabilityOf(animal, { facts, company: companyOf(facts, animals), daysAhead: 0 }).reasons;
  const base = {
    headsHere,
    planned,
    binding: lastRow?.binding ?? null,
    notNeeded: spare?.why ?? null,
    aliveOf20: plan.check?.kinds.find((kind) => kind.id === id)?.aliveOf20 ?? null,
    shortMgC: plan.fedByHand.find((row) => row.animal.id === id)?.mgC ?? 0,
  };
  if (headsHere > 0) {
    const { warnings } = plan.residents.find((row) => row.animal.id === id)!;
    return { ...base, status: "lives_here", reasons: warnings };
  }
  if (planned.length > 0) return { ...base, status: "in_plan", reasons: today };
  if (refused !== undefined) {
    // What only stands against it today is told too: it says from when.
    const told = new Set(refused.reasons.map(({ code }) => code));
    const reasons = [...refused.reasons, ...today.filter(({ code }) => !told.has(code))];
    return { ...base, status: refused.status, reasons };
  }
  // Of a plan that was never drafted, the facts alone speak.
  return { ...base, status: statusOf(today), reasons: today };
}
