/**
 * Limits that the weeks ahead are held against, and the chance of each, as figures. docs/model/ahead.md, "Limits".
 * Which limits there are, and what each rests on, is the caller's.
 */
import type { Figure } from "../types/figure.ts";
import { figureId } from "../types/figure-id.ts";
import { exact, linkTo, parametersOf, workedOut } from "../types/link.ts";
import type { Crossing } from "./chances.ts";
import { type AheadScene, factsOf, RESTS_ON } from "./figures.ts";
import { QUANTITIES, type QuantityId } from "./forecast.ts";

export interface LimitFigured {
  readonly id: string;
  readonly quantity: QuantityId;
  /** In the quantity's unit, as shown. */
  readonly value: number;
  readonly words: string;
  readonly why: string;
  readonly parameter: string | null;
  /** The parameter in the quantity's unit, or what this program judges. */
  readonly formula: string;
}

export function limitFigures(
  limit: LimitFigured,
  crossed: Crossing & { readonly missing: string | null },
  scene: AheadScene,
  wouldChange: readonly string[],
): Figure[] {
  const { label, unit } = QUANTITIES[limit.quantity];
  const the: Figure = {
    id: figureId.limit(limit.id),
    label: `limit of ${label}`,
    ...{ spread: exact(limit.value), unit },
    working: {
      ...{ formulaKey: "ahead.md#limits", formula: limit.formula },
      inputs: [{ label: "what the limit is", value: limit.why, origin: "stated" }],
      parameters: limit.parameter === null ? [] : parametersOf([limit.parameter], scene.table),
      ...{ animals: [], confidence: limit.parameter === null ? "judgement" : "read" },
      wouldChange: ["another source for the limit", "what the animals you keep can bear"],
    },
  };
  const { of20, alreadyOf20, firstWeek, missing } = crossed;
  const first = (week: number) => scene.dateOf(Math.round(week));
  const [parameters, facts] = RESTS_ON[limit.quantity];
  const chance: Figure = {
    id: figureId.chance(limit.id),
    label: `${limit.words}: runs of 20, within ${scene.days} days`,
    ...{ spread: exact(of20), unit: "of 20" },
    working: {
      formulaKey: "ahead.md#limits",
      formula: "runs that lie above the limit at some midnight after the first, out of all, in twentieths",
      inputs: [
        linkTo(the, "limit"),
        workedOut("above it on the day of the plan", `${alreadyOf20} of 20`),
        workedOut(
          "first day above it, over the runs that cross it",
          firstWeek === null
            ? "fewer than one run in twenty crosses it"
            : `${first(firstWeek.central)} (${first(firstWeek.low)} to ${first(firstWeek.high)})`,
        ),
        workedOut("runs", String(scene.members)),
        ...factsOf(scene.facts, facts),
        ...(missing === null
          ? []
          : [
              {
                ...{ label: "not known of this tank", value: `${missing}: a typical tank is run` },
                origin: "assumed" as const,
              },
            ]),
      ],
      parameters: parametersOf(parameters, scene.table),
      ...{ animals: [], confidence: "computed" },
      wouldChange: missing === null ? wouldChange : [missing, ...wouldChange.slice(0, 1)],
    },
  };
  return [the, chance];
}
