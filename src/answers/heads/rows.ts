/** One kind as the output has it. */

import type { KindOutput } from "../../contract/output/heads.ts";
import type { KindHeads } from "../../engine/heads/kind.ts";
import { type Life, type LifeEvent, moults } from "../../engine/heads/life.ts";
import { comesForFood, hideoutOf, seenOf } from "../../engine/heads/seen.ts";
import { headsBand, headsOf20 } from "../../engine/heads/summary.ts";
import { kaplanMeier, knownEnds, lossRate, shareAt } from "../../engine/heads/survival.ts";
import { exp } from "../../engine/numeric/elementary.ts";
import type { Animal } from "../../engine/types/animal.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import type { HeadsWork } from "./work.ts";

/** Days at which survival of known ends is told. */
const KNOWN_DAYS = 90;
/** A cast shell older than this says nothing of who hides now. */
const CAST_DAYS = 21;

const plainSpread = ({ low, central, high }: Spread): Spread => ({ low, central, high });
const bandOf = (chances: readonly number[]) => {
  const { low, central, high } = headsBand(chances);
  return { low, likely: central, high };
};

export function kindRow(kind: KindHeads, work: HeadsWork): KindOutput {
  const { life, came, onRecord, living, byAgeAlone, ahead, lossPerYear } = kind;
  const { animal } = life;
  const { id } = animal;
  const asked = work.asked.get(id) ?? null;
  const fed = work.fed.kinds.find((one) => one.animal.id === id) ?? null;
  const known = knownOf(life);
  return {
    ...{ id, name: animal.commonName, group: animal.group, came, on_record: onRecord },
    lost_found: sumOf(life, "found"),
    lost_feared: sumOf(life, "feared"),
    moved_out: sumOf(life, "moved_out"),
    living: bandOf(living),
    living_of_20: headsOf20(living),
    by_age_alone: bandOf(byAgeAlone),
    later: ahead.map(({ weeks, living: then }) => ({
      ...{ weeks, ...bandOf(then), figure: figureId.heads(id, `weeks_${weeks as 4 | 12 | 26}`) },
    })),
    loss_per_year: plainSpread(lossPerYear),
    known,
    seen: bestWay(animal, work),
    last_count: lastCount(life),
    counts: countsOf(life),
    settles: settlesOf(animal),
    more_seen: moreSeen(life),
    cast_shell_on: castShellOn(animal, work),
    question:
      asked === null
        ? null
        : {
            ratio: exp(Math.min(asked.ratio, 20)),
            asked_from: exp(asked.from),
            last_spoke_on: asked.lastSpokeOn,
            causes: asked.causes.map(({ id: cause, name, for: speaks, against, tell }) => ({
              ...{ id: cause, name, for: [...speaks], against: [...against], tell },
            })),
          },
    fed:
      fed === null
        ? null
        : { share: plainSpread(fed.fed), short_of_20: fed.shortOf20, scarcest_shelf: fed.scarcest },
    figures: {
      came: figureId.heads(id, "came"),
      now: figureId.heads(id, "now"),
      by_age: figureId.heads(id, "by_age"),
      loss: figureId.heads(id, "loss"),
      seen: figureId.heads(id, "seen"),
      known: known === null ? null : figureId.heads(id, "known"),
      ratio: asked === null ? null : figureId.heads(id, "ratio"),
      fed: fed === null ? null : figureId.heads(id, "fed"),
    },
  };
}

const sumOf = ({ events }: Life, kind: "found" | "feared" | "moved_out"): number =>
  events.reduce((sum, one) => sum + (one.kind === kind ? one.count : 0), 0);

/** Null until one of them died: before, nothing is known but that they live. */
function knownOf(life: Life): KindOutput["known"] {
  const ends = knownEnds(life);
  const rate = lossRate(ends);
  if (rate === null || rate.deaths === 0) return null;
  const steps = kaplanMeier(ends);
  const last = steps.filter(({ days }) => days <= KNOWN_DAYS).at(-1);
  return {
    share_at_90_days: shareAt(steps, KNOWN_DAYS),
    low: last?.band?.low ?? null,
    high: last?.band?.high ?? null,
    deaths: rate.deaths,
    head_days: rate.headDays,
  };
}

