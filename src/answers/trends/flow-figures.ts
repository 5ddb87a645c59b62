/** Figures of the flows, each with its working. docs/model/trends.md, "Flows". */

import type { ElementFlows } from "../../contract/output/trends.ts";
import { FLOW_DAYS } from "../../engine/trends/flows.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { exact, factInput, parametersOf, workedOut } from "../../engine/types/link.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { TABLE } from "../figures/table.ts";
import type { EnsembleChoice } from "../plan/plan-tank.ts";

/** Parameters that flows hang on most; all of the balance's enter. */
const RESTS_ON = ["kapFilm", "dRock", "dSand", "u0", "capRock"] as const;

export function flowFigures(flow: ElementFlows, facts: TankFacts, choice: EnsembleChoice): Figure[] {
  const { element, name } = flow;
  const unit = `mg ${element}/d`;
  const make = (what: string, label: string, spread: Spread, as: string, formula: string): Figure => ({
    ...{ id: figureId.flow(element, what), label: `${name} ${label}`, spread, unit: as },
    working: {
      ...{ formulaKey: "trends.md#flows", formula },
      inputs: [
        factInput(facts, "feedGPerDay", "feed", "g/d"),
        factInput(facts, "waterL", "water", "L"),
        factInput(facts, "waterChangeFraction", "share of a water change", "1"),
        workedOut(
          "runs",
          `${choice.members}, of ${FLOW_DAYS} days of today's care each, from where the tank stands`,
        ),
        workedOut(
          "the daybook",
          facts.learned === undefined ? "has not taught the runs" : "has taught the runs",
        ),
      ],
      ...{ parameters: parametersOf(RESTS_ON, TABLE), animals: [], confidence: "computed" },
      wouldChange: ["how much is fed", "a nitrate and a phosphate reading, dated"],
    },
  });
  const rows = [...flow.in, ...flow.out, ...flow.stays].map(({ id, label, mg_per_day }) =>
    make(
      id,
      label,
      mg_per_day,
      unit,
      "the ledger's rows of that way, over the days of the run; 5, 50 and 95 % of the runs",
    ),
  );
  return [
    ...rows,
    make("comes_in", "that comes in", flow.comes_in_mg_per_day, unit, "all ways in, less what fish keep"),
    make(
      "freed",
      "freed into the water",
      flow.freed_mg_per_day,
      unit,
      "excretion and decay, what algae breathe out left out",
    ),
    make(
      "algae_take",
      "that algae take up",
      flow.algae_take_mg_per_day,
      unit,
      "uptake from the water less what they breathe out",
    ),
    make(
      "algae_most",
      "of which algae take more than half: runs of 20",
      exact(flow.algae_most_of_20),
      "of 20",
      "runs in which algae take more than half of what is freed, in twentieths",
    ),
    make(
      "dissolved",
      "dissolved in all the water",
      flow.dissolved_mg,
      `mg ${element}`,
      "concentration on the day of the plan times the water",
    ),
    make(
      "passes",
      "stays dissolved",
      flow.passes_hours,
      "h",
      "what is dissolved, divided by what is freed a day",
    ),
  ];
}
