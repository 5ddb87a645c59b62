/**
 * The plan of a tank: waves that pass the forecast, who is refused and why, what is left to the keeper's hand, and
 * what would change it most; or an honest "nothing yet, because". Advances in steps, so that a caller can show
 * progress and stop. What a plan holds: plan-shape.ts; how it is put together: assemble.ts.
 */

import type { Progress } from "../ahead/forecast.ts";
import type { Member } from "../larder/members.ts";
import type { Animal } from "../types/animal.ts";
import { assemble } from "./assemble.ts";
import { ALIVE_RUNS, checkPlan, kindsOf, type PlanCheck } from "./check.ts";
import type { Solve } from "./linear-model.ts";
import type { Mend, Plan, PlanRequest } from "./plan-shape.ts";
import { ALL_LIMITS, companyOf, draftWaves, type Limits, type WaveDraft } from "./waves.ts";

export { explained } from "./explained.ts";
export type { Plan } from "./plan-shape.ts";

export type PlanProgress = Progress & { readonly doing: string };

const MOST_MENDS = 4;
/** Members that a mending round runs; the final check runs all. */
const MENDING_MEMBERS = 60;

export function* planWaves(given: PlanRequest): Generator<PlanProgress, Plan> {
  // A wave that the solver could not settle in its time is left out, and says nothing of it: the plan must.
  let unsettled = false;
  const solve: Solve = (model) => {
    const solution = given.solve(model);
    unsettled ||= solution.status === "failed" || solution.status === "incumbent";
    return solution;
  };
  const request = { ...given, solve };
  const { facts, animals } = request;
  const company = companyOf(facts, animals);
  let limits: Limits = ALL_LIMITS;
  yield { doing: "sizing the waves", done: 0, of: 1 };
  let drafts = draftWaves(facts, request, limits);
  const mends: Mend[] = [];
  /** The last rehearsal, while the drafts are still those that it ran. */
  let rehearsed: PlanCheck | null = null;
  for (let round = 0; round < MOST_MENDS && drafts.some(({ bought }) => bought.size > 0); round += 1) {
    const rehearsal = yield* rehearse(
      request,
      drafts,
      request.members.slice(0, MENDING_MEMBERS),
      "rehearsing the waves",
    );
    rehearsed = rehearsal;
    const cuts = cutsOf(rehearsal, drafts, animals, facts.wishes);
    if (cuts.size === 0) break;
    for (const [id, heads] of cuts) {
      const was = rehearsal.kinds.find((kind) => kind.id === id)!;
      const name = animals.find((animal) => animal.id === id)?.commonName ?? id;
      mends.push({ id, name, from: was.heads, to: heads, fedOf20: Math.floor(was.fedShare * 20) });
    }
    limits = { ...limits, mended: new Map([...limits.mended, ...cuts]) };
    drafts = draftWaves(facts, request, limits);
    rehearsed = null;
  }
  const kinds = kindsOf(company, drafts, animals);
  const check =
    kinds.length > 0
      ? yield* rehearse(request, drafts, request.members, "checking against the forecast", rehearsed)
      : null;
  yield { doing: "explaining", done: 0, of: 1 };
  const plan = assemble(request, drafts, limits, kinds, check, mends);
  return unsettled ? { ...plan, proven: false } : plan;
}

function* rehearse(
  request: PlanRequest,
  drafts: readonly WaveDraft[],
  members: readonly Member[],
  doing: string,
  known: PlanCheck | null = null,
): Generator<PlanProgress, PlanCheck> {
  const { facts, animals, seed, outlookDays } = request;
  const kinds = kindsOf(companyOf(facts, animals), drafts, animals);
  const work = checkPlan({
    ...{ facts, members, kinds, drafts, seed, outlookDays },
    known: known?.forecast,
  });
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    yield { ...step.value, doing };
  }
}

/** Newcomers that starve too often, with the number that the forecast bears. */
function cutsOf(
  check: PlanCheck,
  drafts: readonly WaveDraft[],
  animals: readonly Animal[],
  wishes: readonly string[],
): Map<string, number> {
  const cuts = new Map<string, number>();
  const fed = new Set([...(drafts.at(-1)?.answer.handFed.keys() ?? []), ...wishes]);
  for (const kind of check.kinds) {
    // The runs feed nobody by hand: kinds that live on it are not judged by them.
    if (kind.resident || fed.has(kind.id) || kind.fedShare * 20 >= ALIVE_RUNS) continue;
    const borne = Math.min(kind.heads - 1, Math.floor((kind.heads * kind.fedShare * 20) / ALIVE_RUNS));
    const candidate = drafts.at(-1)?.programme.input.candidates.find(({ animal }) => animal.id === kind.id);
    const groupMin = candidate?.groupMin ?? animals.find(({ id }) => id === kind.id)?.groupMin ?? 1;
    cuts.set(kind.id, borne >= groupMin ? borne : 0);
  }
  return cuts;
}
