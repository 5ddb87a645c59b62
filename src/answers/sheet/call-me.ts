/** Three reasons to call, in plain words: what stops the next wave, the likeliest harm to the water, who may starve. */

import { plain, type Sentence, told } from "../sentence.ts";
import type { TankAnswers } from "../tank-answers.ts";
import { chance } from "../words.ts";

/** Signs that hold for every tank, where the plan has no closer one. */
const ALWAYS = [
  "an animal gasps, lies on its back or can't be found for a week",
  "two animals die within a week",
  "a test shows ammonia or nitrite",
] as const;

const POISON: ReadonlySet<string> = new Set(["tan", "nh3", "no2"]);
const TEST: Readonly<Record<string, string>> = {
  tan: "a test shows ammonia",
  nh3: "a test shows ammonia",
  no2: "a test shows nitrite",
  no3: "nitrate is above",
  po4: "phosphate is above",
};

export function callMeIf({ waves, ahead }: TankAnswers): Sentence[] {
  const stop = waves.waves[0]?.stop_if;
  const likeliest = ahead.as_it_is.chances
    .filter(({ missing, quantity, of_20 }) => missing === null && quantity in TEST && of_20 > 0)
    .sort((a, b) => Number(POISON.has(b.quantity)) - Number(POISON.has(a.quantity)) || b.of_20 - a.of_20)[0];
  const hungry = [...ahead.as_it_is.kinds].sort((a, b) => b.starves_of_20 - a.starves_of_20)[0];
  const own: Sentence[] = [
    ...(stop === undefined ? [] : [[stop]]),
    ...(likeliest === undefined ? [] : [waterWords(likeliest)]),
    ...(hungry === undefined || hungry.starves_of_20 === 0 ? [] : [hungerWords(hungry)]),
  ];
  const left = ALWAYS.filter((text) => own.every((other) => !says(plain(other), text)));
  return [...own, ...left.map((text) => [text])].slice(0, 3);
}

type Outlook = TankAnswers["ahead"]["as_it_is"];

function waterWords({ quantity, limit, unit, of_20, figures }: Outlook["chances"][number]): Sentence {
  const above = POISON.has(quantity) ? "" : ` ${Number(limit.toPrecision(2))} ${unit}`;
  return [`${TEST[quantity]!}${above} (above the limit: `, told(chance(of_20), figures.chance), ")"];
}

const hungerWords = ({ name, starves_of_20, figures }: Outlook["kinds"][number]): Sentence => [
  `the ${name} stops moving or lies where it fell (half or more starve: `,
  told(chance(starves_of_20), figures.starves),
  ")",
];

/** Whether a sentence says already what another does. */
const says = (one: string, other: string): boolean =>
  one.includes(other) || (one.startsWith("a test shows") && other.startsWith("a test shows"));
