/** Figures of what was learned, with how each came about. docs/model/calibration.md. */
import type { Lessons } from "../../engine/calibration/lessons.ts";
import { QUANTITIES_LEARNED } from "../../engine/calibration/quantities.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { exact, factInput, parametersOf, spreadText, workedOut } from "../../engine/types/link.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { TABLE } from "../figures/table.ts";
import { FACT_LABEL } from "./fact-labels.ts";
import type { GROUP_LABEL } from "./labels.ts";
import type { LearnedOutput } from "./output.ts";

export function learnedFigures(lessons: Lessons, { taught }: LearnedOutput, facts: TankFacts): Figure[] {
  if (taught === null) return [];
  const groups = taught.groups.toSorted((a, b) => b.share - a.share);
  return [
    ...lessons.quantities.map((lesson): Figure => {
      const quantity = QUANTITIES_LEARNED.find(({ id }) => id === lesson.id)!;
      const { label, unit, formula, parameters } = quantity;
      return {
        ...{ id: figureId.learned(lesson.id), label, spread: lesson.after, unit },
        working: {
          formulaKey: "calibration.md#what-is-told",
          formula: `${formula}; over ${taught.members} versions of the tank, after they were moved towards the daybook`,
          inputs: [
            workedOut("before the daybook", spreadText(lesson.before, unit)),
            workedOut("spread left of that", `${Math.round(100 * lesson.spreadLeft)} %`),
            workedOut("days learned from", `${taught.from} to ${taught.to}`),
            ...groups
              .filter(({ group }) => Math.abs(lesson.pulls[group as keyof typeof GROUP_LABEL] ?? 0) >= 0.05)
              .map(({ group, label: name, observations }) => {
                const pull = lesson.pulls[group as keyof typeof GROUP_LABEL]!;
                return workedOut(
                  `${name}, ${observations} of them`,
                  `pull it ${pull > 0 ? "up" : "down"} by ${Math.abs(pull).toFixed(2)} of the spread before`,
                );
              }),
            ...quantity.facts.map((fact) => {
              const [words, factUnit] = FACT_LABEL[fact] ?? [fact, "1"];
              return factInput(facts, fact as keyof TankFacts, words, factUnit);
            }),
          ],
          parameters: parametersOf(parameters, TABLE),
          ...{ animals: [], confidence: "computed" },
          wouldChange: wouldChange(lesson.seen, groups[0]?.label),
        },
      };
    }),
    ...taught.groups.map(({ group, label, observations, share }): Figure => {
      return {
        ...{ id: figureId.learnedShare(group), label: `share of what was learned: ${label}` },
        ...{ spread: exact(Math.round(100 * share)), unit: "%" },
        working: {
          formulaKey: "calibration.md#who-pulled",
          formula:
            "what all observations explain less what they explain without this group, over what all explain",
          inputs: [
            workedOut(`${label}: observations`, String(observations)),
            workedOut("days learned from", `${taught.from} to ${taught.to}`),
            workedOut("versions of the tank", String(taught.members)),
          ],
          ...{ parameters: [], animals: [], confidence: "computed" },
          wouldChange: [`more or fewer observations of ${label}`, "the error of the kit or the eye"],
        },
      };
    }),
  ];
}

const wouldChange = (seen: "well" | "partly" | "hardly", most: string | undefined): string[] =>
  seen === "hardly"
    ? ["observations that can tell of it", "a longer daybook"]
    : [...(most === undefined ? [] : [`more of what taught most: ${most}`]), "a longer daybook"];
