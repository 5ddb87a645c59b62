/** Small numbers of entries: hours from lights-out, kinds, waves, how long something lasted, a share of something. */
import type { Choice } from "../quantity/outcome.ts";
import { isKept } from "../quantity/outcome.ts";
import { type ParsedAmount, parseAmount, tidy } from "../quantity/parse.ts";
import { decimalSign } from "../quantity/preferences.ts";
import { figure } from "../quantity/show.ts";
import { readVolume } from "../quantity/volume.ts";
import type { Gather } from "./gather.ts";

function parsed(gather: Gather, name: string): ParsedAmount | null {
  return parseAmount(gather.text(name), decimalSign(gather.context.preferences.locale));
}

const middle = ({ low, high }: { readonly low: number; readonly high: number }): number => (low + high) / 2;

/** "2", "3 h after", "1 before", "-1"; null where not said. */
export function readHoursFromLightsOut(gather: Gather): number | null | undefined {
  const name = "hours_from_lights_out";
  if (gather.text(name) === "") return null;
  const read = parsed(gather, name);
  const [only, other] = read?.candidates ?? [];
  const unit = tidy(read?.unit ?? "").toLowerCase();
  const match =
    /^(?:h|hrs?|hours?)?\s*(after|before)?(?: (?:the )?(?:lights?[- ]out|lamps? (?:went )?(?:out|off)|dark))?$/.exec(
      unit,
    );
  const hint = "enter hours after the lamps went out, such as 2, or 3 before";
  if (only === undefined || other !== undefined || match === null) return gather.doubt(name, "FORMAT", hint);
  const hours = (match[1] === "before" ? -1 : 1) * middle(only);
  if (hours < -24 || hours > 24) return gather.doubt(name, "RANGE", "must be 24 before to 24 after");
  return hours + 0;
}

/** A whole number within bounds; null where the field is empty. */
function whole(gather: Gather, name: string, most: number): number | null | undefined {
  if (gather.text(name) === "") return null;
  const read = parsed(gather, name);
  const [only, other] = read?.candidates ?? [];
  const plain = read !== null && read.unit === null && (read.form === "exact" || read.form === "about");
  if (!plain || only === undefined || other !== undefined || !Number.isInteger(only.low)) {
    return gather.doubt(name, "FORMAT", "enter a whole number, such as 2, or leave it empty");
  }
  if (only.low < 1 || only.low > most) return gather.doubt(name, "RANGE", `must be 1 to ${most}`);
  return only.low;
}

export const readKinds = (gather: Gather) => whole(gather, "kinds_seen", 100);
export const readWave = (gather: Gather) => whole(gather, "wave", 50);

const HOURS: Readonly<Record<string, number>> = {
  h: 1,
  hr: 1,
  hrs: 1,
  hour: 1,
  hours: 1,
  min: 1 / 60,
  mins: 1 / 60,
  minute: 1 / 60,
  minutes: 1 / 60,
  d: 24,
  day: 24,
  days: 24,
};
const MOST_HOURS = 2000;

/** How long, in hours: "6", "90 min", "2 days". */
export function readDuration(gather: Gather, name: string): number | undefined {
  if (gather.text(name) === "")
    return gather.doubt(name, "MISSING", "nothing entered. Enter hours, such as 6");
  const read = parsed(gather, name);
  const [only, other] = read?.candidates ?? [];
  const unit = read?.unit?.toLowerCase() ?? "h";
  const each = Object.hasOwn(HOURS, unit) ? HOURS[unit] : undefined;
  if (read === null || only === undefined || other !== undefined || each === undefined) {
    return gather.doubt(name, "FORMAT", "enter how long, such as 6 h, 90 min or 2 days");
  }
  const hours = middle(only) * each;
  if (hours < 0 || hours > MOST_HOURS) return gather.doubt(name, "RANGE", `must be 0 to ${MOST_HOURS} h`);
  if (unit !== "h") gather.say(name, "ECHO", `read as ${figure(hours)} h`);
  return hours;
}

