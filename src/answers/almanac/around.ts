/**
 * Duties around a time away from home. What falls into it is moved by the rule below: before leaving, or to the day of
 * coming back; a series stops before and goes on after, as a second one. What can't wait stays on its day, says so, and is
 * told to the sitter. docs/almanac.md, "Away from home"
 */
import { addDays, daysBetween } from "../../contract/quantity/calendar.ts";
import { type KeptAbsence, lastDayHome } from "../holiday/absences.ts";
import { dateWords } from "../words.ts";
import type { CareDate, CareKind } from "./care-date.ts";

/**
 * `ready`: taken in by the care of the last day at home, and again after. `before`: on the last day at home. `after`: on the
 * day of coming back. `visit`: the sitter's every visit has it. `stays`: can't wait.
 */
type Move = "ready" | "before" | "after" | "visit" | "stays";

const MOVE: Readonly<Record<CareKind, Move>> = {
  ...{ glass: "ready", filter: "ready", water_change: "ready", top_up: "visit" },
  ...{ test: "before", stock: "before", feeding: "before" },
  ...{ count: "after", order: "after", wave: "after", start_up: "after", look: "after" },
  ...{ righting: "stays", medicine: "stays", quarantine: "stays", holiday: "stays", arrival: "stays" },
};

/** An end of a quarantine is "at the earliest": it waits. */
const moveOf = ({ kind, id }: CareDate): Move =>
  kind === "quarantine" && id.endsWith(".end") ? "after" : MOVE[kind];

/** Moved for each absence in turn. @param absences that are not over, the first first */
export const aroundAbsences = (
  dates: readonly CareDate[],
  absences: readonly KeptAbsence[],
  today: string,
): CareDate[] =>
  absences
    .reduce<readonly CareDate[]>((all, away) => all.flatMap((one) => moved(one, away, today)), dates)
    .slice();

/** What can't wait and falls into an absence: for the sheet of the sitter. Its own visits are told there anyway. */
export const cantWait = (dates: readonly CareDate[], away: KeptAbsence): readonly CareDate[] =>
  dates.filter((one) => one.kind !== "holiday" && moveOf(one) === "stays" && fallsInto(one, away));

function moved(one: CareDate, away: KeptAbsence, today: string): readonly CareDate[] {
  if (one.kind === "holiday" || !fallsInto(one, away)) return [one];
  const move = moveOf(one);
  if (move === "stays") return [{ ...one, why: [...one.why, [cantWaitWords(away)]] }];
  return one.every === null ? [once(one, away, today, move)] : series(one, one.every, away, today, move);
}

function once(one: CareDate, away: KeptAbsence, today: string, move: Move): CareDate {
  const last = lastDayHome(away);
  const home = move === "before" || move === "ready" ? today <= last : false;
  // Nothing new on the day of coming back: heads are counted first.
  const back = move === "after" && one.kind === "wave" ? addDays(away.to, 1) : away.to;
  const on = home ? last : back;
  return {
    ...one,
    on,
    byWhen: [
      `${home ? "Before you leave" : "When you are back"}, ${dateWords(on)}: ${dateWords(one.on)} falls into your time away.`,
    ],
    restsOn: restsOn(one, away),
  };
}

/** The part before leaving and the part after it; no day within. */
function series(one: CareDate, every: number, away: KeptAbsence, today: string, move: Move): CareDate[] {
  const last = lastDayHome(away);
  // The care of the last day stands for what would be due within two days of it.
  const stop = move === "ready" && today <= last ? addDays(last, -2) : last;
  const first = one.on <= stop;
  const before = first ? [upTo(one, every, stop, restsOn(one, away))] : [];
  if (one.until !== null && one.until < away.to) return before;
  const after: CareDate = {
    ...one,
    id: first ? `${one.id}.after.${away.key}` : one.id,
    on: away.to,
    byWhen: [`When you are back, ${dateWords(away.to)}; ${whileAway(away, move)}`],
    restsOn: restsOn(one, away),
  };
  return [...before, after];
}

/** The series to the last of its days that is not after `stop`; one day alone is no series. */
function upTo(one: CareDate, every: number, stop: string, rests: string): CareDate {
  const times = Math.floor(daysBetween(one.on, stop) / every);
  const common = { ...one, restsOn: rests };
  return times === 0
    ? { ...common, every: null, until: null }
    : { ...common, until: addDays(one.on, every * times) };
}

const restsOn = (one: CareDate, { from, to }: KeptAbsence): string => `${one.restsOn} away ${from} ${to}`;

function whileAway({ fedBy }: KeptAbsence, move: Move): string {
  if (move === "ready") return "the care of the day before leaving holds until then.";
  return fedBy === "sitter"
    ? "until then the sitter does it at each visit."
    : "until then nobody is there for it.";
}

/** That it can't wait, and who does it meanwhile. */
function cantWaitWords({ fedBy, from, to }: KeptAbsence): string {
  const span = `${dateWords(from)} to ${dateWords(to)}`;
  return fedBy === "sitter"
    ? `It can't wait while you are away, ${span}: it stands on the sheet for the sitter.`
    : `It can't wait while you are away, ${span}, and nobody comes: find somebody for it.`;
}

/** Whether a day of it lies from leaving on and before coming back. */
function fallsInto({ on, every, until }: CareDate, { from, to }: KeptAbsence): boolean {
  if (every === null) return from <= on && on < to;
  if (on >= to || (until !== null && until < from)) return false;
  const next = on >= from ? on : addDays(on, every * Math.ceil(daysBetween(on, from) / every));
  return next < to && (until === null || next <= until);
}
