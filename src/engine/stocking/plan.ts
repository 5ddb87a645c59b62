/**
 * The plan of a tank: waves that pass the forecast, who is refused and why, what is left to the keeper's hand, and
 * what would change it most; or an honest "nothing yet, because". Advances in steps, so that a caller can show
 * progress and stop.
 */

import type { Progress } from "../ahead/forecast.ts";
import type { CrewKind } from "../ahead/start.ts";
import { type Larder, RATION_MG_C } from "../larder/larder.ts";
import type { Member } from "../larder/members.ts";
import type { Animal } from "../types/animal.ts";
import { SHELVES, type ShelfId } from "../types/shelf.ts";
import type { TankFacts } from "../types/tank.ts";
import { ALIVE_RUNS, checkPlan, type KindCheck, kindsOf, type PlanCheck } from "./check.ts";
import { type Gate, gateFor } from "./gates.ts";
import { aloneOf, type Binding, bindingOf, enemyText, type LimitCost, limitCosts } from "./limits.ts";
import { eatsFrom } from "./programme.ts";
import { addDays, type Reason, statusOf } from "./suitability.ts";
import { type Unknown, unknownsOf } from "./unknowns.ts";
import {
  ALL_LIMITS,
  companyOf,
  draftWaves,
  isCrew,
  type Limits,
  type PlanningTools,
  type WaveDraft,
  warmthOf,
} from "./waves.ts";

export interface PlannedAnimal {
  readonly animal: Animal;
  readonly count: number;
  readonly eats: readonly ShelfId[];
  readonly binding: Binding;
  readonly cautions: readonly string[];
  /** Spare shells to buy with it, each worn one with this many. */
  readonly spareShells: number;
}

export interface Wave {
  readonly number: number;
  readonly from: string;
  readonly to: string;
  readonly day: number;
  readonly safeStart: number;
  readonly animals: readonly PlannedAnimal[];
  readonly gate: Gate;
  readonly larder: Larder;
  readonly draft: WaveDraft;
}

export interface Refused {
  readonly animal: Animal;
  readonly status: "not_yet" | "never";
  readonly reasons: readonly Reason[];
}

/** An animal that would fit but is not in the plan, and why. */
export interface Spare {
  readonly animal: Animal;
  readonly why: string;
}

/** A shelf that the crew does not eat down, and whose job it then is. */
export interface HandWork {
  readonly shelf: ShelfId;
  /** Left at the central supply, mg C/d. */
  readonly leftMgC: number;
  readonly text: string;
}

export interface FedByHand {
  readonly animal: Animal;
  /** Food needed beyond the larder, mg C/d and mg of dry feed a day. */
  readonly mgC: number;
  readonly dryFeedMg: number;
  /** In the tank already, wished for, or of an earlier wave that others now eat beside. */
  readonly standing: "resident" | "wished" | "planned";
}

export interface WishAnswer {
  readonly animal: Animal;
  readonly status: "in_plan" | "refused";
  /** What the wish costs the others: kinds that come in fewer heads. */
  readonly costs: readonly { readonly animal: Animal; readonly fewer: number }[];
}

export interface WhatWouldChange {
  readonly unknown: Unknown;
  readonly headsIfLow: number | null;
  readonly headsIfHigh: number | null;
}

/** A number that was cut because the forecast starved it. */
export interface Mend {
  readonly id: string;
  readonly name: string;
  readonly from: number;
  readonly to: number;
  /** Of 20 runs, those that fed the first number through 90 days. */
  readonly fedOf20: number;
}

export interface Plan {
  readonly kind: "waves" | "nothing_yet";
  /** Why nothing yet, or nothing more; empty for a plan with waves. */
  readonly because: readonly string[];
  /** Day to look again, where nothing is planned. */
  readonly lookAgain: string | null;
  readonly waves: readonly Wave[];
  readonly refused: readonly Refused[];
  readonly spare: readonly Spare[];
  readonly handWork: readonly HandWork[];
  readonly fedByHand: readonly FedByHand[];
  readonly wishes: readonly WishAnswer[];
  readonly check: PlanCheck | null;
  readonly mends: readonly Mend[];
  readonly wouldChange: readonly WhatWouldChange[];
  readonly limitCosts: readonly LimitCost[];
  readonly drafts: readonly WaveDraft[];
  readonly kinds: readonly CrewKind[];
  /** Whether every wave was solved to proven optimality. */
  readonly proven: boolean;
}

