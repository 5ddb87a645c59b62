/** From drafts that have met the forecast to the plan: waves with their gates, and all that is said beside them. */
import type { CrewKind } from "../ahead/start.ts";
import { SHELVES } from "../types/shelf.ts";
import type { PlanCheck } from "./check.ts";
import { fedByHandOf } from "./fed-by-hand.ts";
import { gateFor } from "./gates.ts";
import { handWorkOf } from "./hand-work.ts";
import { bindingOf, limitCosts } from "./limits.ts";
import { nothingYet } from "./nothing-yet.ts";
import type { Mend, Plan, PlannedAnimal, PlanRequest, Wave } from "./plan-shape.ts";
import { eatsFrom } from "./programme.ts";
import { sortOut } from "./refusals.ts";
import { residentsOf } from "./residents.ts";
import { addDays } from "./suitability.ts";
import { companyOf, isCrew, type Limits, type WaveDraft } from "./waves.ts";
import { wishesOf } from "./wishes.ts";
import { wouldChangeOf } from "./would-change.ts";

export function assemble(
  request: PlanRequest,
  drafts: readonly WaveDraft[],
  limits: Limits,
  kinds: readonly CrewKind[],
  check: PlanCheck | null,
  mends: readonly Mend[],
): Plan {
  const { facts, animals } = request;
  const company = companyOf(facts, animals);
  const last = drafts.at(-1);
  const crewNames = company
    .filter(({ animal, planned }) => !planned && isCrew(animal))
    .map(({ animal }) => animal.commonName);
  const waves = wavesOf(request, drafts, limits, crewNames);
  const { refused, spare } = sortOut(request, drafts, limits);
  const fedByHand = fedByHandOf(drafts, facts, company);
  const { because, becauseFigures, lookAgain } =
    waves.length > 0
      ? { because: [], becauseFigures: [], lookAgain: null }
      : nothingYet(facts, drafts, refused, spare, fedByHand);
  return {
    kind: waves.length > 0 ? "waves" : "nothing_yet",
    because,
    becauseFigures,
    lookAgain,
    waves,
    residents: residentsOf(facts, company),
    refused,
    spare,
    handWork: last === undefined ? [] : handWorkOf(last, facts),
    fedByHand,
    wishes: wishesOf(request, drafts, limits, refused),
    check,
    mends,
    wouldChange: wouldChangeOf(request, drafts, limits),
    limitCosts: last !== undefined && request.withLimitCosts ? limitCosts(facts, request, last, limits) : [],
    drafts,
    kinds,
    proven: drafts.every(({ answer }) => answer.proven),
  };
}

/** The drafts that buy anybody, with what each animal waits for and is limited by. */
function wavesOf(
  { facts, animals, solve }: PlanRequest,
  drafts: readonly WaveDraft[],
  limits: Limits,
  crewNames: readonly string[],
): Wave[] {
  const waves: Wave[] = [];
  for (const draft of drafts) {
    if (draft.bought.size === 0) continue;
    const bought = [...draft.bought].map(([id, count]): PlannedAnimal => {
      const animal = animals.find((one) => one.id === id)!;
      return {
        animal,
        count,
        eats: SHELVES.filter((shelf) => eatsFrom(animal, shelf)),
        binding: bindingOf(id, draft, facts, limits, solve),
        cautions: draft.suitability.get(id)?.cautions ?? [],
        spareShells: Math.ceil(count * (animal.needs.emptyShellsPerAnimal?.central ?? 0)),
      };
    });
    const earlier = waves.at(-1)?.animals.map(({ animal }) => animal.commonName) ?? crewNames;
    waves.push({
      number: waves.length + 1,
      from: addDays(facts.asOf, draft.date.day),
      to: addDays(facts.asOf, draft.date.day + draft.date.windowDays),
      day: draft.date.day,
      plannedShare: draft.date.plannedShare,
      animals: bought.sort((a, b) => b.count - a.count || a.animal.id.localeCompare(b.animal.id)),
      gate: gateFor(
        bought.map(({ animal }) => animal),
        earlier,
        { first: waves.length === 0 && crewNames.length === 0, open: draft.date.day === 0 },
      ),
      larder: draft.larder,
      draft,
    });
  }
  return waves;
}