const SHARES: Readonly<Record<string, number>> = {
  none: 0,
  "a tenth": 0.1,
  "a fifth": 0.2,
  "a quarter": 0.25,
  "a third": 1 / 3,
  half: 0.5,
  "a half": 0.5,
  "two thirds": 2 / 3,
  "three quarters": 0.75,
  all: 1,
  everything: 1,
};
const OF_IT = /\s*(?:of (?:it|them|the (?:water|sand|algae|tank)|all)|the (?:water|strength))$/;

/** A word for a share: "half of it"; null for no such word. */
export function shareWord(text: string): number | null {
  const word = tidy(text).toLowerCase().replace(OF_IT, "");
  return Object.hasOwn(SHARES, word) ? (SHARES[word] ?? null) : null;
}

/**
 * How much of something, as a share: "10 %", "half of it", of water also "20 L". A bare number of water can be per cent
 * or litres, and a bare one up to 1 per cent or a share: both ask. Null where not said, or where litres are of a volume
 * that nobody knows.
 */
export function readShare(gather: Gather, name: string, of: "water" | "other"): number | null | undefined {
  const typed = gather.text(name);
  if (typed === "") return null;
  const word = shareWord(typed);
  if (word !== null) {
    gather.say(name, "ECHO", `read as ${figure(100 * word)} %`);
    return word;
  }
  const read = parsed(gather, name);
  const [first, second] = read?.candidates ?? [];
  const unit = read?.unit?.replace(/\s/g, "").toLowerCase() ?? null;
  const percent = unit !== null && /^(?:%|percent|pct)/.test(unit);
  if (read !== null && first !== undefined && (percent || unit === null)) {
    const one = second !== undefined && first.high > 100 ? second : first;
    if (one.low < 0 || (percent && one.high > 100)) return gather.doubt(name, "RANGE", "must be 0 to 100 %");
    const number = one.low === one.high ? figure(one.high) : `${figure(one.low)}-${figure(one.high)}`;
    const asPercent: Choice = { label: `${number} %`, text: `${number} %` };
    if (percent) return middle(one) / 100;
    if (of === "water") {
      const litres = { label: `${number} L`, text: `${number} L` };
      const ways = one.high > 100 ? [litres] : [asPercent, litres];
      return gather.doubt(name, "AMBIG", `${ways.map(({ label }) => label).join(" or ")}?`, ways);
    }
    if (one.high > 100) return gather.doubt(name, "RANGE", "must be 0 to 100 %");
    if (one.high > 1 || one.high === 0) {
      gather.say(name, "ECHO", `read as ${number} %`);
      return middle(one) / 100;
    }
    const asShare = `${figure(100 * one.high)} %`;
    const ways = [asPercent, { label: asShare, text: asShare }];
    return gather.doubt(name, "AMBIG", `${ways.map(({ label }) => label).join(" or ")}?`, ways);
  }
  if (of === "other") {
    return gather.doubt(name, "FORMAT", "enter a share, such as 10 %, half, or all");
  }
  return litresAsShare(gather, name);
}

function litresAsShare(gather: Gather, name: string): number | null | undefined {
  const { preferences, waterL } = gather.context;
  const outcome = readVolume(gather.text(name), { preferences, label: gather.label(name) });
  if (!isKept(outcome) && outcome.message.kind === "FORMAT") {
    return gather.doubt(name, "FORMAT", "enter a share or a volume, such as 10 %, 20 L or half");
  }
  // That a small volume is unusual is true of tanks, not of what is changed.
  const litres = gather.take(name, isKept(outcome) ? { ...outcome, message: null } : outcome)?.central;
  if (litres === undefined) return undefined;
  if (waterL === null) {
    gather.say(
      name,
      "ECHO",
      `${figure(litres)} L; what share that is can't be said: the tank's volume is not known`,
    );
    return null;
  }
  if (litres > waterL) {
    const words = `more than the tank's ${figure(waterL)} L. All of it?`;
    return gather.doubt(name, "CONFLICT", words, [{ label: "all of it", text: "all" }]);
  }
  gather.say(name, "ECHO", `read as ${figure((100 * litres) / waterL)} % of ${figure(waterL)} L`);
  return litres / waterL;
}
