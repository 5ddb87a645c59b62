/** Which unknown facts would change a plan most, and the crew at either end of the heaviest. */
import type { Member } from "../larder/members.ts";
import type { PlanRequest, WhatWouldChange } from "./plan-shape.ts";
import { unknownsOf } from "./unknowns.ts";
import { companyOf, draftWaves, isCrew, type Limits, type WaveDraft } from "./waves.ts";

/** Heads of the last wave if the heaviest unknown lay at either end. */
export function wouldChangeOf(
  request: PlanRequest,
  drafts: readonly WaveDraft[],
  limits: Limits,
): WhatWouldChange[] {
  const { facts, members, animals } = request;
  const last = drafts.at(-1);
  if (last === undefined) return [];
  const crew = companyOf(facts, animals).filter(({ animal, planned }) => !planned && isCrew(animal));
  const scene = {
    daysAhead: last.date.day,
    sightings: facts.sightings,
    residents: crew.map(({ animal, count }) => ({ animal, heads: count })),
    grazed: crew.length > 0,
  };
  const headsWith = (some: readonly Member[]): number | null => {
    const end = draftWaves(facts, { ...request, members: some }, limits).at(-1);
    return end === undefined ? null : [...end.answer.heads.values()].reduce((sum, n) => sum + n, 0);
  };
  return unknownsOf(members, scene, facts)
    .slice(0, 3)
    .map((unknown, position) => ({
      unknown,
      headsIfLow: position < 1 ? headsWith(unknown.membersIfLow) : null,
      headsIfHigh: position < 1 ? headsWith(unknown.membersIfHigh) : null,
    }));
}
