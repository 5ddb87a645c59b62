/**
 * What happened in the days that are learned from, of a record: as events without anything that differs from member to
 * member. Chores as logged; where none of a kind was logged for three of its usual intervals, the usual care is taken to
 * have gone on (judgement). What the tank is given is told as a multiple of what its facts of today say.
 */
import { careEvents, SIPHONED, WIPED } from "../ahead/care.ts";
import { bodyCarbonMg, speciesFrom } from "../balance/species.ts";
import { addDays, daysBetween } from "../stocking/suitability.ts";
import { isCrew } from "../stocking/waves.ts";
import type { Animal } from "../types/animal.ts";
import type { Given, LearnedWindow, WindowEvent } from "../types/learned.ts";
import type { ChoreDone, Happening, HeadsChanged, TankRecord } from "../types/record.ts";
import type { TankFacts } from "../types/tank.ts";
import { JUDGEMENT } from "./judgement.ts";

/** A share that nobody told, of a chore that has no usual one. Judgement. */
const UNTOLD_SHARE = 0.5;
/** Reserve on arrival in words, share of full. Judgement. */
const CONDITION = { lively: 0.8, usual: 0.6, weak: 0.3 } as const;
/** An outage darkens or stops whole days only from here, hours. */
const LEAST_OUTAGE_HOURS = 12;
/** Usual intervals without a chore of a kind after which its log is taken to have a hole. */
const HOLE_INTERVALS = 3;

type OneEvent = WindowEvent & { readonly kind: Exclude<WindowEvent["kind"], "given"> };

/** Null where the record tells of no day before today. */
export function windowOf(
  facts: TankFacts,
  record: TankRecord,
  animals: readonly Animal[],
  observed: readonly string[],
): LearnedWindow | null {
  const dates = [...record.observations, ...record.happenings].map(({ on }) => on);
  const age = Math.max(0, Math.round(facts.ageDays.central));
  const oldest = [...dates, record.asOf].sort()[0]!;
  const days = Math.min(JUDGEMENT.longestWindowDays, age, daysBetween(oldest, record.asOf));
  if (days <= 0) return null;
  const from = addDays(record.asOf, -days);
  const inWindow = record.happenings
    .map((happening) => ({ happening, t: daysBetween(from, happening.on) }))
    .filter(({ t }) => t >= 0 && t < days);
  const byId = new Map(animals.map((animal) => [animal.id, animal]));
  const changes = inWindow.flatMap(({ happening, t }) =>
    isHeads(happening) ? headsEvents(happening, t, byId) : [],
  );
  const chores = inWindow.flatMap(({ happening, t }) =>
    happening.kind === "chore" ? choreEvents(happening, t, facts) : [],
  );
  const given = givenOver(facts, inWindow, byId);
  chores.push(...wipesBefore(record, from, chores));
  chores.push(
    ...inWindow.flatMap(({ happening, t }): OneEvent[] =>
      happening.kind === "dosed" && happening.mgNPerL !== null
        ? [{ t, kind: "ammonia", mgNPerL: happening.mgNPerL }]
        : [],
    ),
  );
  const events: WindowEvent[] = [...chores, ...usualCare(facts, chores, days), ...changes, ...given.events];
  events.sort((a, b) => a.t - b.t || order(a) - order(b));
  return { from, days, events, heads: headsAtStart(facts, inWindow, byId), first: given.first, observed };
}

const KINDS: readonly WindowEvent["kind"][] = [
  ...(["given", "body", "leave", "arrive", "ammonia", "wipe", "pull", "harvest", "siphon", "stir"] as const),
  ...(["water", "filter", "sorbent"] as const),
];
const order = ({ kind }: WindowEvent): number => KINDS.indexOf(kind);

const isHeads = (happening: Happening): happening is HeadsChanged =>
  happening.kind === "added" ||
  happening.kind === "lost_found" ||
  happening.kind === "lost_feared" ||
  happening.kind === "moved_out";