export interface PlanRequest extends PlanningTools {
  readonly facts: TankFacts;
  readonly seed: number;
  /** Also what each limit costs: half as much work again. */
  readonly withLimitCosts: boolean;
}

export type PlanProgress = Progress & { readonly doing: string };

const MOST_MENDS = 4;
/** Members that a mending round runs; the final check runs all. */
const MENDING_MEMBERS = 60;
/** mg C in a mg of dry feed. @source feed.pellet */
const DRY_FEED_CARBON = 0.42;
/** Half-fed by hand less than this is rounding, mg C/d. */
const LEAST_FED_MG_C = 0.5;
const LOOK_AGAIN_DAYS = 14;

export function* planWaves(request: PlanRequest): Generator<PlanProgress, Plan> {
  const { facts, animals } = request;
  const company = companyOf(facts, animals);
  let limits: Limits = ALL_LIMITS;
  yield { doing: "sizing the waves", done: 0, of: 1 };
  let drafts = draftWaves(facts, request, limits);
  const mends: Mend[] = [];
  for (let round = 0; round < MOST_MENDS && drafts.some(({ bought }) => bought.size > 0); round += 1) {
    const rehearsal = yield* rehearse(
      request,
      drafts,
      request.members.slice(0, MENDING_MEMBERS),
      "rehearsing the waves",
    );
    const cuts = cutsOf(rehearsal, drafts, animals, facts.wishes);
    if (cuts.size === 0) break;
    for (const [id, heads] of cuts) {
      const was = rehearsal.kinds.find((kind) => kind.id === id)!;
      const name = animals.find((animal) => animal.id === id)?.commonName ?? id;
      mends.push({ id, name, from: was.heads, to: heads, fedOf20: Math.floor(was.fedShare * 20) });
    }
    limits = { ...limits, mended: new Map([...limits.mended, ...cuts]) };
    drafts = draftWaves(facts, request, limits);
  }
  const kinds = kindsOf(company, drafts, animals);
  const check =
    kinds.length > 0
      ? yield* rehearse(request, drafts, request.members, "checking against the forecast")
      : null;
  yield { doing: "explaining", done: 0, of: 1 };
  return assemble(request, drafts, limits, kinds, check, mends);
}

