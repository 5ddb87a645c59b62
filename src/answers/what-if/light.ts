/** `--light`: hours a day, the lamp dimmed, or days of another light, dark ones first of all. */
import { readMeasure } from "../../contract/quantity/measure.ts";
import { tidy } from "../../contract/quantity/parse.ts";
import { readPlain } from "../../contract/quantity/plain.ts";
import { figure } from "../../contract/quantity/show.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { as, type Change, changed, factorRule, setTo, taken, times, unread } from "./read.ts";

const FLAG = "--light";
/** More than three times the lamp is another lamp. */
const MOST_PERCENT = 300;
const FORMS = 'write hours ("10 h"), a dimmer setting ("50 %") or dark days ("0 for 3 days")';

export function changeLight(text: string, facts: TankFacts): Change {
  const notes: string[] = [];
  const plain = tidy(text);
  const spell = /^(.+?) for (.+)$/i.exec(plain);
  if (spell !== null) return forSomeDays(text, spell[1]!, spell[2]!, facts, notes);
  if (plain.endsWith("%")) {
    const share = dimmer(plain, notes);
    const { parGlass, parRock, parSand } = facts;
    const lamp = {
      parGlass: times(parGlass, share),
      parRock: times(parRock, share),
      parSand: times(parSand, share),
    };
    return {
      facts: changed(facts, lamp, []),
      events: [],
      words: `the lamp at ${figure(100 * share)} % of today`,
      notes,
    };
  }
  if (/^[\d.,]+$/.test(plain)) throw unread(FLAG, text, `hours or per cent? ${capital(FORMS)}`);
  const hours = taken(FLAG, readPlain("hours", plain, as(FLAG, "h")), notes);
  return {
    facts: changed(facts, { lightHours: setTo(hours) }, ["lightHours"]),
    events: [],
    words: `${figure(hours.central)} h of light a day instead of ${figure(Number(facts.lightHours.central.toPrecision(2)))} h`,
    notes,
  };
}

function forSomeDays(text: string, level: string, span: string, facts: TankFacts, notes: string[]): Change {
  const percent = /^(?:0|dark|off)$/i.test(level) ? "0 %" : level;
  if (!percent.endsWith("%"))
    throw unread(FLAG, text, `for some days, the lamp can be dimmed only: ${FORMS}`);
  const share = dimmer(percent, notes);
  const days = Math.round(
    taken(FLAG, readPlain("days", span, as(FLAG, "d")), notes, (choice) => `${level} for ${choice}`).central,
  );
  if (days < 1) throw unread(FLAG, text, `must be at least 1 day; ${FORMS}`);
  const many = `${days} ${days === 1 ? "day" : "days"}`;
  return {
    facts,
    events: [
      { t: 0, kind: "set", light: share },
      { t: days, kind: "set", light: 1 },
    ],
    words: share === 0 ? `${many} without light` : `the lamp at ${figure(100 * share)} % for ${many}`,
    notes,
  };
}

function dimmer(text: string, notes: string[]): number {
  const outcome = readMeasure(text, factorRule("%", MOST_PERCENT), as(FLAG, "%"));
  return taken(FLAG, outcome, notes).central / 100;
}

const capital = (text: string): string => text[0]!.toUpperCase() + text.slice(1);