type Placed = { readonly happening: Happening; readonly t: number };

function headsEvents(
  { kind, animal: id, count, condition, bodyRemoved }: HeadsChanged,
  t: number,
  byId: ReadonlyMap<string, Animal>,
): OneEvent[] {
  const animal = byId.get(id);
  if (animal === undefined || count <= 0) return [];
  if (kind === "added") {
    if (!isCrew(animal)) return [];
    return [{ t, kind: "arrive", animal: id, count, condition: CONDITION[condition ?? "usual"] }];
  }
  const gone: OneEvent[] = isCrew(animal) ? [{ t, kind: "leave", animal: id, count }] : [];
  if (kind === "moved_out" || (kind === "lost_found" && bodyRemoved !== false)) return gone;
  return [...gone, { t, kind: "body", ...bodyOf(animal, count) }];
}

/** Carbon, nitrogen and phosphorus of bodies left in the tank, mg. */
function bodyOf(animal: Animal, count: number) {
  if (isCrew(animal)) {
    const { bC, bN, bP } = speciesFrom(animal);
    return { mgC: bC * count, mgN: bN * count, mgP: bP * count };
  }
  const mgC = bodyCarbonMg(animal) * count;
  return { mgC, mgN: mgC / 4.5, mgP: mgC / 40 };
}

function choreEvents({ chore, share }: ChoreDone, t: number, facts: TankFacts): OneEvent[] {
  switch (chore) {
    case "water_change":
      return [
        {
          t,
          kind: "water",
          share: share ?? Math.min(1, facts.waterChangeFraction.central),
          siphon: SIPHONED,
        },
      ];
    case "glass_wiped":
      return [{ t, kind: "wipe", share: Math.min(share ?? WIPED, 0.98) }];
    case "sand_siphoned":
      return [{ t, kind: "siphon", share: share ?? UNTOLD_SHARE }];
    case "sand_stirred":
      return [{ t, kind: "stir", share: share ?? UNTOLD_SHARE }];
    case "algae_removed":
      return [{ t, kind: "pull", share: share ?? UNTOLD_SHARE }];
    case "filter_changed":
      return [{ t, kind: "filter" }];
    case "sorbent_renewed":
      return [{ t, kind: "sorbent" }];
    case "refugium_harvested":
      return [{ t, kind: "harvest", share: share ?? UNTOLD_SHARE }];
    case "fallen_snails_righted":
      return [];
  }
}

/** Days to wipe begin with clean glass: a wipe that nobody logged, where none stands within a day of it. */
function wipesBefore({ observations }: TankRecord, from: string, chores: readonly OneEvent[]): OneEvent[] {
  const wiped = chores.filter(({ kind }) => kind === "wipe").map(({ t }) => t);
  return observations.flatMap((seen): OneEvent[] => {
    if (seen.kind !== "film_back") return [];
    const t = daysBetween(from, seen.on) - Math.round(seen.days);
    if (t < 0 || wiped.some((other) => Math.abs(other - t) <= 1)) return [];
    wiped.push(t);
    return [{ t, kind: "wipe", share: WIPED }];
  });
}

/** Care as usual where the log has none of a kind, or a hole. */
function usualCare(facts: TankFacts, logged: readonly OneEvent[], days: number): OneEvent[] {
  const usual = careEvents(facts, days).flatMap((event): OneEvent[] => {
    const { t } = event;
    switch (event.kind) {
      case "waterChange":
        return [{ t, kind: "water", share: event.fraction, siphon: event.siphon ?? 0 }];
      case "wipeGlass":
        return [{ t, kind: "wipe", share: event.fraction }];
      case "changeFilter":
        return [{ t, kind: "filter" }];
      case "renewSorbent":
        return [{ t, kind: "sorbent" }];
      case "harvestRefugium":
        return [{ t, kind: "harvest", share: event.fraction }];
      default:
        return [];
    }
  });
  return usual.filter((event) => {
    const same = logged.filter(({ kind }) => kind === event.kind).map(({ t }) => t);
    if (same.length === 0) return true;
    const dates = usual.filter(({ kind }) => kind === event.kind).map(({ t }) => t);
    const interval = dates.length > 1 ? dates[1]! - dates[0]! : days;
    const before = Math.max(0, ...same.filter((t) => t <= event.t));
    const after = Math.min(days, ...same.filter((t) => t > event.t));
    const hole = after - before > HOLE_INTERVALS * interval;
    return hole && event.t - before >= interval && (after === days || after - event.t >= interval);
  });
}

