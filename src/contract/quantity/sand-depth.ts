/** Depth of the sand. Nought is a bare floor, which animals that live in sand contradict. */
import { readMeasure } from "./measure.ts";
import type { Amount, Outcome } from "./outcome.ts";
import { convertible } from "./plain.ts";
import type { MeasureContext, MeasureRule } from "./rule.ts";

export interface SandContext extends MeasureContext {
  /** How many animals of the record live in sand. */
  readonly sandDwellers?: number;
}

const rule: MeasureRule<SandContext> = {
  ...convertible({
    label: "Sand depth",
    quantity: "length",
    unit: "mm",
    hard: { min: 0, max: 500 },
    example: "30",
  }),
  plain: ["mm", "cm"],
  offered: ["cm", "in"],
  narrow: (units, { preferences: { length } }) => (units.length > 1 && length !== null ? [length] : units),
  judge: ({ middle }, { sandDwellers = 0 }) =>
    middle === 0 && sandDwellers > 0
      ? {
          verdict: "ask",
          kind: "CONFLICT",
          text: `a bare floor, yet ${sandDwellers} animals of the record live in sand. What do they live in?`,
          choices: [
            { label: "The floor is bare, as typed", text: "0 mm (checked)" },
            { label: "There is sand: enter its depth", text: null },
          ],
        }
      : null,
};

export function readSandDepth(text: string, context: SandContext): Outcome<Amount> {
  return readMeasure(text, rule, context);
}
