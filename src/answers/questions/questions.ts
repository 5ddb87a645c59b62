/** The eight questions: each with why it is asked, what an answer looks like, and what is taken when nobody knows. */
import { GROWTHS } from "../../engine/types/tank.ts";
import type { Answer, AnswerContext, Entries } from "./answer.ts";
import {
  GROWTH_WORDS,
  letterOf,
  parseAnimals,
  parseFloor,
  parseFood,
  parseGrowths,
  parseStart,
  parseTrouble,
  parseWater,
} from "./parse.ts";
import { parseReadings } from "./readings.ts";

export interface Question {
  /** Flag that answers it: `--water`. */
  readonly flag: string;
  readonly title: string;
  readonly why: string;
  /** How a line of text answers it; a form has fields instead. */
  readonly typing?: string;
  readonly example: string;
  readonly notSure: string;
  /** Lines to choose from, shown under the question. */
  readonly offer?: readonly string[];
  readonly parse: (text: string, context: AnswerContext) => Answer;
}

export const QUESTIONS: readonly Question[] = [
  {
    flag: "water",
    title: "How much water is in it?",
    why: "Everything is in proportion to it: food, animals, and how fast things go wrong.",
    typing: "Litres unless you say otherwise; or three sides, in cm unless you say.",
    example: "113, or 30 US gal, or 90x45x45, or 36x18x18 in",
    notSure: "40 to 300 L is taken, and the plan stays very wide",
    parse: parseWater,
  },
  {
    flag: "start",
    title: "When did it first hold seawater, and was the rock live, dry or mixed?",
    why: "A young tank grows other things than an old one, and feeds fewer.",
    example: "1 May 2026, dry",
    notSure: "a week to a year old, mixed rock",
    parse: parseStart,
  },
  {
    flag: "seen",
    title: "What do you see growing or lying about?",
    why: "It is the food that is there now.",
    typing: "Letter or name, then: a trace, patches, covered.",
    example: "a patches, e a trace",
    notSure: "nothing is taken for seen",
    offer: GROWTHS.map((growth) => `${letterOf(growth)}  ${GROWTH_WORDS[growth]}`),
    parse: parseGrowths,
  },
  {
    flag: "animals",
    title: "What lives in it now that eats, or might eat a snail or a crab?",
    why: "It shares the food, or makes a meal of the crew.",
    typing: "How many, then the name.",
    example: "2 clownfish, 5 trochus snail",
    notSure: "a few small fish for a tank of this size",
    parse: parseAnimals,
  },
  {
    flag: "floor",
    title: "What is the floor: bare, sand or rubble?",
    why: "Some animals live in sand and starve without it.",
    typing: "For sand: its depth, and fine, medium or coarse.",
    example: "sand 3 cm fine",
    notSure: "3 cm of sand, or none at all",
    parse: parseFloor,
  },
  {
    flag: "food",
    title: "What goes in as food on a usual day?",
    why: "What the fish leave feeds the crew, and what they eat feeds the algae.",
    typing: "Add none, some or a lot left after two minutes.",
    example: "0.2 g pellets, some left",
    notSure: "some dry food, for a tank of this size",
    parse: parseFood,
  },
  {
    flag: "readings",
    title: "Any readings?",
    why: "They narrow the plan. Leave out what you have not measured.",
    typing: "Salinity, temperature, nitrate, phosphate, alkalinity; each with its unit.",
    example: "temperature 77 F, nitrate 10 NO3, alkalinity 8 dKH",
    notSure: "water as usual in a reef tank",
    parse: parseReadings,
  },
  {
    flag: "trouble",
    title: "Is anything dead, gasping, or being treated with medicine or copper now?",
    why: "If so, that comes first, and no animal is proposed.",
    example: "no",
    notSure: "nothing is wrong",
    parse: parseTrouble,
  },
];

/** What stands in the file where nobody knows the water: the range most keepers' tanks lie in. */
export const UNSURE_WATER: Entries = { water_l: "40-300 L" };
