/** Figures of another course stand beside this tank's under a prefix. Names and links alike. */
import type { Figure } from "../../engine/types/figure.ts";

/** The tank without the changes of a what-if. */
export const TODAY = "today.";
/** The weeks ahead with the changes. */
export const WHAT_IF = "what_if.";

/**
 * @param own before the ids of these figures, and links among them
 * @param rest before links to any other figure of that course
 */
export function prefixed(figures: readonly Figure[], own: string, rest = own): Figure[] {
  if (own === "" && rest === "") return [...figures];
  const mine = new Set(figures.map(({ id }) => id));
  const named = (id: string): string => (mine.has(id) ? own : rest) + id;
  return figures.map((figure) => ({
    ...figure,
    id: own + figure.id,
    working: {
      ...figure.working,
      inputs: figure.working.inputs.map((input) =>
        input.figure === undefined || isOfNoTank(input.figure)
          ? input
          : { ...input, figure: named(input.figure) },
      ),
    },
  }));
}

/** Facts of animals are the same in every course; what one needs is not. */
const isOfNoTank = (id: string): boolean => id.startsWith("animal.") && !id.endsWith(".need");