/** Two hours after lights-out, by torch; by day for kinds of the day. With food where food calls them out. */
function bestWay(animal: Animal, { rates, scene }: HeadsWork): KindOutput["seen"] {
  const food = comesForFood(animal);
  const day = animal.active === "day";
  const seen = seenOf(
    animal,
    {
      ...{ hoursFromLightsOut: day ? -2 : 2, torch: !day, foodOffered: food },
      lightHours: scene.facts.lightHours.central,
    },
    rates,
  );
  const chance = seen.kind === "chance" ? seen.chance : { low: 0, central: 0, high: 0 };
  const way = day ? "in the lit hours" : "by torch, two hours after lights-out";
  return { chance: plainSpread(chance), way: food ? `${way}, with a little food in the water` : way };
}

function settlesOf(animal: Animal): string {
  const food = comesForFood(animal) ? " with a little food in the water" : "";
  if (animal.active === "day") return `A count at feeding time, in the lit hours${food}, on two days.`;
  const where = hideoutOf(animal) === "buried" ? " Daytime says nothing: they are in the sand." : "";
  return `A count by torch, two hours after lights-out${food}, on two nights.${where}`;
}

const WHY_LEAST = {
  by_day: "By day its kind hides: those not seen are not missing.",
  buried: "Outside its hours it is in the sand: those not seen are not missing.",
  hour_not_said: "The hour was not said, and its kind hides by day: those not seen are not missing.",
} as const;

function lastCount({ events }: Life): KindOutput["last_count"] {
  const last = events.findLast((one): one is LifeEvent & { kind: "counted" } => one.kind === "counted");
  if (last === undefined) return null;
  const { on, seen, how } = last;
  return how.kind === "chance"
    ? { on, seen, says: "so_many", why: null }
    : { on, seen, says: "at_least", why: WHY_LEAST[how.why] };
}

/** Counts that are told one by one. */
const COUNTS_TOLD = 12;

/** Each count beside those on record that day, the latest first. */
function countsOf({ before, events }: Life): KindOutput["counts"] {
  let of = before;
  const counts: KindOutput["counts"] = [];
  for (const event of events) {
    if (event.kind === "added") of += event.count;
    if (event.kind === "found" || event.kind === "moved_out") of -= event.count;
    if (event.kind !== "counted") continue;
    const says = event.how.kind === "chance" ? "so_many" : "at_least";
    counts.push({ on: event.on, seen: event.seen, of: Math.max(0, of), says });
  }
  return counts.reverse().slice(0, COUNTS_TOLD);
}

/** The last count that saw more than the record had, unless heads came or a later count fits. */
function moreSeen({ animal, before, events }: Life): KindOutput["more_seen"] {
  let onRecord = before;
  let more: KindOutput["more_seen"] = null;
  for (const event of events) {
    if (event.kind === "added") onRecord += event.count;
    if (event.kind === "found" || event.kind === "moved_out") onRecord -= event.count;
    if (event.kind !== "counted") continue;
    const breeds = animal.risks.includes("reproduces_in_tank");
    const over = event.seen > onRecord && !event.about;
    more = over ? { on: event.on, seen: event.seen, on_record: Math.max(0, onRecord), breeds } : null;
  }
  return more !== null && more.seen > onRecord ? more : null;
}

function castShellOn(animal: Animal, { scene }: HeadsWork): string | null {
  if (!moults(animal)) return null;
  const seen = scene.record.observations.findLast(
    (one) =>
      one.kind === "sign" && one.sign === "cast_shell" && (one.animal === animal.id || one.animal === null),
  );
  if (seen === undefined) return null;
  const days = (Date.parse(scene.today) - Date.parse(seen.on)) / 86_400_000;
  return days <= CAST_DAYS ? seen.on : null;
}
