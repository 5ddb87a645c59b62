/** A time away that is near, or under way, as advice: prepare; or leave the tank to whoever stands in, and count on coming back. */
import { addDays } from "../../contract/quantity/calendar.ts";
import type { Figure } from "../../engine/types/figure.ts";
import type { Advice } from "../advice.ts";
import { rightingDates } from "../almanac/animals.ts";
import { cantWait } from "../almanac/around.ts";
import type { CareDate } from "../almanac/care-date.ts";
import { arrivalDates } from "../arrivals/apart-dates.ts";
import type { RecordScene } from "../record-scene.ts";
import { plain, type Sentence } from "../sentence.ts";
import { dateWords } from "../words.ts";
import { absencesAhead, type KeptAbsence, lastDayHome } from "./absences.ts";
import { absenceDates, REHEARSE_DAYS } from "./care-dates.ts";

/** Named on the bench this many days before: a day before the rehearsal with a sitter. */
const NEAR_DAYS = REHEARSE_DAYS + 1;

/** What can't wait while somebody is away, without a plan: for the sheet of the sitter. */
export function sitterCare(scene: RecordScene, away: KeptAbsence): readonly CareDate[] {
  return cantWait([...rightingDates(scene).dates, ...arrivalDates(scene)], away);
}

export const absenceFigures = (scene: RecordScene): readonly Figure[] =>
  absenceDates(scene).flatMap(({ figures }) => figures);

export function absenceAdvice(scene: RecordScene): readonly Advice[] {
  const { today } = scene;
  return absencesAhead(scene).flatMap((away): Advice[] => {
    if (today >= away.from) return [whileAway(away)];
    return addDays(away.from, -NEAR_DAYS) <= today ? [prepare(away, scene)] : [];
  });
}

function prepare(away: KeptAbsence, scene: RecordScene): Advice {
  const { from, to, fedBy, key } = away;
  const left = absenceDates(scene).filter(
    ({ id }) => id.startsWith(`holiday.${key}.`) && !/home|visit/.test(id),
  );
  const kept = sitterCare(scene, away);
  const last = lastDayHome(away);
  return {
    id: `absence.${key}`,
    urgency: scene.today >= last ? "today" : "this_week",
    weight: 55,
    about: "absence",
    do: [`Prepare to leave on ${dateWords(from)}: ${TO_PREPARE[fedBy]}`],
    why: [
      ...left.map(({ on, do: deed }): Sentence => [`By ${dateWords(on)}: `, ...deed]),
      ...(kept.length === 0 ? [] : [[cantWaitWords(away, kept)] as Sentence]),
      [`You are away until ${dateWords(to)}. No animal comes in that time, or in the week before it.`],
    ],
    byWhen: [`By ${dateWords(last)}, the day before you leave.`],
    by: last,
    wouldChange: ["Other dates, or somebody else who feeds."],
    restsOn: `${from} ${to} ${fedBy} ${scene.today >= last}`,
    act: { words: "What to prepare, and the page for a sitter", leads: "holiday" },
    wait: { words: `Wait: until ${dateWords(last)} at the latest`, leads: "daybook" },
  };
}

const TO_PREPARE: Readonly<Record<KeptAbsence["fedBy"], string>> = {
  sitter: "portions packed, the sitter shown the tank.",
  feeder: "the feeder tried, somebody asked to look in.",
  nobody: "the last care done, somebody asked to look in.",
};

const cantWaitWords = ({ fedBy }: KeptAbsence, kept: readonly CareDate[]): string =>
  `${fedBy === "sitter" ? "For the sitter, as it can't wait" : "Find somebody, as it can't wait"}: ${kept.map((one) => plain(one.do).replace(/\.$/, "")).join("; ")}.`;

const STANDS_IN: Readonly<Record<KeptAbsence["fedBy"], string>> = {
  sitter: "to the sitter",
  feeder: "to the feeder",
  nobody: "alone",
};

function whileAway({ key, from, to, fedBy }: KeptAbsence): Advice {
  return {
    id: `absence.${key}`,
    urgency: "next_visit",
    weight: 39,
    about: "absence",
    do: [`Leave the tank ${STANDS_IN[fedBy]} until ${dateWords(to)}, then count heads and test.`],
    why: [[`You are away since ${dateWords(from)}. What can wait was moved to ${dateWords(to)}.`]],
    byWhen: [`On coming back, ${dateWords(to)}.`],
    by: to,
    wouldChange: ["Coming home sooner: correct the entry."],
    restsOn: `${from} ${to} ${fedBy} away`,
    act: { words: "The page for a sitter", leads: "holiday" },
    wait: { words: `Wait until ${dateWords(to)}`, leads: "daybook" },
  };
}
