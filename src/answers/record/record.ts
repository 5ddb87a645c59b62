/**
 * The daybook as the engine takes it: observations and happenings, oldest first, in the engine's units, animals under
 * the names they are known by today. The entries themselves stay as they were kept.
 * Values of readings are as read, without the doubt of the test: whoever uses them adds that.
 */

import { ammoniaDoseIn } from "../../contract/daybook/ammonia-dose.ts";
import { apartIn } from "../../contract/daybook/apart.ts";
import { byDay } from "../../contract/daybook/by-day.ts";
import type { DaybookEntry } from "../../contract/daybook/kinds.ts";
import { type KnownAs, knownToday, type OlderLot } from "../../contract/daybook/known-today.ts";
import type {
  Away,
  Declined,
  Happening,
  Observation,
  Ordered,
  TankRecord,
} from "../../engine/types/record.ts";
import { headsHappenings } from "./heads-happenings.ts";
import { readingSeen } from "./reading-seen.ts";

/**
 * `entries` in any order; those of a later day than today are left out. `older`: heads of the tank file, by which an
 * identification of some heads can be held against those alive; without them it takes what was added.
 */
export function recordOf(
  entries: readonly DaybookEntry[],
  today: string,
  older: readonly OlderLot[] | null = null,
): TankRecord {
  const dated = byDay(entries).filter(({ on }) => on <= today);
  const known = knownToday(dated, older);
  return {
    observations: dated.flatMap((entry) => observationsOf(entry, known)),
    happenings: dated.flatMap((entry) => happeningsOf(entry, known)),
    declined: dated.flatMap((entry): Declined[] =>
      entry.kind === "decline"
        ? [
            {
              entry: entry.id,
              on: entry.on,
              advice: entry.body.advice,
              reason: entry.body.reason,
              restsOn: entry.body.rests_on ?? null,
            },
          ]
        : [],
    ),
    orders: dated.flatMap(ordersOf),
    absences: dated.flatMap(absencesOf).toSorted((a, b) => a.from.localeCompare(b.from)),
    asOf: today,
  };
}

function observationsOf(entry: DaybookEntry, known: KnownAs): Observation[] {
  const dated = { entry: entry.id, on: entry.on };
  switch (entry.kind) {
    case "reading":
      return [readingSeen(dated, entry.body)];
    case "growth": {
      const { growth, score, traits } = entry.body;
      return [{ ...dated, kind: "growth", growth, score, traits }];
    }
    case "chore": {
      const { chore, film_days: days } = entry.body;
      return chore === "glass_wiped" && days !== null ? [{ ...dated, kind: "film_back", days }] : [];
    }
    case "head_count": {
      const { seen, sureness, hours_from_lights_out, torch, food_offered } = entry.body;
      const animal = known.of(entry, entry.body.animal);
      if (animal === null || seen === null) return [];
      return [
        {
          ...dated,
          kind: "heads",
          animal,
          seen,
          about: sureness === "about",
          hoursFromLightsOut: hours_from_lights_out,
          torch,
          foodOffered: food_offered,
        },
      ];
    }
    case "sign": {
      const { sign, count, kinds_seen, hours_from_lights_out, traits } = entry.body;
      const animal = known.of(entry, entry.body.animal);
      return [
        {
          ...dated,
          kind: "sign",
          sign,
          animal,
          count,
          kindsSeen: kinds_seen,
          hoursFromLightsOut: hours_from_lights_out,
          traits,
        },
      ];
    }
    default:
      return [];
  }
}

/** What was asked for and what came, dead or alive, each under the name that it was ordered by. */
function ordersOf(entry: DaybookEntry): Ordered[] {
  if ((entry.kind !== "order" && entry.kind !== "addition") || entry.body.animal === null) return [];
  const { animal, count, wave } = entry.body;
  const dated = { entry: entry.id, on: entry.on, animal, wave };
  return entry.kind === "order"
    ? [{ ...dated, step: "placed", heads: count, expectedOn: entry.body.expected }]
    : [{ ...dated, step: "arrived", heads: count + entry.body.dead_on_arrival, expectedOn: null }];
}

function absencesOf(entry: DaybookEntry): Away[] {
  if (entry.kind !== "absence") return [];
  const { from, to, fed_by, every_days, portions } = entry.body;
  return [{ entry: entry.id, on: entry.on, from, to, fedBy: fed_by, everyDays: every_days ?? 1, portions }];
}

function happeningsOf(entry: DaybookEntry, known: KnownAs): Happening[] {
  const dated = { entry: entry.id, on: entry.on };
  switch (entry.kind) {
    case "addition":
    case "loss":
    case "departure":
    case "move":
      return headsHappenings(entry, known);
    case "chore":
      return [{ ...dated, kind: "chore", chore: entry.body.chore, share: entry.body.share }];
    case "change": {
      const apart = entry.body.changed === "other" ? apartIn(entry.body.to_text) : null;
      if (apart !== null) return [{ ...dated, kind: "apart", ...apart }];
      return [{ ...dated, kind: "changed", what: entry.body.changed, to: entry.body.to }];
    }
    case "treatment": {
      const fed = ammoniaDoseIn(entry.body.substance);
      if (fed !== null) return entry.body.step === "started" ? [{ ...dated, kind: "dosed", ...fed }] : [];
      return [{ ...dated, kind: "treated", substance: entry.body.substance, step: entry.body.step }];
    }
    case "outage":
      return [{ ...dated, kind: "outage", of: entry.body.of, hours: entry.body.hours }];
    default:
      return [];
  }
}
