/** Question 7: readings as `nitrate 5 NO3-N, phosphate 0.03`. A figure whose unit is open is asked about here. */
import { readAlkalinity } from "../../contract/quantity/alkalinity.ts";
import { readAmmonia } from "../../contract/quantity/ammonia.ts";
import { readCalcium, readMagnesium } from "../../contract/quantity/minerals.ts";
import { readNitrate, readNitrite, readPhosphate } from "../../contract/quantity/nutrients.ts";
import type { Amount, Outcome } from "../../contract/quantity/outcome.ts";
import { readPh } from "../../contract/quantity/ph.ts";
import type { MeasureContext } from "../../contract/quantity/rule.ts";
import { readSalinity } from "../../contract/quantity/salinity.ts";
import { readTemperature } from "../../contract/quantity/temperature.ts";
import { type Answer, type AnswerContext, again, doubtOf, entries, partsOf } from "./answer.ts";

interface Kind {
  readonly words: RegExp;
  readonly key: string;
  readonly read: (text: string, context: MeasureContext) => Outcome<Amount>;
  /** A fact of the tank rather than a reading of a day. */
  readonly fact?: true;
}

const KINDS: readonly Kind[] = [
  { words: /^(?:salinity|sal)\b/i, key: "salinity_psu", read: readSalinity, fact: true },
  {
    words: /^(?:specific gravity|sg)\b/i,
    key: "salinity_psu",
    read: (t, c) => readSalinity(/\bsg\b|gravity/i.test(t) ? t : `${t} sg`, c),
    fact: true,
  },
  { words: /^(?:temperature|temp)\b/i, key: "temperature_c", read: readTemperature, fact: true },
  { words: /^ph\b/i, key: "ph", read: readPh, fact: true },
  { words: /^(?:nitrate|no3)\b(?!-n)/i, key: "no3_mg_per_l", read: readNitrate },
  { words: /^(?:nitrite|no2)\b(?!-n)/i, key: "no2_mg_per_l", read: readNitrite },
  { words: /^(?:phosphate|po4)\b/i, key: "po4_mg_per_l", read: readPhosphate },
  {
    words: /^(?:total )?(?:ammonia|tan)\b/i,
    key: "tan_mg_n_per_l",
    read: (t, c) => readAmmonia(t, { ...c, form: null, stocked: false }),
  },
  { words: /^(?:alkalinity|alk|kh)\b/i, key: "alkalinity_dkh", read: readAlkalinity },
  { words: /^(?:calcium|ca)\b/i, key: "calcium_mg_per_l", read: readCalcium },
  { words: /^(?:magnesium|mg)\b/i, key: "magnesium_mg_per_l", read: readMagnesium },
];

export function parseReadings(text: string, { preferences, today }: AnswerContext): Answer {
  if (/^(?:none|no)$/i.test(text)) return entries({});
  const facts: Record<string, string> = {};
  const reading: Record<string, string> = {};
  for (const part of partsOf(text)) {
    const kind = KINDS.find(({ words }) => words.test(part));
    if (kind === undefined) {
      return again(
        part,
        `Reading "${part}": begin with what was measured: salinity, temperature, pH, nitrate, phosphate, alkalinity, calcium, magnesium, ammonia or nitrite`,
      );
    }
    const value = part.replace(kind.words, "").replace(/^[\s:=]+|\s+$/g, "");
    const doubt = doubtOf(kind.read(value, { preferences }));
    if (doubt !== null) return doubt;
    if (kind.fact === true)
      facts[kind.key] =
        /^(?:specific gravity|sg)\b/i.test(part) && !/sg|gravity/i.test(value) ? `${value} sg` : value;
    else reading[kind.key] = value;
  }
  return entries({
    ...facts,
    ...(Object.keys(reading).length === 0 ? {} : { readings: [{ on: today, ...reading }] }),
  });
}