/** Crew on the first day: today's, less what came since, and what went. */
function headsAtStart(
  facts: TankFacts,
  inWindow: readonly Placed[],
  byId: ReadonlyMap<string, Animal>,
): Record<string, number> {
  const heads: Record<string, number> = {};
  const add = (id: string, count: number): void => {
    const animal = byId.get(id);
    if (animal !== undefined && isCrew(animal)) heads[id] = (heads[id] ?? 0) + count;
  };
  for (const { id, count } of facts.present) add(id, count);
  for (const { happening } of inWindow) {
    if (isHeads(happening))
      add(happening.animal, happening.kind === "added" ? -happening.count : happening.count);
  }
  return Object.fromEntries(
    Object.entries(heads)
      .map(([id, count]) => [id, Math.max(0, count)] as const)
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );
}

/** What the tank was given over the window, as multiples of today's. What was given before a first change is not told: today's. */
function givenOver(
  facts: TankFacts,
  inWindow: readonly Placed[],
  byId: ReadonlyMap<string, Animal>,
): { readonly first: Given; readonly events: WindowEvent[] } {
  const steps: { t: number; change: Partial<Given> }[] = [];
  const over = (to: number, today: number): number => (today > 0 ? to / today : 1);
  let strengthLater = 1;
  let fishLater = 0;
  // From today backwards: strength is told as a share of before, and fish by who came and went.
  const fish0 = facts.fishWetG.central;
  let first: Given = { feed: 1, fish: 1, hours: 1, light: 1, skimmer: null };
  const placed = [...inWindow].sort((a, b) => b.t - a.t);
  for (const { happening, t } of placed) {
    if (happening.kind === "changed" && happening.to !== null) {
      const { what, to } = happening;
      if (what === "feed") steps.push({ t, change: { feed: over(to, facts.feedGPerDay.central) } });
      else if (what === "light_hours")
        steps.push({ t, change: { hours: over(to, facts.lightHours.central) } });
      else if (what === "skimmer") {
        steps.push({ t, change: { skimmer: to > 0 ? 1 : 0 } });
        first = { ...first, skimmer: to > 0 ? 0 : 1 };
      } else if (what === "light_strength" && to > 0) {
        steps.push({ t, change: { light: strengthLater } });
        strengthLater /= to;
        first = { ...first, light: strengthLater };
      }
    } else if (happening.kind === "outage" && happening.hours >= LEAST_OUTAGE_HOURS) {
      if (happening.of === "lamp" || happening.of === "power") {
        const dark = Math.max(1, Math.round(happening.hours / 24));
        steps.push({ t: t + dark, change: { light: strengthLater } }, { t, change: { light: 0 } });
      }
    } else if (isHeads(happening)) {
      const animal = byId.get(happening.animal);
      if (animal?.group !== "fish" || fish0 <= 0) continue;
      steps.push({ t, change: { fish: Math.max(0, (fish0 + fishLater) / fish0) } });
      const grams = animal.liveWetMassG.central * happening.count;
      fishLater += happening.kind === "added" ? -grams : grams;
      first = { ...first, fish: Math.max(0, (fish0 + fishLater) / fish0) };
    }
  }
  let now = first;
  const events = steps
    .reverse()
    .sort((a, b) => a.t - b.t)
    .map(({ t, change }): WindowEvent => {
      now = { ...now, ...change };
      return { t, kind: "given", ...now };
    });
  return { first, events };
}
