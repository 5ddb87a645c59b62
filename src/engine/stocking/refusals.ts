/** Everyone who is not in the plan: refused and why, or fit and not needed. */

import { figureId } from "../types/figure-id.ts";
import { RATION_MG_C } from "../types/shelf.ts";
import { aloneOf, bindingOf, enemyText } from "./limits.ts";
import type { PlanRequest, Refused, Spare } from "./plan-shape.ts";
import { type Reason, statusOf } from "./suitability.ts";
import { type Limits, leastGroup, type WaveDraft, warmthOf } from "./waves.ts";

export function sortOut(
  request: PlanRequest,
  drafts: readonly WaveDraft[],
  limits: Limits,
): { refused: Refused[]; spare: Spare[] } {
  const refused: Refused[] = [];
  const spare: Spare[] = [];
  const last = drafts.at(-1);
  if (last === undefined) return { refused, spare };
  const warmth = warmthOf(request.facts);
  const inPlan = new Set(
    drafts.flatMap(({ answer }) => [...answer.heads].flatMap(([id, heads]) => (heads > 0 ? [id] : []))),
  );
  // Who lives there already is neither proposed nor refused: fish keep no place in the waves.
  const living = new Set(request.facts.present.filter(({ count }) => count > 0).map(({ id }) => id));
  for (const animal of request.animals) {
    if (inPlan.has(animal.id) || living.has(animal.id)) continue;
    // Judged on the plan's day; what only time changes is lifted by a later wave.
    const today = drafts[0]!.suitability.get(animal.id)!.reasons;
    const later = last.suitability.get(animal.id)!.reasons;
    if (later.length > 0) {
      const reasons = lastingFirst([
        ...later.filter(({ code }) => code !== "age"),
        ...today.filter(({ code }) => code === "age"),
      ]);
      refused.push({ animal, status: statusOf(reasons) === "never" ? "never" : "not_yet", reasons });
      continue;
    }
    if (animal.group === "pod") {
      spare.push({
        animal,
        why: "comes as a culture of hundreds and settles its own number; not counted by the head",
        figure: null,
      });
      continue;
    }
    const enemy = enemyText(animal.id, last);
    if (enemy !== null) {
      spare.push({ animal, why: enemy, figure: null });
      continue;
    }
    const groupMin = leastGroup(animal);
    const alone = aloneOf(animal, groupMin, last, warmth);
    if (limits.mended.get(animal.id) === 0) {
      refused.push({ animal, status: "not_yet", reasons: [starvesInForecast(animal.id)] });
    } else if (!alone.enough) {
      refused.push({ animal, status: "not_yet", reasons: [starves(animal.id, groupMin, alone)] });
    } else {
      // Time lifts what stands against it today, and the plan would still leave it out: that is the reason to give.
      const lifted = today.flatMap(({ until }) => (until === null ? [] : [until])).join(", ");
      const { text, figure } = bindingOf(animal.id, last, request.facts, limits, request.solve);
      spare.push({ animal, why: lifted === "" ? text : `${lifted}; even then, ${text}`, figure });
    }
  }
  return { refused, spare };
}

/** What nothing lifts first, then what is wrong with the water now, then the rest; what time alone lifts last. */
function lastingFirst(reasons: readonly Reason[]): Reason[] {
  const rank = ({ code, until }: Reason): number => {
    if (until === null) return 0;
    if (code === "medicine" || code === "trouble") return 1;
    return code === "age" ? 3 : 2;
  };
  return [...reasons].sort((a, b) => rank(a) - rank(b));
}

function starves(
  id: string,
  heads: number,
  { needMgC, takesMgC }: { needMgC: number; takesMgC: number },
): Reason {
  const who = heads > 1 ? `The least group of ${heads} needs` : "One needs";
  const needs = rations(needMgC);
  const given = rations(takesMgC);
  return {
    code: "starves",
    text: `${who} ${needs} rations a day and may starve: in 15 of 20 runs its shelves would give it ${given === needs ? "a little less" : given}, even alone.`,
    until: "once the larder has grown, or if you wish for it and feed it by hand",
    figure: figureId.alone(id),
  };
}

const starvesInForecast = (id: string): Reason => ({
  code: "starves",
  text: "In the forecast it is not alive at 90 days in 15 of 20 runs: it may starve here.",
  until: "once the larder has grown",
  figure: figureId.mend(id),
});

const rations = (mgC: number): string => (mgC / RATION_MG_C).toPrecision(2);