function* rehearse(
  request: PlanRequest,
  drafts: readonly WaveDraft[],
  members: readonly Member[],
  doing: string,
): Generator<PlanProgress, PlanCheck> {
  const { facts, animals, seed } = request;
  const kinds = kindsOf(companyOf(facts, animals), drafts, animals);
  const work = checkPlan({ facts, members, kinds, drafts, seed });
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

function assemble(
  request: PlanRequest,
  drafts: readonly WaveDraft[],
  limits: Limits,
  kinds: readonly CrewKind[],
  check: PlanCheck | null,
  mends: readonly Mend[],
): Plan {
  const { facts, animals, solve } = request;
  const warmth = warmthOf(facts);
  const company = companyOf(facts, animals);
  const last = drafts.at(-1);
  const crewNames = company
    .filter(({ animal, planned }) => !planned && isCrew(animal))
    .map(({ animal }) => animal.commonName);
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
      safeStart: draft.date.safeStart,
      animals: bought.sort((a, b) => b.count - a.count || a.animal.id.localeCompare(b.animal.id)),
      gate: gateFor(
        bought.map(({ animal }) => animal),
        earlier,
        waves.length === 0 && crewNames.length === 0,
      ),
      larder: draft.larder,
      draft,
    });
  }
  const { refused, spare } = sortOut(request, drafts, limits, warmth);
  const because = waves.length > 0 || last === undefined ? [] : whyNothing(facts, drafts, refused);
  return {
    kind: waves.length > 0 ? "waves" : "nothing_yet",
    because,
    lookAgain:
      waves.length > 0 ? null : addDays(facts.asOf, Math.max(LOOK_AGAIN_DAYS, drafts[0]?.date.day ?? 0)),
    waves,
    refused,
    spare,
    handWork: last === undefined ? [] : handWorkOf(last, facts),
    fedByHand: fedByHandOf(drafts, facts, company),
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

/** Everyone who is not in the plan: refused for a reason, or fit and not needed. */
function sortOut(
  request: PlanRequest,
  drafts: readonly WaveDraft[],
  limits: Limits,
  warmth: number,
): { refused: Refused[]; spare: Spare[] } {
  const refused: Refused[] = [];
  const spare: Spare[] = [];
  const last = drafts.at(-1);
  if (last === undefined) return { refused, spare };
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
      // What time alone will not lift is said first, then the age, as it is today.
      const reasons = [
        ...later.filter(({ code }) => code !== "age"),
        ...today.filter(({ code }) => code === "age"),
      ];
      refused.push({ animal, status: statusOf(reasons) === "never" ? "never" : "not_yet", reasons });
      continue;
    }
    if (animal.group === "pod") {
      spare.push({
        animal,
        why: "comes as a culture of hundreds and settles its own number; not counted by the head",
      });
      continue;
    }
    const enemy = enemyText(animal.id, last);
    if (enemy !== null) {
      spare.push({ animal, why: enemy });
      continue;
    }
    const groupMin = Math.max(animal.groupMin, animal.liveWetMassG.central < 1.5 ? 3 : 1);
    const alone = aloneOf(animal, groupMin, last, warmth);
    if (limits.mended.get(animal.id) === 0) {
      refused.push({ animal, status: "not_yet", reasons: [starvesInForecast()] });
    } else if (!alone.enough) {
      refused.push({ animal, status: "not_yet", reasons: [starves(groupMin, alone)] });
    } else {
      // Time lifts what stands against it today, and the plan would still leave it out: that is the reason to give.
      const lifted = today.flatMap(({ until }) => (until === null ? [] : [until])).join(", ");
      const { text } = bindingOf(animal.id, last, request.facts, limits, request.solve);
      spare.push({ animal, why: lifted === "" ? text : `${lifted}; even then, ${text}` });
    }
  }
  return { refused, spare };
}

function starves(heads: number, { needMgC, takesMgC }: { needMgC: number; takesMgC: number }): Reason {
  const who = heads > 1 ? `The least group of ${heads} needs` : "One needs";
  const needs = rations(needMgC);
  const given = rations(takesMgC);
  return {
    code: "starves",
    text: `${who} ${needs} rations a day and may starve: in 15 of 20 runs its shelves would give it ${given === needs ? "a little less" : given}, even alone.`,
    until: "once the larder has grown, or if you wish for it and feed it by hand",
  };
}

const starvesInForecast = (): Reason => ({
  code: "starves",
  text: "In the forecast it is not alive at 90 days in 15 of 20 runs: it may starve here.",
  until: "once the larder has grown",
});

const rations = (mgC: number): string => (mgC / RATION_MG_C).toPrecision(2);

function whyNothing(facts: TankFacts, drafts: readonly WaveDraft[], refused: readonly Refused[]): string[] {
  if (facts.medicines.length > 0 || facts.trouble !== null) {
    return [
      ...new Set(
        refused.flatMap(({ reasons }) =>
          reasons
            .filter(({ code }) => code === "medicine" || code === "trouble")
            .map(({ text, until }) => `${text} Plan again ${until ?? ""}.`),
        ),
      ),
    ];
  }
  const because: string[] = [];
  const last = drafts.at(-1)!;
  if (last.answer.handFed.size > 0) {
    because.push("Those already there do not find enough: feed them by hand, or give some away.");
  }
  const total = SHELVES.reduce((sum, shelf) => sum + last.supply.pessimistic[shelf], 0);
  because.push(
    `In 15 of 20 runs the larder offers ${rations(total)} rations a day in all by ${addDays(facts.asOf, last.date.day)}; no animal that suits this tank could live on what it reaches of that.`,
  );
  if (facts.ageDays.central < 35)
    because.push("The tank is young: film and diatoms come first, the crew after them.");
  const count = (code: Reason["code"]) =>
    refused.filter(({ reasons }) => reasons.some((reason) => reason.code === code)).length;
  const company = count("eaten_by");
  if (company > 0) because.push(`${company} kinds would be eaten by what lives here or is planned.`);
  return because;
}

