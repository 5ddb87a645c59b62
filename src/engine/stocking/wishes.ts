/** What becomes of the keeper's wishes, and which animals of the plan each takes the place of. */
import type { PlanRequest, Refused, WishAnswer } from "./plan-shape.ts";
import { draftWaves, type Limits, type WaveDraft } from "./waves.ts";

export function wishesOf(
  request: PlanRequest,
  drafts: readonly WaveDraft[],
  limits: Limits,
  refused: readonly Refused[],
): WishAnswer[] {
  const { facts, animals } = request;
  const last = drafts.at(-1);
  return facts.wishes.flatMap((id): WishAnswer[] => {
    const animal = animals.find((one) => one.id === id);
    if (animal === undefined || last === undefined) return [];
    if ((last.answer.heads.get(id) ?? 0) === 0 || refused.some((no) => no.animal.id === id)) {
      return [{ animal, status: "refused", costs: [] }];
    }
    const without = draftWaves(
      { ...facts, wishes: facts.wishes.filter((other) => other !== id) },
      request,
      limits,
    ).at(-1);
    const costs =
      without === undefined
        ? []
        : animals.flatMap((other) => {
            const change = (last.answer.heads.get(other.id) ?? 0) - (without.answer.heads.get(other.id) ?? 0);
            return change < 0 && other.id !== id ? [{ animal: other, fewer: -change }] : [];
          });
    return [{ animal, status: "in_plan", costs }];
  });
}
