/** Who needs food by hand, and how much. */
import type { Animal } from "../types/animal.ts";
import { RATION_MG_C } from "../types/shelf.ts";
import type { TankFacts } from "../types/tank.ts";
import type { FedByHand } from "./plan-shape.ts";
import type { Company } from "./suitability.ts";
import type { WaveDraft } from "./waves.ts";

/** mg C in a mg of dry feed. @source feed.pellet */
export const DRY_FEED_CARBON = 0.42;
/**
 * Food by hand below a tenth of a ration, for all of a kind together, is less than anybody can weigh out or the larder
 * can tell: nothing is said of it, mg C/d. Judgement; docs/model/stocking.md, "Food by hand".
 */
const LEAST_FED_MG_C = RATION_MG_C / 10;

/** Who needs food by hand, and the most it needs on any wave's day: the shelves give least while the tank is young. */
export function fedByHandOf(
  drafts: readonly WaveDraft[],
  facts: TankFacts,
  company: readonly Company[],
): FedByHand[] {
  const most = new Map<string, { animal: Animal; mgC: number }>();
  for (const { programme, answer } of drafts) {
    for (const { animal } of programme.input.candidates) {
      const mgC = answer.handFed.get(animal.id) ?? 0;
      if (mgC >= LEAST_FED_MG_C && mgC > (most.get(animal.id)?.mgC ?? 0))
        most.set(animal.id, { animal, mgC });
    }
  }
  return [...most.values()].map(({ animal, mgC }) => {
    const resident = company.some((mate) => !mate.planned && mate.animal.id === animal.id);
    const standing = resident ? "resident" : facts.wishes.includes(animal.id) ? "wished" : "planned";
    const heads = drafts.at(-1)?.answer.heads.get(animal.id) ?? 0;
    return { animal, heads, mgC, dryFeedMg: mgC / DRY_FEED_CARBON, standing };
  });
}