const SHELF_WORK: Readonly<Record<ShelfId, string>> = {
  film_glass: "wipe the glass: no crew spares the scraper",
  film_rock: "brush the rock when you change water, or let it be",
  film_sand: "let it be, or siphon the top of the sand",
  hair_algae: "pull long tufts by hand: no crew clears them, and it comes back while nutrients are high",
  bubble_algae: "take bubbles out whole, without bursting them",
  detritus_sand: "siphon it with the water change",
  detritus_crevice: "blow out the rock before the water change",
  uneaten_feed: "feed less, or take out what is left after two minutes",
  carrion: "look for the dead and take them out",
};

function handWorkOf(last: WaveDraft, facts: TankFacts): HandWork[] {
  return SHELVES.flatMap((shelf) => {
    const left = last.supply.central[shelf] - last.answer.eatenCentral[shelf];
    if (left <= Math.max(1, 0.15 * last.supply.central[shelf])) return [];
    return [
      {
        shelf,
        leftMgC: left,
        text:
          shelf === "film_glass"
            ? `${SHELF_WORK[shelf]}, about every ${Math.round(facts.wipeGlassEveryDays.central)} days`
            : SHELF_WORK[shelf],
      },
    ];
  });
}

/** Who needs food by hand, and the most it needs on any wave's day: the shelves give least while the tank is young. */
function fedByHandOf(
  drafts: readonly WaveDraft[],
  facts: TankFacts,
  company: ReturnType<typeof companyOf>,
): FedByHand[] {
  const most = new Map<string, { animal: Animal; mgC: number }>();
  for (const { programme, answer } of drafts) {
    for (const { animal } of programme.input.candidates) {
      const mgC = answer.handFed.get(animal.id) ?? 0;
      if (mgC >= LEAST_FED_MG_C && mgC > (most.get(animal.id)?.mgC ?? 0))
        most.set(animal.id, { animal, mgC });
    }
  }
  return [...most.values()].map(({ animal, mgC }) => {
    const resident = company.some((mate) => !mate.planned && mate.animal.id === animal.id);
    const standing = resident ? "resident" : facts.wishes.includes(animal.id) ? "wished" : "planned";
    return { animal, mgC, dryFeedMg: mgC / DRY_FEED_CARBON, standing };
  });
}

function wishesOf(
  request: PlanRequest,
  drafts: readonly WaveDraft[],
  limits: Limits,
  refused: readonly Refused[],
): WishAnswer[] {
  const { facts, animals } = request;
  const last = drafts.at(-1);
  return facts.wishes.flatMap((id): WishAnswer[] => {
    const animal = animals.find((one) => one.id === id);
    if (animal === undefined || last === undefined) return [];
    if ((last.answer.heads.get(id) ?? 0) === 0 || refused.some((no) => no.animal.id === id)) {
      return [{ animal, status: "refused", costs: [] }];
    }
    const without = draftWaves(
      { ...facts, wishes: facts.wishes.filter((other) => other !== id) },
      request,
      limits,
    ).at(-1);
    const costs =
      without === undefined
        ? []
        : animals.flatMap((other) => {
            const change = (last.answer.heads.get(other.id) ?? 0) - (without.answer.heads.get(other.id) ?? 0);
            return change < 0 && other.id !== id ? [{ animal: other, fewer: -change }] : [];
          });
    return [{ animal, status: "in_plan", costs }];
  });
}

/** Heads of the last wave if the heaviest unknown lay at either end. */
function wouldChangeOf(
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

/** A kind that the plan keeps although fewer than 15 of 20 runs have it alive, with the reason. */
export function explained(kind: KindCheck, fedByHand: readonly FedByHand[]): string | null {
  if (kind.aliveOf20 >= ALIVE_RUNS) return null;
  if (!kind.resident && fedByHand.some(({ animal }) => animal.id === kind.id)) {
    return "it lives on what you feed it by hand; the runs feed nobody";
  }
  if (kind.fedShare * 20 >= ALIVE_RUNS) {
    return `age alone would leave it in ${kind.agedOf20} of 20: so few animals are soon gone by chance`;
  }
  return kind.resident
    ? "it does not find enough here: feed it by hand, give some away, or expect to lose them"
    : "it may starve in the leaner runs: feed by hand if the glass stays bare";
}
