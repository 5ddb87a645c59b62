/** Figures of another course stand beside this tank's under a prefix. Names and links alike. */
import type { Figure } from "../../engine/types/figure.ts";

/** The tank without the changes of a what-if. */
export const TODAY = "today.";
/** The weeks ahead with the changes. */
export const WHAT_IF = "what_if.";

export const prefixed = (prefix: string, figures: readonly Figure[]): Figure[] =>
  figures.map((figure) => ({
    ...figure,
    id: prefix + figure.id,
    working: {
      ...figure.working,
      inputs: figure.working.inputs.map((input) =>
        input.figure === undefined ? input : { ...input, figure: prefix + input.figure },
      ),
    },
  }));
