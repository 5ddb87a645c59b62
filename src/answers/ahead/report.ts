/** Everything that `grazewell ahead` has to say, before it is put into words or data. */
import { animalById, animals } from "../../catalogue/index.ts";
import type { Member } from "../../engine/larder/members.ts";
import { suitabilityOf } from "../../engine/stocking/suitability.ts";
import { type Unknown, unknownsOf } from "../../engine/stocking/unknowns.ts";
import { companyOf, isCrew } from "../../engine/stocking/waves.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Progress } from "../progress.ts";
import { type Outlook, outlookOf } from "./outlook.ts";
import { type RunsRequest, runCourses } from "./runs.ts";

export interface AheadReport {
  readonly asItIs: Outlook;
  readonly whatIf: Outlook | null;
  /** Each change of the what-if in words. */
  readonly changes: readonly string[];
  readonly withPlan: boolean;
  /** What the runs do not hold and a keeper must know. */
  readonly warnings: readonly string[];
  /** What would narrow the bands most. */
  readonly sharpen: readonly Pick<Unknown, "fact" | "label" | "ask">[];
  /** Versions of the tank as it is that were run. */
  readonly members: readonly Member[];
}

export function aheadReport(request: RunsRequest, progress: Progress): AheadReport {
  const { facts, whatIf, plan } = request;
  const courses = runCourses(request, progress);
  return {
    asItIs: outlookOf(courses.asItIs, facts),
    whatIf: courses.whatIf === null ? null : outlookOf(courses.whatIf, facts),
    changes: whatIf?.changes ?? [],
    withPlan: plan !== null,
    warnings: warningsOf(request),
    sharpen: sharpenOf(facts, courses.members),
    members: courses.members,
  };
}

/** Who would not live here for reasons that the balance knows nothing of: enemies, room, medicine, warmth. */
function warningsOf({ facts, whatIf }: RunsRequest): string[] {
  const company = companyOf(facts, animals);
  const arriving = [
    ...facts.planned.map(({ id }) => id),
    ...(whatIf?.events ?? []).flatMap((event) => (event.kind === "addAnimals" ? [event.species] : [])),
  ];
  const danger = [
    ...(facts.medicines.length > 0
      ? [
          `The water holds ${facts.medicines.join(", ")}: the runs know nothing of medicines. Ask an aquatic vet.`,
        ]
      : []),
    ...(facts.trouble !== null
      ? ["Something is dead, gasping or wrong now: find that first. The runs know nothing of it."]
      : []),
  ];
  const unfit = [...new Set(arriving)].flatMap((id) => {
    const animal = animalById.get(id);
    if (animal === undefined) return [];
    const { reasons } = suitabilityOf(animal, { facts, company, daysAhead: 0 });
    const heads = company.reduce((sum, mate) => sum + (mate.animal.id === id ? mate.count : 0), 0);
    const crowded = animal.maxPerTank !== null && heads > animal.maxPerTank;
    const held = reasons.filter(
      ({ code }) => !NOT_OF_THE_TANK.has(code) && (code !== "same_kind" || crowded),
    );
    return held.map(({ text }) => `${animal.commonName}: the runs do not know this: ${text}`);
  });
  return [...danger, ...unfit];
}
/** Reasons against buying that are no danger to the animal, and those that are told for the whole tank. */
const NOT_OF_THE_TANK: ReadonlySet<string> = new Set([
  "role",
  "excluded",
  "stock_list",
  "price",
  "experience",
  "medicine",
  "trouble",
]);

const SHARPEN_MOST = 3;

function sharpenOf(facts: TankFacts, members: readonly Member[]): AheadReport["sharpen"] {
  const crew = companyOf(facts, animals).filter(({ animal, planned }) => !planned && isCrew(animal));
  const residents = crew.map(({ animal, count }) => ({ animal, heads: count }));
  const scene = { daysAhead: 0, sightings: facts.sightings, residents, grazed: crew.length > 0 };
  return unknownsOf(members, scene, facts).slice(0, SHARPEN_MOST);
}
