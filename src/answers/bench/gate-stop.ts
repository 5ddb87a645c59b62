/** What stops a wave, as the daybook knows it: bare glass, snails that climb, two dead in a week, ammonia to be read. */
import { daysBetween } from "../../contract/quantity/calendar.ts";
import { GATE_WORDS } from "../../engine/stocking/gates.ts";
import type { SignSeen } from "../../engine/types/record.ts";
import { coursesOf } from "../medicines/courses.ts";
import { dateWords } from "../words.ts";
import type { Finding } from "./gate.ts";
import { type KnownOfTank, valuesOf } from "./known.ts";
import { isUnreadable } from "./water.ts";

const WEEK = 7;
/** What lies longer back was before this wave. */
const LOOK_BACK_DAYS = 14;

export function stopCondition(text: string, known: KnownOfTank): Finding {
  const reasons = [
    ...deaths(known),
    ...medicinesBefore(known),
    ...(text === GATE_WORDS.stopGrazers ? [...climbers(known), ...bareGlass(known)] : []),
    ...(text === GATE_WORDS.stopOthers ? ammonia(known) : []),
  ];
  if (reasons.length === 0) {
    return {
      state: "not_met",
      because: "No entry of the last two weeks says so.",
      entries: [],
      settle: null,
      by: null,
    };
  }
  return {
    state: "met",
    because: reasons.map(({ words }) => words).join(" "),
    entries: reasons.flatMap(({ entries }) => entries),
    settle: null,
    by: null,
  };
}

interface Reason {
  readonly words: string;
  readonly entries: readonly string[];
}

const recent = (on: string, { today }: KnownOfTank): boolean => daysBetween(on, today) <= LOOK_BACK_DAYS;

/** Over, but not long enough: what rock and sand give back, or nobody can name. What is still in is the bench's own. */
function medicinesBefore({ facts, record, today }: KnownOfTank): Reason[] {
  return coursesOf(facts.medicines, record, today).flatMap(({ typed, endedOn, backOn, entries }) =>
    endedOn === null || backOn === null
      ? []
      : [
          {
            words: `${typed} was in the water until ${dateWords(endedOn)}: no crew before ${dateWords(backOn)}.`,
            entries,
          },
        ],
  );
}

function deaths(known: KnownOfTank): Reason[] {
  const lost = known.record.happenings.filter((one) => one.kind === "lost_found" && recent(one.on, known));
  for (const first of lost) {
    const within = lost.filter(({ on }) => on >= first.on && daysBetween(first.on, on) < WEEK);
    const heads = within.reduce((sum, one) => sum + (one.kind === "lost_found" ? one.count : 0), 0);
    if (heads >= 2) {
      const words = `${heads} were found dead within a week, from ${dateWords(first.on)} on.`;
      return [{ words, entries: within.map(({ entry }) => entry) }];
    }
  }
  return [];
}

/** In the dark one kind at the waterline only grazes there: many do by habit. */
const LONGEST_NIGHT_HOURS = 14;
const grazesByNight = ({ kindsSeen, hoursFromLightsOut: hours }: SignSeen): boolean =>
  (kindsSeen ?? 1) === 1 && hours !== null && hours >= 0 && hours <= LONGEST_NIGHT_HOURS;

function climbers(known: KnownOfTank): Reason[] {
  const seen = known.record.observations.findLast(
    (one) =>
      one.kind === "sign" && one.sign === "waterline_snails" && recent(one.on, known) && !grazesByNight(one),
  );
  return seen === undefined
    ? []
    : [{ words: `Snails at the waterline on ${dateWords(seen.on)}.`, entries: [seen.entry] }];
}

function bareGlass(known: KnownOfTank): Reason[] {
  const back = known.record.observations.findLast((one) => one.kind === "film_back");
  if (back?.kind !== "film_back" || back.days < WEEK || !recent(back.on, known)) return [];
  return [{ words: `The glass stayed bare for ${back.days} days.`, entries: [back.entry] }];
}

function ammonia(known: KnownOfTank): Reason[] {
  const latest = valuesOf(known, "tan_mg_n_per_l").at(-1);
  if (latest === undefined || !recent(latest.on, known) || isUnreadable(latest, "tan_mg_n_per_l")) return [];
  return [
    {
      words: `The test of ${dateWords(latest.on)} showed ammonia.`,
      entries: latest.entry === null ? [] : [latest.entry],
    },
  ];
}
